import type { Book, Counter, TimedItem, TimedLimit } from "@witnessmark/book";
import { addDays, addMonths, airacCycleOn, endOfMonthAfter, InputError } from "@witnessmark/engine";
import type { AddedItem, AircraftState, Done, LocalDate } from "@witnessmark/ledger";
import { type ComponentAboard, componentAboard, donesOfAboard } from "./component-aboard.ts";
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
  /** The last day, where the paper itself says so. */
  readonly until?: LocalDate | undefined;
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
  if (limit.by === "date")
    return base?.until === undefined
      ? { by: "date", limit, on: limit.on }
      : { by: "date", limit, on: base.until, from: base.on };
  if (limit.by === "printed" && base?.until === undefined)
    return { by: "unknown", limit, lacks: "the last day that is printed on it" };
  if (base === undefined) return { by: "unknown", limit, lacks: "when it was last done" };
  const { on: from, until } = base;
  // a day that the paper itself gives is never stretched by the interval
  const to = (on: LocalDate): LimitDue => ({
    by: "date",
    limit,
    on: until !== undefined && until < on ? until : on,
    from,
  });
  switch (limit.by) {
    case "calendar-months":
      return to(endOfMonthAfter(from, limit.months));
    case "months":
      return to(addMonths(from, limit.months));
    case "days":
      return to(addDays(from, limit.days));
    case "data-cycle":
      return to(airacCycleOn(from).to);
    case "printed":
      return to(until ?? from);
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
function baseOf(
  item: Item,
  dones: readonly Done[],
  state: AircraftState,
  book: Book,
  aboard: ComponentAboard | undefined,
): Base | undefined {
  const tolerance = toleranceOf(item);
  let base: Base | undefined;
  for (const done of dones) {
    const said: Base = {
      on: done.on,
      until: done.until,
      total: (counter) => {
        const shown = done.counters[counter];
        if (shown === undefined) return undefined;
        if (done.serial === undefined) return totalWhenShown(state, counter, shown, done.on);
        const began = aboard?.began(counter);
        return began === undefined ? undefined : began + shown;
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
    until: said.until,
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
  const aboard = item.component === undefined ? undefined : componentAboard(state, item.component);
  if (aboard?.isFitted === false) {
    const lacks = `which one is fitted: number ${aboard.serial} was removed on ${aboard.on}`;
    return item.limits.map((limit) => ({ by: "unknown", limit, lacks }));
  }
  const counted = aboard === undefined ? dones : donesOfAboard(dones, aboard);
  const inOrder = counted.toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0)); // stable
  const base = baseOf(item, inOrder, state, book, aboard);
  return item.limits.map((limit) => {
    // a life is counted from when the component was new, whatever was done to it since
    const began = item.endsLife && limit.by === "counter" ? aboard?.began(limit.counter) : undefined;
    if (aboard !== undefined && began !== undefined)
      return dueOf(limit, { on: aboard.on, total: () => began }, book);
    return item.endsLife && limit.by === "counter" && aboard !== undefined
      ? { by: "unknown", limit, lacks: `what number ${aboard.serial} had run when it was fitted` }
      : dueOf(limit, base, book);
  });
}
