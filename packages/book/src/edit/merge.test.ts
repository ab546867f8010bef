import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { readBook } from "../read-book.ts";
import { smallBookText } from "../testing/small-book.ts";
import { changeWords } from "./change-words.ts";
import { differences } from "./differences.ts";
import { newDraft } from "./draft.ts";
import { type BookEdit, editText, type Plain } from "./edit-text.ts";
import { copyForAnother, draftAfterIssue, issuedText } from "./issue.ts";
import { editPlain, mergeBooks } from "./merge.ts";
import { missingFor } from "./missing-for.ts";
import { plainOf } from "./plain-of.ts";

const SKERRY = readFileSync(new URL("../../../../books/zz-skr.yaml", import.meta.url), "utf8");
const BASE = `revision: 3
issued: { on: 2026-01-02, by: desk }
points: # as drawn
  - { id: left, name: Left tyre, place: [1, -1, 0.3] }
  - { id: right, name: Right tyre, place: [1, 1, 0.3] }
checks:
  - id: pressure
    at: left
    title: Measure the pressure
    reading: { quantity: pressure, limit: { by: fixed, low: 3.2 bar, high: 3.6 bar } } # from the manual
`;
const plainIn = (text: string): Plain => {
  const read = plainOf(text, "a.yaml");
  if (!read.ok) throw new Error(read.fault.found);
  return read.plain;
};
const low = (to: string): BookEdit => ({ set: ["checks", 0, "reading", "limit", "low"], to });

describe("what has changed between two books, as words", () => {
  it("names the item, what of it, and what it was", () => {
    const after = editText(BASE, [
      low("3.4 bar"),
      { set: ["points", 1, "place"], to: [1, 1.1, 0.3] },
      { set: ["revision"], to: 4 },
    ]);
    expect(changeWords(plainIn(BASE), plainIn(after))).toEqual([
      "Right tyre: place 1 m aft, 1.1 m right, 0.3 m up, was 1 m aft, 1 m right, 0.3 m up",
      "Left tyre, measure the pressure: lowest pressure 3.4 bar, was 3.2 bar",
    ]);
  });

  it("names what is new, what was taken out and what stands in another order", () => {
    const after = editText(BASE, [
      { remove: ["checks", 0] },
      {
        set: ["points"],
        to: [...(parse(BASE).points as Plain[]).toReversed(), { id: "tail", name: "Tail" }],
      },
    ]);
    expect(changeWords(plainIn(BASE), plainIn(after))).toEqual([
      "New point: Tail",
      "points: in another order",
      "Taken out, check: Left tyre, measure the pressure",
    ]);
  });

  it("names a surface factor by what it is for, and what a field means by its name", () => {
    const factor = (id: string, when: Plain) => ({
      id,
      quantities: ["take-off-over-50ft"],
      when,
      factor: 1.2,
      of: "total",
    });
    const before = editText(BASE, [
      { set: ["gauges"], to: [{ id: "stick", name: "Oil dipstick", unit: "L" }] },
      { set: ["performance"], to: { factors: [factor("factor", { surface: "grass" })] } },
    ]);
    const after = editText(before, [
      { insert: ["performance", "factors", 1], item: factor("factor-2", { condition: "standing-water" }) },
      { set: ["performance", "factors", 0, "quantities"], to: ["landing-ground-roll"] },
      { set: ["checks", 0, "reading", "gauge"], to: "stick" },
    ]);
    const words = changeWords(plainIn(before), plainIn(after));
    expect(words).toContain("New factor: Standing water, take-off over 50 ft");
    expect(words).toContain(
      "Grass, take-off over 50 ft: on, each that it holds for landing ground roll, was take-off over 50 ft",
    );
    expect(words).toContain("Left tyre, measure the pressure: gauge Oil dipstick, new");
    expect(words).toHaveLength(3);
    const whole = changeWords(
      plainIn(editText(before, [{ remove: ["performance", "factors"] }])),
      plainIn(before),
    );
    expect(whole).toEqual(["Surface factors Grass, take-off over 50 ft, new"]);
  });
});

