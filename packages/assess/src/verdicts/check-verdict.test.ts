import type { CouldNotReason } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import { has, verdictOf } from "../testing/plain.ts";
import { at, Story } from "../testing/story.ts";
import { line, told, walkBook } from "../testing/walk-book.ts";

const at15 = { value: 15, unit: "degC" } as const;

describe("coverage", () => {
  it("every first-of-day check is open when there never was a walk", () => {
    const assessment = assess(walkBook, new Story(walkBook).state, null, at("09:00"));
    expect(assessment.walk).toBeNull();
    expect(assessment.counts).toEqual({ open: 7, stop: 0, caution: 0, clear: 0 });
    expect(line(verdictOf(assessment, "check:oil"))).toBe("open: Read the dipstick: not looked at yet");
    expect(has(assessment, "check:brake")).toBe(false);
  });

  it("a check of the walk's kind that was not answered in it is open, whatever earlier walks said", () => {
    const story = new Story(walkBook, "06:00");
    story.ada.start();
    story.ada.answer("oil");
    story.ada.finish();
    story.at("08:00").ada.start();
    expect(line(told(story, "oil"))).toBe("open: Read the dipstick: not looked at in this walk");
    expect(told(story, "oil").margin?.text).toBe("not looked at");
  });

  it("a look that is as it should be is clear, and says when, by whom and what ends it", () => {
    const story = new Story(walkBook, "07:40");
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
    const story = new Story(walkBook);
    story.ada.start();
    story.ada.answer("oil", "could-not-check", reason);
    expect(line(told(story, "oil"))).toBe(`open: Read the dipstick: could not check, ${words}`);
  });

  it("the latest answer in the walk counts; one that was taken back does not", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.ada.answer("oil", "could-not-check");
    const later = story.ada.answer("oil");
    expect(told(story, "oil").status).toBe("clear");
    story.ada.withdraw(later);
    expect(told(story, "oil").status).toBe("open");
  });

  it("not right without a discrepancy is a stop by itself", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.at("07:41").ada.answer("oil", "not-right");
    const verdict = told(story, "oil");
    expect(line(verdict)).toBe("stop: Read the dipstick: not right, 07:41, by Ada");
    expect(verdict.status === "stop" ? verdict.wayOut : []).toEqual([
      "Put it right: licensed mechanic, then look again",
    ]);
  });

  it("not right gives way to the open discrepancy that names it: one verdict, not two", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.ada.answer("oil", "not-right");
    const discrepancy = story.ada.raise({ check: "oil" });
    const assessment = assess(walkBook, story.state, null, at("09:00"));
    expect(has(assessment, "check:oil")).toBe(false);
    expect(verdictOf(assessment, `discrepancy:${discrepancy}`).status).toBe("stop");
  });

  it("what was put right has to be looked at again, and then is what the new look says", () => {
    const story = new Story(walkBook);
    story.ada.start();
    story.ada.answer("oil", "not-right");
    const discrepancy = story.ada.raise({ check: "oil" });
    story.ada.close(discrepancy);
    expect(line(told(story, "oil"))).toBe("open: Read the dipstick: look again after it was put right");
    story.ada.answer("oil");
    expect(told(story, "oil").status).toBe("clear");
  });

  it("a look from before the work does not count either, though it was good", () => {
    const story = new Story(walkBook);
    const discrepancy = story.ada.raise({ check: "oil" });
    story.ada.start();
    story.ada.answer("oil");
    expect(told(story, "oil").status).toBe("clear");
    story.ada.close(discrepancy, "no-fault-found");
    expect(line(told(story, "oil"))).toBe("open: Read the dipstick: look again after no fault was found");
  });

  it("not right again after it was put right is a stop again", () => {
    const story = new Story(walkBook);
    const discrepancy = story.ada.raise({ check: "oil" });
    story.ada.close(discrepancy);
    story.ada.start();
    story.ada.answer("oil", "not-right");
    expect(told(story, "oil").status).toBe("stop");
  });

  it("a worse answer counts that comes later from a walk that is still walked beside the one in hand", () => {
    const story = new Story(walkBook);
    story.ada.start();
    const ben = story.phone("Ben");
    ben.start();
    ben.answer("oil");
    expect(told(story, "oil").status).toBe("clear");
    story.ada.answer("oil", "not-right");
    expect(assess(walkBook, story.state, null, at("09:00")).walk?.id).toBe(ben.walk);
    expect(told(story, "oil").status).toBe("stop");
    ben.answer("oil");
    expect(told(story, "oil").status).toBe("clear");
  });

  it("a better answer from there does not", () => {
    const story = new Story(walkBook);
    story.ada.start();
    const ben = story.phone("Ben");
    ben.start();
    ben.answer("oil", "could-not-check");
    story.ada.answer("oil");
    expect(told(story, "oil").status).toBe("open");
  });
});

describe("a turnaround", () => {
  const walked = (): Story => {
    const story = new Story(walkBook, "06:00");
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
    expect(has(assess(walkBook, story.state, null, at("09:00")), "check:brake")).toBe(false);
  });
});

describe("a walk after a flight", () => {
  it("counts its own checks only", () => {
    const story = new Story(walkBook);
    story.ada.start("after-flight");
    const assessment = assess(walkBook, story.state, null, at("09:00"));
    expect(assessment.verdicts.filter(({ topic }) => topic === "check").map(({ id }) => id)).toEqual([
      "check:brake",
    ]);
    story.ada.answer("brake");
    expect(told(story, "brake").status).toBe("clear");
  });
});

describe("the walk in hand", () => {
  it("is the one begun last and not abandoned, finished or not", () => {
    const story = new Story(walkBook, "06:00");
    const inHand = (): string | undefined => assess(walkBook, story.state, null, at("09:00")).walk?.id;
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
    const story = new Story(walkBook, "06:00");
    story.ada.start();
    story.ada.answer("oil");
    story.ada.abandon();
    expect(line(told(story, "oil"))).toBe("open: Read the dipstick: not looked at yet");
  });
});
