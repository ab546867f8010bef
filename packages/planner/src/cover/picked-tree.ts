import { f64, i32 } from "../cells.ts";
import type { ReadyCover } from "./cover-problem.ts";
import { allBefore } from "./needed-tasks.ts";

/** So many can be picked at most: a set of them and a stance are told by one whole number. */
export const mostPicked = (stances: number): number => 52 - Math.ceil(Math.log2(stances));

/**
 * What a walk through some picked tasks costs at least, from any stance to the last. Which of them are left is a number,
 * a bit for each.
 *
 * Any walk through them is a tree: the way to the first, a tree that spans them, the way from the last. It costs at
 * least what the cheapest tree costs; with a toll on each that a walk pays twice (once coming, once going), the bound
 * is tightened until the cheapest tree looks like a walk. What waits for another that is left is not the first of
 * them, and what another that is left waits for is not the last.
 *
 * @source M. Held, R. M. Karp: The traveling-salesman problem and minimum spanning trees, 1970 and 1971
 */
export class PickedTree {
  readonly picked: readonly number[];
  readonly toll: Float64Array;
  /** Of the last tree: how many ways meet at each. */
  private readonly degree: Int32Array;
  private readonly stances: number;
  private readonly cost: Float64Array;
  private readonly apart: Float64Array;
  private readonly reach: Float64Array;
  private readonly earlier: readonly (readonly number[])[];
  private readonly later: readonly (readonly number[])[];
  private readonly nodes: Int32Array;
  private readonly isIn: Uint8Array;
  private readonly least: Float64Array;
  private readonly parent: Int32Array;

  constructor(problem: ReadyCover, picked: readonly number[]) {
    const count = picked.length;
    const sites = picked.map((task) => problem.tasks[task]?.at ?? []);
    const before = allBefore(problem.tasks);
    const waits = (a: number | undefined, b: number | undefined): boolean => before[a ?? 0]?.[b ?? 0] === 1;
    const ranks = [...picked.keys()];
    this.picked = picked;
    this.stances = problem.stances;
    this.cost = problem.cost;
    this.toll = new Float64Array(count);
    this.degree = new Int32Array(count);
    this.nodes = new Int32Array(count);
    this.isIn = new Uint8Array(count);
    this.least = new Float64Array(count);
    this.parent = new Int32Array(count);
    this.earlier = ranks.map((i) => ranks.filter((j) => waits(picked[i], picked[j])));
    this.later = ranks.map((i) => ranks.filter((j) => waits(picked[j], picked[i])));
    this.apart = new Float64Array(count * count);
    this.reach = new Float64Array(problem.stances * count);
    for (const [b, to] of sites.entries()) {
      for (const [a, from] of sites.entries()) this.apart[a * count + b] = nearestOf(problem, from, to);
      for (let stance = 0; stance < problem.stances; stance += 1)
        this.reach[stance * count + b] = nearestOf(problem, [stance], to);
    }
  }

  /** @param left which are left, a bit for each */
  from(stance: number, left: number, toll: Float64Array = this.toll): number {
    const count = this.take(left);
    const { stances, nodes, degree } = this;
    const all = this.picked.length;
    const door = stances - 1;
    if (count === 0) return f64(this.cost, stance * stances + door);
    let [first, first_s] = [0, Number.POSITIVE_INFINITY];
    let [last, last_s] = [0, Number.POSITIVE_INFINITY];
    let sum_s = 0;
    for (let n = 0; n < count; n += 1) {
      const node = i32(nodes, n);
      const toll_s = f64(toll, node);
      sum_s -= 2 * toll_s;
      const to_s = f64(this.reach, stance * all + node) + toll_s;
      if (to_s < first_s && !this.isAnyIn(this.earlier[node])) [first, first_s] = [node, to_s];
      const back_s = f64(this.reach, door * all + node) + toll_s;
      if (back_s < last_s && !this.isAnyIn(this.later[node])) [last, last_s] = [node, back_s];
    }
    degree[first] = i32(degree, first) + 1;
    degree[last] = i32(degree, last) + 1;
    return sum_s + first_s + last_s + this.spanning(count, toll);
  }

