import { i32 } from "../cells.ts";
import { type Chance, chanceOf } from "../random.ts";
import type { ReadyCover } from "./cover-problem.ts";
import { KeptBounds } from "./kept-bounds.ts";
import { allBefore } from "./needed-tasks.ts";
import { mostPicked, PickedTree } from "./picked-tree.ts";

/** A lower bound on what is left to pay, for any state of a walk. */
export interface TreeBound {
  /** From the first stance, with everything to do. */
  readonly root: number;
  /** Which of the tasks that the bound looks at are left, as one number. */
  leftOf(done: Int32Array): number;
  /** From a stance, with what is left: at once, or as close as it was ever told. */
  from(stance: number, left: number): number;
  /** The same, closer and dearer. @param enough a bound that need not be bettered */
  closer(stance: number, left: number, enough: number): number;
}

const PICKS = 30;
const CLOSER = { steps: 10, stride: 0.5, patience: 4 };

/**
 * Of the tasks, some are picked that share no stance: each must be gone to on its own.
 *
 * @param upper what the best known walk costs
 */
export function treeBound(problem: ReadyCover, upper: number): TreeBound {
  const { tree, root } = bestPick(problem, upper);
  const cheap = new KeptBounds();
  const close = new KeptBounds();
  const toll = new Float64Array(tree.toll.length);
  const keyOf = (stance: number, left: number): number => left * problem.stances + stance;
  return {
    root,
    leftOf(done) {
      let [left, bit] = [0, 1];
      for (const task of tree.picked) {
        if (((i32(done, task >> 5) >>> (task & 31)) & 1) === 0) left += bit;
        bit *= 2;
      }
      return left;
    },
    from(stance, left) {
      const key = keyOf(stance, left);
      const known = close.at(key) ?? cheap.at(key);
      return known ?? cheap.keep(key, Math.max(tree.from(stance, left), 0));
    },
    closer(stance, left, enough) {
      const key = keyOf(stance, left);
      const known = close.at(key);
      if (known !== undefined) return known;
      toll.set(tree.toll);
      const bound = tree.tightened(stance, left, toll, { ...CLOSER, enough });
      return close.keep(key, Math.max(bound, this.from(stance, left)));
    },
  };
}

/** Of some ways of picking, that with the highest bound for the whole walk. */
function bestPick(problem: ReadyCover, upper: number) {
  const before = allBefore(problem.tasks);
  const ties = problem.tasks.map((_, task) =>
    before.reduce((count, row, other) => count + (row[task] ?? 0) + (before[task]?.[other] ?? 0), 0),
  );
  const chance = chanceOf(1);
  const tried = new Set<string>();
  let best: { readonly tree: PickedTree; readonly root: number } | undefined;
  for (let turn = 0; turn < PICKS; turn += 1) {
    const picked = apart(problem, ties, turn === 0 ? () => 0 : chance);
    if (tried.has(picked.join())) continue;
    tried.add(picked.join());
    const tree = new PickedTree(problem, picked);
    const toll = new Float64Array(picked.length);
    const all = 2 ** picked.length - 1;
    const root = tree.tightened(0, all, toll, { steps: 120, stride: 1, patience: 12, enough: upper }, () =>
      tree.toll.set(toll),
    );
    if (best === undefined || root > best.root) best = { tree, root };
  }
  return best ?? { tree: new PickedTree(problem, []), root: 0 };
}

/** Tasks that share no stance: those with the fewest stances first, then those that wait or are waited for. */
function apart({ tasks, stances }: ReadyCover, ties: readonly number[], chance: Chance): readonly number[] {
  const isTaken = new Uint8Array(stances);
  const spread = chance() < 0.3 ? 25 : 9;
  const ranked = tasks.map(({ at }, task) => ({
    task,
    at,
    rank: at.length * 10 - Math.min(ties[task] ?? 0, 3) + spread * chance(),
  }));
  ranked.sort((a, b) => a.rank - b.rank || a.task - b.task);
  const picked: number[] = [];
  for (const { task, at } of ranked) {
    if (picked.length === mostPicked(stances)) break;
    if (at.some((stance) => isTaken[stance] === 1)) continue;
    for (const stance of at) isTaken[stance] = 1;
    picked.push(task);
  }
  return picked;
}
