import { measure } from "@witnessmark/engine";
import type { CouldNotReason, LedgerEvent } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import type { Verdict } from "../assessment.ts";
import { has, plain, verdictOf } from "../testing/plain.ts";
import { book, check, tyreReading, voltsFrom } from "../testing/small-book.ts";
import { at, atText, Story } from "../testing/story.ts";

const at15 = { value: 15, unit: "degC" } as const;

const theBook = book({
  checks: [
    check("oil", "oil", { title: "Read the dipstick", until: ["flown", "fuelled"], severity: "high" }),
    check("age", "boot", { stance: "wing", atMost: measure(4, "h") }),
    check("tyre", "tyre", {
      stance: "wing",
      title: "Measure the pressure",
      reading: tyreReading,
      until: ["flown"],
    }),
    check("aged", "battery", { reading: voltsFrom(24), atMost: measure(2, "h") }),
    check("photo", "pitot", { stance: "wing", evidence: "photo" }),
    check("drain", "tank", { stance: "wing", walks: ["first-of-day", "turnaround"], until: ["fuelled"] }),
    check("cap", "tank", { stance: "wing", walks: ["first-of-day", "turnaround"], after: ["drain"] }),
    check("brake", "tyre", { stance: "wing", walks: ["after-flight"], title: "Feel the brake" }),
  ],
});

const told = (story: Story, id: string, time = "09:00", days = 0): Verdict =>
  verdictOf(assess(theBook, story.state, null, at(time, days)), `check:${id}`);
const line = (verdict: Verdict): string => `${verdict.status}: ${plain(verdict.says)}`;

