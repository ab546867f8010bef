import type { CoverProblem } from "./cover-problem.ts";

/**
 * The same walk from its end to its beginning: what came before comes after. It costs the same, but is not as hard to
 * search and to prove: rules bite early in one direction and late in the other.
 */
export function reversedCover(problem: CoverProblem) {
  const { stances, cost, tasks } = problem;
  const turned = (stance: number): number =>
    stance === 0 ? stances - 1 : stance === stances - 1 ? 0 : stance;
  const after: number[][] = tasks.map(() => []);
  for (const [task, { after: before }] of tasks.entries()) for (const one of before) after[one]?.push(task);
  const backwards: CoverProblem = {
    stances,
    cost: cost.map((_, i) => cost[turned(Math.floor(i / stances)) * stances + turned(i % stances)] ?? 0),
    tasks: tasks.map(({ at }, task) => ({ at: at.map(turned), after: after[task] ?? [] })),
  };
  return {
    problem: backwards,
    /** A row of stances of one direction as one of the other. */
    row: (row: readonly number[]): readonly number[] => row.map(turned).toReversed(),
  };
}
