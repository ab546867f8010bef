import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { airacCycleOn, airacDatesOf } from "./airac.ts";
import { addDays, dateOfDayNumber, dayNumber, daysBetween } from "./days.ts";
import { isLocalDate } from "./local-date.ts";
import { addMonths, ageOn, endOfMonthAfter, startOfMonthBefore } from "./months.ts";

interface Call {
  readonly call: string;
  readonly arguments: readonly [string | number, (string | number)?];
  readonly expected: unknown;
}

// a file of this repository; each case names its source
const { cases } = JSON.parse(
  readFileSync(new URL("../../../../reference/decoded/calendar.json", import.meta.url), "utf8"),
) as { readonly cases: readonly { readonly id: string; readonly calls: readonly Call[] }[] };

type Answer = (first: string, second: number) => unknown;

const FUNCTIONS: Readonly<Record<string, Answer>> = {
  addDays,
  addMonths,
  endOfMonthAfter,
  startOfMonthBefore,
  daysBetween: (from, to) => daysBetween(from, String(to)),
  ageOn: (birth, on) => ageOn(birth, String(on)),
  airacDatesOf: (year) => airacDatesOf(Number(year)),
  airacCycleOn: (on) => airacCycleOn(on),
  airacIdentOn: (on) => airacCycleOn(on).ident,
  airacLastDayOn: (on) => airacCycleOn(on).to,
  firstCycleOf: (year) => airacDatesOf(Number(year))[0],
  nextYearOf14Cycles: (after) => {
    let year = Number(after) + 1;
    while (airacDatesOf(year).length !== 14) year += 1;
    return year;
  },
};

const calls = cases.flatMap(({ id, calls }) => calls.map((one) => ({ id, ...one })));

describe("the date cases of airworthiness, papers and recency", () => {
  it("are all there", () => {
    expect(cases.length).toBe(65);
  });

  it.each(calls)("$id: $call $arguments", ({ call, arguments: given, expected }) => {
    const answer = FUNCTIONS[call];
    if (answer === undefined) throw new Error(`${call}: no such function in the table of this test`);
    // the table of functions says which of the two is a date and which a count
    expect(answer(...(given as [string, number]))).toEqual(expected);
  });
});

const anyDay = fc.integer({ min: -719_162, max: 2_932_896 }); // 0001-01-01 to 9999-12-31

describe("a local date", () => {
  it.each([
    ["2024-02-29", true],
    ["2000-02-29", true],
    ["2023-02-29", false],
    ["1900-02-29", false],
    ["2026-04-31", false],
    ["2026-13-01", false],
    ["2026-00-10", false],
    ["2026-01-00", false],
    ["0000-01-01", false],
    ["2026-1-1", false],
    ["2026-01-01T00:00", false],
    ["", false],
  ])("%s is one: %s", (text, is) => {
    expect(isLocalDate(text)).toBe(is);
  });

  it.each([
    [
      "2026-02-30",
      'date: expected a day of the calendar, written YYYY-MM-DD, received "2026-02-30"; February 2026 ends with day 28',
    ],
    [
      "30.02.2026",
      'date: expected a day of the calendar, written YYYY-MM-DD, received "30.02.2026"; write the year in four digits, month and day in two, joined by hyphens',
    ],
    [
      "2026-13-01",
      'date: expected a day of the calendar, written YYYY-MM-DD, received "2026-13-01"; the month is 01 to 12',
    ],
  ])("%s is refused by name", (text, message) => {
    expect(() => dayNumber(text)).toThrow(message);
  });

  it("is counted in days from 1970-01-01, and back", () => {
    expect(dayNumber("1970-01-01")).toBe(0);
    expect(dateOfDayNumber(0)).toBe("1970-01-01");
    fc.assert(
      fc.property(anyDay, (day) => {
        const date = dateOfDayNumber(day);
        expect(dayNumber(date)).toBe(day);
        // the platform's own calendar, which is Gregorian throughout (ECMA-262, Date)
        expect(new Date(day * 86_400_000).toISOString().slice(0, 10)).toBe(date);
      }),
    );
  });

  it("does not leave the years that four digits can write", () => {
    expect(() => addDays("9999-12-31", 1)).toThrow("expected a day in the years 1 to 9999");
    expect(() => addMonths("0001-01-31", -1)).toThrow("expected a day in the years 1 to 9999");
    expect(() => addDays("2026-01-01", 0.5)).toThrow("day: expected a whole number, received");
  });
});

describe("months", () => {
  const months = fc.integer({ min: -1200, max: 1200 });
  const day = fc.integer({ min: -200_000, max: 200_000 }).map(dateOfDayNumber);

  it("keep the day, or end with the month, and never run into the next", () => {
    fc.assert(
      fc.property(day, months, (date, n) => {
        const later = addMonths(date, n);
        expect(later <= endOfMonthAfter(date, n)).toBe(true);
        expect(later >= startOfMonthBefore(date, -n)).toBe(true);
        expect(later.slice(8) === date.slice(8) || later === endOfMonthAfter(date, n)).toBe(true);
      }),
    );
  });

  it("never come out earlier for a later day", () => {
    fc.assert(
      fc.property(day, fc.integer({ min: 0, max: 60 }), months, (date, days, n) => {
        expect(addMonths(addDays(date, days), n) >= addMonths(date, n)).toBe(true);
      }),
    );
  });

  it("end with the month: the day after is the first of the next", () => {
    fc.assert(
      fc.property(day, months, (date, n) => {
        expect(addDays(endOfMonthAfter(date, n), 1)).toBe(startOfMonthBefore(date, -n - 1));
      }),
    );
  });
});

describe("age", () => {
  it("of one born on 29 February goes up on the 28th where there is no 29th: the tighter limit first", () => {
    expect(ageOn("1984-02-29", "2024-02-28")).toBe(39);
    expect(ageOn("1984-02-29", "2024-02-29")).toBe(40);
    expect(ageOn("1984-02-29", "2025-02-27")).toBe(40);
    expect(ageOn("1984-02-29", "2025-02-28")).toBe(41);
  });

  it("is refused before birth", () => {
    expect(() => ageOn("2026-01-02", "2026-01-01")).toThrow(
      "birth: expected a day up to 2026-01-01, received 2026-01-02",
    );
  });
});

describe("the cycles of aeronautical data", () => {
  it("follow one another without a gap, each known by every one of its days", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40_000 }).map(dateOfDayNumber), (date) => {
        const cycle = airacCycleOn(date);
        expect(cycle.from <= date && date <= cycle.to).toBe(true);
        expect(daysBetween(cycle.from, cycle.to)).toBe(27);
        expect(airacCycleOn(cycle.to)).toEqual(cycle);
        const next = airacCycleOn(addDays(cycle.to, 1));
        expect(next.from).toBe(addDays(cycle.to, 1));
        expect(airacDatesOf(Number(cycle.from.slice(0, 4)))[Number(cycle.ident.slice(2)) - 1]).toBe(
          cycle.from,
        );
      }),
    );
  });
});
