import { describe, expect, it } from "vitest";
import { decisionTitle } from "./sheet.ts";

const counts = (stop: number) => ({ stop, caution: 2, open: 3, clear: 4 });
const reason = { verdict: "check:a", words: "seen twice" };

describe("what was decided, in words", () => {
  it.each([
    { answer: "not-going", stops: 2, reasons: 0, says: "Not going yet" },
    { answer: "go", stops: 0, reasons: 0, says: "Go" },
    { answer: "go", stops: 0, reasons: 1, says: "Go, with one reason given" },
    { answer: "go", stops: 0, reasons: 5, says: "Go, with 5 reasons given" },
    { answer: "go", stops: 1, reasons: 5, says: "Go, with one stop standing" },
    { answer: "go", stops: 3, reasons: 5, says: "Go, with 3 stops standing" },
  ] as const)("$says", ({ answer, stops, reasons, says }) => {
    expect(
      decisionTitle({
        answer,
        counts: counts(stops),
        reasons: Array.from({ length: reasons }, () => reason),
      }),
    ).toBe(says);
  });
});
