import { describe, expect, it } from "vitest";
import { bookChangeWords } from "./book-change-words.ts";

const text = (mass: string) => `revision: 1\nloading:\n  empty:\n    mass: ${mass}\n`;

describe("what changed in a book since a walk began", () => {
  it("is told with what was before", () => {
    const [words, ...more] = bookChangeWords(text("521 kg"), text("527 kg")) ?? [];
    expect(more).toEqual([]);
    expect(words).toMatch(/527 kg.*521 kg/);
  });

  it("is not told where a text is not here or cannot be read", () => {
    expect(bookChangeWords(undefined, text("527 kg"))).toBeUndefined();
    expect(bookChangeWords("a: [", text("527 kg"))).toBeUndefined();
  });
});
