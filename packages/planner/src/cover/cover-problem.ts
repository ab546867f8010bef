import { PlannerError } from "../planner-error.ts";

/** One thing to be done, at any one of several stances. */
export interface Task {
  readonly at: readonly number[];
  /** Tasks that must be done before it. */
  readonly after: readonly number[];
}

/**
 * Everything is done once, each from one of the stances that serve it, from the first stance to the last. A stance may
 * be come to again.
 */
export interface CoverProblem {
  /** How many, the first (where one begins) and the last (where one ends) included. */
  readonly stances: number;
  /**
   * `cost[from * stances + to]`: the same in both directions, and no detour cheaper than the straight way.
   */
  readonly cost: Float64Array;
  readonly tasks: readonly Task[];
}

/** A problem with what the search asks of it again and again. */
export interface ReadyCover extends CoverProblem {
  /** For each stance, its tasks so that each comes after those that it waits for. */
  readonly tasksAt: readonly (readonly number[])[];
}

/** @throws {PlannerError} `out-of-reach` for a task that no stance serves, `circle` for tasks that wait for each other */
export function readyCover(problem: CoverProblem): ReadyCover {
  const { stances, cost, tasks } = problem;
  const isNumber = (value: number): boolean => value >= 0 && value < Number.POSITIVE_INFINITY;
  if (stances < 2 || cost.length !== stances ** 2 || !cost.every(isNumber)) {
    throw new PlannerError("bad-input", "cost", {
      expected: "two stances or more, and a finite cost of zero or more for each pair",
      found: `${stances} stances and ${cost.length} costs`,
      remedy: "leave out stances to which no way leads",
    });
  }
  const lost = tasks.findIndex(({ at }) => !at.some((stance) => stance >= 0 && stance < stances));
  if (lost >= 0) {
    throw new PlannerError("out-of-reach", `tasks[${lost}]`, {
      expected: "a stance from which it can be done",
      found: "none",
      remedy: "give it a stance, or leave it out",
    });
  }
  const order = tasksInOrder(tasks);
  const tasksAt = Array.from({ length: stances }, (): number[] => []);
  for (const task of order) for (const stance of tasks[task]?.at ?? []) tasksAt[stance]?.push(task);
  return { ...problem, tasksAt };
}

function tasksInOrder(tasks: readonly Task[]): readonly number[] {
  const order: number[] = [];
  const done = new Set<number>();
  let left = tasks.map((_, task) => task);
  while (left.length > 0) {
    const ready = left.filter((task) => tasks[task]?.after.every((one) => done.has(one)));
    if (ready.length === 0) {
      throw new PlannerError("circle", "tasks", {
        expected: "an order in which all can be done",
        found: `${left.join(", ")} waiting for each other`,
        remedy: "take one of them out of what the others come after",
      });
    }
    for (const task of ready) {
      order.push(task);
      done.add(task);
    }
    left = left.filter((task) => !done.has(task));
  }
  return order;
}

/** What a row of stances costs, from the first stance of the problem to its last. */
export function coverCost({ stances, cost }: CoverProblem, row: readonly number[]): number {
  let [sum, from] = [0, 0];
  for (const to of [...row, stances - 1]) {
    sum += cost[from * stances + to] ?? 0;
    from = to;
  }
  return sum;
}

/** A stance and what is done there. */
export interface Visit {
  readonly stance: number;
  readonly tasks: readonly number[];
}

/**
 * What is done where, when at each stance of a row everything is done that can be: to wait with it never helps. Stances
 * at which nothing is left to do are passed by.
 */
export function visitsOf({ tasksAt, tasks }: ReadyCover, row: readonly number[]) {
  const done = new Uint8Array(tasks.length);
  const visits: Visit[] = [];
  let count = 0;
  for (const stance of row) {
    const here: number[] = [];
    for (const task of tasksAt[stance] ?? []) {
      if (done[task] === 1 || !tasks[task]?.after.every((one) => done[one] === 1)) continue;
      done[task] = 1;
      here.push(task);
    }
    count += here.length;
    if (here.length > 0) visits.push({ stance, tasks: here });
  }
  return { visits, isWhole: count === tasks.length, done };
}
