import { localDayOf } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { AircraftState } from "@witnessmark/ledger";
import {
  checkName,
  type ImportAnswers,
  type ImportFault,
  type ImportQuestion,
  type ImportRow,
  intervalText,
  READING_ROLES,
  readingColumns,
  readingDrafts,
  readReadings,
  readTimed,
  type Table,
  TIMED_ROLES,
  type TimedRole,
  timedColumns,
  timedDrafts,
} from "@witnessmark/record";
import type { Draft } from "../../../keep/contract.ts";
import { asWritten } from "../../../words/as-written.ts";
import { dayMonth } from "../../../words/dates.ts";

/** What a file is taken for. */
export type FileKind = "readings" | "timed";

/** What a person settled about a file. */
export interface Settled {
  readonly kind: FileKind;
  /** What each column is, in the words of the kind; empty for one that is not wanted. */
  readonly columns: readonly string[];
  readonly answers: ImportAnswers;
}

/** One row that reads, as it is shown before it is brought in. */
export interface PlanRow {
  readonly row: number;
  readonly cells: readonly [string, string, string];
  readonly again: boolean;
}

/** What would become of a file. */
export interface Plan {
  /** Names of columns without which nothing can be read. */
  readonly missing: readonly string[];
  readonly questions: readonly ImportQuestion[];
  readonly rows: readonly PlanRow[];
  readonly faults: readonly ImportFault[];
  /** Rows that have a fault. */
  readonly faulty: number;
  readonly heads: readonly [string, string, string];
  /** What each is called: one, several. */
  readonly noun: readonly [string, string];
  readonly count: number;
  drafts(bundle: string): readonly Draft[];
}

const READING_WORDS: Readonly<Record<(typeof READING_ROLES)[number], string>> = {
  when: "Date, or date and time",
  time: "Time of day",
  check: "Check",
  gauge: "Gauge",
  value: "Value",
  unit: "Unit of the value",
  temperature: "Temperature",
  temperatureUnit: "Unit of the temperature",
  by: "Who read it",
  words: "Remarks",
};

const TIMED_WORDS: Readonly<Record<(typeof TIMED_ROLES)[number], string>> = {
  item: "What is to be done",
  about: "What it is about",
  interval: "Interval",
  dueOn: "Due on, a date",
  lastDone: "Last done on",
  doneBy: "Last done by",
  reference: "Reference",
  words: "Remarks",
};

/** What a column can be, with the words for it. */
export const choicesOf = (
  kind: FileKind,
  book: Book,
): readonly { readonly value: string; readonly label: string }[] =>
  kind === "readings"
    ? READING_ROLES.map((role) => ({ value: role, label: READING_WORDS[role] }))
    : [
        ...TIMED_ROLES.map((role) => ({ value: role, label: TIMED_WORDS[role] })),
        ...book.counters.map(({ id, name }) => ({ value: `counter:${id}`, label: `${name} when last done` })),
      ];

/** The columns of a file that is taken for this. */
export const settleAs = (kind: FileKind, table: Table, book: Book): Settled => ({
  kind,
  columns: kind === "readings" ? readingColumns(table.headings) : timedColumns(table.headings, book.counters),
  answers: {},
});

/** What a file seems to be, by its headings: readings have values. */
export function settleFirst(table: Table, book: Book): Settled {
  const readings = settleAs("readings", table, book);
  if (readings.columns.includes("value")) return readings;
  const timed = settleAs("timed", table, book);
  return timed.columns.includes("item") ? timed : readings;
}

/** Minutes that this device's local time is ahead of UTC then. */
const offsetAt = (local: string): number => -new Date(local).getTimezoneOffset();

const isRole = (name: string): name is (typeof READING_ROLES)[number] =>
  READING_ROLES.some((role) => role === name);

interface PlanRequest {
  readonly book: Book;
  readonly state: AircraftState;
  readonly table: Table;
  readonly settled: Settled;
  readonly now_ms: number;
  /** Id of the person who brings it in. */
  readonly person: string;
}

export const planOf = (request: PlanRequest): Plan =>
  request.settled.kind === "readings" ? planOfReadings(request) : planOfTimed(request);

function planOfTimed({ book, state, table, settled, now_ms, person }: PlanRequest): Plan {
  const columns = settled.columns.map((name) => timedRoleOf(name, book));
  const today = localDayOf(now_ms, -new Date(now_ms).getTimezoneOffset());
  const read = readTimed({ book, state, table, columns, answers: settled.answers, today, person });
  const rows = read.rows.flatMap((row): readonly PlanRow[] => {
    if (!row.ok) return [];
    const { name, added, done } = row.is;
    return [
      {
        row: row.row,
        cells: [
          name,
          added === undefined ? "as it is followed already" : intervalText(added, book.counters),
          done === undefined ? "not said" : `${done.on} by ${done.by}`,
        ],
        again: row.again,
      },
    ];
  });
  return {
    ...countsOf(read.rows, rows),
    missing: read.missing.map((role) => (role === "item" ? TIMED_WORDS.item : role)),
    questions: read.questions,
    heads: ["What", "Interval", "Last done"],
    noun: ["row", "rows"],
    drafts: (bundle) => timedDrafts(read.rows, bundle),
  };
}

const timedRoleOf = (name: string, book: Book): TimedRole | "" =>
  TIMED_ROLES.find((role) => role === name) ??
  book.counters.map(({ id }) => `counter:${id}` as const).find((role) => role === name) ??
  "";

const countsOf = (all: readonly ImportRow<unknown>[], rows: readonly PlanRow[]) => ({
  rows,
  faults: all.flatMap((row) => (row.ok ? [] : row.faults)),
  faulty: all.filter(({ ok }) => !ok).length,
  count: rows.filter(({ again }) => !again).length,
});

function planOfReadings({ book, state, table, settled, now_ms }: PlanRequest): Plan {
  const columns = settled.columns.map((name) => (isRole(name) ? name : ""));
  const read = readReadings({ book, state, table, columns, answers: settled.answers, now_ms, offsetAt });
  const rows = read.rows.flatMap((row): readonly PlanRow[] => {
    if (!row.ok) return [];
    const { at, check, read: value, temperature } = row.is;
    const found = book.checksById.get(check);
    const at_ms = Date.parse(at);
    return [
      {
        row: row.row,
        cells: [
          `${dayMonth(at_ms)} ${new Date(at_ms).getFullYear()}`,
          found === undefined ? check : checkName(book, found),
          temperature === undefined ? asWritten(value) : `${asWritten(value)} at ${asWritten(temperature)}`,
        ],
        again: row.again,
      },
    ];
  });
  return {
    ...countsOf(read.rows, rows),
    missing: read.missing.map((role) => READING_WORDS[role]),
    questions: read.questions,
    heads: ["Read on", "Check", "Reading"],
    noun: ["reading", "readings"],
    drafts: (bundle) => readingDrafts(read.rows, bundle),
  };
}
