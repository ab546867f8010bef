import { type Book, type Counter, TIMED_SUBJECTS } from "@witnessmark/book";
import type { AddedItem, AircraftState, EventDraft } from "@witnessmark/ledger";
import {
  type ImportAnswer,
  type ImportAnswers,
  type ImportQuestion,
  type ImportRow,
  type Matched,
  RowFaults,
} from "./answer.ts";
import { readDay } from "./dates.ts";
import { proposeColumns } from "./headings.ts";
import { readInterval } from "./intervals.ts";
import { MARK_WORDS, readNumber } from "./numbers.ts";
import { hasTooMany } from "./row-width.ts";
import { settleMark, settleOrder } from "./sheet-questions.ts";
import type { Table, TableRow } from "./table.ts";

/** A column of a file of timed items; `counter:<id>` is what that counter showed when it was last done. */
export type TimedRole =
  | "item"
  | "about"
  | "interval"
  | "dueOn"
  | "lastDone"
  | "doneBy"
  | "reference"
  | "words"
  | `counter:${string}`;

export const TIMED_ROLES = [
  "item",
  "about",
  "interval",
  "dueOn",
  "lastDone",
  "doneBy",
  "reference",
  "words",
] as const;

const HEADINGS: readonly { readonly role: TimedRole; readonly names: readonly string[] }[] = [
  { role: "item", names: ["item", "name", "task", "inspection", "description"] },
  { role: "about", names: ["about", "subject"] },
  { role: "interval", names: ["interval", "every", "limit interval", "period", "frequency"] },
  { role: "dueOn", names: ["due", "due on", "due date", "expires", "expiry", "valid until"] },
  {
    role: "lastDone",
    names: ["last done", "last done on", "last done date", "done on", "date done", "date", "complied on"],
  },
  { role: "doneBy", names: ["last done by", "done by", "by", "who"] },
  { role: "reference", names: ["reference", "ref", "work order", "document"] },
  { role: "words", names: ["words", "remarks", "remark", "notes", "note"] },
];

/** What each column is: one for each counter of the book is looked for too, by its id or its name. */
export const timedColumns = (headings: readonly string[], counters: readonly Counter[]): Matched<TimedRole> =>
  proposeColumns(headings, [
    ...HEADINGS,
    ...counters.map(({ id, name }) => {
      const words = [id.replaceAll("-", " "), name.toLowerCase()];
      return {
        role: `counter:${id}` as const,
        names: words.flatMap((word) => [
          `last done ${word}`,
          `last done at ${word}`,
          `done at ${word}`,
          word,
        ]),
      };
    }),
  ]);

/** One timed item as a row of the file tells of it. */
export interface TimedEntry {
  readonly item: string;
  readonly name: string;
  /** Set where nobody follows it yet. */
  readonly added?: AddedItem;
  readonly done?: {
    readonly on: string;
    readonly counters: Readonly<Record<string, number>>;
    readonly by: string;
    readonly reference?: string;
    readonly words?: string;
    /** Whose it is, where it is a pilot's own. */
    readonly holder?: string;
  };
}

export interface TimedRequest {
  readonly book: Book;
  readonly state: AircraftState;
  readonly table: Table;
  readonly columns: Matched<TimedRole>;
  readonly answers: ImportAnswers;
  /** The local day, `YYYY-MM-DD`. */
  readonly today: string;
  /** Id of the person who brings it in: what was done of a pilot's own items is theirs. */
  readonly person: string;
}

const NOT_SAID = "not said in the file";

const idOf = (name: string): string =>
  name
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 80) || "item";

