import type { Book } from "@witnessmark/book";
import { withSymbol } from "@witnessmark/engine";
import type { AircraftState, Read } from "@witnessmark/ledger";
import {
  checkName,
  type ImportAnswers,
  type ImportFault,
  type ImportQuestion,
  READING_ROLES,
  readingColumns,
  readingDrafts,
  readReadings,
  type Table,
} from "@witnessmark/record";
import type { Draft } from "../../../keep/contract.ts";
import { dayMonth } from "../../../words/dates.ts";
import { figure } from "../../../words/figures.ts";

/** What a file is taken for. */
export type FileKind = "readings";

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

/** What a column can be, with the words for it. */
export const choicesOf = (_kind: FileKind): readonly { readonly value: string; readonly label: string }[] =>
  READING_ROLES.map((role) => ({ value: role, label: READING_WORDS[role] }));

/** What a file seems to be, by its headings. */
export function settleFirst(table: Table): Settled {
  return { kind: "readings", columns: readingColumns(table.headings), answers: {} };
}

const decimals = (value: number): number => Math.min(3, `${value}`.split(".")[1]?.length ?? 0);
const asWritten = ({ value, unit }: Read): string => withSymbol(figure(value, decimals(value)), unit);

/** Minutes that this device's local time is ahead of UTC then. */
const offsetAt = (local: string): number => -new Date(local).getTimezoneOffset();

const isRole = (name: string): name is (typeof READING_ROLES)[number] =>
  READING_ROLES.some((role) => role === name);

export function planOf(
  book: Book,
  state: AircraftState,
  table: Table,
  settled: Settled,
  now_ms: number,
): Plan {
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
    missing: read.missing.map((role) => READING_WORDS[role]),
    questions: read.questions,
    rows,
    faults: read.rows.flatMap((row) => (row.ok ? [] : row.faults)),
    faulty: read.rows.filter(({ ok }) => !ok).length,
    heads: ["Read on", "Check", "Reading"],
    noun: ["reading", "readings"],
    count: rows.filter(({ again }) => !again).length,
    drafts: (bundle) => readingDrafts(read.rows, bundle),
  };
}
