import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { readBook } from "../read-book.ts";
import { smallBookText } from "../testing/small-book.ts";
import { type BookEdit, EditError, editText, type Plain } from "./edit-text.ts";

const WITH_COMMENT = `# by hand
witnessmark: 1 # the version
places:
  - { id: a, place: [1.20, 0.5, 0.30] } # the first
  - id: b
    place: [2, 0, 1]
`;

describe("a change of a book's text", () => {
  it("changes what it names, and leaves the rest and every comment", () => {
    const changed = editText(WITH_COMMENT, [{ set: ["places", 1, "place", 0], to: 2.5 }]);
    expect(changed).toContain("# by hand");
    expect(changed).toContain("# the version");
    expect(changed).toBe(WITH_COMMENT.replace("[2, 0, 1]", "[2.5, 0, 1]"));
    expect(parse(changed)).toEqual({
      witnessmark: 1,
      places: [
        { id: "a", place: [1.2, 0.5, 0.3] },
        { id: "b", place: [2.5, 0, 1] },
      ],
    });
  });

  it("puts items into a list and takes them out", () => {
    const added = editText(WITH_COMMENT, [{ insert: ["places", 1], item: { id: "c", place: [0, 0, 0] } }]);
    expect(parse(added).places.map(({ id }: { id: string }) => id)).toEqual(["a", "c", "b"]);
    expect(parse(editText(added, [{ remove: ["places", 1] }]))).toEqual(parse(WITH_COMMENT));
  });

  it("makes of a book another that reads", async () => {
    const changed = editText(smallBookText, [
      { set: ["revision"], to: 4 },
      { set: ["checks", 1, "how"], to: "With a lamp: along the tread, then both sides. Not: from afar." },
    ]);
    const read = await readBook(changed, "small.yaml");
    if (!read.ok) throw new Error("expected a book");
    expect(read.book.revision).toBe(4);
    expect(read.book.checks.find(({ id }) => id.startsWith("tyre-look"))?.how).toContain("Not: from afar.");
  });

  it.each<[string, BookEdit]>([
    ["a place that is not there", { set: ["places", 7, "id"], to: "x" }],
    ["something under a word", { set: ["witnessmark", "deeper"], to: 1 }],
    ["an item past the end of a list", { insert: ["places", 3], item: "x" }],
    ["what is not there taken out", { remove: ["nothing"] }],
    ["an item in no list", { insert: ["witnessmark"], item: 1 }],
  ])("refuses %s", (_, edit) => {
    expect(() => editText(WITH_COMMENT, [edit])).toThrow(EditError);
  });

  it("refuses a text that is no YAML, and says where", () => {
    expect(() => editText("a: [1\nb: 2", [])).toThrow(/line \d/);
  });

  it("is read back as it was given, whatever the words", () => {
    const plain = fc.letrec<{ value: Plain }>((tie) => ({
      value: fc.oneof(
        { depthSize: "small" },
        fc.string(),
        fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0),
        fc.boolean(),
        fc.constant(null),
        fc.array(tie("value"), { maxLength: 3 }),
        fc.dictionary(fc.string({ minLength: 1 }), tie("value"), { maxKeys: 3, noNullPrototype: true }),
      ),
    })).value;
    fc.assert(
      fc.property(plain, (value) => {
        const changed = editText(WITH_COMMENT, [{ set: ["added"], to: value }]);
        expect(parse(changed).added).toEqual(value);
        expect(parse(editText(changed, [{ remove: ["added"] }]))).toEqual(parse(WITH_COMMENT));
      }),
      { numRuns: 60 },
    );
  });
});
