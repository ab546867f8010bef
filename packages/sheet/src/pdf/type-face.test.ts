import { describe, expect, it } from "vitest";
import { runsOf } from "./type-face.ts";

describe("a text is split by the file that has its letters", () => {
  it("keeps plain text in one run", () => {
    expect(runsOf("Tyre 5.00 bar ±0.05, −4 °C", "text")).toEqual([
      { text: "Tyre 5.00 bar ±0.05, −4 °C", font: "text" },
    ]);
  });

  it("draws a name of the rest of Europe from the second file", () => {
    expect(runsOf("Łukasz", "bold")).toEqual([
      { text: "Ł", font: "bold+" },
      { text: "ukasz", font: "bold" },
    ]);
  });

  it("draws a formula's small figures as plain ones", () => {
    expect(runsOf("p₂ ≥ p₁", "text")).toEqual([{ text: "p2 >= p1", font: "text" }]);
  });

  it("shows that a letter is missing, and never drops it", () => {
    expect(runsOf("名", "text")).toEqual([{ text: "?", font: "text" }]);
  });
});
