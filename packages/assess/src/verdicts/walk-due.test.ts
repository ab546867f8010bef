import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import type { Assessment } from "../assessment.ts";
import { has, verdictOf } from "../testing/plain.ts";
import { book, check } from "../testing/small-book.ts";
import { at, Story } from "../testing/story.ts";

const theBook = book({
  checks: [check("oil", "oil", { walks: ["first-of-day", "turnaround", "after-flight"], until: ["flown"] })],
});
const of = (story: Story, time: string, days = 0): Assessment =>
  assess(theBook, story.state, null, at(time, days));

describe("a first walk of the day", () => {
  it("counts to the end of its own local day, and not a moment longer", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.answer("oil");
    expect(of(story, "23:59:59").status).toBe("clear");
    const next = verdictOf(of(story, "00:00", 1), "walk:first-of-day");
    expect(next.status).toBe("open");
    expect(next.says).toBe("The last one began Thursday 07:00 and counted for its day");
  });

  it("counts for at least twelve hours when it is made late", () => {
    const story = new Story(theBook, "21:00");
    const started_ms = story.now_ms + 20_000; // the story begins with the book
    story.ada.start();
    story.ada.answer("oil");
    expect(started_ms).toBe(at("21:00:40"));
    expect(of(story, "08:59", 1).status).toBe("clear");
    expect(has(of(story, "09:01", 1), "walk:first-of-day")).toBe(true);
  });

  it("tells in time until when it holds", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.answer("oil");
    expect(of(story, "09:00").holdsUntil).toEqual({
      at_ms: at("00:00", 1) - 1,
      because: "the first walk of the day counts for its day",
    });
  });
});

describe("a turnaround", () => {
  it("rests on the first walk of its day", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.answer("oil");
    story.ada.finish();
    story.at("12:00").ada.start("turnaround");
    story.ada.answer("oil");
    expect(has(of(story, "12:30"), "walk:first-of-day")).toBe(false);
    expect(has(of(story, "12:30", 1), "walk:first-of-day")).toBe(true);
  });

  it("is not enough where there was none, or only one that was abandoned", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.abandon();
    story.ada.start("turnaround");
    story.ada.answer("oil");
    const verdict = verdictOf(of(story, "09:00"), "walk:first-of-day");
    expect(verdict.status).toBe("open");
    expect(verdict.says).toBe("None was made before this turnaround");
  });
});

describe("a walk after a flight", () => {
  it("never clears the next flight", () => {
    const story = new Story(theBook).at("17:00", -4);
    story.ada.happen("flown");
    story.ada.start("after-flight");
    story.ada.answer("oil");
    story.ada.finish();
    const assessment = of(story, "07:00");
    expect(verdictOf(assessment, "check:oil").status).toBe("clear");
    expect(verdictOf(assessment, "walk:next").status).toBe("open");
    expect(assessment.line).toBe("Not looked at since Sunday’s last flight.");
    expect(of(story, "18:00", -4).line).toBe("Not looked at since today’s last flight.");
  });
});
