import { measure } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { assess } from "./assess.ts";
import type { Assessment } from "./assessment.ts";
import { plain } from "./testing/plain.ts";
import { book, check, gear, tyreReading } from "./testing/small-book.ts";
import { at, Story } from "./testing/story.ts";

const split = {
  id: "split",
  name: "Split",
  measure: { of: "length", allowed: measure(10, "mm"), upTo: measure(50, "mm") },
};
const theBook = book({
  checks: [
    check("oil", "oil", { severity: "low", until: ["flown", "fuelled"] }),
    check("tank", "tank", {
      stance: "wing",
      severity: "high",
      until: ["flown", "fuelled"],
      atMost: measure(4, "h"),
    }),
    check("boot", "boot", { stance: "wing", faults: [split], until: ["flown"] }),
    check("tyre", "tyre", { stance: "wing", reading: tyreReading, until: ["flown"] }),
  ],
});
const of = (story: Story, time = "09:00"): Assessment => assess(theBook, story.state, null, at(time));
const at15 = { value: 15, unit: "degC" } as const;

/** Everything looked at and right, from 07:00 on. */
const walked = (): Story => {
  const story = new Story(theBook);
  story.ada.start();
  for (const id of ["oil", "tank", "boot"]) story.ada.answer(id);
  story.ada.read("tyre", 5.3, "bar", at15);
  story.ada.answer("tyre");
  return story;
};

describe("the headline", () => {
  it("counts what stops", () => {
    const story = walked();
    story.ada.raise({ words: "Right boot is split", check: "boot" });
    expect(of(story).headline).toBe("One thing stops this flight");
    expect(of(story).status).toBe("stop");
    story.ada.raise({ words: "Door is loose" });
    expect(of(story).headline).toBe("Two things stop this flight");
  });

  it("says that nothing is in the way", () => {
    expect(of(walked()).headline).toBe("Nothing in the way");
    expect(of(walked()).status).toBe("clear");
  });

  it("counts everything that is open: the headline's figures come to what the list has", () => {
    const story = new Story({
      ...theBook,
      timedItems: [
        {
          id: "annual",
          name: "Annual inspection",
          about: "aircraft",
          limits: [{ by: "calendar-months", months: 12 }],
          combine: "first",
          recurring: true,
          endsLife: false,
          why: "What ages.",
        },
      ],
    });
    story.ada.start();
    const { headline, counts } = assess(story.book, story.state, null, at("09:00"));
    expect(headline).toBe("4 checks and 1 other thing open");
    expect(counts.open).toBe(5);
  });

  it("counts what is open, checks and ground gear apart", () => {
    const story = new Story(theBook);
    story.ada.start();
    expect(of(story).headline).toBe("4 checks open");
    story.ada.answer("oil");
    story.ada.answer("tank");
    story.ada.answer("boot");
    expect(of(story).headline).toBe("1 check open");
    const geared = book({
      checks: theBook.checks,
      gear: [gear("plug", "Plug", 1, "oil"), gear("pin", "Pin", 2, "boot")],
    });
    expect(assess(geared, story.state, null, at("09:00")).headline).toBe(
      "1 check and 2 items of ground gear open",
    );
  });

  it("counts ground gear alone, or whatever else is open", () => {
    const bare = book({ checks: [], gear: [gear("plug", "Plug", 1, "oil")] });
    const story = new Story(bare);
    story.ada.start();
    expect(assess(bare, story.state, null, at("09:00")).headline).toBe("1 item of ground gear open");
    const nothing = book({ checks: [] });
    const turned = new Story(nothing);
    turned.ada.start("turnaround");
    expect(assess(nothing, turned.state, null, at("09:00")).headline).toBe("1 thing open");
  });

  it("adds the cautions", () => {
    const story = walked();
    story.ada.read("tyre", 5.2, "bar", at15);
    expect(of(story).headline).toBe("Nothing stops this flight, one caution");
    expect(of(story).status).toBe("caution");
    story.ada.happen("fuelled");
    expect(of(story).headline).toBe("2 checks open, one caution");
  });
});

