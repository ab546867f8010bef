import { describe, expect, it } from "vitest";
import { dateOrderOf, readDay, readMoment } from "./dates.ts";

describe("the order of day and month in a column", () => {
  it.each([
    [["03/04/2026"], "ask"],
    [["03/04/2026", "28/04/2026"], "day-first"],
    [["03/04/2026", "04/28/2026"], "month-first"],
    [["28/04/2026", "04/28/2026"], "ask"],
    [["04/04/2026"], "none"],
    [["03.04.2026", "2026-04-03", "3 Apr 2026"], "none"],
  ] as const)("of %j is %s", (texts, order) => {
    expect(dateOrderOf(texts)).toBe(order);
  });
});

describe("a day", () => {
  it.each([
    ["2026-04-03", "month-first", "2026-04-03"],
    ["2026/4/3 07:10", "day-first", "2026-04-03"],
    ["03/04/2026", "day-first", "2026-04-03"],
    ["03/04/2026", "month-first", "2026-03-04"],
    // with points the day is first, whatever the slashes of the column say
    ["3.4.2026", "month-first", "2026-04-03"],
    ["3 April 2026", "month-first", "2026-04-03"],
    ["29.02.2028", "day-first", "2028-02-29"],
    ["29.02.2027", "day-first", undefined],
    ["31/04/2026", "day-first", undefined],
    ["03/04/26", "day-first", undefined],
    ["yesterday", "day-first", undefined],
  ] as const)("%j, %s, is %s", (text, order, on) => {
    expect(readDay(text, order)).toBe(on);
  });
});

describe("a moment", () => {
  const summer = (local: string) => (local.slice(5, 7) === "07" ? 120 : 60);
  it.each([
    ["2026-07-03T09:07:00.000+02:00", "", "2026-07-03T09:07:00.000+02:00"],
    ["2026-07-03 09:07", "", "2026-07-03T09:07:00+02:00"],
    ["2026-01-03", "9:07", "2026-01-03T09:07:00+01:00"],
    ["2026-01-03", "9:07 pm", "2026-01-03T21:07:00+01:00"],
    ["2026-01-03", "12:07 AM", "2026-01-03T00:07:00+01:00"],
    ["2026-01-03 0907Z", "", undefined],
    ["2026-01-03T09:07:30Z", "", "2026-01-03T09:07:30Z"],
    ["2026-01-03 25:00", "", undefined],
    // no time: the middle of the day
    ["2026-01-03", "", "2026-01-03T12:00:00+01:00"],
  ] as const)("%j %j is %s", (text, time, at) => {
    expect(readMoment(text, time, "day-first", summer)).toBe(at);
  });
});
