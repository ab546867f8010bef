import type { Book } from "@witnessmark/book";
import { addDays, addMonths, endOfMonthAfter, startOfMonthBefore } from "@witnessmark/engine";
import type { AircraftState, LocalDate } from "@witnessmark/ledger";
import { isSameCategory, isSameKind } from "../rules/pilot/aircraft-class.ts";
import { offsetOf_min } from "../words/local-time.ts";
import type { Item } from "./due.ts";
import { localDayOf } from "./local-day.ts";

/** How often somebody did what counts, on one day. */
interface Deed {
  readonly on: LocalDate;
  readonly count: number;
  readonly event: string;
  /** Whether it is certain that it counts for this aircraft: the class of another is as its pilot said it. */
  readonly sure: boolean;
}

/** What a pilot has of an item that asks for so many within so long. */
export interface Recency {
  readonly have: number;
  /** What more would count if it was on the right class of aircraft, which was not said. */
  readonly unsure: number;
  readonly need: number;
  /** The last day on which enough still count; undefined while there are too few. */
  readonly goodThrough: LocalDate | undefined;
  readonly evidence: readonly string[];
  /** Whether anything that counts is on this record at all, however long ago. */
  readonly isOnRecord: boolean;
}

type Counts = NonNullable<Item["counts"]>;

const counted = (
  what: Counts,
  deed: {
    readonly day: number;
    readonly night: number;
    readonly nightFullStop: number;
    readonly dayFullStop?: number;
    readonly approaches: number;
    /** Whether it was an aircraft with a tail-wheel. */
    readonly tailwheel: boolean;
  },
): number => {
  switch (what) {
    case "landings":
      return deed.day + deed.night;
    case "night-landings":
      return deed.nightFullStop; // touch-and-go does not count at night
    case "tailwheel-landings":
      // by day and by night to a full stop; where nobody said that they were, they do not count
      return deed.tailwheel ? (deed.dayFullStop ?? 0) + deed.nightFullStop : 0;
    case "approaches":
      return deed.approaches;
    default:
      return what satisfies never;
  }
};

/** What a pilot did that counts: on this aircraft as its ledger has it, and elsewhere as they said. */
function deedsOf(
  state: AircraftState,
  person: string,
  { counts: what, rule }: Item & { readonly counts: Counts },
  book: Pick<Book, "aircraft">,
): readonly Deed[] {
  const tailwheelHere = book.aircraft.gear === "tail-wheel";
  const rules = rule?.includes("CFR") === true ? "us" : "europe";
  const isSame = (words: string): boolean | "unknown" =>
    what === "approaches" ? isSameCategory(words, book) : isSameKind(words, book, rules);
  const here = state.flightsMade
    .filter(({ pilot }) => pilot === person) // one of which nobody says who flew it counts for nobody
    .map(({ landing, landings, approaches, event }) => ({
      on: localDayOf(Date.parse(landing), offsetOf_min(landing)),
      count: counted(what, { ...landings, approaches: approaches ?? 0, tailwheel: tailwheelHere }),
      event,
      sure: true,
    }));
  const elsewhere = state.experiences
    .filter((experience) => experience.person === person && isSame(experience.class) !== false)
    .map(({ on, dayLandings: day, nightLandings: night, event, ...deed }) => ({
      on,
      count: counted(what, { day, night, ...deed }),
      event,
      sure: isSame(deed.class) === true,
    }));
  return [...here, ...elsewhere].filter(({ count }) => count > 0).toSorted((a, b) => (a.on < b.on ? 1 : -1));
}

/** The first day that counts for a flight on a day, and the last day on which something of a day still counts. */
function windowOf(
  item: Item,
  on: LocalDate,
): { readonly from: LocalDate; readonly through: (day: LocalDate) => LocalDate } | undefined {
  for (const limit of item.limits) {
    // a landing on a day counts through that day and so many more
    if (limit.by === "days")
      return { from: addDays(on, -limit.days), through: (day) => addDays(day, limit.days) };
    if (limit.by === "calendar-months")
      return {
        from: startOfMonthBefore(on, limit.months),
        through: (day) => endOfMonthAfter(day, limit.months),
      };
    if (limit.by === "months")
      return { from: addMonths(on, -limit.months), through: (day) => addMonths(day, limit.months) };
  }
  return undefined;
}

/** Undefined for an item that counts nothing, or has no span to count in. */
export function recencyOf(
  item: Item,
  state: AircraftState,
  person: string,
  on: LocalDate,
  book: Pick<Book, "aircraft">,
): Recency | undefined {
  const window = windowOf(item, on);
  const { counts } = item;
  if (counts === undefined || window === undefined) return undefined;
  const need = item.atLeast ?? 1;
  const deeds = deedsOf(state, person, { ...item, counts }, book);
  const within = deeds.filter((deed) => deed.on >= window.from && deed.on <= on);
  let have = 0;
  let goodThrough: LocalDate | undefined;
  let unsure = 0;
  for (const deed of within) {
    if (!deed.sure) {
      unsure += deed.count;
      continue;
    }
    have += deed.count;
    // when this one, so far back, counts no more there are too few
    if (goodThrough === undefined && have >= need) goodThrough = window.through(deed.on);
  }
  return {
    have,
    unsure,
    need,
    goodThrough,
    evidence: within.map(({ event }) => event),
    isOnRecord: deeds.length > 0,
  };
}
