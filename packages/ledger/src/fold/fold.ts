import type { LedgerEvent } from "../event.ts";
import { compareOrder } from "../order.ts";
import { sortEvents } from "../sort-events.ts";
import type { AircraftState, Conflict } from "../state.ts";
import { applyEvent } from "./apply.ts";
import { Draft } from "./draft.ts";
import { isCounted, isWithdrawal, withdrawnIds } from "./withdrawals.ts";

/** The state of an aircraft of which nothing is known. */
export const emptyState = (aircraft: string): AircraftState => ({
  aircraft,
  upTo: null,
  eventCount: 0,
  archived: false,
  books: [],
  heads: new Map(),
  devices: new Map(),
  walks: new Map(),
  checks: new Map(),
  answersByWalk: new Map(),
  happenings: [],
  groundGear: new Map(),
  discrepancies: new Map(),
  flights: new Map(),
  decisions: [],
  timedDone: new Map(),
  timedAdded: new Map(),
  timedDropped: new Map(),
  counters: new Map(),
  componentMoves: [],
  flightsMade: [],
  servicings: [],
  parkings: [],
  experiences: [],
  evidenceDeclined: [],
  photos: [],
  notes: [],
  unknown: [],
  withdrawn: new Set(),
  unplaced: new Map(),
  conflicts: [],
});

/**
 * The state of one aircraft from all its events, in any order, any of them any number of times. Pure; what it is
 * given is not changed. Hashes are not checked here: two events with one id and one hash are taken to be the same.
 *
 * @throws {Error} when the events are not all of one aircraft
 */
export function fold(events: readonly LedgerEvent[]): AircraftState {
  const { inOrder, conflicts } = arrange(events);
  const state = { ...emptyState(events[0]?.aircraft ?? ""), conflicts };
  return foldInOrder(state, inOrder, withdrawnIds(inOrder.filter(isWithdrawal)));
}

/**
 * The state after further events, at the price of those alone; equal to a fold of everything, and sharing with
 * `state` what did not change. The events must be new: of no id that `state` has seen.
 *
 * @returns `undefined` when only a fold of everything can tell: an event is not after everything in `state`, or
 *   withdraws another
 * @throws {Error} when an event is of another aircraft
 */
export function advance(state: AircraftState, events: readonly LedgerEvent[]): AircraftState | undefined {
  if (events.length === 0) return state;
  const { inOrder, conflicts } = arrange(events);
  const first = inOrder[0];
  if (first === undefined || (state.upTo !== null && compareOrder(first, state.upTo) <= 0)) return undefined;
  if (conflicts.length > 0 || inOrder.some(isWithdrawal)) return undefined;
  const from = state.eventCount === 0 ? { ...state, aircraft: first.aircraft } : state;
  return foldInOrder(from, inOrder, state.withdrawn);
}

/** Each event once, in ledger order; of two with one id the one with the lower hash. */
export function arrange(events: readonly LedgerEvent[]): {
  readonly inOrder: readonly LedgerEvent[];
  readonly conflicts: readonly Conflict[];
} {
  const byId = new Map<string, LedgerEvent>();
  const lowest = new Map<string, Set<string>>();
  for (const event of events) {
    const other = byId.get(event.id);
    if (other === undefined) {
      byId.set(event.id, event);
    } else if (other.hash !== event.hash) {
      const hashes = lowest.get(event.id) ?? new Set([other.hash]);
      lowest.set(event.id, hashes.add(event.hash));
      if (event.hash < other.hash) byId.set(event.id, event);
    }
  }
  const once = byId.size === events.length ? events : [...byId.values()];
  return { inOrder: sortEvents(once), conflicts: conflictsOf(lowest) };
}

function conflictsOf(hashesById: ReadonlyMap<string, ReadonlySet<string>>): readonly Conflict[] {
  return [...hashesById]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([event, hashes]) => {
      const [keptHash = "", ...dropped] = [...hashes].sort();
      return dropped.map((droppedHash) => ({ event, keptHash, droppedHash }));
    });
}

/** Folds arranged events that all come after `from` onto it. */
export function foldInOrder(
  from: AircraftState,
  inOrder: readonly LedgerEvent[],
  withdrawn: ReadonlySet<string>,
): AircraftState {
  const last = inOrder.at(-1);
  if (last === undefined) return { ...from, withdrawn };
  const draft = new Draft({ ...from, withdrawn });
  const heads = draft.map("heads");
  for (const event of inOrder) {
    if (event.aircraft !== from.aircraft) {
      throw new Error(
        `fold: expected events of ${from.aircraft} only, found ${event.id} of ${event.aircraft}; fold each aircraft by itself`,
      );
    }
    if (event.deviceSeq > (heads.get(event.device) ?? 0)) heads.set(event.device, event.deviceSeq);
    if (isCounted(event, withdrawn)) applyEvent(draft, event);
  }
  draft.state.upTo = { hlc: last.hlc, device: last.device, deviceSeq: last.deviceSeq };
  draft.state.eventCount += inOrder.length;
  return draft.state;
}
