import type { LedgerEvent } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import { verdictOf } from "../testing/plain.ts";
import { at, atText, Story } from "../testing/story.ts";
import { line, told, walkBook } from "../testing/walk-book.ts";

const at15 = { value: 15, unit: "degC" } as const;

describe("an interruption", () => {
  it("asks for the last three checks again, and only for those", () => {
    const story = new Story(walkBook);
    story.ada.start();
    for (const id of ["oil", "age", "drain", "cap"]) story.ada.answer(id);
    story.ada.interrupt();
    expect(told(story, "oil").status).toBe("clear");
    for (const id of ["age", "drain", "cap"]) {
      expect(line(told(story, id))).toBe("open: Look: asked again, because the walk was interrupted");
    }
    story.ada.answer("age");
    expect(told(story, "age").status).toBe("clear");
  });

  it("does not make a stop into something milder", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.ada.answer("oil", "not-right");
    story.ada.interrupt();
    expect(told(story, "oil").status).toBe("stop");
  });
});

describe("what has stopped being true", () => {
  it("a happening after the look reopens it, and says what and when", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.at("07:40").ada.answer("drain");
    const happening = story.at("09:07").ada.happen("fuelled");
    const verdict = told(story, "drain", "09:10");
    expect(line(verdict)).toBe("open: Look: fuelled at 09:07, after the look at 07:40");
    expect(verdict.evidence).toContain(happening);
    expect(verdict.margin?.text).toBe("look again");
  });

  it("a happening of another kind does not", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.ada.answer("drain");
    story.ada.happen("rain");
    expect(told(story, "drain").status).toBe("clear");
  });

  it("a happening that was before the look does not, though it was told later", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.at("07:40").ada.answer("drain");
    story.at("08:30").ada.happen("fuelled", atText("06:50"));
    expect(told(story, "drain").status).toBe("clear");
  });

  it("a happening in the look's own minute, told after it, does: people say minutes", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.at("07:40:30").ada.answer("drain");
    story.ada.happen("fuelled", atText("07:40"));
    expect(told(story, "drain").status).toBe("open");
    story.at("07:41").ada.answer("drain");
    expect(told(story, "drain").status).toBe("clear");
  });

  it("a happening of the minute before, told after it, does not", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.at("07:40:30").ada.answer("drain");
    story.ada.happen("fuelled", atText("07:39:59"));
    expect(told(story, "drain").status).toBe("clear");
  });

  it("a clock that was put back does not hide a happening: what was told after the look counts", () => {
    const story = new Story(walkBook, "07:00");
    const ben = story.phone("Ben", 120 * 60_000); // two hours fast
    ben.start();
    story.at("08:00").phone("Ben").answer("drain"); // its clock says 10:00
    const look = story.events.at(-1);
    if (look === undefined) throw new Error("the look is the last event");
    // The clock is put right. Now it says 08:05, and the stamp goes on from where it was.
    story.events.push({
      ...look,
      id: story.id(),
      deviceSeq: look.deviceSeq + 1,
      hlc: `${look.hlc.slice(0, 16)}00001`,
      recordedAt: atText("08:05"),
      type: "happening.recorded",
      body: { happening: "fuelled", at: atText("08:05") },
    } as LedgerEvent); // an event of a clock that went back, put together by hand
    expect(told(story, "drain", "08:10").status).toBe("open");
  });

  it("of two happenings the first that ended it is named", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.at("07:40").ada.answer("oil");
    story.at("08:10").ada.happen("flown", atText("08:05"));
    story.at("08:20").ada.happen("fuelled", atText("08:00"));
    expect(line(told(story, "oil"))).toContain("fuelled at 08:00");
  });

  it("age ends a look just after its last moment, not on it", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.at("07:40").ada.answer("age");
    expect(told(story, "age", "11:40").status).toBe("clear");
    expect(told(story, "age", "11:40").holdsUntil_ms).toBe(at("11:40"));
    const verdict = verdictOf(assess(walkBook, story.state, null, at("11:40") + 1), "check:age");
    expect(line(verdict)).toBe("open: Look: the look at 07:40 counted for 4 h, until 11:40");
  });

  it("a look dated ahead of now has no age that can be known", () => {
    const story = new Story(walkBook);
    const ben = story.phone("Ben", 60 * 60_000);
    ben.start();
    story.at("07:40");
    ben.answer("age");
    ben.answer("oil");
    expect(line(told(story, "age", "07:45"))).toContain("ahead of now");
    expect(told(story, "oil", "07:45").status).toBe("clear"); // age plays no part in it
  });

  it("two minutes ahead are an honest difference between clocks, and a look of this moment has its age", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.at("07:40").ada.answer("age");
    for (const time of ["07:38", "07:39", "07:40", "07:41"])
      expect(told(story, "age", time).status).toBe("clear");
    const early = verdictOf(assess(walkBook, story.state, null, at("07:38") - 1), "check:age");
    expect(early.status).toBe("open");
  });

  it("what was found wrong stays wrong: a happening does not mend it", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.ada.answer("oil", "not-right");
    story.ada.happen("flown");
    expect(told(story, "oil").status).toBe("stop");
  });
});

