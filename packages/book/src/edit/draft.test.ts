import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readBook } from "../read-book.ts";
import { flightBookText } from "../testing/flight-book.ts";
import { type BookDraft, editDraft, newDraft, redoDraft, rewriteDraft, undoDraft } from "./draft.ts";
import { type BookEdit, EditError, type Plain } from "./edit-text.ts";
import { plainOf, valueAt } from "./plain-of.ts";

const plainIn = (text: string) => {
  const read = plainOf(text, "a.yaml");
  if (!read.ok) throw new Error(`expected keys and values, found ${read.fault.found}`);
  return read.plain;
};

/** Every place in plain data, the top left out. */
function placesIn(value: Plain, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== "object" || value === null) return path.length === 0 ? [] : [path];
  const inside = Array.isArray(value)
    ? value.flatMap((each: Plain, index) => placesIn(each, [...path, index]))
    : Object.entries(value).flatMap(([key, each]) => placesIn(each, [...path, key]));
  return path.length === 0 ? inside : [path, ...inside];
}

const someValue = fc.oneof(
  fc.string({ maxLength: 20 }),
  fc.integer({ min: -100, max: 100 }),
  fc.boolean(),
  fc.constant(null),
  fc.constantFrom<Plain>(["a", "b"], { id: "new-one", place: [1, 2, 3] }, [], {}),
);

/** An edit at one of the places that the text has, whatever those are. */
const editOf = (text: string, [pick, kind, value]: readonly [number, number, Plain]): BookEdit => {
  const plain = plainIn(text);
  const places = placesIn(plain);
  const path = places[pick % places.length] ?? ["witnessmark"];
  const holder = valueAt(plain, path.slice(0, -1));
  if (kind === 0 && places.length > 20) return { remove: path };
  if (kind === 1 && Array.isArray(holder)) return { insert: path, item: value };
  return { set: path, to: value };
};

/** Some of everything that a book is written in, in a look that is nobody's but a person's. */
const PIECE = `# by hand, with   blanks
witnessmark:   1
notice: >-
  two
  lines
geometry:
  fuselage: # [x, half width]
    - [0.32,  0.16]
    - [ 7.00, 0.04 ]

points:
    - {id: left-tyre,place: [1.72, -1.08, 0.3]}   # the left one
    - id: right-tyre
      place: [1.72, 1.08, 0.30]
checks:
  - { id: look, at: [ left-tyre, right-tyre ], why: "soft: it runs hot" }
  # the next one was asked for by the mechanic
  - id: touch
    at: left-tyre
    holds:
      until: [ flown ]
      atMost: 24 h
`;

describe("a draft of a book", () => {
  // a thousand edits in all
  it.each([1, 2, 3, 4])(
    "comes back to its first text byte for byte, and forth again: 250 edits, seed %i",
    (seed) => {
      const start = PIECE;
      const arbitrary = fc.tuple(fc.nat(), fc.integer({ min: 0, max: 3 }), someValue);
      const edits = fc.sample(arbitrary, { numRuns: 250, seed });
      // runs of it, each from the start: one that has lost most of its text says little about the rest
      for (let from = 0; from < edits.length; from += 50) {
        let draft = newDraft(start, null);
        for (const edit of edits.slice(from, from + 50)) draft = editDraft(draft, [editOf(draft.text, edit)]);
        const end = draft.text;
        expect(draft.past.length).toBeGreaterThan(20);
        while (draft.past.length > 0) draft = undoDraft(draft);
        expect(draft.text).toBe(start);
        while (draft.future.length > 0) draft = redoDraft(draft);
        expect(draft.text).toBe(end);
      }
    },
  );

  it("is in its keys and values what was asked, whatever is put where", () => {
    const text = `# by hand\nlist:\n    - {a: [1,2 , 3],b: "x"} # with a word\n    - b\nlast: >-\n  a long\n  line\n`;
    fc.assert(
      fc.property(
        someValue,
        fc.constantFrom(["list", 0, "a", 1], ["list", 1], ["last"], ["list", 0]),
        (to, path) => {
          const draft = editDraft(newDraft(text, null), [{ set: path, to }]);
          const plain = plainIn(draft.text);
          expect(valueAt(plain, path)).toEqual(to);
          expect(draft.text).toContain("# by hand");
        },
      ),
    );
  });

  it("changes one line when one value changes, of a whole book", async () => {
    const draft = editDraft(newDraft(flightBookText, null), [{ set: ["revision"], to: 9 }]);
    const [was, now] = [flightBookText.split("\n"), draft.text.split("\n")];
    expect(now.filter((line, index) => line !== was[index])).toEqual(["revision: 9"]);
    expect((await readBook(draft.text, "a.yaml")).ok).toBe(true);
  });

  it("keeps the lines that a new item stands between", () => {
    const written = "gauges: [ ]\nlist:\n  - {id: a}   # first\n  - {id: c}\nend: [1,2]\n";
    const { text } = editDraft(newDraft(written, null), [{ insert: ["list", 1], item: { id: "b" } }]);
    expect(text).toBe("gauges: [ ]\nlist:\n  - {id: a}   # first\n  - id: b\n  - {id: c}\nend: [1,2]\n");
  });

  it("forgets what could be done again once something else is done", () => {
    const one = rewriteDraft(newDraft("a: 1\n", null), "a: 2\n");
    const other = rewriteDraft(undoDraft(one), "a: 3\n");
    expect(redoDraft(other)).toBe(other);
    expect(undoDraft(other).text).toBe("a: 1\n");
  });

  it("stays as it is when an edit cannot be made", () => {
    const draft: BookDraft = newDraft("a: 1\n", null);
    expect(() => editDraft(draft, [{ set: ["a"], to: 2 }, { remove: ["b"] }])).toThrow(EditError);
    expect(draft.text).toBe("a: 1\n");
  });
});
