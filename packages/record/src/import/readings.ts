import { type Book, type Gauge, rangeShown } from "@witnessmark/book";
import { formatMeasure, toSI, UNITS, type UnitId, unitsOf } from "@witnessmark/engine";
import type { AircraftState, EventDraft, Read } from "@witnessmark/ledger";
import {
  type ImportAnswer,
  type ImportAnswers,
  type ImportQuestion,
  type ImportRow,
  type Matched,
  RowFaults,
} from "./answer.ts";
import { type OffsetAt, readMoment } from "./dates.ts";
import { columnOf, proposeColumns, unitInHeading, unitOf } from "./headings.ts";
import { MARK_WORDS, readNumber } from "./numbers.ts";
import {
  type Asked,
  askOfNames,
  askWhichCheck,
  checksByName,
  isAsked,
  nameOf,
  OF_THE_GAUGE,
  unitQuestion,
} from "./reading-questions.ts";
import { hasTooMany } from "./row-width.ts";
import { filled, settleMark, settleOrder } from "./sheet-questions.ts";
import type { Table, TableRow } from "./table.ts";

export const READING_ROLES = [
  "when",
  "time",
  "check",
  "gauge",
  "value",
  "unit",
  "temperature",
  "temperatureUnit",
  "by",
  "words",
] as const;
export type ReadingRole = (typeof READING_ROLES)[number];

/** One reading of the past, as the file tells of it. */
export interface PastReading {
  readonly check: string;
  readonly gauge: string;
  /** ISO 8601 with offset. */
  readonly at: string;
  readonly read: Read;
  readonly temperature?: Read;
  readonly by?: string;
  readonly words?: string;
}

const NEEDED: readonly ReadingRole[] = ["when", "value"];

const HEADINGS: readonly { readonly role: ReadingRole; readonly names: readonly string[] }[] = [
  {
    role: "when",
    names: [
      "recorded at",
      "date time",
      "date/time",
      "date and time",
      "timestamp",
      "date",
      "day",
      "read on",
      "when",
    ],
  },
  { role: "time", names: ["time", "time of day", "clock"] },
  { role: "check", names: ["check", "check id", "item", "what", "point", "position", "place", "title"] },
  { role: "gauge", names: ["gauge", "gauge id", "instrument", "quantity"] },
  { role: "value", names: ["value", "reading", "measured", "pressure", "level", "result", "quantity read"] },
  { role: "unit", names: ["unit", "units", "value unit"] },
  { role: "temperature", names: ["temperature", "temp", "oat", "outside temperature"] },
  { role: "temperatureUnit", names: ["temperature unit", "temp unit"] },
  { role: "by", names: ["by", "who", "read by", "pilot", "name", "initials", "author"] },
  { role: "words", names: ["words", "remarks", "remark", "note", "notes", "comment", "comments"] },
];

export const readingColumns = (headings: readonly string[]): Matched<ReadingRole> =>
  proposeColumns(headings, HEADINGS);

export interface ReadingsRequest {
  readonly book: Book;
  readonly state: AircraftState;
  readonly table: Table;
  readonly columns: Matched<ReadingRole>;
  readonly answers: ImportAnswers;
  readonly now_ms: number;
  readonly offsetAt: OffsetAt;
}

/** How every row is read, once nothing is open. */
interface Reader {
  readonly heading: (role: ReadingRole) => string;
  readonly cell: (row: TableRow, role: ReadingRole) => string;
  readonly checkOf: (row: TableRow, faults: RowFaults) => Asked | undefined;
  readonly unitOf: (
    row: TableRow,
    role: "unit" | "temperatureUnit",
    gauge: Gauge | undefined,
    faults: RowFaults,
  ) => UnitId | undefined;
  readonly number: (row: TableRow, role: "value" | "temperature", faults: RowFaults) => number | undefined;
  readonly moment: (row: TableRow, faults: RowFaults) => string | undefined;
}

/** As `ImportAnswer`, with the rows still to be read: each once, in their order, as many at a time as one likes. */
export interface ReadingsBegun extends Omit<ImportAnswer<PastReading, ReadingRole>, "rows"> {
  readonly rows: Iterable<ImportRow<PastReading>>;
}

/** How a table reads as readings of the past. Nothing is guessed: what it leaves open is asked. */
export function readReadings(request: ReadingsRequest): ImportAnswer<PastReading, ReadingRole> {
  const { rows, ...begun } = beginReadings(request);
  return { ...begun, rows: [...rows] };
}

/** `readReadings` for a long file on a slow phone, which must be able to do something else between two rows. */
export function beginReadings(request: ReadingsRequest): ReadingsBegun {
  const { columns } = request;
  const missing = NEEDED.filter((role) => !columns.includes(role));
  const questions: ImportQuestion[] = [];
  const reader = readerOf(request, questions);
  const isOpen = missing.length > 0 || questions.length > 0;
  return { columns, missing, questions, rows: isOpen ? [] : rowsOf(request, reader) };
}