describe("the line for the Apron", () => {
  it("names the worst and its margin, then what is open", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.answer("boot", "not-right");
    story.ada.raise({
      words: "Right boot is split",
      check: "boot",
      fault: "split",
      measured: { value: 38, unit: "mm" },
    });
    expect(plain(of(story).line)).toBe("Right boot is split, 28 mm over. 3 checks open.");
    story.ada.raise({ words: "Door is loose", check: "oil" });
    expect(plain(of(story).line)).toBe("Right boot is split, 28 mm over, and one more. 3 checks open.");
  });

  it("names a caution when nothing stops", () => {
    const story = walked();
    story.ada.read("tyre", 5.2, "bar", at15);
    expect(plain(of(story).line)).toBe("Right main tyre, 0.00 bar.");
  });

  it("says until when nothing is in the way", () => {
    expect(of(walked()).line).toBe("Nothing in the way. Holds until 11:01.");
  });

  it("says what reopened everything that is open", () => {
    const story = walked();
    story.at("08:30").ada.happen("fuelled");
    expect(of(story).line).toBe("Fuelled at 08:30. 2 checks open.");
  });

  it("says only how many are open when they are open for several reasons", () => {
    const story = walked();
    story.at("08:30").ada.happen("fuelled");
    story.ada.answer("boot", "could-not-check");
    expect(of(story).line).toBe("3 checks open.");
  });

  it("says since which flight nobody looked", () => {
    const story = walked().at("16:00", 0);
    story.ada.happen("flown");
    expect(of(story, "17:00").line).toBe("Not looked at since today’s last flight.");
    expect(assess(theBook, story.state, null, at("17:00", 1)).line).toBe(
      "Not looked at since Thursday’s last flight.",
    );
    expect(assess(theBook, story.state, null, at("17:00", 30)).line).toBe(
      "Not looked at since the flight of 8 May.",
    );
  });

  it("does not count covers against an aircraft that waits for its next walk, but names what is wrong with it", () => {
    const geared = book({ checks: theBook.checks, gear: [gear("plug", "Plug", 1, "oil")] });
    const story = walked();
    story.ada.remove("plug");
    story.ada.finish();
    story.at("11:00").ada.happen("flown");
    story.ada.fit("plug");
    const later = (days: number) => assess(geared, story.state, null, at("07:00", days));
    expect(later(1).line).toBe("Not looked at since Thursday’s last flight.");
    expect(later(1).lineStatus).toBe("open");
    expect(later(1).walk?.isOver).toBe(true);
    expect(later(1).counts.stop).toBe(1); // the verdict itself is no milder for that
    story.at("11:30").ada.raise({ words: "Dent", check: "boot" });
    expect(later(1).lineStatus).toBe("stop");
    expect(later(1).line).not.toContain("Plug");
  });

  it("says that nobody ever looked", () => {
    expect(of(new Story(theBook)).line).toBe("Not looked at yet. 4 checks open.");
  });
});

describe("the order of verdicts", () => {
  it("is worst first, then by what a miss would do, then as one walks", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.read("tyre", 5.2, "bar", at15);
    story.ada.answer("tyre");
    story.ada.raise({ words: "Door is loose" });
    expect(
      of(story).verdicts.map(
        ({ id, status }) => `${status} ${id.split(":")[0]}:${id.split(":")[1]?.slice(0, 4)}`,
      ),
    ).toEqual([
      "stop discrepancy:0190",
      "caution check:tyre",
      "open check:tank", // high before medium before low, though the nose comes first
      "open check:boot",
      "open check:oil",
    ]);
  });

  it("puts a cover of a later stance after the checks of an earlier one that are as grave", () => {
    const geared = book({
      checks: [
        check("oil", "oil", { severity: "high" }),
        check("tank", "tank", { stance: "wing", severity: "high" }),
      ],
      gear: [gear("cover", "Pitot cover", 1, "pitot"), gear("plug", "Plug", 1, "oil")],
    });
    const { verdicts } = assess(geared, new Story(geared).state, null, at("09:00"));
    expect(verdicts.map(({ id }) => id)).toEqual(["gear:plug", "check:oil", "gear:cover", "check:tank"]);
  });
});

describe("what an assessment rests on", () => {
  it("counts the looks and readings that count", () => {
    expect(of(walked()).restsOn).toEqual({ checks: 4, readings: 1 });
    const story = walked();
    story.ada.happen("fuelled");
    expect(of(story).restsOn).toEqual({ checks: 2, readings: 1 });
  });

  it("holds until the first look is too old, and says which", () => {
    const { holdsUntil } = of(walked());
    expect(holdsUntil?.because).toBe("the look at Right tank is then too old");
    expect(new Date(holdsUntil?.at_ms ?? 0).toISOString()).toBe("2031-05-08T10:01:00.000Z");
  });

  it("names the aircraft, the book, the walk, the moment and what it had seen", () => {
    const story = walked();
    const flight = { from: "ZZTW", to: "ZZQN", offBlocks: "2031-05-08T09:10:00+01:00" };
    const assessment = assess(theBook, story.state, flight, at("09:00"));
    expect(assessment).toMatchObject({
      aircraft: "ZZ-TST",
      book: { revision: 14, sha256: theBook.sha256 },
      flight,
      at: "2031-05-08T08:00:00.000Z",
      walk: { id: story.ada.walk, kind: "first-of-day" },
      heads: { [story.ada.device]: 7 },
      counts: { clear: 4, caution: 0, stop: 0, open: 0 },
    });
  });
});
