import {
  type AircraftState,
  advance,
  compareEvents,
  compareOrder,
  emptyState,
  fold,
  hlcTime_ms,
  isKnownEvent,
  type LedgerEvent,
} from "@witnessmark/ledger";

/** How many of the latest events stay loose, so that one that comes late finds its place without a new start. */
export const TAIL_KEPT = 1_000;
/** How much longer than that the tail grows before it is cut. */
const GROWTH = 3;

/**
 * The state of one aircraft in memory: folded up to some event (`base`), and the events after it (`tail`), which can
 * be folded again at little cost. Always equal to a fold of all its events.
 */
export interface LedgerMemory {
  readonly base: AircraftState;
  /** In ledger order, all after `base`. */
  readonly tail: readonly LedgerEvent[];
  /** Every withdrawal of the aircraft, wherever it stands. */
  readonly withdrawals: readonly LedgerEvent[];
  readonly state: AircraftState;
}

const isWithdrawal = (event: LedgerEvent): boolean => event.type === "event.withdrawn" && isKnownEvent(event);

export const emptyMemory = (aircraft: string): LedgerMemory => ({
  base: emptyState(aircraft),
  tail: [],
  withdrawals: [],
  state: emptyState(aircraft),
});

/**
 * Folds events that come after everything in `state`, when it is known which ones do not count.
 *
 * @param inOrder in ledger order
 * @param withdrawn ids of all events of the aircraft that a withdrawal took back
 */
export function foldOnto(
  state: AircraftState,
  inOrder: readonly LedgerEvent[],
  withdrawn: ReadonlySet<string>,
): AircraftState {
  const last = inOrder.at(-1);
  if (last === undefined) return state.withdrawn === withdrawn ? state : { ...state, withdrawn };
  const counting = inOrder.filter((event) => !isWithdrawal(event) && !withdrawn.has(event.id));
  const advanced = advance({ ...state, withdrawn }, counting);
  if (advanced === undefined) {
    throw new Error(
      `fold of ${last.aircraft}: expected events after ${JSON.stringify(state.upTo)} in ledger order, received ${inOrder[0]?.id}`,
    );
  }
  const heads = new Map(state.heads);
  for (const { device, deviceSeq } of inOrder) {
    if (deviceSeq > (heads.get(device) ?? 0)) heads.set(device, deviceSeq);
  }
  return {
    ...advanced,
    aircraft: last.aircraft,
    heads,
    withdrawn,
    upTo: { hlc: last.hlc, device: last.device, deviceSeq: last.deviceSeq },
    eventCount: state.eventCount + inOrder.length,
  };
}

/** Which events do not count, from every withdrawal of the aircraft. */
export const withdrawnBy = (withdrawals: readonly LedgerEvent[]): ReadonlySet<string> =>
  fold(withdrawals).withdrawn;

/** Builds the memory from a folded base and what comes after it. The base must have known the same withdrawals. */
export function memoryOf(
  base: AircraftState,
  tail: readonly LedgerEvent[],
  withdrawals: readonly LedgerEvent[],
): LedgerMemory {
  const inOrder = [...tail].sort(compareEvents);
  return { base, tail: inOrder, withdrawals, state: foldOnto(base, inOrder, withdrawnBy(withdrawals)) };
}

/**
 * Takes in new events, of no id that it has seen.
 *
 * @returns `undefined` when only a new start from the storage can tell: one of them belongs before the base, or takes
 *   back something there
 */
export function addEvents(memory: LedgerMemory, events: readonly LedgerEvent[]): LedgerMemory | undefined {
  const { base, tail, state } = memory;
  const upTo = base.upTo;
  if (upTo !== null && events.some((event) => compareOrder(event, upTo) <= 0)) return undefined;

  const inOrder = [...events].sort(compareEvents);
  const first = inOrder[0];
  if (first === undefined) return memory;
  const newTail = [...tail, ...inOrder];
  const taken = inOrder.filter(isWithdrawal);
  const isAfter = state.upTo === null || compareOrder(first, state.upTo) > 0;
  if (taken.length === 0 && isAfter) {
    return { ...memory, tail: newTail, state: foldOnto(state, inOrder, state.withdrawn) };
  }
  newTail.sort(compareEvents);
  const withdrawals = [...memory.withdrawals, ...taken];
  if (taken.length > 0 && !fits(base, newTail, withdrawnBy(withdrawals))) return undefined;
  return memoryOf(base, newTail, withdrawals);
}

/** Whether a base folded with other withdrawals is still right: what differs must all stand in the tail. */
export function fits(
  base: AircraftState,
  tail: readonly LedgerEvent[],
  withdrawn: ReadonlySet<string>,
): boolean {
  const loose = new Set(tail.map((event) => event.id));
  return (
    [...withdrawn].every((id) => base.withdrawn.has(id) || loose.has(id)) &&
    [...base.withdrawn].every((id) => withdrawn.has(id) || loose.has(id))
  );
}

/**
 * Moves the base forward when the tail has grown long. Events of the future stay loose: whatever is made until then
 * sorts before them.
 *
 * @returns the same memory when there is nothing to move
 */
export function shorten(memory: LedgerMemory, now_ms: number, kept = TAIL_KEPT): LedgerMemory {
  const { base, tail, withdrawals, state } = memory;
  if (tail.length <= GROWTH * kept) return memory;
  let end = 0;
  for (const event of tail.slice(0, tail.length - kept)) {
    if (hlcTime_ms(event.hlc) > now_ms) break;
    end++;
  }
  if (end === 0) return memory;
  return {
    base: foldOnto(base, tail.slice(0, end), state.withdrawn),
    tail: tail.slice(end),
    withdrawals,
    state,
  };
}