  /**
   * The same, tightened by the subgradient method: tolls are raised where a tree meets more often than a walk would, and
   * lowered where it ends.
   *
   * @param toll where to begin; it is changed
   * @param patience steps without a better bound after which the stride is halved
   * @param enough a bound that need not be bettered
   * @param onBetter told of each better bound, while `toll` is what gave it
   */
  tightened(
    stance: number,
    left: number,
    toll: Float64Array,
    by: {
      readonly steps: number;
      readonly stride: number;
      readonly patience: number;
      readonly enough: number;
    },
    onBetter: () => void = () => undefined,
  ): number {
    let [best, stride, sinceBest] = [0, by.stride, 0];
    const { nodes, degree } = this;
    for (let step = 0; step < by.steps; step += 1) {
      const bound = this.from(stance, left, toll);
      if (bound > best + 1e-9) {
        [best, sinceBest] = [bound, 0];
        onBetter();
      } else {
        sinceBest += 1;
        if (sinceBest % by.patience === 0) stride /= 2;
      }
      const count = this.take(left, false);
      let off = 0;
      for (let n = 0; n < count; n += 1) off += (i32(degree, i32(nodes, n)) - 2) ** 2;
      if (off === 0 || best >= by.enough) break;
      const stretch = (stride * Math.max(by.enough - bound, 1e-3 * by.enough)) / off;
      for (let n = 0; n < count; n += 1) {
        const node = i32(nodes, n);
        toll[node] = f64(toll, node) + stretch * (i32(degree, node) - 2);
      }
    }
    return best;
  }

  /** Puts what is left into `nodes`. */
  private take(left: number, isFresh = true): number {
    let count = 0;
    let [bits, rest] = [left % 2 ** 26, Math.floor(left / 2 ** 26)];
    for (let node = 0; node < this.picked.length; node += 1) {
      if (node === 26) [bits, rest] = [rest, 0];
      const isLeft = bits & 1;
      bits >>>= 1;
      if (isFresh) {
        this.isIn[node] = isLeft;
        this.degree[node] = 0;
      }
      if (isLeft === 0) continue;
      this.nodes[count] = node;
      count += 1;
    }
    return count;
  }

  private isAnyIn(nodes: readonly number[] | undefined): boolean {
    if (nodes === undefined || nodes.length === 0) return false;
    for (const node of nodes) if (this.isIn[node] === 1) return true;
    return false;
  }

  /** Prim's algorithm over what is left. */
  private spanning(count: number, toll: Float64Array): number {
    const { nodes, least, parent, degree, apart } = this;
    const all = this.picked.length;
    let node = i32(nodes, 0);
    let left = count - 1;
    nodes[0] = i32(nodes, left);
    for (let n = 0; n < left; n += 1) least[i32(nodes, n)] = Number.POSITIVE_INFINITY;
    let sum_s = 0;
    while (left > 0) {
      let [nearest, nearest_s] = [0, Number.POSITIVE_INFINITY];
      for (let n = 0; n < left; n += 1) {
        const other = i32(nodes, n);
        const weight = f64(apart, node * all + other) + f64(toll, node) + f64(toll, other);
        if (weight < f64(least, other)) {
          least[other] = weight;
          parent[other] = node;
        }
        if (f64(least, other) < nearest_s) [nearest, nearest_s] = [n, f64(least, other)];
      }
      node = i32(nodes, nearest);
      sum_s += nearest_s;
      degree[node] = i32(degree, node) + 1;
      degree[i32(parent, node)] = i32(degree, i32(parent, node)) + 1;
      left -= 1;
      nodes[nearest] = i32(nodes, left);
    }
    return sum_s;
  }
}

function nearestOf({ cost, stances }: ReadyCover, from: readonly number[], to: readonly number[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const a of from) for (const b of to) least = Math.min(least, cost[a * stances + b] ?? 0);
  return least;
}
