import type { TimedFigure } from "@witnessmark/assess";
import { readBook, smallBookText } from "@witnessmark/book";
import { emptyState } from "@witnessmark/ledger";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { readingsCsv } from "./readings-csv.ts";
import { timedCalendar } from "./timed-calendar.ts";
import { timedCsv } from "./timed-csv.ts";

const figure: TimedFigure = {
  item: {
    id: "registration",
    name: "Registration, of the =sum(A1) kind",
    about: "papers",
    limits: [{ by: "date", on: "2028-02-29" }],
    combine: "first",
    recurring: true,
    endsLife: false,
    why: "Without it the aircraft may not be flown.",
  },
  isInBook: false,
  last: undefined,
  limits: [{ by: "date", on: "2028-02-29", left_d: 3, past: false, pastAfterFlight: false }],
  nearest: undefined,
  state: "good",
  needed: true,
};

const parsed = (text: string) => Papa.parse<Record<string, string>>(text.trim(), { header: true }).data;

describe("readings as CSV", () => {
  it("come back as they were read, by whom and when", async () => {
    const read = await readBook(smallBookText, "small.yaml");
    if (!read.ok) throw new Error("expected the small book to read");
    const [check] = read.book.checks.filter(({ reading }) => reading !== undefined);
    if (check === undefined) throw new Error("expected a check with a reading");
    const reading = {
      event: "e",
      device: "d",
      deviceSeq: 1,
      author: { id: "p", name: '=HYPERLINK("x")', role: "pilot" },
      hlc: "1",
      recordedAt: "2031-05-04T09:07:00+02:00",
      walk: "w",
      gauge: check.reading?.gauge ?? "",
      read: { value: 5.24, unit: "bar" },
    } as const;
    const state = {
      ...emptyState("ZZ-SML"),
      checks: new Map([[check.id, { answers: [], readings: [reading] }]]),
    };
    const [row, ...others] = parsed(readingsCsv(read.book, state));
    expect(others).toEqual([]);
    expect(row).toMatchObject({
      recorded_at: "2031-05-04T09:07:00+02:00",
      check: check.id,
      value: "5.24",
      unit: "bar",
      // what a spreadsheet would run is text
      by: `'=HYPERLINK("x")`,
    });
    expect(parsed(readingsCsv(read.book, emptyState("ZZ-SML")))).toEqual([]);
  });
});

describe("what runs out", () => {
  it("as CSV has a line for each limit", () => {
    expect(parsed(timedCsv([figure]))).toMatchObject([
      { about: "papers", good_until: "2028-02-29", left: "3", left_unit: "d" },
    ]);
  });

  it("as a calendar has a whole day on its last day, and an alarm before it", () => {
    const text = timedCalendar("ZZ-SKR", [figure], Date.UTC(2028, 1, 1));
    const lines = text.split("\r\n");
    // RFC 5545: 3.6 the parts of a calendar, 3.8.2.4 the day of an event, 3.1 lines of at most 75 octets
    expect(lines[0]).toBe("BEGIN:VCALENDAR");
    expect(lines).toContain("VERSION:2.0");
    expect(lines).toContain("DTSTART;VALUE=DATE:20280229");
    expect(lines).toContain("BEGIN:VALARM");
    expect(lines.filter((line) => line === "BEGIN:VEVENT")).toHaveLength(1);
    for (const line of lines) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
  });
});
