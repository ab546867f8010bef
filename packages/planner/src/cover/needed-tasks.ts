import { type ReadyCover, readyCover, type Task } from "./cover-problem.ts";

/** For each task, by a one at its place, every task that must be done before it: also what those wait for. */
export function allBefore(tasks: readonly Task[]): readonly Uint8Array[] {
  const before = tasks.map(() => new Uint8Array(tasks.length));
  const known = new Set<number>();
  const find = (task: number): void => {
    if (known.has(task)) return;
    known.add(task);
    for (const one of tasks[task]?.after ?? []) {
      find(one);
      before[task]?.fill(1, one, one + 1);
      before[one]?.forEach((isBefore, other) => {
        if (isBefore === 1) before[task]?.fill(1, other, other + 1);
      });
    }
  };
  for (const task of tasks.keys()) find(task);
  return before;
}

/**
 * The same problem without the tasks that get done by themselves: whoever does a certain other task stands where this
 * one can be done too, and has done before all that it waits for. Every row that does the rest does them all.
 */
export function neededTasks(problem: ReadyCover): ReadyCover {
  const { tasks } = problem;
  const before = allBefore(tasks);
  const isWaitedFor = new Set(tasks.flatMap(({ after }) => after));
  const places = tasks.map(({ at }) => new Set(at));
  const dropped = new Set<number>();
  const bringsAlong = (other: number, task: number): boolean =>
    other !== task &&
    !dropped.has(other) &&
    (tasks[other]?.at ?? []).every((stance) => places[task]?.has(stance) === true) &&
    (tasks[task]?.after ?? []).every((one) => before[other]?.[one] === 1);
  for (const task of tasks.keys()) {
    if (isWaitedFor.has(task)) continue;
    if (tasks.some((_, other) => bringsAlong(other, task))) dropped.add(task);
  }
  const kept = [...tasks.keys()].filter((task) => !dropped.has(task));
  const numbers = new Map(kept.map((task, i) => [task, i]));
  return readyCover({
    stances: problem.stances,
    cost: problem.cost,
    tasks: kept.map((task) => ({
      at: tasks[task]?.at ?? [],
      after: (tasks[task]?.after ?? []).flatMap((one) => numbers.get(one) ?? []),
    })),
  });
}
