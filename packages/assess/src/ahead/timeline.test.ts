import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import { at, Story } from "../testing/story.ts";
import { walkBook } from "../testing/walk-book.ts";
import { timeline } from "./timeline.ts";

const HOUR_ms = 3_600_000;

/** Begun at 07:00; the boot looked at (good for 4 h), the battery read (good for 2 h). */
function story(): Story {
  const told = new Story(walkBook);
  const { ada } = told;
  ada.start();
  ada.answer("age");
  ada.read("aged", 25, "V");
  ada.answer("aged");
  return told;
}

const ahead = (told: Story, time: string) => timeline(walkBook, told.state, null, at(time));

describe("the answer over the next 12 hours", () => {
  it("turns at the moment that an age runs out, and not before", () => {
    const told = story();
    const { turns } = ahead(told, "08:00");
    for (const check of ["age", "aged"]) {
      const turn = turns.find(({ verdict }) => verdict === `check:${check}`);
      const until_ms = assess(walkBook, told.state, null, at("08:00")).verdicts.find(
        ({ id }) => id === `check:${check}`,
      )?.holdsUntil_ms;
      if (turn === undefined || until_ms === undefined) throw new Error(`expected ${check} to run out`);
      expect(turn).toMatchObject({ was: "clear", becomes: "open" });
      expect(turn.at_ms - until_ms).toBeGreaterThan(0);
      expect(turn.at_ms - until_ms).toBeLessThanOrEqual(30_000);
    }
    expect(turns.map(({ at_ms }) => at_ms)).toEqual(
      turns.map(({ at_ms }) => at_ms).toSorted((a, b) => a - b),
    );
  });

  it("says at each turn what assess says then, and the moment before it what it said before", () => {
    const told = story();
    const { turns } = ahead(told, "08:00");
    expect(turns.length).toBeGreaterThan(1);
    const statusAt = (id: string, at_ms: number) =>
      assess(walkBook, told.state, null, at_ms).verdicts.find((verdict) => verdict.id === id)?.status;
    for (const { at_ms, verdict, was, becomes } of turns) {
      expect(statusAt(verdict, at_ms)).toBe(becomes);
      expect(statusAt(verdict, at_ms - 30_001)).toBe(was);
    }
  });

  it("is of spans that follow on one another to the end, each another answer than the last", () => {
    const { spans } = ahead(story(), "08:00");
    expect(spans[0]?.from_ms).toBe(at("08:00"));
    expect(spans.at(-1)?.until_ms).toBe(at("08:00") + 12 * HOUR_ms);
    for (const [index, span] of spans.entries()) {
      const next = spans[index + 1];
      if (next === undefined) continue;
      expect(next.from_ms).toBe(span.until_ms);
      expect(next.status).not.toBe(span.status);
    }
  });
});