describe("the order of checks", () => {
  it("a look made before what must come first does not count", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.ada.answer("cap");
    expect(line(told(story, "cap"))).toBe('open: Look: it comes after "Right tank: Look", and was not');
    story.ada.answer("drain");
    expect(told(story, "cap").status).toBe("open");
    story.ada.answer("cap");
    expect(told(story, "cap").status).toBe("clear");
  });

  it("what could not be checked has not been done before", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.ada.answer("drain", "could-not-check");
    story.ada.answer("cap");
    expect(told(story, "cap").status).toBe("open");
  });

  it("doing the first once more does not undo the second", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.ada.answer("drain");
    story.ada.answer("cap");
    story.ada.answer("drain");
    expect(told(story, "cap").status).toBe("clear");
  });
});

describe("evidence", () => {
  it("a figure that is asked for and was not read leaves the check open", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.ada.answer("tyre");
    expect(line(told(story, "tyre"))).toBe("open: Measure the pressure: tyre pressure not read");
    expect(told(story, "tyre").margin?.text).toBe("not read");
  });

  it("a reading makes it what the reading is worth", () => {
    const story = new Story(walkBook);
    story.ada.start();
    const read = story.at("07:42").ada.read("tyre", 5.3, "bar", at15);
    const answer = story.ada.answer("tyre");
    const verdict = told(story, "tyre");
    expect(line(verdict)).toBe("clear: 5.30 bar, 5.20 to 5.46 at 15 °C");
    expect(verdict.evidence).toEqual([answer, read]);
    expect(verdict.working.lines).toContainEqual({ label: "Measured", value: "07:42, by Ada" });
    expect(verdict.sources.map(({ title }) => title)).toContain("Book of ZZ-TST, revision 14");
    expect("probability_1" in verdict).toBe(false);
  });

  it("the latest reading of the walk counts, and none of another walk", () => {
    const story = new Story(walkBook, "06:00");
    story.ada.start();
    story.ada.read("tyre", 5.3, "bar", at15);
    story.ada.answer("tyre");
    story.ada.finish();
    story.at("08:00").ada.start();
    story.ada.answer("tyre");
    expect(told(story, "tyre").status).toBe("open");
    story.ada.read("tyre", 4.0, "bar", at15);
    expect(told(story, "tyre").status).toBe("stop");
    story.ada.read("tyre", 5.3, "bar", at15);
    expect(told(story, "tyre").status).toBe("clear");
  });

  it("a reading without its temperature leaves it open and names it", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.ada.read("tyre", 5.3, "bar");
    story.ada.answer("tyre");
    const verdict = told(story, "tyre");
    expect(verdict).toMatchObject({ status: "open", missing: ["tyre temperature"] });
  });

  it("a reading that is out of its limit is a stop, though nobody answered, or answered that it is right", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.ada.read("tyre", 4.0, "bar", at15);
    expect(told(story, "tyre").status).toBe("stop");
    story.ada.answer("tyre");
    expect(told(story, "tyre").status).toBe("stop");
    story.ada.answer("tyre", "could-not-check");
    expect(told(story, "tyre").status).toBe("stop");
    story.ada.happen("flown");
    expect(told(story, "tyre").status).toBe("stop");
    expect(told(story, "tyre").holdsUntil_ms).toBeUndefined();
  });

  it("a good reading that nobody answered is not a look", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.ada.read("tyre", 5.3, "bar", at15);
    expect(told(story, "tyre").status).toBe("open");
  });

  it("a reading from before a happening is not read since, though the look was made again", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.at("07:40").ada.read("tyre", 5.3, "bar", at15);
    story.ada.answer("tyre");
    story.at("08:00").ada.happen("flown");
    story.ada.answer("tyre");
    expect(line(told(story, "tyre"))).toBe(
      "open: Measure the pressure: not read since; flown at 08:00, after the reading at 07:40",
    );
  });

  it("the age of a reading counts as well as that of the answer", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.at("07:40").ada.read("aged", 26, "V");
    story.at("08:00").ada.answer("aged");
    expect(told(story, "aged", "09:40").holdsUntil_ms).toBe(at("09:40"));
    expect(line(told(story, "aged", "09:41"))).toBe(
      "open: Look: not read since; the reading at 07:40 counted for 2 h, until 09:40",
    );
    story.ada.read("aged", 26, "V");
    expect(told(story, "aged", "09:41").holdsUntil_ms).toBe(at("10:00"));
  });

  it("age does not end a stop, so a stop holds until nothing", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.ada.read("aged", 20, "V");
    story.ada.answer("aged");
    expect(told(story, "aged").status).toBe("stop");
    expect(told(story, "aged")).not.toHaveProperty("holdsUntil_ms");
  });

  it("a stop is ended by putting it right, then by looking and reading again", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.ada.read("tyre", 4.0, "bar", at15);
    story.ada.answer("tyre");
    story.ada.close(story.ada.raise({ check: "tyre" }));
    expect(line(told(story, "tyre"))).toBe("open: Measure the pressure: look again after it was put right");
  });

  it("a photo that is asked for must be of this walk", () => {
    const story = new Story(walkBook, "06:00");
    story.ada.photo("photo");
    story.at("07:00").ada.start();
    story.ada.answer("photo");
    expect(line(told(story, "photo"))).toBe("open: Look: no photo was left in this walk");
    story.ada.photo("oil");
    expect(told(story, "photo").status).toBe("open");
    story.ada.photo("photo");
    expect(told(story, "photo").status).toBe("clear");
  });
});
