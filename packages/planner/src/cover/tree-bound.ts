import { f64, u8 } from "../cells.ts";
import type { ReadyCover } from "./cover-problem.ts";

/**
 * A lower bound on what is left to pay, for any state of a walk.
 *
 * Of the tasks, some are picked that share no stance: each must be gone to on its own. A walk through what is left of
 * them is a tree that spans them, so it costs at least what the cheapest tree costs; with a toll on each that a walk
 * pays twice (once coming, once going), the bound is tightened until the cheapest tree looks like a walk.
 *
 * @source M. Held, R. M. Karp: The traveling-salesman problem and minimum spanning trees, 1970 and 1971
 */
export interface TreeBound {
  readonly picked: readonly number[];
  /** From the first stance, with everything to do. */
  readonly root: number;
  /** From a stance, with the picked tasks (by their rank) that `isLeft` marks still to do. */
  from(stance: number, isLeft: Uint8Array, key: string): number;
}

const TIGHTENINGS = 400;
const MOST_TREES_KEPT = 400_000;

export function treeBound(problem: ReadyCover, upper: number): TreeBound {
  const picked = apart(problem);
  const { stances, cost } = problem;
  const count = picked.length;
  const size = count + 2; // picked, then first and last
  const [first, last] = [count, count + 1];
  const sites = [...picked.map((task) => problem.tasks[task]?.at ?? []), [0], [stances - 1]];
  const arc = new Float64Array(size * size);
  for (const [a, from] of sites.entries()) {
    for (const [b, to] of sites.entries()) arc[a * size + b] = nearestOf(problem, from, to);
  }
  if (count > 0) arc[first * size + last] = arc[last * size + first] = Number.POSITIVE_INFINITY;
  const reach = new Float64Array(stances * count);
  for (let stance = 0; stance < stances; stance += 1) {
    for (let i = 0; i < count; i += 1)
      reach[stance * count + i] = nearestOf(problem, [stance], sites[i] ?? []);
  }
  const { toll, root } = tightened(arc, size, count, upper);
  const trees = new Map<string, number>();
  const everything = new Uint8Array(size);
  return {
    picked,
    root,
    from(stance, isLeft, key) {
      let nearest = Number.POSITIVE_INFINITY;
      for (let i = 0; i < count; i += 1) {
        if (u8(isLeft, i) === 1) nearest = Math.min(nearest, f64(reach, stance * count + i) + f64(toll, i));
      }
      if (nearest === Number.POSITIVE_INFINITY) return cost[stance * stances + stances - 1] ?? 0;
      let tree = trees.get(key);
      if (tree === undefined) {
        everything.set(isLeft);
        everything[first] = 0;
        everything[last] = 1;
        tree = spanningTree(arc, toll, size, everything).cost - f64(toll, last);
        for (let i = 0; i < count; i += 1) if (u8(isLeft, i) === 1) tree -= 2 * f64(toll, i);
        if (trees.size < MOST_TREES_KEPT) trees.set(key, tree);
      }
      return Math.max(nearest + tree, 0);
    },
  };
}

/** Tasks that share no stance, those with the fewest stances first. */
function apart({ tasks, stances }: ReadyCover): readonly number[] {
  const isTaken = new Uint8Array(stances);
  const byChoice = tasks.map((_, task) => task).sort((a, b) => width(a) - width(b) || a - b);
  const picked: number[] = [];
  function width(task: number): number {
    return tasks[task]?.at.length ?? 0;
  }
  for (const task of byChoice) {
    const at = tasks[task]?.at ?? [];
    if (at.some((stance) => isTaken[stance] === 1)) continue;
    for (const stance of at) isTaken[stance] = 1;
    picked.push(task);
  }
  return picked;
}

function nearestOf({ cost, stances }: ReadyCover, from: readonly number[], to: readonly number[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const a of from) for (const b of to) least = Math.min(least, cost[a * stances + b] ?? 0);
  return least;
}

/** Tolls by the subgradient method: raised where a tree meets more often than a walk would, lowered where it ends. */
function tightened(arc: Float64Array, size: number, count: number, upper: number) {
  const all = new Uint8Array(size).fill(1);
  const wanted = (node: number): number => (node < count ? 2 : 1);
  const toll = new Float64Array(size);
  let best = { toll: new Float64Array(size), root: 0 };
  let [stride, sinceBest] = [1, 0];
  for (let step = 0; step < TIGHTENINGS; step += 1) {
    const { cost, degree } = spanningTree(arc, toll, size, all);
    let [bound, off] = [cost, 0];
    for (let node = 0; node < size; node += 1) {
      bound -= wanted(node) * f64(toll, node);
      off += ((degree[node] ?? 0) - wanted(node)) ** 2;
    }
    if (bound > best.root + 1e-9) {
      best = { toll: toll.slice(), root: bound };
      sinceBest = 0;
    } else {
      sinceBest += 1;
      if (sinceBest % 12 === 0) stride /= 2;
    }
    if (off === 0) break;
    const stretch = (stride * Math.max(upper - bound, 1e-3 * upper)) / off;
    for (let node = 0; node < size; node += 1) {
      toll[node] = f64(toll, node) + stretch * ((degree[node] ?? 0) - wanted(node));
    }
  }
  return best;
}

/** Prim's algorithm on a full matrix, over the nodes that are in. */
function spanningTree(arc: Float64Array, toll: Float64Array, size: number, isIn: Uint8Array) {
  const degree = new Int32Array(size);
  const least = new Float64Array(size).fill(Number.POSITIVE_INFINITY);
  const parent = new Int32Array(size).fill(-1);
  const isDone = new Uint8Array(size);
  let [cost, node] = [0, isIn.indexOf(1)];
  while (node >= 0) {
    isDone[node] = 1;
    let next = -1;
    for (let other = 0; other < size; other += 1) {
      if (u8(isIn, other) === 0 || u8(isDone, other) === 1) continue;
      const weight = f64(arc, node * size + other) + f64(toll, node) + f64(toll, other);
      if (weight < f64(least, other)) {
        least[other] = weight;
        parent[other] = node;
      }
      if (next < 0 || f64(least, other) < f64(least, next)) next = other;
    }
    if (next >= 0) {
      cost += f64(least, next);
      degree[next] = (degree[next] ?? 0) + 1;
      const from = parent[next] ?? -1;
      if (from >= 0) degree[from] = (degree[from] ?? 0) + 1;
    }
    node = next;
  }
  return { cost, degree };
}
