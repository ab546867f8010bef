import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { KnownEvent } from "./event.ts";
import { parseEvent, saysOfFaults } from "./parse-event.ts";
import { generateHistory } from "./testing/generate.ts";
import { Scene } from "./testing/scene.ts";

function anEvent(): KnownEvent {
  const scene = new Scene();
  const walk = scene.id();
  scene.say(scene.phone("Ada"), {
    type: "check.answered",
    body: { walk, check: "oil-level", answer: "could-not-check", reason: "too-hot" },
  });
  const [event] = scene.events;
  if (event === undefined) throw new Error("told one");
  return event;
}

const says = (value: unknown): string => {
  const parsed = parseEvent(value);
  return parsed.ok ? "" : saysOfFaults(parsed.faults);
};

describe("an event from outside", () => {
  it("is accepted as it is, whatever its type, after a way through text", async () => {
    const history = await generateHistory({ years: 1, flightsPerYear: 40, seed: 2, seal: "none" });
    expect(new Set(history.map(({ type }) => type)).size).toBeGreaterThan(14);
    for (const event of history) {
      const value: unknown = JSON.parse(JSON.stringify(event));
      expect(parseEvent(value)).toStrictEqual({ ok: true, event });
    }
  });

  it.each([
    [{ hlc: "now" }, 'hlc: expected 15 figures of milliseconds, a hyphen, 5 figures of counter, found "now"'],
    [{ deviceSeq: 0 }, "deviceSeq: expected a whole number from 1 to 9007199254740991, found 0"],
    [{ deviceSeq: 1.5 }, "deviceSeq: expected a whole number from 1 to 9007199254740991, found 1.5"],
    [{ id: "7" }, 'id: expected a UUID of version 7 in lower case, found "7"'],
    [
      { recordedAt: "yesterday" },
      'recordedAt: expected a date and time with its offset, such as 2031-05-04T09:07:00+02:00, found "yesterday"',
    ],
    [
      { recordedAt: "2031-05-04T09:07:00" },
      'recordedAt: expected a date and time with its offset, such as 2031-05-04T09:07:00+02:00, found "2031-05-04T09:07:00"',
    ],
    [{ author: "Ada" }, 'author: expected an object, found "Ada"'],
    [{ body: undefined }, "body: expected a JSON value, found nothing"],
    [{ body: [] }, "body: expected an object, found []"],
    [{ colour: "blue" }, 'colour: expected no such field, found "blue"'],
    [{ hash: "AB" }, 'hash: expected a SHA-256 as 64 lower-case hexadecimal figures, found "AB"'],
  ])("is refused with %j, by path, expected and found", (change, expected) => {
    expect(says({ ...anEvent(), ...change })).toBe(expected);
  });

  it.each([
    [
      { answer: "fine" },
      'body.answer: expected one of as-it-should-be, not-right, could-not-check, found "fine"',
    ],
    [
      { check: 7 },
      "body.check: expected text of 1 to 200 characters, without the character 0 or half a character, found 7",
    ],
    [
      { check: "a\0b" },
      String.raw`body.check: expected text of 1 to 200 characters, without the character 0 or half a character, found "a\u0000b"`,
    ],
    [{ mood: 1 }, "body.mood: expected no such field, found 1"],
    [{ walk: "W1" }, 'body.walk: expected a UUID in lower case, found "W1"'],
  ])("is refused with a body of %j, by path, expected and found", (change, expected) => {
    const event = anEvent();
    expect(says({ ...event, body: { ...event.body, ...change } })).toBe(expected);
  });

  it("names a wrong unit by its place", () => {
    const event = { ...anEvent(), type: "reading.recorded" };
    const body = { walk: anEvent().id, check: "tyre", gauge: "g", read: { value: 5.2, unit: "bananas" } };
    expect(says({ ...event, body })).toBe(
      'body.read.unit: expected a unit such as bar, psi, degC or L, found "bananas"',
    );
  });

  it("says all faults at once", () => {
    expect(says({ ...anEvent(), hlc: 3, deviceSeq: -1 }).split("; ")).toHaveLength(2);
  });

  it.each([null, 7, "event", [], undefined])("is no %j", (value) => {
    expect(says(value)).toMatch(/^event: expected an event, as a JSON object, found /);
  });

  it("of a later version is carried as it came, with all that is new in it", () => {
    const event = anEvent();
    const author = { ...event.author, role: "engineer", badge: 7 };
    for (const later of [
      { ...event, type: "mood.noted", body: { mood: "sunny" }, colour: "blue" },
      { ...event, schemaVersion: 2, body: { anything: [1, { at: "all" }] }, author },
    ]) {
      expect(parseEvent(later)).toStrictEqual({ ok: true, event: later });
    }
  });

  it("of a later version is still refused when its envelope is wrong or its text cannot be kept", () => {
    const later = { ...anEvent(), type: "mood.noted" };
    expect(says({ ...later, deviceSeq: "1" })).toMatch(/^deviceSeq: expected a whole number/);
    expect(says({ ...later, body: { a: [{ b: "\ud800" }] } })).toMatch(
      /^body\.a\.0\.b: expected text without the character 0 or half a character/,
    );
  });

  it("is limited in size: 64 000 bytes, and 1 500 000 for a book", () => {
    const note = { ...anEvent(), type: "note.later" };
    // {"text":"…"} is 11 bytes around its text
    expect(says({ ...note, body: { text: "x".repeat(64_000 - 11) } })).toBe("");
    expect(says({ ...note, body: { text: "x".repeat(64_000 - 10) } })).toBe(
      "body: expected at most 64000 bytes, found 64001 bytes",
    );
    expect(says({ ...note, body: { text: "é".repeat(32_000) } })).toBe(
      "body: expected at most 64000 bytes, found 64011 bytes",
    );
    const book = { sha256: "b0".repeat(32), revision: 1, registration: "ZZ-SKR", type: "T" };
    const adopted = (text: string) => ({ ...anEvent(), type: "book.adopted", body: { ...book, text } });
    expect(says(adopted("x".repeat(1_400_000)))).toBe("");
    expect(says(adopted("x".repeat(1_500_000)))).toMatch(
      /^body: expected at most 1500000 bytes, found 1500\d\d\d bytes$/,
    );
  });

  it("never throws, and whatever is accepted keeps its contents", () => {
    fc.assert(
      fc.property(
        fc.jsonValue(),
        fc.constantFrom("id", "author", "body", "hlc", "type", "extra"),
        (value, field) => {
          parseEvent(value);
          const changed = { ...anEvent(), [field]: value };
          const parsed = parseEvent(changed);
          if (parsed.ok) expect(parsed.event).toStrictEqual(changed);
          else expect(parsed.faults.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 500 },
    );
  });
});
