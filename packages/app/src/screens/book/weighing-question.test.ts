import { describe, expect, it } from "vitest";
import { weighingQuestion } from "./weighing-question.ts";

const book = (empty: Readonly<Record<string, string>>) => ({ loading: { empty } });
const WEIGHED = { weighedOn: "2026-03-14", mass: "521 kg", arm: "0.61 m" };

describe("the day of the weighing, before a revision is issued", () => {
  it.each([
    ["the mass", { mass: "527 kg" }],
    ["the arm", { arm: "0.62 m" }],
  ])("is asked about when %s is another and the day is the same", (_what, change) => {
    expect(weighingQuestion(book(WEIGHED), book({ ...WEIGHED, ...change }))).toBe(
      "The empty mass or its arm is another, and the day of the weighing is still 2026-03-14. Is it?",
    );
  });

  it.each([
    ["the day moved with it", { ...WEIGHED, mass: "527 kg", weighedOn: "2026-11-20" }],
    ["nothing of it changed", WEIGHED],
    ["the day is not put in", { ...WEIGHED, mass: "527 kg", weighedOn: "" }],
  ])("is not asked about when %s", (_why, now) => {
    expect(weighingQuestion(book(WEIGHED), book(now))).toBeUndefined();
  });

  it("is not asked of a book that was never issued, nor of one that is weighed for the first time", () => {
    expect(weighingQuestion(null, book(WEIGHED))).toBeUndefined();
    expect(weighingQuestion({}, book(WEIGHED))).toBeUndefined();
  });
});
