import { type Book, readBook, smallBookText } from "@witnessmark/book";
import { type AircraftState, emptyState, type RecordedReading } from "@witnessmark/ledger";
import { beforeAll, describe, expect, it } from "vitest";
import { readingsCsv } from "../readings-csv.ts";
import type { ImportAnswers } from "./answer.ts";
import { readingColumns, readingDrafts, readReadings } from "./readings.ts";
import { readTable } from "./table.ts";

const NOW_MS = Date.UTC(2031, 4, 4);
const LEFT = "tyre-pressure.left-main-tyre";
const RIGHT = "tyre-pressure.right-main-tyre";

describe("readings of the past", () => {
  let book: Book;

  beforeAll(async () => {
    const read = await readBook(smallBookText, "small.yaml");
    if (!read.ok) throw new Error("expected the small book to read");
    book = read.book;
  });

  const read = (text: string, answers: ImportAnswers = {}, state: AircraftState = emptyState("ZZ-SML")) => {
    const table = readTable(text);
    if (!table.ok) throw new Error(`expected a table, found ${table.found}`);
    const columns = readingColumns(table.table.headings);
    return readReadings({
      book,
      state,
      table: table.table,
      columns,
      answers,
      now_ms: NOW_MS,
      offsetAt: () => 60,
    });
  };
  const fault = (text: string, answers?: ImportAnswers) => {
    const [row] = read(text, answers).rows;
    if (row === undefined || row.ok) throw new Error("expected a fault");
    return row.faults;
  };

  it("are read by their headings, with what each row says and nothing more", () => {
    const answer = read(
      `Date;Time;Position;Pressure (bar);Temp (°C);Read by;Remarks
03.04.2029;7:40;Left main tyre;5,24;-4;AB;cold morning
2029-04-05;;${RIGHT};5,2;;;`,
    );
    expect(answer).toMatchObject({ missing: [], questions: [] });
    expect(answer.rows).toEqual([
      {
        ok: true,
        row: 2,
        again: false,
        is: {
          check: LEFT,
          gauge: "tyre-gauge",
          at: "2029-04-03T07:40:00+01:00",
          read: { value: 5.24, unit: "bar" },
          temperature: { value: -4, unit: "degC" },
          by: "AB",
          words: "cold morning",
        },
      },
      {
        ok: true,
        row: 3,
        again: false,
        is: {
          check: RIGHT,
          gauge: "tyre-gauge",
          at: "2029-04-05T12:00:00+01:00",
          read: { value: 5.2, unit: "bar" },
        },
      },
    ]);
  });

  it("come back as they were read from what is written as CSV, and are then on record already", () => {
    const readings = [
      ["2030-05-04T09:07:00.000+02:00", 5.24, "bar"],
      ["2030-06-04T09:07:30.120+02:00", 75, "psi"],
    ] as const;
    const state = (made: readonly RecordedReading[]): AircraftState => ({
      ...emptyState("ZZ-SML"),
      checks: new Map([[LEFT, { answers: [], readings: made }]]),
    });
    const written = state(
      readings.map(([recordedAt, value, unit], at) => ({
        event: `e${at}`,
        device: "d",
        deviceSeq: at,
        author: { id: "p", name: "=AB", role: "pilot" },
        hlc: `${at}`,
        recordedAt,
        walk: `w${at}`,
        gauge: "tyre-gauge",
        read: { value, unit },
        temperature: { value: -3.5, unit: "degC" },
      })),
    );
    const csv = readingsCsv(book, written);
    const { rows } = read(csv);
    expect(rows.map((row) => row.ok && row.is)).toEqual(
      readings.map(([at, value, unit]) => ({
        check: LEFT,
        gauge: "tyre-gauge",
        at,
        read: { value, unit },
        temperature: { value: -3.5, unit: "degC" },
        by: "=AB",
      })),
    );
    const again = read(csv, {}, written).rows;
    expect(again.map((row) => row.ok && row.again)).toEqual([true, true]);
    expect(readingDrafts(again, "bundle").flat()).toEqual([]);
  });

  it("that come twice in one file are brought in once", () => {
    const { rows } = read(`date,check,value,unit
2029-04-03 07:40,oil-level,6,USqt
2029-04-03T06:40Z,oil-level,6.0,USqt
2029-04-03 07:40,oil-level,5.5,USqt`);
    expect(rows.map((row) => row.ok && row.again)).toEqual([false, true, false]);
    expect(readingDrafts(rows, "bundle").flat()).toHaveLength(2);
  });

  it("are not guessed where they can be read both ways: mark, order of the date, unit, check", () => {
    const text = `Date;Reading
03/04/2029;1,234
05/06/2029;1,345`;
    expect(read(text).questions.map(({ id }) => id)).toEqual(["order:when", "mark:value", "check", "unit"]);
    const answers = { "order:when": "month-first", "mark:value": "comma", check: LEFT, unit: "gauge" };
    expect(read(text, answers).rows[0]).toMatchObject({
      is: { check: LEFT, at: "2029-03-04T12:00:00+01:00", read: { value: 1.234, unit: "bar" } },
    });
    // the other answer is seen at once: a tyre gauge does not go so far
    expect(read(text, { ...answers, "mark:value": "point" }).rows[0]).toMatchObject({ ok: false });
  });

  it("under a name that the book does not have are asked for once for each name", () => {
    const text = `date,point,value,unit
2029-04-03,LH main,5.24,bar
2029-04-04,LH main,5.22,bar
2029-04-04,spare,5.22,bar`;
    const { questions } = read(text);
    expect(questions.map(({ id, words }) => [id, words])).toEqual([
      ["name:lh main", "Which check is “LH main”?"],
      ["name:spare", "Which check is “spare”?"],
    ]);
    const { rows } = read(text, { "name:lh main": LEFT, "name:spare": "none" });
    expect(rows.map((row) => row.ok)).toEqual([true, true, false]);
  });

  it.each([
    ["2029-02-30,5.24,bar", "date", "2029-02-30"],
    ["2033-01-01,5.24,bar", "date", "2033-01-01"],
    ["1029-01-01,5.24,bar", "date", "1029-01-01"],
    ["2029-01-01,plenty,bar", "value", "plenty"],
    ["2029-01-01,,bar", "value", "nothing"],
    ["2029-01-01,5.24,furlong", "unit", "furlong"],
    ["2029-01-01,5.24,L", "unit", "L"],
    ["2029-01-01,524,bar", "value", "524 bar"],
    ["2029-01-01,5,24,bar", "", "4 cells"],
  ])("of which a row is wrong say so at its place: %s", (row, column, found) => {
    const faults = fault(`date,value,unit\n${row}\n2029-01-02,5.1,bar`, { check: LEFT });
    expect(faults).toMatchObject([{ row: 2, column, found }]);
    for (const { expected, remedy } of faults) expect(expected && remedy).toBeTruthy();
  });

  it("with several faults in a row name each of them, and the rest of the file is read", () => {
    const { rows } = read(`date,check,value,unit
2029-02-30,oil-level,plenty,furlong
2029-04-03,oil-level,6,USqt`);
    expect(rows[0]).toMatchObject({ faults: [{ column: "date" }, { column: "value" }, { column: "unit" }] });
    expect(rows[1]).toMatchObject({ ok: true });
  });

  it("written with the other mark in single rows are faults of those rows, never a thousand times too much", () => {
    const answers = { "mark:value": "point" };
    const { rows } = read(
      'date,check,value,unit\n2029-04-03,oil-level,"6,5",USqt\n2029-04-04,oil-level,6.5,USqt',
      answers,
    );
    expect(rows[0]).toMatchObject({
      faults: [{ found: "6,5", expected: "a number with a decimal point, as 5.24" }],
    });
    expect(rows[1]).toMatchObject({ ok: true });
  });

  it("without a column of dates or values say which is missing", () => {
    expect(read("check,unit\noil-level,USqt").missing).toEqual(["when", "value"]);
  });

  it("are kept as one event each", () => {
    const { rows } = read("date,check,value,unit\n2029-04-03,oil-level,6,USqt");
    expect(readingDrafts(rows, "b").flat()).toEqual([
      {
        type: "reading.imported",
        body: {
          import: "b",
          check: "oil-level",
          gauge: "dipstick",
          at: "2029-04-03T12:00:00+01:00",
          read: { value: 6, unit: "USqt" },
        },
      },
    ]);
  });
});
