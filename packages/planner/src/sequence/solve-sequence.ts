import { i32 } from "../cells.ts";
import { below, type Chance, chanceOf } from "../random.ts";
import { descend, ToLookAt } from "./descend.ts";
import { costOf, firstOrder, prepared, type SequenceProblem } from "./sequence-problem.ts";
import { WorkingOrder } from "./working-order.ts";

/** How long to search, from what, and who may end it. */
export interface SearchOptions {
  readonly seed?: number;
  /** How many disturbances are tried; the same number with the same seed gives the same answer. */
  readonly rounds: number;
  /** An order to begin with; it must keep the rules. */
  readonly from?: readonly number[];
  /** Asked now and then: true ends the search with the best so far. */
  readonly shouldStop?: (best: number) => boolean;
}

export interface SequenceAnswer {
  readonly order: readonly number[];
  readonly cost: number;
  readonly rounds: number;
}

/** How often the search asks whether it should stop, in rounds. */
const ASK_EVERY = 16;
const MORE_KICKS = 3;
/** The longest stretch that a disturbance moves. */
const LONGEST_STRETCH = 50;

/**
 * A good order, found by improving one until nothing gains, disturbing it a little, and improving it again; a step back
 * is taken now and then, less and less far, and the search goes back to the best when it has strayed for long.
 */
export function solveSequence(problem: SequenceProblem, options: SearchOptions): SequenceAnswer {
  const ready = prepared(problem);
  const { size } = ready;
  const chance = chanceOf(options.seed ?? 1);
  const toLookAt = new ToLookAt(size);
  const work = new WorkingOrder(ready, options.from ?? firstOrder(ready));
  for (const node of work.order) toLookAt.add(node);
  descend(work, toLookAt);
  const current = Int32Array.from(work.order);
  const best = Int32Array.from(work.order);
  let [currentCost, bestCost] = [work.cost, work.cost];
  let sinceBest = 0;
  let round = 0;
  const patience = 40 * size;
  // a swap undoes a swap: where stretches are never turned round, one alone would come straight back
  const leastKicks = ready.isSymmetric ? 1 : 2;
  let warmth = startingWarmth(bestCost, size);
  for (; round < options.rounds; round += 1) {
    if (round % ASK_EVERY === 0 && options.shouldStop?.(bestCost) === true) break;
    const kicks = leastKicks + below(chance, MORE_KICKS);
    for (let kick = 0; kick < kicks; kick += 1) disturb(work, chance, toLookAt);
    descend(work, toLookAt);
    if (work.cost <= currentCost - warmth * Math.log(chance() + 1e-12)) {
      current.set(work.order);
      currentCost = work.cost;
    } else {
      work.take(current, currentCost);
    }
    sinceBest += 1;
    if (currentCost < bestCost - 1e-9) {
      best.set(current);
      bestCost = currentCost;
      sinceBest = 0;
    } else if (sinceBest % patience === 0) {
      warmth = startingWarmth(bestCost, size) * chance();
      work.take(best, bestCost);
      current.set(best);
      currentCost = bestCost;
    }
  }
  // summed anew: thousands of differences leave their rounding behind
  return { order: [...best], cost: costOf(ready, best), rounds: round };
}

/** A share of what one step costs on average. From trials on the published instances. */
const startingWarmth = (cost: number, size: number): number => (0.1 * cost) / size;

/** Lets two neighbouring stretches change places, somewhere; false when no two may. */
function disturb(work: WorkingOrder, chance: Chance, toLookAt: ToLookAt): boolean {
  const { size } = work.problem;
  const longest = 1 + below(chance, Math.min(LONGEST_STRETCH, Math.max(1, Math.floor(size / 3))));
  for (let attempt = 0; attempt < 10 * size; attempt += 1) {
    const first = 1 + below(chance, size - 2);
    const middle = first + below(chance, longest);
    const last = middle + 1 + below(chance, longest);
    if (last >= size - 1 || !work.maySwap(first, middle, last)) continue;
    const { order } = work;
    const [a, b, c, d, e, f] = [first - 1, first, middle, middle + 1, last, last + 1].map((at) =>
      i32(order, at),
    );
    if (a === undefined || b === undefined || c === undefined) return false;
    if (d === undefined || e === undefined || f === undefined) return false;
    const gain =
      work.arc(a, b) + work.arc(c, d) + work.arc(e, f) - work.arc(a, d) - work.arc(e, b) - work.arc(c, f);
    work.swap(first, middle, last, gain);
    for (const node of [a, b, c, d, e, f]) toLookAt.add(node);
    return true;
  }
  return false;
}
