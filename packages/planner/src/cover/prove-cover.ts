import { type CoverProblem, coverCost, readyCover, type Visit, visitsOf } from "./cover-problem.ts";
import { ProofSearch } from "./proof-search.ts";
import { reversedCover } from "./reversed-cover.ts";

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

/** States looked at in each direction before one is chosen. From trials: the order of the two hardly changes later. */
const TRIAL_STATES = 3000;

/**
 * A lower bound for a walk that does everything, and what better walk the search for it meets. The walk is looked at
 * from its beginning and from its end, and that direction is gone on with in which the bound is higher.
 */
export function proveCover(given: CoverProblem, visits: readonly Visit[], options: ProofOptions): Proof {
  const ready = readyCover(given);
  const row = visits.map(({ stance }) => stance);
  const back = reversedCover(given);
  const forward = new ProofSearch(given, row, options.target_1);
  forward.goOn(Math.min(TRIAL_STATES, options.states), options.shouldStop);
  if (forward.isDone || forward.looked < TRIAL_STATES || options.states <= 2 * TRIAL_STATES) {
    forward.goOn(options.states, options.shouldStop);
    return proofOf(forward.row, forward.bound, forward.looked);
  }
  const backward = new ProofSearch(back.problem, back.row(forward.row), options.target_1);
  const stopTold = (bound: number, best: number): boolean =>
    options.shouldStop?.(Math.max(bound, forward.bound), Math.min(best, forward.best)) === true;
  backward.goOn(TRIAL_STATES, stopTold);
  const isBackward = backward.isDone || backward.bound > forward.bound;
  const left = options.states - TRIAL_STATES;
  if (isBackward) backward.goOn(left, stopTold);
  else {
    forward.learn(back.row(backward.row), backward.best);
    forward.goOn(left, options.shouldStop);
  }
  const found = isBackward ? back.row(backward.row) : forward.row;
  return proofOf(found, Math.max(forward.bound, backward.bound), forward.looked + backward.looked);

  function proofOf(best: readonly number[], bound: number, states: number): Proof {
    const cost = coverCost(ready, best);
    return { bound: Math.min(bound, cost), visits: visitsOf(ready, best).visits, cost, states };
  }
}
