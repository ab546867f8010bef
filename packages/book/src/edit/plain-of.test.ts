import { describe, expect, it } from "vitest";
import { plainOf, valueAt } from "./plain-of.ts";

describe("the keys and values of a text that may be no book", () => {
  it("are there as far as it can be read, with what was left out as nothing", () => {
    const read = plainOf("checks:\n  - id: a\n  -\nnotice: 2026-01-02\n", "draft");
    if (!read.ok) throw new Error(read.fault.found);
    expect(read.plain).toEqual({ checks: [{ id: "a" }, null], notice: "2026-01-02" });
    expect(valueAt(read.plain, ["checks", 0, "id"])).toBe("a");
    expect(valueAt(read.plain, ["checks", 1, "id"])).toBeUndefined();
    expect(valueAt(read.plain, ["checks", "length"])).toBeUndefined();
  });

  it.each([
    ["a list that is not closed", "a: [1\nb: 2\n", { line: 2, column: 1 }],
    [
      "what is no book",
      "- 1\n",
      { line: 1, column: 1, expected: "a book: keys and values, the first `witnessmark: 1`" },
    ],
    ["nothing", "", { found: "an empty file" }],
  ])("are none of %s, and it says where", (_, text, fault) => {
    expect(plainOf(text, "draft")).toMatchObject({ ok: false, fault });
  });

  it("are none of a few lines that stand for more than any phone holds", () => {
    const bomb = `a: &a [x, x, x, x, x, x, x, x, x]\n${"bcdefgh"
      .split("")
      .map(
        (name, at) =>
          `${name}: &${name} [${Array(9)
            .fill(`*${"abcdefg".charAt(at)}`)
            .join(", ")}]`,
      )
      .join("\n")}\n`;
    expect(plainOf(bomb, "draft")).toMatchObject({
      ok: false,
      fault: {
        expected: "a book of at most 100000 values, 40 levels deep",
        remedy: "write it with fewer aliases and levels",
      },
    });
  });
});