describe("coverage", () => {
  it("every first-of-day check is open when there never was a walk", () => {
    const assessment = assess(theBook, new Story(theBook).state, null, at("09:00"));
    expect(assessment.walk).toBeNull();
    expect(assessment.counts).toEqual({ open: 7, stop: 0, caution: 0, clear: 0 });
    expect(line(verdictOf(assessment, "check:oil"))).toBe("open: Read the dipstick: not looked at yet");
    expect(has(assessment, "check:brake")).toBe(false);
  });

  it("a check of the walk's kind that was not answered in it is open, whatever earlier walks said", () => {
    const story = new Story(theBook, "06:00");
    story.ada.start();
    story.ada.answer("oil");
    story.ada.finish();
    story.at("08:00").ada.start();
    expect(line(told(story, "oil"))).toBe("open: Read the dipstick: not looked at in this walk");
    expect(told(story, "oil").margin?.text).toBe("not looked at");
  });

  it("a look that is as it should be is clear, and says when, by whom and what ends it", () => {
    const story = new Story(theBook, "07:40");
    story.ada.start();
    const event = story.at("07:41").ada.answer("oil");
    const verdict = told(story, "oil");
    expect(line(verdict)).toBe("clear: Read the dipstick: as it should be, 07:41");
    expect(verdict.evidence).toEqual([event]);
    expect(verdict.endsWith).toEqual(["flown", "fuelled"]);
    expect(verdict.working.lines).toContainEqual({ label: "Looked at", value: "07:41, by Ada" });
    expect(verdict.sources).toEqual([{ title: "Book of ZZ-TST, revision 14", locator: "check oil" }]);
    expect(verdict.title).toBe("Oil filler");
    expect(verdict.holdsUntil_ms).toBeUndefined();
  });

  it.each<[CouldNotReason | undefined, string]>([
    ["too-dark", "too dark"],
    ["out-of-reach", "out of reach"],
    ["too-hot", "too hot yet"],
    ["no-tool", "no tool"],
    ["weather", "weather"],
    ["something-else", "another reason"],
    [undefined, "another reason"],
  ])("could not check (%s) stays open and says why", (reason, words) => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.answer("oil", "could-not-check", reason);
    expect(line(told(story, "oil"))).toBe(`open: Read the dipstick: could not check, ${words}`);
  });

  it("the latest answer in the walk counts; one that was taken back does not", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.answer("oil", "could-not-check");
    const later = story.ada.answer("oil");
    expect(told(story, "oil").status).toBe("clear");
    story.ada.withdraw(later);
    expect(told(story, "oil").status).toBe("open");
  });

  it("not right without a discrepancy is a stop by itself", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.at("07:41").ada.answer("oil", "not-right");
    const verdict = told(story, "oil");
    expect(line(verdict)).toBe("stop: Read the dipstick: not right, 07:41, by Ada");
    expect(verdict.status === "stop" ? verdict.wayOut : []).toEqual([
      "Put it right: licensed mechanic, then look again",
    ]);
  });

  it("not right gives way to the open discrepancy that names it: one verdict, not two", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.answer("oil", "not-right");
    const discrepancy = story.ada.raise({ check: "oil" });
    const assessment = assess(theBook, story.state, null, at("09:00"));
    expect(has(assessment, "check:oil")).toBe(false);
    expect(verdictOf(assessment, `discrepancy:${discrepancy}`).status).toBe("stop");
  });

  it("what was put right has to be looked at again, and then is what the new look says", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.answer("oil", "not-right");
    const discrepancy = story.ada.raise({ check: "oil" });
    story.ada.close(discrepancy);
    expect(line(told(story, "oil"))).toBe("open: Read the dipstick: look again after it was put right");
    story.ada.answer("oil");
    expect(told(story, "oil").status).toBe("clear");
  });

  it("a look from before the work does not count either, though it was good", () => {
    const story = new Story(theBook);
    const discrepancy = story.ada.raise({ check: "oil" });
    story.ada.start();
    story.ada.answer("oil");
    expect(told(story, "oil").status).toBe("clear");
    story.ada.close(discrepancy, "no-fault-found");
    expect(line(told(story, "oil"))).toBe("open: Read the dipstick: look again after no fault was found");
  });

  it("not right again after it was put right is a stop again", () => {
    const story = new Story(theBook);
    const discrepancy = story.ada.raise({ check: "oil" });
    story.ada.close(discrepancy);
    story.ada.start();
    story.ada.answer("oil", "not-right");
    expect(told(story, "oil").status).toBe("stop");
  });

  it("a worse answer counts that comes later from a walk that is still walked beside the one in hand", () => {
    const story = new Story(theBook);
    story.ada.start();
    const ben = story.phone("Ben");
    ben.start();
    ben.answer("oil");
    expect(told(story, "oil").status).toBe("clear");
    story.ada.answer("oil", "not-right");
    expect(assess(theBook, story.state, null, at("09:00")).walk?.id).toBe(ben.walk);
    expect(told(story, "oil").status).toBe("stop");
    ben.answer("oil");
    expect(told(story, "oil").status).toBe("clear");
  });

  it("a better answer from there does not", () => {
    const story = new Story(theBook);
    story.ada.start();
    const ben = story.phone("Ben");
    ben.start();
    ben.answer("oil", "could-not-check");
    story.ada.answer("oil");
    expect(told(story, "oil").status).toBe("open");
  });
});

describe("an interruption", () => {
  it("asks for the last three checks again, and only for those", () => {
    const story = new Story(theBook);
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
    const story = new Story(theBook);
    story.ada.start();
    story.ada.answer("oil", "not-right");
    story.ada.interrupt();
    expect(told(story, "oil").status).toBe("stop");
  });
});

