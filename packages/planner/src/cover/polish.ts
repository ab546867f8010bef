import { solveSequence } from "../sequence/solve-sequence.ts";
import { coverCost, type ReadyCover, type Visit, visitsOf } from "./cover-problem.ts";

/** Disturbances tried on one row: the search outside tries many rows. */
const ROUNDS = 12;

/** The stops of a row in a better order, each doing what it did: a sequence with rules, as it is solved there. */
export function polished(problem: ReadyCover, row: readonly number[]): readonly number[] {
  const { visits } = visitsOf(problem, row);
  const begun = visits.map(({ stance }) => stance);
  if (visits.length < 2) return begun;
  const size = visits.length + 2;
  const stanceAt = [0, ...begun, problem.stances - 1];
  const cost = new Float64Array(size * size);
  for (const [a, from] of stanceAt.entries()) {
    for (const [b, to] of stanceAt.entries())
      cost[a * size + b] = problem.cost[from * problem.stances + to] ?? 0;
  }
  const { order } = solveSequence(
    { size, cost, after: rulesBetween(problem, visits) },
    { rounds: ROUNDS, from: Array.from({ length: size }, (_, i) => i) },
  );
  const better = order.slice(1, -1).map((visit) => begun[visit - 1] ?? 0);
  // done sooner at a stance that now comes first, something may leave a later stance with nothing to do
  const kept = visitsOf(problem, better).visits.map(({ stance }) => stance);
  return coverCost(problem, kept) <= coverCost(problem, begun) ? kept : begun;
}

/** For each visit (from 1, as in the sequence), those that must come before it. */
function rulesBetween({ tasks }: ReadyCover, visits: readonly Visit[]): readonly (readonly number[])[] {
  const visitOf = new Map(visits.flatMap(({ tasks: here }, i) => here.map((task) => [task, i + 1] as const)));
  const rules = visits.map(({ tasks: here }, i) => {
    const earlier = here.flatMap((task) => (tasks[task]?.after ?? []).map((one) => visitOf.get(one) ?? 0));
    return [...new Set(earlier)].filter((visit) => visit !== i + 1);
  });
  return [[], ...rules, []];
}
