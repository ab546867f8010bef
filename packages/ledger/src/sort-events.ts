import type { LedgerEvent } from "./event.ts";
import { compareEvents } from "./order.ts";

/** Below this a plain sort is as quick. */
const FEW = 2000;

/**
 * Events in ledger order, as a new array.
 *
 * Comparing texts is most of the price of folding a long ledger that comes in any order, so events are first sorted
 * by a number: coarse time × count + position, which a typed array sorts without a comparator. Events of one coarse
 * time, which are few, are then put in order among themselves.
 */
export function sortEvents(events: readonly LedgerEvent[]): LedgerEvent[] {
  if (isSorted(events)) return events.slice();
  const keys = events.length < FEW ? null : coarseKeys(events);
  if (keys === null) return events.toSorted(compareEvents);
  const count = events.length;
  const sorted: LedgerEvent[] = [];
  let runFrom = 0;
  let runTime = -1;
  for (const key of keys.sort()) {
    const event = events[key % count];
    const time = Math.floor(key / count);
    if (time !== runTime) {
      sortFrom(sorted, runFrom);
      runFrom = sorted.length;
      runTime = time;
    }
    if (event !== undefined) sorted.push(event);
  }
  sortFrom(sorted, runFrom);
  return sorted;
}

/** Puts the events from a position to the end in order among themselves. */
function sortFrom(sorted: LedgerEvent[], from: number): void {
  if (sorted.length - from < 2) return;
  const run = sorted.splice(from).sort(compareEvents);
  for (const event of run) sorted.push(event);
}

const STAMP_LENGTH = 21;

/** `null` when a stamp is not one, as in events that did not come through the boundary. */
function coarseKeys(events: readonly LedgerEvent[]): Float64Array | null {
  const times_ms = new Float64Array(events.length);
  for (const [at, { hlc }] of events.entries()) {
    times_ms[at] = hlc.length === STAMP_LENGTH ? Number(hlc.slice(0, 15)) : Number.NaN;
  }
  let low_ms = Number.POSITIVE_INFINITY;
  let high_ms = Number.NEGATIVE_INFINITY;
  for (const time_ms of times_ms) {
    if (Number.isNaN(time_ms)) return null;
    low_ms = Math.min(low_ms, time_ms);
    high_ms = Math.max(high_ms, time_ms);
  }
  // As fine as whole numbers allow: one phone with a clock of the year 9999 makes it some seconds.
  const step_ms = Math.max(1, Math.ceil(((high_ms - low_ms + 1) * events.length) / 2 ** 52));
  return times_ms.map((time_ms, at) => Math.floor((time_ms - low_ms) / step_ms) * events.length + at);
}

export function isSorted(events: readonly LedgerEvent[]): boolean {
  let before: LedgerEvent | undefined;
  for (const event of events) {
    if (before !== undefined && compareEvents(before, event) > 0) return false;
    before = event;
  }
  return true;
}