/** How a table reads as timed items, and when they were last done. */
export function readTimed(request: TimedRequest): ImportAnswer<TimedEntry, TimedRole> {
  const { book, state, table, columns, answers, today, person } = request;
  const questions: ImportQuestion[] = [];
  const place = (role: TimedRole): number => columns.indexOf(role);
  const cell = ({ cells }: TableRow, role: TimedRole): string => cells[place(role)] ?? "";
  const heading = (role: TimedRole): string => table.headings[place(role)] ?? "";
  const cellsOf = (role: TimedRole): readonly string[] => table.rows.map((row) => cell(row, role));
  const missing = (["item"] as const).filter((role) => place(role) < 0);
  const settle = (role: "lastDone" | "dueOn") =>
    settleOrder(`order:${role}`, heading(role), cellsOf(role), answers, questions);
  const orders = { lastDone: settle("lastDone"), dueOn: settle("dueOn") };
  const counters = book.counters
    .map((counter) => ({ counter, role: `counter:${counter.id}` as const }))
    .filter(({ role }) => place(role) >= 0)
    .map(({ counter, role }) => ({
      counter,
      role,
      mark: settleMark(`mark:${role}`, heading(role), cellsOf(role), answers, questions),
    }));

  const items = [...book.timedItems, ...[...state.timedAdded.values()].map(({ item }) => item)];
  const known = new Map(
    items.flatMap((item) => [[item.id, item.id] as const, [item.name.toLowerCase(), item.id] as const]),
  );
  const names = new Map(items.map(({ id, name }) => [id, name]));
  const taken = new Set(items.map(({ id }) => id));
  const given = new Map<string, string>();
  /** One id for each name, and none that another item has. */
  const newIdOf = (name: string): string => {
    const before = given.get(name.toLowerCase());
    if (before !== undefined) return before;
    const base = idOf(name);
    let id = base;
    for (let number = 2; taken.has(id); number += 1) id = `${base}-${number}`;
    taken.add(id);
    given.set(name.toLowerCase(), id);
    return id;
  };
  const counterFor = (unit: "h" | "1", word: string): string | undefined => {
    const fitting = book.counters.filter((counter) => counter.unit === unit);
    const named = fitting.find(
      ({ id, name }) => id === word.replaceAll(" ", "-") || name.toLowerCase() === word,
    );
    if (named !== undefined) return named.id;
    if (fitting.length < 2) return fitting[0]?.id;
    const id = `counter:${unit}`;
    const said = fitting.find((counter) => counter.id === answers[id]);
    if (said === undefined && !questions.some((question) => question.id === id)) {
      questions.push({
        id,
        words:
          unit === "h" ? "Which hours are meant by the intervals?" : "Which count is meant by the intervals?",
        because: "The book has more than one counter of that kind.",
        options: fitting.map((counter) => ({ value: counter.id, label: counter.name })),
      });
    }
    return said?.id;
  };

  const added = new Set<string>();
  const rowOf = (row: TableRow): ImportRow<TimedEntry> => {
    const faults = new RowFaults(row.row);
    const is = entryOf(row, faults);
    return is === undefined || faults.all.length > 0
      ? { ok: false, row: row.row, faults: faults.all }
      : { ok: true, row: row.row, is, again: false };
  };
  const entryOf = (row: TableRow, faults: RowFaults): TimedEntry | undefined => {
    if (hasTooMany(table, row, faults)) return undefined;
    const name = cell(row, "item").slice(0, 400);
    if (name === "")
      return faults.add(heading("item"), "", "the name of what is to be done", "Write its name.");
    const found = known.get(name.toLowerCase());
    const item = found === undefined ? addedOf(row, name, faults) : undefined;
    const done = doneOf(row, faults);
    const about = item?.about ?? items.find(({ id }) => id === found)?.about;
    const said = done === undefined ? {} : { done: about === "pilot" ? { ...done, holder: person } : done };
    if (found !== undefined) return { item: found, name: names.get(found) ?? name, ...said };
    return item === undefined ? undefined : { item: item.id, name, added: item, ...said };
  };
  const addedOf = (row: TableRow, name: string, faults: RowFaults): AddedItem | undefined => {
    const written = cell(row, "interval");
    const due = cell(row, "dueOn");
    const on = readDay(due, orders.dueOn);
    const interval =
      written === "" && on !== undefined
        ? ({ ok: true, limits: [{ by: "date", on }], combine: "first" } as const)
        : readInterval(written, counterFor);
    if (!interval.ok) {
      const expected = "how often it is due, as 100 h, 12 calendar months or 50 h or 6 months";
      return faults.add(
        heading("interval") || heading("item"),
        written || name,
        expected,
        "No item of this name is followed yet, so the file has to say it.",
      );
    }
    const about = TIMED_SUBJECTS.find((subject) => subject === cell(row, "about")) ?? "aircraft";
    return {
      id: newIdOf(name),
      name,
      about,
      limits: [...interval.limits],
      combine: interval.combine,
      recurring: true,
      endsLife: false,
      why: "Brought in from a file.",
    };
  };
  const doneOf = (row: TableRow, faults: RowFaults): TimedEntry["done"] => {
    const text = cell(row, "lastDone");
    if (text === "") return undefined;
    const on = readDay(text, orders.lastDone);
    if (on === undefined || on > today || on < "1950-01-01") {
      return faults.add(
        heading("lastDone"),
        text,
        "a day that exists and has been, as 2026-11-12",
        "Look up the day, and write it with the year in four figures.",
      );
    }
    const shown: Record<string, number> = {};
    for (const { counter, role, mark } of counters) {
      const figures = cell(row, role);
      if (figures === "") continue;
      const value = readNumber(figures, mark);
      if (value === undefined || value < 0 || value > 10_000_000) {
        faults.add(
          heading(role),
          figures,
          `what ${counter.name} showed, with ${MARK_WORDS[mark]}`,
          "Write the figure alone, as the other rows of this column.",
        );
      } else shown[counter.id] = value;
    }
    const [reference, words] = [cell(row, "reference").slice(0, 400), cell(row, "words").slice(0, 4000)];
    return {
      on,
      counters: shown,
      by: cell(row, "doneBy").slice(0, 200) || NOT_SAID,
      ...(reference === "" ? {} : { reference }),
      ...(words === "" ? {} : { words }),
    };
  };

  const read = missing.length > 0 ? [] : table.rows.map(rowOf);
  if (questions.length > 0) return { columns, missing, questions, rows: [] };
  const seen = new Set([...state.timedDone].flatMap(([item, all]) => all.map(({ on }) => `${item} ${on}`)));
  const rows = read.map((row): ImportRow<TimedEntry> => {
    if (!row.ok) return row;
    const { item, done, added: isNew } = row.is;
    const key = `${item} ${done?.on ?? ""}`;
    const again = (isNew === undefined || added.has(item)) && (done === undefined || seen.has(key));
    if (done !== undefined) seen.add(key);
    if (isNew !== undefined) added.add(item);
    return { ...row, again };
  });
  return { columns, missing, questions, rows };
}

/**
 * What is kept of each row that is not on record: an item that nobody follows yet once, and when it was done. What
 * belongs to one row is kept together or not at all.
 *
 * @param bundle id of what is brought in at one time, so that it can be told and taken back together
 */
export function timedDrafts(
  rows: readonly ImportRow<TimedEntry>[],
  bundle: string,
): readonly (readonly EventDraft[])[] {
  const added = new Set<string>();
  return rows.flatMap((row): readonly (readonly EventDraft[])[] => {
    if (!row.ok || row.again) return [];
    const { item, added: isNew, done } = row.is;
    const drafts: EventDraft[] = [];
    if (isNew !== undefined && !added.has(item))
      drafts.push({ type: "timedItem.added", body: { item: isNew, import: bundle } });
    added.add(item);
    if (done !== undefined) drafts.push({ type: "timedItem.done", body: { item, ...done, import: bundle } });
    return [drafts];
  });
}
