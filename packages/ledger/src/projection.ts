import type { LedgerEvent } from "./event.ts";
import { arrange, emptyState, foldInOrder } from "./fold/fold.ts";
import { importOf, isWithdrawal, type Withdrawal, withdrawnIds } from "./fold/withdrawals.ts";
import { compareEvents } from "./order.ts";
import type { AircraftState } from "./state.ts";

/** A state on the way: after the first `count` events. */
interface Mark {
  readonly count: number;
  readonly state: AircraftState;
}

/**
 * The state of one aircraft, kept up to date as events come in: in any order, also late ones and withdrawals. Equal
 * to a fold of everything at every moment, at the price of folding what comes after the earliest event concerned:
 * earlier states are kept at growing distances, which costs little since they share what did not change.
 */
export class Projection {
  readonly #aircraft: string;
  #inOrder: LedgerEvent[] = [];
  #byId = new Map<string, LedgerEvent>();
  /** Events that lost their id to another, kept so that the conflict stays told. */
  #dropped: LedgerEvent[] = [];
  #withdrawals: Withdrawal[] = [];
  #marks: Mark[] = [];
  #state: AircraftState;

  constructor(aircraft: string, events: readonly LedgerEvent[] = []) {
    this.#aircraft = aircraft;
    this.#state = emptyState(aircraft);
    this.add(events);
  }

  get state(): AircraftState {
    return this.#state;
  }

  /** Each event once, in ledger order; withdrawn ones are among them. */
  get events(): readonly LedgerEvent[] {
    return this.#inOrder;
  }

  /**
   * Takes in events, new ones and ones already here, and returns the state after all of them.
   *
   * @throws {Error} when an event is of another aircraft; nothing is taken in then
   */
  add(events: readonly LedgerEvent[]): AircraftState {
    const foreign = events.find((event) => event.aircraft !== this.#aircraft);
    if (foreign !== undefined) {
      throw new Error(
        `projection: expected events of ${this.#aircraft}, received ${foreign.id} of ${foreign.aircraft}`,
      );
    }
    const unseen = events.filter((event) => this.#byId.get(event.id)?.hash !== event.hash);
    if (unseen.length === 0) return this.#state;
    const isPlain = this.#byId.size > 0 && !unseen.some(({ id }) => this.#byId.has(id));
    const { inOrder: added, conflicts } = isPlain ? arrange(unseen) : NOTHING;
    if (isPlain && conflicts.length === 0) this.#insert(added);
    else this.#startAgain(unseen);
    return this.#state;
  }

  #insert(added: readonly LedgerEvent[]): void {
    let from = placeOf(this.#inOrder, added[0]);
    const isAtEnd = from === this.#inOrder.length;
    const later = isAtEnd ? [] : this.#inOrder.splice(from);
    const tail = isAtEnd ? added : [...later, ...added].sort(compareEvents);
    for (const event of tail) this.#inOrder.push(event);
    for (const event of added) this.#byId.set(event.id, event);

    let withdrawn = this.#state.withdrawn;
    if (added.some(isWithdrawal)) {
      this.#withdrawals = this.#withdrawals.concat(added.filter(isWithdrawal));
      withdrawn = withdrawnIds(this.#withdrawals);
      for (const id of withdrawn.symmetricDifference(this.#state.withdrawn)) {
        const changed = this.#byId.get(id);
        const at =
          changed === undefined
            ? this.#inOrder.findIndex((event) => importOf(event) === id)
            : placeOf(this.#inOrder, changed);
        if (at >= 0) from = Math.min(from, at);
      }
    }
    this.#foldFrom(from, withdrawn);
  }

  /** Everything from the beginning; also when two events have one id, which may change what counts anywhere. */
  #startAgain(unseen: readonly LedgerEvent[]): void {
    const all = [...this.#inOrder, ...this.#dropped, ...unseen];
    const { inOrder, conflicts } = arrange(all);
    this.#inOrder = inOrder.slice();
    this.#byId = new Map(inOrder.map((event) => [event.id, event]));
    this.#dropped =
      conflicts.length === 0 ? [] : all.filter(({ id, hash }) => this.#byId.get(id)?.hash !== hash);
    this.#withdrawals = inOrder.filter(isWithdrawal);
    this.#marks = [];
    this.#state = { ...emptyState(this.#aircraft), conflicts };
    this.#foldFrom(0, withdrawnIds(this.#withdrawals));
  }

  /** Folds again from a position in order on, starting at the nearest state kept before it. */
  #foldFrom(from: number, withdrawn: ReadonlySet<string>): void {
    const { conflicts, eventCount } = this.#state;
    if (eventCount <= from) this.#marks.push({ count: eventCount, state: this.#state });
    this.#marks = this.#marks.filter((mark) => mark.count <= from);
    const start = this.#marks.at(-1) ?? { count: 0, state: emptyState(this.#aircraft) };
    let { count } = start;
    let state: AircraftState = { ...start.state, conflicts };
    const end = this.#inOrder.length;
    for (const stop of [...MARKS_BEFORE_END.map((distance) => end - distance), end]) {
      if (stop <= count) continue;
      state = foldInOrder(state, this.#inOrder.slice(count, stop), withdrawn);
      count = stop;
      if (stop < end) this.#marks.push({ count, state });
    }
    this.#state = state;
    this.#marks = thinned(this.#marks, end);
  }
}

const NOTHING = { inOrder: [], conflicts: [] } as const;

/** Where states are kept in a fold of many events: a late event is seldom late by much. */
const MARKS_BEFORE_END = [16_384, 2048, 256, 32];

/** At most two states for each doubling of the distance from the end: the earliest and the latest. */
function thinned(marks: readonly Mark[], end: number): Mark[] {
  const bands = Map.groupBy(marks, ({ count }) => Math.floor(Math.log2(end - count + 1)));
  return [...bands.values()].flatMap((band) => {
    const [first] = band;
    const last = band.at(-1);
    return first === undefined || last === undefined ? [] : first === last ? [first] : [first, last];
  });
}

/** The position of the first event that is not before this one. */
function placeOf(inOrder: readonly LedgerEvent[], event: LedgerEvent | undefined): number {
  if (event === undefined) return inOrder.length;
  let low = 0;
  let high = inOrder.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    const at = inOrder[middle];
    if (at !== undefined && compareEvents(at, event) < 0) low = middle + 1;
    else high = middle;
  }
  return low;
}