function* rowsOf(request: ReadingsRequest, reader: Reader): Generator<ImportRow<PastReading>> {
  const known = keysOnRecord(request.state);
  for (const row of request.table.rows) {
    const faults = new RowFaults(row.row);
    const is = readRow(request, reader, row, faults);
    if (is === undefined || faults.all.length > 0) {
      yield { ok: false, row: row.row, faults: faults.all };
      continue;
    }
    const key = keyOf(is.check, Date.parse(is.at), is.read);
    const again = known.has(key);
    known.add(key);
    yield { ok: true, row: row.row, is, again };
  }
}

const keyOf = (check: string, at_ms: number, { value, unit }: Read): string =>
  `${check} ${at_ms} ${value} ${unit}`;

function keysOnRecord(state: AircraftState): Set<string> {
  const keys = new Set<string>();
  for (const [check, { readings }] of state.checks) {
    for (const { recordedAt, read } of readings) keys.add(keyOf(check, Date.parse(recordedAt), read));
  }
  return keys;
}

function readerOf(
  { book, table, columns, answers, offsetAt }: ReadingsRequest,
  questions: ImportQuestion[],
): Reader {
  const places = new Map(READING_ROLES.map((role) => [role, columnOf(columns, role)]));
  const place = (role: ReadingRole): number => places.get(role) ?? -1;
  const heading = (role: ReadingRole): string => table.headings[place(role)] ?? "";
  const cell = ({ cells }: TableRow, role: ReadingRole): string => cells[place(role)] ?? "";
  const column = (role: ReadingRole): readonly string[] => table.rows.map((row) => cell(row, role));
  const has = (role: ReadingRole): boolean => place(role) >= 0;

  const order = has("when")
    ? settleOrder("order:when", heading("when"), column("when"), answers, questions)
    : "day-first";
  const marks = {
    value: has("value")
      ? settleMark("mark:value", heading("value"), column("value"), answers, questions)
      : "point",
    temperature: has("temperature")
      ? settleMark("mark:temperature", heading("temperature"), column("temperature"), answers, questions)
      : "point",
  } as const;

  const byName = checksByName(book);
  const options = book.checks
    .filter(isAsked)
    .map((check) => ({ value: check.id, label: nameOf(book, check) }));
  if (!has("check")) askWhichCheck(answers, options, questions);
  else askOfNames(column("check"), byName, answers, options, questions);
  const checkOf: Reader["checkOf"] = (row, faults) => {
    const text = cell(row, "check");
    const said = has("check") ? answers[`name:${text.toLowerCase()}`] : answers["check"];
    const check =
      (has("check") ? byName(text) : undefined) ?? (said === undefined ? undefined : byName(said));
    return (
      check ??
      faults.add(
        heading("check"),
        text,
        "a check of the book that asks for a reading",
        "Write its name or its id as the book has it.",
      )
    );
  };

  const given = {
    unit: unitInHeading(heading("value")),
    temperatureUnit: unitInHeading(heading("temperature")),
  };
  if (has("value") && !has("unit") && given.unit === undefined && answers["unit"] === undefined) {
    questions.push(unitQuestion(book));
  }
  const warm = filled(column("temperature")).length > 0;
  if (
    warm &&
    !has("temperatureUnit") &&
    given.temperatureUnit === undefined &&
    answers["temperatureUnit"] === undefined
  ) {
    questions.push({
      id: "temperatureUnit",
      words: `In which unit is “${heading("temperature")}”?`,
      because: "Neither its heading nor another column says.",
      options: unitsOf("temperature").map((unit) => ({ value: unit, label: UNITS[unit].symbol })),
    });
  }
  const unitIn: Reader["unitOf"] = (row, role, gauge, faults) => {
    const text = cell(row, role);
    const said = answers[role];
    if (has(role)) {
      const unit = unitOf(text);
      return (
        unit ??
        faults.add(heading(role), text, "a unit such as bar, psi, L or °C", "Write the unit of this row.")
      );
    }
    if (given[role] !== undefined) return given[role];
    return said === OF_THE_GAUGE ? gauge?.unit : said === undefined ? undefined : unitOf(said);
  };
  const number: Reader["number"] = (row, role, faults) => {
    const text = cell(row, role);
    const value = readNumber(text, marks[role]);
    if (value !== undefined) return value;
    const isMarked = /^[-+−]?[\d.,\s]+$/.test(text);
    return faults.add(
      heading(role),
      text,
      `a number with ${MARK_WORDS[marks[role]]}`,
      isMarked
        ? "Write it as the other rows of this column are written."
        : "Write the figure alone; its unit has a column of its own.",
    );
  };
  const moment: Reader["moment"] = (row, faults) => {
    const text = cell(row, "when");
    const time = cell(row, "time");
    const at = readMoment(text, time, order, offsetAt);
    return (
      at ??
      faults.add(
        heading("when"),
        time === "" ? text : `${text} ${time}`,
        "a day that exists, with or without a time, as 2026-11-12 07:40",
        "Look up the day, and write it with the year in four figures.",
      )
    );
  };
  return { heading, cell, checkOf, unitOf: unitIn, number, moment };
}

