import type { Book, Counter, TimedItem, TimedLimit } from "@witnessmark/book";
import { addDays, addMonths, airacCycleOn, endOfMonthAfter, InputError } from "@witnessmark/engine";
import type { AddedItem, AircraftState, Done, LocalDate } from "@witnessmark/ledger";
import { counterOf, totalWhenShown } from "./use-of-flight.ts";

/** An item as a book or a person wrote it: a person's has no tolerance. */
export type Item = TimedItem | AddedItem;

/** Where one limit of an item ends. */
export type LimitDue =
  /** The last day on which it is good. */
  | { readonly by: "date"; readonly limit: TimedLimit; readonly on: LocalDate; readonly from?: LocalDate }
  | {
      readonly by: "counter";
      readonly limit: TimedLimit;
      readonly counter: Counter;
      /** Total of the counter, in its unit, up to which it is good. */
      readonly at: number;
      readonly from: number;
    }
  | { readonly by: "unknown"; readonly limit: TimedLimit; readonly lacks: string };

export const toleranceOf = (item: Item): TimedItem["tolerance"] =>
  "tolerance" in item ? item.tolerance : undefined;

interface Base {
  readonly on: LocalDate;
  readonly total: (counter: string) => number | undefined;
}

/** A date that somebody mistyped by thousands of years has no due date: that is not known, and no crash. */
function dueOf(limit: TimedLimit, base: Base | undefined, book: Pick<Book, "counters">): LimitDue {
  try {
    return dueFrom(limit, base, book);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return {
      by: "unknown",
      limit,
      lacks: `a date of the last time that can be: ${base?.on ?? "none"} is none`,
    };
  }
}

function dueFrom(limit: TimedLimit, base: Base | undefined, book: Pick<Book, "counters">): LimitDue {
  if (limit.by === "date") return { by: "date", limit, on: limit.on };
  if (base === undefined) return { by: "unknown", limit, lacks: "when it was last done" };
  switch (limit.by) {
    case "calendar-months":
      return { by: "date", limit, on: endOfMonthAfter(base.on, limit.months), from: base.on };
    case "months":
      return { by: "date", limit, on: addMonths(base.on, limit.months), from: base.on };
    case "days":
      return { by: "date", limit, on: addDays(base.on, limit.days), from: base.on };
    case "data-cycle":
      return { by: "date", limit, on: airacCycleOn(base.on).to, from: base.on };
    case "counter": {
      const counter = counterOf(book, limit.counter);
      const from = base.total(limit.counter);
      if (counter === undefined) return { by: "unknown", limit, lacks: `the counter ${limit.counter}` };
      if (from === undefined) return { by: "unknown", limit, lacks: `what ${counter.name} showed then` };
      return { by: "counter", limit, counter, at: from + limit.every, from };
    }
    default:
      return limit satisfies never;
  }
}

/** Done within the tolerance, but after it was due: what was overrun is taken off the next interval. */
function baseOf(item: Item, dones: readonly Done[], state: AircraftState, book: Book): Base | undefined {
  const tolerance = toleranceOf(item);
  let base: Base | undefined;
  for (const done of dones) {
    const said: Base = {
      on: done.on,
      total: (counter) => {
        const shown = done.counters[counter];
        return shown === undefined ? undefined : totalWhenShown(state, counter, shown, done.on);
      },
    };
    base = base === undefined || tolerance?.countsFrom !== "due" ? said : fromDue(item, base, said, book);
  }
  return base;
}

/** The base for the next interval: limit by limit the earlier of when it was due and when it was done. */
function fromDue(item: Item, before: Base, said: Base, book: Book): Base {
  const dues = item.limits.map((limit) => dueOf(limit, before, book));
  const dates = dues.flatMap((due) => (due.by === "date" && due.limit.by !== "date" ? [due.on] : []));
  const [first] = dates.toSorted();
  return {
    on: first !== undefined && first < said.on ? first : said.on,
    total: (counter) => {
      const done = said.total(counter);
      const due = dues.find((one) => one.by === "counter" && one.counter.id === counter);
      return done === undefined || due?.by !== "counter" ? done : Math.min(done, due.at);
    },
  };
}

/** Where each limit of an item ends, from what was last done about it. */
export function duesOf(
  item: Item,
  dones: readonly Done[],
  state: AircraftState,
  book: Book,
): readonly LimitDue[] {
  const inOrder = dones.toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0)); // stable
  const base = baseOf(item, inOrder, state, book);
  return item.limits.map((limit) => dueOf(limit, base, book));
}
