import type { Book, Counter } from "@witnessmark/book";
import {
  addDays,
  addMonths,
  civilNights,
  daysBetween,
  fromSI,
  passengerRecencyNights,
} from "@witnessmark/engine";
import type { AircraftState, Done, LocalDate, PlannedFlight } from "@witnessmark/ledger";
import { isOfAnyKind, natureOfFlight } from "../flight/kinds-of-flight.ts";
import type { LocalClock } from "../words/local-time.ts";
import { type ComponentAboard, componentAboard, donesOfAboard } from "./component-aboard.ts";
import { duesOf, type Item, type LimitDue, toleranceOf } from "./due.ts";
import { localDayOf } from "./local-day.ts";
import { type Recency, recencyOf } from "./recency.ts";
import { countedNow, hasFlownSinceRead, type UseOfFlight, useOfFlight } from "./use-of-flight.ts";

/** How far one limit is from its end, now and when the planned flight is over. */
export type LimitLeft =
  | {
      readonly by: "date";
      readonly on: LocalDate;
      readonly from?: LocalDate;
      /** Days after today on which it is still good; 0 on its last day. */
      readonly left_d: number;
      readonly past: boolean;
      readonly pastAfterFlight: boolean | undefined;
      /** The day on which the flight that it does not last for ends. */
      readonly flightEndsOn?: LocalDate;
    }
  | {
      readonly by: "counter";
      readonly counter: Counter;
      readonly at: number;
      readonly from: number;
      readonly now: number;
      /** In the counter's unit; 0 is within it. */
      readonly left: number;
      readonly past: boolean;
      readonly pastAfterFlight: boolean | undefined;
      /** Where it ends during the flight: by how much the flight is too long, and when, if it counts by the hour. */
      readonly ends?: { readonly over: number; readonly at_ms?: number };
    }
  | { readonly by: "unknown"; readonly lacks: string };

/** Whether a limit is kept: for the planned flight, or without one for today. */
export type TimedState = "good" | "ends-in-flight" | "in-tolerance" | "past" | "unknown";

/** One thing that runs out, for one aircraft, one flight and one moment. */
export interface TimedFigure {
  readonly item: Item;
  readonly isInBook: boolean;
  readonly last: Done | undefined;
  readonly limits: readonly LimitLeft[];
  /** The limit that decides: the nearest, or where the later counts the farthest. */
  readonly nearest: LimitLeft | undefined;
  readonly state: TimedState;
  /** Whether the flight is of a kind that needs it; undefined where that is not known. */
  readonly needed: boolean | undefined;
  readonly recency?: Recency;
  /** The component that it is about, where it was written down which one is fitted. */
  readonly aboard?: ComponentAboard;
}

/** A billionth of an hour is a conversion's, not a flight's. */
const ROUNDING = 1e-9;

/** No flight takes so many days: what is good for longer is good at its end, also where its time is not said. */
const LONGEST_FLIGHT_d = 2;

/** Whether a day is past when the flight ends; undefined where that hangs on a time that is not said. */
function isPastAfter({ beginsOn, endsOn }: UseOfFlight, on: LocalDate): boolean | undefined {
  if (endsOn !== undefined) return on < endsOn;
  if (on < beginsOn) return true;
  return on < addDays(beginsOn, LONGEST_FLIGHT_d) ? undefined : false;
}

function leftOf(
  due: LimitDue,
  today: LocalDate,
  flight: UseOfFlight | undefined,
  state: AircraftState,
): LimitLeft {
  switch (due.by) {
    case "unknown":
      return { by: "unknown", lacks: due.lacks };
    case "date": {
      return {
        by: "date",
        on: due.on,
        ...(due.from === undefined ? {} : { from: due.from }),
        left_d: daysBetween(today, due.on),
        past: due.on < today,
        pastAfterFlight: flight === undefined ? due.on < today : isPastAfter(flight, due.on),
        ...(flight?.endsOn === undefined ? {} : { flightEndsOn: flight.endsOn }),
      };
    }
    case "counter": {
      const now = countedNow(state, due.counter.id);
      if (now === undefined) return { by: "unknown", lacks: `what ${due.counter.name} shows` };
      const past = now > due.at + ROUNDING;
      // it has gone on since it was read: what is over stays over, what was left may be gone
      if (!past && hasFlownSinceRead(state, due.counter.id))
        return { by: "unknown", lacks: `what ${due.counter.name} shows after the last flight` };
      const adds = flight === undefined ? 0 : flight.adds(due.counter);
      return {
        by: "counter",
        counter: due.counter,
        at: due.at,
        from: due.from,
        now,
        left: due.at - now,
        past,
        pastAfterFlight: adds === undefined ? undefined : now + adds > due.at + ROUNDING,
        ...(flight === undefined || adds === undefined || past || now + adds <= due.at + ROUNDING
          ? {}
          : { ends: endsIn(flight, due, now, adds) }),
      };
    }
    default:
      return due satisfies never;
  }
}

