import { f64, i32 } from "../cells.ts";
import { PlannerError } from "../planner-error.ts";

/**
 * Things to be put in order: the first stays first, the last stays last, some come after others. What it costs to go
 * from one to the next is in any one unit; it need not be the same in both directions.
 */
export interface SequenceProblem {
  readonly size: number;
  /** `cost[from * size + to]`, zero or more. */
  readonly cost: Float64Array;
  /** For each, those that come straight before it. */
  readonly after: readonly (readonly number[])[];
}

/** What the search knows of a problem besides: who must follow whom, and whether going back costs the same. */
export interface Prepared extends SequenceProblem {
  /** Those that each must come before, without what follows from others: from `next[bounds[node]]` on. */
  readonly next: Int32Array;
  readonly bounds: Int32Array;
  readonly isSymmetric: boolean;
  /** For each, the others by what it costs to go there, cheapest first: `near[from * size + rank]`. */
  readonly near: Int32Array;
}

/** @throws {PlannerError} `bad-input` for a cost that is none, `circle` when nothing can come first */
export function prepared(problem: SequenceProblem): Prepared {
  const { size, cost, after } = problem;
  if (size < 2 || cost.length !== size * size || after.length !== size) {
    throw new PlannerError("bad-input", "sequence", {
      expected: "two things or more, with a cost for each pair and a list of predecessors for each",
      found: `${size} things, ${cost.length} costs, ${after.length} lists`,
      remedy: "give size × size costs and size lists",
    });
  }
  const bad = cost.findIndex((value) => !(value >= 0 && value < Number.POSITIVE_INFINITY));
  if (bad >= 0) {
    throw new PlannerError("bad-input", `cost[${Math.floor(bad / size)}, ${bad % size}]`, {
      expected: "a finite cost of zero or more",
      found: String(cost[bad]),
      remedy: "leave no pair without a way",
    });
  }
  const all = closure(problem);
  const before = all.map((later) => {
    const implied = new Set([...later].flatMap((next) => [...(all[next] ?? [])]));
    return [...later].filter((next) => !implied.has(next));
  });
  const bounds = new Int32Array(size + 1);
  for (const [node, list] of before.entries()) bounds[node + 1] = i32(bounds, node) + list.length;
  const next = Int32Array.from(before.flat());
  return { size, cost, after, next, bounds, isSymmetric: isSymmetric(problem), near: nearest(problem) };
}

/** For each, everything that must come later: first before all, last after all. */
function closure({ size, after }: SequenceProblem): readonly ReadonlySet<number>[] {
  const order = firstOrder({ size, after });
  const later = Array.from({ length: size }, () => new Set<number>());
  const followers: number[][] = Array.from({ length: size }, () => []);
  for (const [node, earlier] of after.entries()) for (const one of earlier) followers[one]?.push(node);
  for (const node of order.toReversed()) {
    const mine = later[node];
    if (mine === undefined) continue;
    if (node !== size - 1) mine.add(size - 1);
    for (const follower of followers[node] ?? []) {
      mine.add(follower);
      for (const next of later[follower] ?? []) mine.add(next);
    }
    if (node === 0) for (let other = 1; other < size; other += 1) mine.add(other);
  }
  return later;
}

/**
 * Some order that keeps every rule: of those that may come next, the one with the lowest number.
 *
 * @throws {PlannerError} `circle`, naming those that wait for each other
 */
export function firstOrder({ size, after }: Pick<SequenceProblem, "size" | "after">): readonly number[] {
  const done = new Set<number>();
  const isReady = (node: number): boolean =>
    !done.has(node) &&
    (node !== size - 1 || done.size === size - 1) &&
    (after[node] ?? []).every((one) => done.has(one));
  const nodes = Array.from({ length: size }, (_, node) => node);
  while (done.size < size) {
    const next = nodes.find(isReady);
    if (next === undefined || (done.size === 0 && next !== 0)) {
      throw new PlannerError("circle", "after", {
        expected: "an order in which everything can be done, first to last",
        found: `${nodes.filter((node) => !done.has(node)).join(", ")} waiting for each other`,
        remedy: "take one of them out of what the others come after",
      });
    }
    done.add(next);
  }
  return [...done];
}

function isSymmetric({ size, cost }: SequenceProblem): boolean {
  // what leads out of the last or into the first is never walked
  for (let a = 1; a < size - 1; a += 1) {
    for (let b = a + 1; b < size - 1; b += 1) {
      if (f64(cost, a * size + b) !== f64(cost, b * size + a)) return false;
    }
  }
  return true;
}

function nearest({ size, cost }: SequenceProblem): Int32Array {
  const near = new Int32Array(size * (size - 1));
  for (let from = 0; from < size; from += 1) {
    const others = Array.from({ length: size }, (_, to) => to)
      .filter((to) => to !== from)
      .sort((a, b) => f64(cost, from * size + a) - f64(cost, from * size + b) || a - b);
    near.set(others, from * (size - 1));
  }
  return near;
}

export function costOf({ size, cost }: SequenceProblem, order: Int32Array | readonly number[]): number {
  let sum = 0;
  for (let i = 1; i < order.length; i += 1) sum += cost[(order[i - 1] ?? 0) * size + (order[i] ?? 0)] ?? 0;
  return sum;
}

/** Whether an order holds everything once, first first and last last, and nothing before what it comes after. */
export function keepsRules({ size, after }: SequenceProblem, order: Int32Array | readonly number[]): boolean {
  if (order.length !== size || order[0] !== 0 || order[size - 1] !== size - 1) return false;
  const place = new Int32Array(size).fill(-1);
  for (const [at, node] of order.entries()) {
    if (node < 0 || node >= size || i32(place, node) >= 0) return false;
    place[node] = at;
  }
  return after.every((earlier, node) => earlier.every((one) => i32(place, one) < i32(place, node)));
}