describe("what has stopped being true", () => {
  it("a happening after the look reopens it, and says what and when", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.at("07:40").ada.answer("drain");
    const happening = story.at("09:07").ada.happen("fuelled");
    const verdict = told(story, "drain", "09:10");
    expect(line(verdict)).toBe("open: Look: fuelled at 09:07, after the look at 07:40");
    expect(verdict.evidence).toContain(happening);
    expect(verdict.margin?.text).toBe("look again");
  });

  it("a happening of another kind does not", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.answer("drain");
    story.ada.happen("rain");
    expect(told(story, "drain").status).toBe("clear");
  });

  it("a happening that was before the look does not, though it was told later", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.at("07:40").ada.answer("drain");
    story.at("08:30").ada.happen("fuelled", atText("06:50"));
    expect(told(story, "drain").status).toBe("clear");
  });

  it("a happening in the look's own minute, told after it, does: people say minutes", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.at("07:40:30").ada.answer("drain");
    story.ada.happen("fuelled", atText("07:40"));
    expect(told(story, "drain").status).toBe("open");
    story.at("07:41").ada.answer("drain");
    expect(told(story, "drain").status).toBe("clear");
  });

  it("a happening of the minute before, told after it, does not", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.at("07:40:30").ada.answer("drain");
    story.ada.happen("fuelled", atText("07:39:59"));
    expect(told(story, "drain").status).toBe("clear");
  });

  it("a clock that was put back does not hide a happening: what was told after the look counts", () => {
    const story = new Story(theBook, "07:00");
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
    const story = new Story(theBook);
    story.ada.start();
    story.at("07:40").ada.answer("oil");
    story.at("08:10").ada.happen("flown", atText("08:05"));
    story.at("08:20").ada.happen("fuelled", atText("08:00"));
    expect(line(told(story, "oil"))).toContain("fuelled at 08:00");
  });

  it("age ends a look just after its last moment, not on it", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.at("07:40").ada.answer("age");
    expect(told(story, "age", "11:40").status).toBe("clear");
    expect(told(story, "age", "11:40").holdsUntil_ms).toBe(at("11:40"));
    const verdict = verdictOf(assess(theBook, story.state, null, at("11:40") + 1), "check:age");
    expect(line(verdict)).toBe("open: Look: the look at 07:40 counted for 4 h, until 11:40");
  });

  it("a look dated ahead of now has no age that can be known", () => {
    const story = new Story(theBook);
    const ben = story.phone("Ben", 60 * 60_000);
    ben.start();
    story.at("07:40");
    ben.answer("age");
    ben.answer("oil");
    expect(line(told(story, "age", "07:45"))).toContain("ahead of now");
    expect(told(story, "oil", "07:45").status).toBe("clear"); // age plays no part in it
  });

  it("two minutes ahead are an honest difference between clocks, and a look of this moment has its age", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.at("07:40").ada.answer("age");
    for (const time of ["07:38", "07:39", "07:40", "07:41"])
      expect(told(story, "age", time).status).toBe("clear");
    const early = verdictOf(assess(theBook, story.state, null, at("07:38") - 1), "check:age");
    expect(early.status).toBe("open");
  });

  it("what was found wrong stays wrong: a happening does not mend it", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.answer("oil", "not-right");
    story.ada.happen("flown");
    expect(told(story, "oil").status).toBe("stop");
  });
});

describe("the order of checks", () => {
  it("a look made before what must come first does not count", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.answer("cap");
    expect(line(told(story, "cap"))).toBe('open: Look: it comes after "Right tank: Look", and was not');
    story.ada.answer("drain");
    expect(told(story, "cap").status).toBe("open");
    story.ada.answer("cap");
    expect(told(story, "cap").status).toBe("clear");
  });

  it("what could not be checked has not been done before", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.answer("drain", "could-not-check");
    story.ada.answer("cap");
    expect(told(story, "cap").status).toBe("open");
  });

  it("doing the first once more does not undo the second", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.answer("drain");
    story.ada.answer("cap");
    story.ada.answer("drain");
    expect(told(story, "cap").status).toBe("clear");
  });
});

