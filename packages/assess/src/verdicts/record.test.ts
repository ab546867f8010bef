import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import type { Assessment } from "../assessment.ts";
import { has, plain, verdictOf } from "../testing/plain.ts";
import { book, check } from "../testing/small-book.ts";
import { at, Story } from "../testing/story.ts";

const theBook = book({ checks: [check("oil", "oil")] });
const of = (story: Story, time = "09:00", by = theBook): Assessment =>
  assess(by, story.state, null, at(time));

describe("remarks about the record", () => {
  it("are none when all is well", () => {
    const story = new Story(theBook);
    story.ada.start();
    expect(of(story).verdicts.filter(({ topic }) => topic === "record")).toEqual([]);
  });

  it("entries of a newer version are a caution that names their types", () => {
    const story = new Story(theBook);
    const event = story.ada.fromTheFuture();
    story.ada.fromTheFuture("fuel.metered");
    const verdict = verdictOf(of(story), "record:unknown-events");
    expect(verdict.status).toBe("caution");
    expect(verdict.says).toBe("2 entries kept and not understood here: fuel.metered, weather.fetched");
    expect(verdict.evidence).toContain(event);
  });

  it("a walk that began with another text of the book is a caution", () => {
    const story = new Story(theBook);
    story.ada.start();
    const newer = book({ checks: theBook.checks, revision: 15, sha256: "b1".repeat(32) });
    story.at("08:30").ada.tell({
      type: "book.adopted",
      body: { sha256: newer.sha256, revision: 15, registration: "ZZ-TST", type: "Test", text: "newer" },
    });
    const verdict = verdictOf(of(story, "09:00", newer), "record:book-changed");
    expect(verdict.status).toBe("caution");
    expect(verdict.says).toBe("This walk began with revision 14; it is judged by revision 15");
    expect(has(of(story, "09:00", newer), "record:book-not-in-force")).toBe(false);
  });

  it("a book that is not the one in force is a caution", () => {
    const story = new Story(theBook);
    story.ada.tell({
      type: "book.adopted",
      body: { sha256: "b1".repeat(32), revision: 15, registration: "ZZ-TST", type: "Test", text: "newer" },
    });
    expect(verdictOf(of(story), "record:book-not-in-force").says).toBe(
      "Judged by revision 14; revision 15 is in force",
    );
  });

  it("two different events under one id are a caution", () => {
    const story = new Story(theBook);
    const last = story.events.at(-1);
    if (last === undefined) throw new Error("the story has begun");
    story.events.push({ ...last, hash: "f".repeat(64) });
    expect(verdictOf(of(story), "record:conflicts").says).toBe("1 entry came in two forms under one name");
  });

  it("a clock that stands ahead is a caution that says by how much at least, and whose", () => {
    const story = new Story(theBook);
    const ben = story.phone("Ben", 61 * 60_000);
    ben.start();
    story.at("08:00");
    ben.answer("oil");
    const verdict = verdictOf(of(story, "08:00"), `record:clock:${ben.device}`);
    expect(verdict.status).toBe("caution");
    expect(plain(verdict.says)).toBe("The phone of Ben stood at least 1 h 1 min ahead of this one");
  });

  it("two minutes are an honest difference between clocks", () => {
    const story = new Story(theBook);
    const ben = story.phone("Ben", 2 * 60_000);
    ben.start();
    story.at("08:00");
    ben.answer("oil");
    expect(of(story, "08:00").verdicts.filter(({ topic }) => topic === "record")).toEqual([]);
  });

  it("a last decision without a signature is remarked and is no doubt about the aircraft", () => {
    const story = new Story(theBook);
    story.ada.tell({
      type: "device.introduced",
      body: { label: "phone", key: { kind: "none", why: "private window" } },
    });
    story.ada.start();
    const body = {
      decision: story.id(),
      walk: story.ada.walk,
      answer: "go",
      flight: null,
      at: new Date(at("08:00")).toISOString(),
      bookSha256: theBook.sha256,
      assessmentSha256: "a0".repeat(32),
      counts: { clear: 0, caution: 0, stop: 0, open: 0 },
      restsOn: [],
      heads: {},
      reasons: [],
    } as const;
    story.at("08:00").ada.sign(body);
    const verdict = verdictOf(of(story), "record:unsigned-decision");
    expect(verdict.status).toBe("clear");
    expect(verdict.says).toBe("Ada decided at 08:00; it carries a name only: private window");
    story.ada.sign({ ...body, decision: story.id() }, "signature");
    expect(has(of(story), "record:unsigned-decision")).toBe(false);
  });
});
