import { localDayOf } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { AircraftState } from "@witnessmark/ledger";
import {
  beginReadings,
  checkName,
  type ImportAnswers,
  type ImportFault,
  type ImportQuestion,
  type ImportRow,
  intervalText,
  type PastReading,
  READING_ROLES,
  readingColumns,
  readingDrafts,
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

/** So many rows show whether the columns are right. */
const ROWS_SHOWN = 6;

/** What would become of a file. */
export interface Plan {
  /** Names of columns without which nothing can be read. */
  readonly missing: readonly string[];
  readonly questions: readonly ImportQuestion[];
  /** The first rows that read. */
  readonly first: readonly PlanRow[];
  /** Rows that read and are on record already, or stand further up. */
  readonly again: number;
  readonly faults: readonly ImportFault[];
  /** Rows that have a fault. */
  readonly faulty: number;
  readonly heads: readonly [string, string, string];
  /** What each is called: one, several. */
  readonly noun: readonly [string, string];
  /** Rows to bring in. */
  readonly count: number;
  /** What is kept of each row that is to be brought in. */
  drafts(bundle: string): readonly (readonly Draft[])[];
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

/** Rows read in one go: what a phone that is four times slower does between two frames that nobody misses. */
const ROWS_AT_ONCE = 250;

/** Lets the page do what waits: answer a finger, paint. */
export const rest = (): Promise<void> => new Promise((done) => setTimeout(done));

/**
 * Reads a file as it was settled, in slices between which the page stays alive.
 *
 * @param onRead told how many rows have been read
 * @param signal gives it up
 * @returns `null` when it was given up
 */
export async function planOf(
  request: PlanRequest,
  onRead: (rows: number) => void,
  signal: AbortSignal,
): Promise<Plan | null> {
  if (request.settled.kind === "timed") return planOfTimed(request);
  const { book, state, table, settled, now_ms } = request;
  const columns = settled.columns.map((name) => (isRole(name) ? name : ""));
  const begun = beginReadings({ book, state, table, columns, answers: settled.answers, now_ms, offsetAt });
  const rows: ImportRow<PastReading>[] = [];
  for (const row of begun.rows) {
    rows.push(row);
    if (rows.length % ROWS_AT_ONCE > 0) continue;
    onRead(rows.length);
    await rest();
    if (signal.aborted) return null;
  }
  return {
    ...countsOf(rows, (row) => readingCells(book, row)),
    missing: begun.missing.map((role) => READING_WORDS[role]),
    questions: begun.questions,
    heads: ["Read on", "Check", "Reading"],
    noun: ["reading", "readings"],
    drafts: (bundle) => readingDrafts(rows, bundle),
  };
}

function readingCells(book: Book, { at, check, read, temperature }: PastReading): PlanRow["cells"] {
  const found = book.checksById.get(check);
  const at_ms = Date.parse(at);
  return [
    `${dayMonth(at_ms)} ${new Date(at_ms).getFullYear()}`,
    found === undefined ? check : checkName(book, found),
    temperature === undefined ? asWritten(read) : `${asWritten(read)} at ${asWritten(temperature)}`,
  ];
}

function planOfTimed({ book, state, table, settled, now_ms, person }: PlanRequest): Plan {
  const columns = settled.columns.map((name) => timedRoleOf(name, book));
  const today = localDayOf(now_ms, -new Date(now_ms).getTimezoneOffset());
  const read = readTimed({ book, state, table, columns, answers: settled.answers, today, person });
  return {
    ...countsOf(read.rows, ({ name, added, done }) => [
      name,
      added === undefined ? "as it is followed already" : intervalText(added, book.counters),
      done === undefined ? "not said" : `${done.on} by ${done.by}`,
    ]),
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

function countsOf<T>(rows: readonly ImportRow<T>[], cellsOf: (is: T) => PlanRow["cells"]) {
  const first: PlanRow[] = [];
  const faults: ImportFault[] = [];
  let [faulty, again, count] = [0, 0, 0];
  for (const row of rows) {
    if (!row.ok) {
      faulty += 1;
      faults.push(...row.faults);
      continue;
    }
    if (row.again) again += 1;
    else count += 1;
    if (first.length < ROWS_SHOWN) first.push({ row: row.row, cells: cellsOf(row.is), again: row.again });
  }
  return { first, faults, faulty, again, count };
}