/** By how much a flight is too long for what is left by a counter, and when that is used up. */
const endsIn = (
  flight: UseOfFlight,
  due: Extract<LimitDue, { by: "counter" }>,
  now: number,
  adds: number,
): { readonly over: number; readonly at_ms?: number } => ({
  over: now + adds - due.at,
  ...(due.counter.unit === "h" ? { at_ms: flight.takeOff_ms + (due.at - now) * HOUR_MS } : {}),
});

const HOUR_MS = 3_600_000;

/** How near a limit is to its end, as a share of its interval, so that days and hours can be compared. */
function share(left: LimitLeft): number {
  switch (left.by) {
    case "unknown":
      return 0;
    case "date":
      return left.left_d / Math.max(1, left.from === undefined ? 365 : daysBetween(left.from, left.on));
    case "counter":
      return left.left / Math.max(ROUNDING, left.at - left.from);
    default:
      return left satisfies never;
  }
}

/** Which of two limits of one item ends first: by what is left where both count the same, else by the share that is. */
function nearer(a: LimitLeft, b: LimitLeft): number {
  if (a.by === "date" && b.by === "date") return a.left_d - b.left_d;
  if (a.by === "counter" && b.by === "counter" && a.counter.id === b.counter.id) return a.left - b.left;
  return share(a) - share(b);
}

/** With the tolerance of its rule added, which only a book can grant. */
function withinTolerance(item: Item, left: LimitLeft, today: LocalDate): boolean {
  const tolerance = toleranceOf(item);
  if (tolerance === undefined || item.endsLife) return false;
  if (left.by === "counter") {
    if (tolerance.hours === undefined || left.counter.unit !== "h") return false;
    return left.now <= left.at + fromSI(tolerance.hours.valueSI, "h") + ROUNDING;
  }
  if (left.by !== "date") return false;
  const extended =
    tolerance.months !== undefined
      ? addMonths(left.on, tolerance.months)
      : tolerance.days === undefined
        ? undefined
        : addDays(left.on, tolerance.days);
  return extended !== undefined && today <= extended;
}

function stateOf(item: Item, limits: readonly LimitLeft[], today: LocalDate): TimedState {
  const each = limits.map((left): TimedState => {
    if (left.by === "unknown") return "unknown";
    if (left.past) return withinTolerance(item, left, today) ? "in-tolerance" : "past";
    if (left.pastAfterFlight === undefined) return "unknown";
    return left.pastAfterFlight ? "ends-in-flight" : "good";
  });
  // whichever comes first: the worst of them decides; whichever comes later: one that is good is enough
  const order: readonly TimedState[] =
    item.combine === "first"
      ? ["past", "ends-in-flight", "in-tolerance", "unknown", "good"]
      : ["good", "unknown", "in-tolerance", "ends-in-flight", "past"];
  return order.find((state) => each.includes(state)) ?? "unknown";
}

/** What is good until a day is left so long. */
const dayLeft = (on: LocalDate, today: LocalDate, flight: UseOfFlight | undefined): LimitLeft => ({
  by: "date",
  on,
  left_d: daysBetween(today, on),
  past: on < today,
  pastAfterFlight: flight === undefined ? on < today : on < (flight.endsOn ?? flight.beginsOn),
  ...(flight === undefined ? {} : { flightEndsOn: flight.endsOn ?? flight.beginsOn }),
});

