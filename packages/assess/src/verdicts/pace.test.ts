import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import type { Assessment } from "../assessment.ts";
import { has, plain, verdictOf } from "../testing/plain.ts";
import { book, check } from "../testing/small-book.ts";
import { at, Story } from "../testing/story.ts";

const theBook = book({
  checks: [
    check("a", "oil", { least_s: 10 }),
    check("b", "oil", { least_s: 10 }),
    check("c", "oil", { least_s: 10 }),
    check("d", "tyre", { stance: "wing", least_s: 60 }),
    check("e", "boot", { stance: "wing", least_s: 60 }),
  ],
});

/** Answers checks with so many seconds between one and the next. */
const answered = (story: Story, checks: readonly string[], gap_s: number): void => {
  for (const id of checks) {
    const now_ms = story.now_ms;
    story.ada.answer(id);
    story.now_ms = now_ms + gap_s * 1000;
  }
};
const walked = (checks: readonly string[], gap_s: number): Assessment => {
  const story = new Story(theBook);
  story.ada.start();
  answered(story, checks, gap_s);
  return assess(theBook, story.state, null, at("09:00"));
};

describe("the pace of a walk", () => {
  it("is a quiet caution where a stop took less than half of its least time", () => {
    const verdict = verdictOf(walked(["a", "b", "c"], 4), "pace:walk");
    expect(verdict.status).toBe("caution");
    expect(plain(verdict.says)).toBe("Faster than one can look: nose. Was everything looked at?");
    expect(verdict.status === "caution" ? plain(verdict.because[0]) : "").toBe(
      "Nose: 3 checks in 8 s; they take at least 20 s",
    );
  });

  it("is nothing to remark from half of it on", () => {
    // b and c take 20 s at least; the look at a began before its answer, so it is not counted
    expect(has(walked(["a", "b", "c"], 5), "pace:walk")).toBe(false);
    expect(has(walked(["a", "b", "c"], 4.99), "pace:walk")).toBe(true);
  });

  it("names every stop that was too fast, in the order of the walk", () => {
    const verdict = verdictOf(walked(["d", "e", "a", "b", "c"], 2), "pace:walk");
    expect(verdict.says).toContain("nose and right wing");
    expect(verdict.margin?.text).toBe("2 stances");
  });

  it("of the whole walk counts where no single stop was too fast", () => {
    const verdict = verdictOf(walked(["a", "d"], 2), "pace:walk");
    expect(verdict.says).toContain("the whole walk");
  });

  it("of one look cannot be judged", () => {
    expect(has(walked(["a"], 0), "pace:walk")).toBe(false);
  });

  it("counts each phone by itself: two people are faster than one", () => {
    const story = new Story(theBook);
    const walk = story.ada.start();
    const ben = story.phone("Ben");
    ben.walk = walk;
    const now_ms = story.now_ms;
    story.ada.answer("a");
    story.now_ms = now_ms + 1000;
    ben.answer("b");
    story.now_ms = now_ms + 8000;
    story.ada.answer("c");
    expect(has(assess(theBook, story.state, null, at("09:00")), "pace:walk")).toBe(false);
  });

  it("is as it should be when the looks are made again at leisure", () => {
    const story = new Story(theBook);
    story.ada.start();
    answered(story, ["a", "b", "c"], 1);
    answered(story, ["a", "b", "c"], 15);
    expect(has(assess(theBook, story.state, null, at("09:00")), "pace:walk")).toBe(false);
  });

  it("takes no notice of what could not be checked", () => {
    const story = new Story(theBook);
    story.ada.start();
    for (const id of ["a", "b", "c"]) {
      const now_ms = story.now_ms;
      story.ada.answer(id, "could-not-check");
      story.now_ms = now_ms + 1000;
    }
    expect(has(assess(theBook, story.state, null, at("09:00")), "pace:walk")).toBe(false);
  });
});
