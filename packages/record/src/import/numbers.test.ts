import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decimalMarkOf, readNumber } from "./numbers.ts";

describe("the decimal mark of a column", () => {
  it.each([
    [["5.24", "5.1"], "point"],
    [["5,24", "5,1"], "comma"],
    [["12", "13"], "none"],
    [["1,234"], "ask"],
    [["1.234", "2.500"], "ask"],
    // one cell that can be read one way only settles the others
    [["1,234", "1,5"], "comma"],
    [["1,234", "1,234.5"], "point"],
    [["1,234,567"], "point"],
    [["1.234.567", "12"], "comma"],
    [["0,125"], "comma"],
    [["−4,5", "plenty", ""], "comma"],
    [["5.24", "5,24"], "ask"],
  ] as const)("of %j is %s", (texts, mark) => {
    expect(decimalMarkOf(texts)).toBe(mark);
  });

  it("is never the wrong one: a column written with one mark is read with it, or asked for", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -99_999_999, max: 99_999_999 }), { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 0, max: 4 }),
        fc.boolean(),
        (figures, decimals, isComma) => {
          const values = figures.map((figure) => Number((figure / 10 ** decimals).toFixed(decimals)));
          const texts = values.map((value) => value.toFixed(decimals).replace(".", isComma ? "," : "."));
          const mark = decimalMarkOf(texts);
          if (decimals === 0) expect(mark).toBe("none");
          else expect(["ask", isComma ? "comma" : "point"]).toContain(mark);
          const read = texts.map((text) => readNumber(text, isComma ? "comma" : "point"));
          expect(read.map((value) => (value === 0 ? 0 : value))).toEqual(
            values.map((value) => (value === 0 ? 0 : value)),
          );
        },
      ),
    );
  });
});

describe("a number", () => {
  it.each([
    ["1,234.5", "point", 1234.5],
    ["1.234,5", "comma", 1234.5],
    ["1 234,5", "comma", 1234.5],
    ["1 850", "point", 1850],
    ["−4", "point", -4],
    ["5,24", "point", undefined],
    ["5.24", "comma", undefined],
    ["12,34,567", "point", undefined],
    ["5.2 bar", "point", undefined],
    ["", "point", undefined],
    ["1.", "point", undefined],
    ["NaN", "point", undefined],
    ["1e3", "point", undefined],
  ] as const)("%j with a %s is %s", (text, mark, value) => {
    expect(readNumber(text, mark)).toBe(value);
  });
});