/** Years before this are a slip of the pen, not a reading. */
const FIRST_YEAR_MS = Date.UTC(1950, 0, 1);

function readRow(
  { book, table, now_ms }: ReadingsRequest,
  reader: Reader,
  row: TableRow,
  faults: RowFaults,
): PastReading | undefined {
  if (hasTooMany(table, row, faults)) return undefined;
  const at = reader.moment(row, faults);
  if (at !== undefined && (Date.parse(at) > now_ms || Date.parse(at) < FIRST_YEAR_MS)) {
    const isToCome = Date.parse(at) > now_ms;
    faults.add(
      reader.heading("when"),
      reader.cell(row, "when"),
      isToCome ? "a day that has been" : "a year from 1950 on",
      "Write the day it was read on.",
    );
  }
  const check = reader.checkOf(row, faults);
  const gauge = check === undefined ? undefined : gaugeOf(book, check, reader, row, faults);
  const value = reader.number(row, "value", faults);
  const unit = reader.unitOf(row, "unit", gauge, faults);
  const temperature = temperatureOf(reader, row, faults);
  if (
    at === undefined ||
    check === undefined ||
    gauge === undefined ||
    value === undefined ||
    unit === undefined
  )
    return undefined;
  if (UNITS[unit].dimension !== check.reading.dimension) {
    return faults.add(
      reader.heading("unit"),
      UNITS[unit].symbol,
      `a unit of ${check.reading.dimension}, as ${gauge.unit}`,
      "Write the unit it was read in, or match the right check.",
    );
  }
  const valueSI = toSI(value, unit);
  const [low, high] = rangeShown(gauge, check.reading);
  if (valueSI < low || valueSI > high) {
    return faults.add(
      reader.heading("value"),
      `${reader.cell(row, "value")} ${UNITS[unit].symbol}`,
      `what the ${gauge.name} can show: ${formatMeasure(low, gauge.unit, gauge.resolution.value)} to ${formatMeasure(high, gauge.unit, gauge.resolution.value)}`,
      "Look whether the decimal mark or the unit is another one.",
    );
  }
  const [by, words] = [reader.cell(row, "by").slice(0, 200), reader.cell(row, "words").slice(0, 4000)];
  return {
    check: check.id,
    gauge: gauge.id,
    at,
    read: { value, unit },
    ...(temperature === undefined ? {} : { temperature }),
    ...(by === "" ? {} : { by }),
    ...(words === "" ? {} : { words }),
  };
}

function gaugeOf(
  book: Book,
  check: Asked,
  reader: Reader,
  row: TableRow,
  faults: RowFaults,
): Gauge | undefined {
  const text = reader.cell(row, "gauge");
  const gauge =
    text === ""
      ? book.gauges.get(check.reading.gauge)
      : [...book.gauges.values()].find(
          ({ id, name }) => id === text || name.toLowerCase() === text.toLowerCase(),
        );
  return (
    gauge ??
    faults.add(
      reader.heading("gauge"),
      text,
      "a gauge of the book, or none",
      "Leave the cell empty, or match no column as the gauge.",
    )
  );
}

function temperatureOf(reader: Reader, row: TableRow, faults: RowFaults): Read | undefined {
  if (reader.cell(row, "temperature") === "") return undefined;
  const value = reader.number(row, "temperature", faults);
  const unit = reader.unitOf(row, "temperatureUnit", undefined, faults);
  if (value === undefined || unit === undefined) return undefined;
  if (UNITS[unit].dimension !== "temperature" || toSI(value, unit) <= 0) {
    return faults.add(
      reader.heading("temperature"),
      `${value} ${UNITS[unit].symbol}`,
      "a temperature above −273 °C",
      "Write the temperature and its unit.",
    );
  }
  return { value, unit };
}

/** What is kept of each reading: one event; of those that are on record, nothing. */
export const readingDrafts = (
  rows: readonly ImportRow<PastReading>[],
  bundle: string,
): readonly (readonly EventDraft[])[] =>
  rows.flatMap((row): readonly (readonly EventDraft[])[] =>
    row.ok && !row.again ? [[{ type: "reading.imported", body: { import: bundle, ...row.is } }]] : [],
  );