describe("two drafts of one revision", () => {
  it("are laid together where they changed different places, with their comments", () => {
    const mine = editText(BASE, [
      low("3.4 bar"),
      { insert: ["points", 1], item: { id: "nose", name: "Nose" } },
    ]);
    const theirs = editText(BASE, [
      { set: ["revision"], to: 4 },
      { set: ["points", 1, "name"], to: "Right main tyre" },
    ]);
    const { text, questions } = mergeBooks(BASE, mine, theirs);
    expect(questions).toEqual([]);
    expect(text).toContain("# from the manual");
    const merged = parse(text);
    expect(merged.revision).toBe(4);
    expect(merged.points.map(({ name }: { name: string }) => name)).toEqual([
      "Left tyre",
      "Nose",
      "Right main tyre",
    ]);
    expect(merged.checks[0].reading.limit.low).toBe("3.4 bar");
  });

  it("ask where both changed the same in another way, and take the answer", () => {
    const mine = editText(BASE, [low("3.4 bar")]);
    const theirs = editText(BASE, [low("3.3 bar")]);
    const asked = mergeBooks(BASE, mine, theirs);
    expect(asked.questions).toMatchObject([{ was: "3.2 bar", mine: "3.4 bar", theirs: "3.3 bar" }]);
    expect(asked.text).toBe(theirs);
    const key = asked.questions[0]?.key ?? "";
    expect(mergeBooks(BASE, mine, theirs, new Map([[key, "mine"]]))).toEqual({ text: mine, questions: [] });
    expect(mergeBooks(BASE, mine, theirs, new Map([[key, "theirs"]]))).toEqual({
      text: theirs,
      questions: [],
    });
  });

  it("do not ask where both say the same, or where one took out what the other did not touch", () => {
    const same = editText(BASE, [low("3.4 bar")]);
    expect(mergeBooks(BASE, same, same)).toEqual({ text: same, questions: [] });
    const without = editText(BASE, [{ remove: ["points", 0] }]);
    expect(parse(mergeBooks(BASE, without, same).text).points).toHaveLength(1);
  });

  it("ask when one changed what the other took out", () => {
    const without = editText(BASE, [{ remove: ["checks", 0] }]);
    const changed = editText(BASE, [low("3.4 bar")]);
    expect(mergeBooks(BASE, changed, without).questions).toHaveLength(1);
    expect(mergeBooks(BASE, without, changed).questions).toHaveLength(1);
  });

  it("come out as mine when nobody else changed anything, whatever was changed", () => {
    const value = fc.oneof(fc.string(), fc.integer(), fc.boolean());
    const edits = fc.array(
      fc.oneof(
        fc.record({
          set: fc.constantFrom(["points", 0, "name"], ["checks", 0, "title"], ["notice"]),
          to: value,
        }),
        fc.record({
          insert: fc.constantFrom(["points", 0], ["points", 1], ["points", 2]),
          item: fc.record({ id: fc.uuid(), name: value }),
        }),
      ),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(edits, (made) => {
        const mine = editText(BASE, made);
        const { text, questions } = mergeBooks(BASE, mine, BASE);
        expect(questions).toEqual([]);
        expect(parse(text)).toEqual(parse(mine));
        expect(differences(plainIn(mine), plainIn(text))).toEqual([]);
        expect(made.reduce<Plain>(editPlain, plainIn(BASE))).toEqual(plainIn(mine));
      }),
      { numRuns: 20 },
    );
  });
});

describe("the issue of a draft", () => {
  it("counts the revision up, says who and when, and leaves out what is named", async () => {
    const base = { revision: 3, text: smallBookText };
    const draft = newDraft(editText(smallBookText, [{ set: ["fuel"], to: { kind: "" } }]), base);
    const issued = issuedText(draft, { by: "A. Reed", on: "2026-11-12", without: ["fuel"] });
    const read = await readBook(issued, "small.yaml");
    if (!read.ok) throw new Error("expected a book");
    expect(read.book).toMatchObject({ revision: 4, issued: { by: "A. Reed", on: "2026-11-12" } });
    const after = draftAfterIssue(draft, issued, "A. Reed", "2026-11-12");
    expect(after.base).toEqual({ revision: 4, text: issued });
    expect(changeWords(plainIn(issued), plainIn(after.text))).toEqual(["Fuel: put in"]);
  });

  it("begins a book for another aircraft at its first revision", async () => {
    const read = await readBook(copyForAnother(smallBookText, "ZZ-TWO"), "two.yaml");
    if (!read.ok) throw new Error("expected a book");
    expect(read.book.revision).toBe(1);
    expect(read.book.aircraft.registration).toBe("ZZ-TWO");
  });
});

describe("what a book lacks", () => {
  it("is nothing for the demo's turboprop, and is told in sentences for one just begun", () => {
    expect(missingFor(plainIn(SKERRY))).toEqual([]);
    const missing = missingFor(plainIn(smallBookText)).map(({ says }) => says);
    expect(missing).toContain("Without a landing table the runway stays open.");
  });
});

describe("what is written once and repeated", () => {
  const text = "arms: &arms [1, 2]\nother: *arms\nlast: *arms\n";
  it("is written out where one of its places is changed, or its first is taken away", () => {
    expect(parse(editText(text, [{ set: ["other", 0], to: 9 }]))).toEqual({
      arms: [1, 2],
      other: [9, 2],
      last: [1, 2],
    });
    expect(parse(editText(text, [{ set: ["arms", 0], to: 9 }]))).toEqual({
      arms: [9, 2],
      other: [1, 2],
      last: [1, 2],
    });
    expect(parse(editText(text, [{ remove: ["arms"] }]))).toEqual({ other: [1, 2], last: [1, 2] });
  });
});
