import { describe, expect, it } from "vitest";
import { cssString } from "./use-page-margins.ts";

describe("a text as a string of CSS", () => {
  it("ends where the text ends, whatever stands in it", () => {
    // CSS Syntax Level 3, 4.3.5: a string ends at its quote or a newline, and a backslash takes the next sign as it is
    expect(cssString("ZZ-BRK Bracken 180")).toBe('"ZZ-BRK Bracken 180"');
    expect(cssString('a "quick" one\\')).toBe('"a \\"quick\\" one\\\\"');
    expect(cssString("two\nlines")).toBe('"two lines"');
  });
});