export interface TimedRequest {
  readonly book: Book;
  readonly state: AircraftState;
  readonly flight: PlannedFlight | null;
  readonly clock: LocalClock;
  /** The pilot whose own items are asked for; without one they are not known. */
  readonly pilot: string | undefined;
}

/** Night by any rule of recency: the European one means civil twilight, the American one an hour after sunset. */
const anyNights: typeof civilNights = (place, span) => [
  ...civilNights(place, span),
  ...passengerRecencyNights(place, span),
];

/** Everything that runs out, as the book and the ledger have it, nearest its end first. */
export function timedFigures({ book, state, flight, clock, pilot }: TimedRequest): readonly TimedFigure[] {
  const today = localDayOf(clock.now_ms, clock.offset_min);
  const use = useOfFlight(flight);
  const nature = natureOfFlight(book, flight);
  let dark: typeof nature | undefined;
  const natureFor = ({ neededFor }: Item): typeof nature => {
    if (neededFor?.includes("passengers-by-night") !== true) return nature;
    dark ??= natureOfFlight(book, flight, anyNights);
    return dark;
  };
  const inBook = new Set(book.timedItems.map(({ id }) => id));
  const items: readonly Item[] = [
    ...book.timedItems,
    ...[...state.timedAdded.values()].flatMap(({ item }) => (inBook.has(item.id) ? [] : [item])),
  ];
  return items
    .filter(({ id }) => !state.timedDropped.has(id))
    .map((item): TimedFigure => {
      const all = state.timedDone.get(item.id) ?? [];
      const aboard = item.component === undefined ? undefined : componentAboard(state, item.component);
      const mine = aboard === undefined ? all : donesOfAboard(all, aboard);
      const dones =
        item.about === "pilot" ? mine.filter(({ holder }) => holder === undefined || holder === pilot) : mine;
      const about = {
        item,
        isInBook: inBook.has(item.id),
        needed: item.neededFor === undefined ? true : isOfAnyKind(item.neededFor, natureFor(item)),
        ...(aboard === undefined ? {} : { aboard }),
      };
      const last = dones.toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0)).at(-1);
      if (item.counts !== undefined) {
        return { ...about, last, ...recencyFigure(item, book, state, pilot, today, use) };
      }
      const limits = duesOf(item, dones, state, book).map((due) => leftOf(due, today, use, state));
      const nearest = limits.toSorted((a, b) => (item.combine === "first" ? nearer(a, b) : nearer(b, a)))[0];
      return { ...about, last, limits, nearest, state: stateOf(item, limits, today) };
    })
    .toSorted((a, b) => (a.nearest ? share(a.nearest) : 0) - (b.nearest ? share(b.nearest) : 0));
}

function recencyFigure(
  item: Item,
  book: Book,
  state: AircraftState,
  pilot: string | undefined,
  today: LocalDate,
  use: UseOfFlight | undefined,
): Pick<TimedFigure, "limits" | "nearest" | "state" | "recency"> {
  if (pilot === undefined) {
    const nearest: LimitLeft = { by: "unknown", lacks: "who is the pilot" };
    return { limits: [nearest], nearest, state: "unknown" };
  }
  const recency = recencyOf(item, state, pilot, use?.beginsOn ?? today, book);
  if (recency === undefined) {
    const nearest: LimitLeft = { by: "unknown", lacks: "the days within which it counts" };
    return { limits: [nearest], nearest, state: "unknown" };
  }
  if (recency.goodThrough === undefined) {
    if (recency.have + recency.unsure >= recency.need) {
      const nearest: LimitLeft = {
        by: "unknown",
        lacks: "on which class of aircraft the landings elsewhere were",
      };
      return { limits: [nearest], nearest, state: "unknown", recency };
    }
    // nobody has said anything that counts: that is not known, and not too few
    if (!recency.isOnRecord) {
      const nearest: LimitLeft = { by: "unknown", lacks: "what you did elsewhere that counts for it" };
      return { limits: [nearest], nearest, state: "unknown", recency };
    }
    return { limits: [], nearest: undefined, state: "past", recency };
  }
  const nearest = dayLeft(recency.goodThrough, today, use);
  return { limits: [nearest], nearest, state: stateOf(item, [nearest], today), recency };
}