describe("evidence", () => {
  it("a figure that is asked for and was not read leaves the check open", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.answer("tyre");
    expect(line(told(story, "tyre"))).toBe("open: Measure the pressure: tyre pressure not read");
    expect(told(story, "tyre").margin?.text).toBe("not read");
  });

  it("a reading makes it what the reading is worth", () => {
    const story = new Story(theBook);
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
    const story = new Story(theBook, "06:00");
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
    const story = new Story(theBook);
    story.ada.start();
    story.ada.read("tyre", 5.3, "bar");
    story.ada.answer("tyre");
    const verdict = told(story, "tyre");
    expect(verdict).toMatchObject({ status: "open", missing: ["tyre temperature"] });
  });

  it("a reading that is out of its limit is a stop, though nobody answered, or answered that it is right", () => {
    const story = new Story(theBook);
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
    const story = new Story(theBook);
    story.ada.start();
    story.ada.read("tyre", 5.3, "bar", at15);
    expect(told(story, "tyre").status).toBe("open");
  });

  it("a reading from before a happening is not read since, though the look was made again", () => {
    const story = new Story(theBook);
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
    const story = new Story(theBook);
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
    const story = new Story(theBook);
    story.ada.start();
    story.ada.read("aged", 20, "V");
    story.ada.answer("aged");
    expect(told(story, "aged").status).toBe("stop");
    expect(told(story, "aged")).not.toHaveProperty("holdsUntil_ms");
  });

  it("a stop is ended by putting it right, then by looking and reading again", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.read("tyre", 4.0, "bar", at15);
    story.ada.answer("tyre");
    story.ada.close(story.ada.raise({ check: "tyre" }));
    expect(line(told(story, "tyre"))).toBe("open: Measure the pressure: look again after it was put right");
  });

  it("a photo that is asked for must be of this walk", () => {
    const story = new Story(theBook, "06:00");
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

describe("a turnaround", () => {
  const walked = (): Story => {
    const story = new Story(theBook, "06:00");
    story.ada.start();
    for (const id of ["oil", "drain", "cap"]) story.ada.answer(id);
    story.at("06:10").ada.read("tyre", 5.3, "bar", at15);
    story.ada.answer("tyre");
    story.ada.finish();
    return story;
  };

  it("rests, for what it does not ask, on the last look of an earlier walk", () => {
    const story = walked();
    story.at("08:00").ada.start("turnaround");
    expect(told(story, "oil").status).toBe("clear");
    expect(told(story, "tyre").status).toBe("clear");
    expect(line(told(story, "age"))).toBe("open: Look: not looked at yet");
  });

  it("asks its own checks afresh", () => {
    const story = walked();
    story.at("08:00").ada.start("turnaround");
    expect(line(told(story, "drain"))).toBe("open: Look: not looked at in this walk");
    story.ada.answer("drain");
    expect(told(story, "drain").status).toBe("clear");
  });

  it("does not rest on a look that a happening has ended since", () => {
    const story = walked();
    story.at("07:30").ada.happen("flown");
    story.at("08:00").ada.start("turnaround");
    expect(line(told(story, "oil"))).toContain("flown at 07:30");
  });

  it("does not ask what belongs to a walk after a flight", () => {
    const story = walked();
    story.ada.start("turnaround");
    expect(has(assess(theBook, story.state, null, at("09:00")), "check:brake")).toBe(false);
  });
});

describe("a walk after a flight", () => {
  it("counts its own checks only", () => {
    const story = new Story(theBook);
    story.ada.start("after-flight");
    const assessment = assess(theBook, story.state, null, at("09:00"));
    expect(assessment.verdicts.filter(({ topic }) => topic === "check").map(({ id }) => id)).toEqual([
      "check:brake",
    ]);
    story.ada.answer("brake");
    expect(told(story, "brake").status).toBe("clear");
  });
});

describe("the walk in hand", () => {
  it("is the one begun last and not abandoned, finished or not", () => {
    const story = new Story(theBook, "06:00");
    const inHand = (): string | undefined => assess(theBook, story.state, null, at("09:00")).walk?.id;
    expect(inHand()).toBeUndefined();
    const leftBehind = story.ada.start();
    expect(inHand()).toBe(leftBehind);
    const first = story.ada.start();
    story.ada.finish();
    expect(inHand()).toBe(first);
    const second = story.ada.start("turnaround");
    expect(inHand()).toBe(second);
    story.ada.abandon();
    expect(inHand()).toBe(first);
  });

  it("is none when all were abandoned", () => {
    const story = new Story(theBook, "06:00");
    story.ada.start();
    story.ada.answer("oil");
    story.ada.abandon();
    expect(line(told(story, "oil"))).toBe("open: Read the dipstick: not looked at yet");
  });
});
