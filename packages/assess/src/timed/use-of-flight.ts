import type { Book, Counter } from "@witnessmark/book";
import { fromSI } from "@witnessmark/engine";
import type { AircraftState, LocalDate, PlannedFlight } from "@witnessmark/ledger";
import { TAXI_S } from "../flight/conditions/times.ts";
import { flightTime_s } from "../flight/kinds-of-flight.ts";
import { offsetOf_min } from "../words/local-time.ts";
import { localDayOf } from "./local-day.ts";

/** What a flight adds to what runs out: when it ends, and what it counts. */
export interface UseOfFlight {
  /** The local day of off blocks. */
  readonly beginsOn: LocalDate;
  /** The local day of its landing; undefined while no time is said. */
  readonly endsOn: LocalDate | undefined;
  /** The landing, milliseconds since 1970 UTC. */
  readonly ends_ms: number | undefined;
  /** Hours count from here: time in service is from take-off to landing, and so is the time that is planned. */
  readonly takeOff_ms: number;
  /** How much a counter goes on by the end of it; undefined while no time is said. */
  readonly adds: (counter: Counter) => number | undefined;
}

/** Undefined without a flight, and where its time of departure does not read. */
export function useOfFlight(flight: PlannedFlight | null): UseOfFlight | undefined {
  if (flight === null) return undefined;
  const offBlocks_ms = Date.parse(flight.offBlocks);
  if (Number.isNaN(offBlocks_ms)) return undefined;
  const offset_min = offsetOf_min(flight.offBlocks);
  const time_s = flightTime_s(flight);
  const takeOff_ms = offBlocks_ms + TAXI_S * 1000;
  const ends_ms = time_s === undefined ? undefined : takeOff_ms + time_s * 1000;
  return {
    beginsOn: localDayOf(offBlocks_ms, offset_min),
    takeOff_ms,
    ends_ms,
    endsOn: ends_ms === undefined ? undefined : localDayOf(ends_ms, offset_min),
    // a flight is one landing, one start, one cycle
    adds: ({ unit }) => (unit === "1" ? 1 : time_s === undefined ? undefined : fromSI(time_s, "h")),
  };
}

/** What a counter has counted in all, the last that was said; undefined when nobody has read it. */
export const countedNow = (state: AircraftState, counter: string): number | undefined =>
  state.counters.get(counter)?.at(-1)?.total;

/** Whether a flight is on the record that is younger than the last reading of the counter: it shows more now. */
export function hasFlownSinceRead(state: AircraftState, counter: string): boolean {
  const read_ms = state.counters.get(counter)?.at(-1)?.at_ms;
  if (read_ms === undefined) return false;
  return (
    state.happenings.some(({ kind, at_ms }) => kind === "flown" && at_ms > read_ms) ||
    state.flightsMade.some(({ landing }) => Date.parse(landing) > read_ms)
  );
}

/**
 * What a counter had counted in all when it showed so much: what earlier meters had counted is added, for readings on
 * a day at which the present meter was not yet fitted too.
 */
export function totalWhenShown(state: AircraftState, counter: string, shown: number, on: LocalDate): number {
  const readings = state.counters.get(counter) ?? [];
  const before = readings.findLast(({ at_ms, at }) => localDayOf(at_ms, offsetOf_min(at)) <= on);
  const reference = before ?? readings[0];
  return reference === undefined ? shown : shown + (reference.total - reference.shown);
}

/** The book's counter of this id. */
export const counterOf = (book: Pick<Book, "counters">, id: string): Counter | undefined =>
  book.counters.find((counter) => counter.id === id);
