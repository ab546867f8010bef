import {
  type CoverProblem,
  coverCost,
  type ReadyCover,
  readyCover,
  type Visit,
  visitsOf,
} from "./cover-problem.ts";
import { LeastFirst } from "./least-first.ts";
import { treeBound } from "./tree-bound.ts";

export interface ProofOptions {
  /** The proof ends when the bound is within this share of the best known. */
  readonly target_1: number;
  /** States looked at, at most. */
  readonly states: number;
  readonly shouldStop?: (bound: number, best: number) => boolean;
}

export interface Proof {
  /** No way of doing everything costs less. */
  readonly bound: number;
  /** The best known: what was given, or better where the search met it. */
  readonly visits: readonly Visit[];
  readonly cost: number;
  readonly states: number;
}

interface State {
  readonly stance: number;
  readonly done: Uint8Array;
  readonly paid: number;
  readonly before: State | undefined;
}

const ASK_EVERY = 256;
const ROUNDING = 1e-9;

/**
 * A lower bound for a walk that does everything, by looking at the states of a walk (where one stands, what is done)
 * in the order of what they must cost at least. The least of those not yet looked at is a bound at any moment, so that
 * the proof can end early and still tell no more than it knows.
 */
export function proveCover(given: CoverProblem, visits: readonly Visit[], options: ProofOptions): Proof {
  const problem = readyCover(given);
  let row = visits.map(({ stance }) => stance);
  let best = coverCost(problem, row);
  const bounds = treeBound(problem, best);
  const open = new LeastFirst<State>();
  const paidAt = new Map<string, number>();
  let bound = Math.min(bounds.root, best);
  let looked = 0;
  const isLeft = new Uint8Array(bounds.picked.length);

  const add = (state: State, atLeast: number): void => {
    const key = `${state.stance} ${packed(state.done)}`;
    const known = paidAt.get(key);
    if (known !== undefined && known <= state.paid + ROUNDING) return;
    paidAt.set(key, state.paid);
    for (const [i, task] of bounds.picked.entries()) isLeft[i] = 1 - (state.done[task] ?? 0);
    const total = Math.max(atLeast, state.paid + bounds.from(state.stance, isLeft, packed(isLeft)));
    if (total < best - ROUNDING) open.add(total, state);
  };
  add({ stance: 0, done: new Uint8Array(problem.tasks.length), paid: 0, before: undefined }, bound);

  for (;;) {
    const next = open.take();
    if (next === undefined) {
      bound = best;
      break;
    }
    bound = Math.min(Math.max(bound, next.key), best);
    if (bound >= best * (1 - options.target_1)) break;
    if (looked >= options.states) break;
    if (looked % ASK_EVERY === 0 && options.shouldStop?.(bound, best) === true) break;
    looked += 1;
    const state = next.item;
    if (paidAt.get(`${state.stance} ${packed(state.done)}`) !== state.paid) continue; // reached cheaper since
    for (let stance = 0; stance < problem.stances; stance += 1) {
      const { done, count } = doneAt(problem, stance, state.done);
      if (count === 0) continue;
      const paid = state.paid + (problem.cost[state.stance * problem.stances + stance] ?? 0);
      const after: State = { stance, done, paid, before: state };
      if (done.includes(0)) {
        add(after, next.key);
        continue;
      }
      const whole = paid + (problem.cost[stance * problem.stances + problem.stances - 1] ?? 0);
      if (whole < best - ROUNDING) {
        best = whole;
        row = rowOf(after);
      }
      // an end counts among what is open: below it nothing is proven
    }
  }
  return { bound: Math.min(bound, best), visits: visitsOf(problem, row).visits, cost: best, states: looked };
}

function doneAt({ tasksAt, tasks }: ReadyCover, stance: number, before: Uint8Array) {
  let done = before;
  let count = 0;
  for (const task of tasksAt[stance] ?? []) {
    if (done[task] === 1 || !tasks[task]?.after.every((one) => done[one] === 1)) continue;
    if (count === 0) done = before.slice();
    done[task] = 1;
    count += 1;
  }
  return { done, count };
}

function rowOf(end: State): number[] {
  const row: number[] = [];
  for (let state: State | undefined = end; state !== undefined; state = state.before)
    row.unshift(state.stance);
  return row;
}

/** Ones and zeros as a short text. */
function packed(bits: Uint8Array): string {
  let text = "";
  for (let from = 0; from < bits.length; from += 16) {
    let word = 0;
    for (let i = from; i < Math.min(from + 16, bits.length); i += 1) word = word * 2 + (bits[i] ?? 0);
    text += String.fromCharCode(word);
  }
  return text;
}
