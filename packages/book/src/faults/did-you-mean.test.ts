import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { didYouMean, editDistance, nearest } from "./did-you-mean.ts";

describe("the distance between words", () => {
  it.each([
    ["", "", 0],
    ["tyre", "tyre", 0],
    ["tire", "tyre", 1],
    ["tyer", "tyre", 1], // neighbours swapped count as one
    ["yre", "tyre", 1],
    ["tyres", "tyre", 1],
    ["", "tyre", 4],
    // Levenshtein 1966's measure, the textbook pair
    ["kitten", "sitting", 3],
  ])("from %o to %o is %i", (a, b, distance) => {
    expect(editDistance(a, b)).toBe(distance);
  });

  it("is the same both ways, 0 only for the same word, and never more than the longer word", () => {
    const word = fc.string({ maxLength: 12 });
    fc.assert(
      fc.property(word, word, (a, b) => {
        const distance = editDistance(a, b);
        expect(editDistance(b, a)).toBe(distance);
        expect(distance === 0).toBe(a === b);
        expect(distance).toBeLessThanOrEqual(Math.max(a.length, b.length));
      }),
    );
  });
});

describe("the word that was meant", () => {
  it("is the nearest one, when it is near", () => {
    expect(nearest("shoudBe", ["should", "shouldBe", "why"])).toBe("shouldBe");
    expect(nearest("SHOULDBE", ["should", "shouldBe"])).toBe("shouldBe");
  });

  it("is not named when none is near", () => {
    expect(didYouMean("colour", ["title", "method", "why"])).toBeUndefined();
    expect(didYouMean("x".repeat(10_000), ["x".repeat(10_000)])).toBeUndefined();
  });
});
