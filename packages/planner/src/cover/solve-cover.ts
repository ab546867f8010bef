import { below, type Chance, chanceOf } from "../random.ts";
import type { SearchOptions } from "../sequence/solve-sequence.ts";
import {
  type CoverProblem,
  coverCost,
  type ReadyCover,
  readyCover,
  type Visit,
  visitsOf,
} from "./cover-problem.ts";
import { polished } from "./polish.ts";

export interface CoverAnswer {
  readonly visits: readonly Visit[];
  readonly cost: number;
  readonly rounds: number;
}

const LEAST_GAIN = 1e-9;
/** By how much a worse row may be worse and still be gone on with, on average, as a share. From trials. */
const LENIENT_1 = 0.01;
const MOST_REMOVED = 6;
/** Rounds without a better row after which the search goes back to the best. */
const PATIENCE = 50;

/**
 * Which stances to take and in what order: a first row by taking what does most for its way, then, again and again, a
 * piece of it taken out, mended as cheaply as can be, thinned out, and put into a better order.
 */
export function solveCover(given: CoverProblem, options: SearchOptions): CoverAnswer {
  const problem = readyCover(given);
  const chance = chanceOf(options.seed ?? 1);
  const begin = options.from ?? greedyRow(problem);
  let current = improved(problem, begin);
  let currentCost = coverCost(problem, current);
  let [best, bestCost] = [current, currentCost];
  let [round, sinceBest] = [0, 0];
  for (; round < options.rounds; round += 1) {
    if (options.shouldStop?.(bestCost) === true) break;
    const next = improved(problem, mended(problem, withoutPiece(current, chance)));
    const cost = coverCost(problem, next);
    if (cost <= currentCost - LENIENT_1 * bestCost * Math.log(chance() + 1e-12))
      [current, currentCost] = [next, cost];
    sinceBest += 1;
    if (currentCost < bestCost - LEAST_GAIN) {
      [best, bestCost] = [current, currentCost];
      sinceBest = 0;
    } else if (sinceBest % PATIENCE === 0) [current, currentCost] = [best, bestCost];
  }
  return { visits: visitsOf(problem, best).visits, cost: bestCost, rounds: round };
}

/** From where one is to where most is done for the way, until all is done. */
function greedyRow(problem: ReadyCover): readonly number[] {
  const row: number[] = [];
  for (;;) {
    const { done, isWhole } = visitsOf(problem, row);
    if (isWhole) return row;
    const here = row.at(-1) ?? 0;
    let best = { stance: -1, worth: -1 };
    for (let stance = 0; stance < problem.stances; stance += 1) {
      const count = doable(problem, stance, done);
      const worth = count / (1e-6 + (problem.cost[here * problem.stances + stance] ?? 0));
      if (count > 0 && worth > best.worth) best = { stance, worth };
    }
    row.push(best.stance);
  }
}

function doable({ tasksAt, tasks }: ReadyCover, stance: number, done: Uint8Array): number {
  let count = 0;
  for (const task of tasksAt[stance] ?? []) {
    if (done[task] === 0 && tasks[task]?.after.every((one) => done[one] === 1)) count += 1;
  }
  return count;
}

/** Without a stretch of its stops, or without some from anywhere. */
function withoutPiece(row: readonly number[], chance: Chance): readonly number[] {
  if (row.length === 0) return row;
  if (chance() < 0.5) return row.filter(() => chance() > MOST_REMOVED / 2 / row.length);
  const from = below(chance, row.length);
  return row.toSpliced(from, 1 + below(chance, MOST_REMOVED));
}

/** A row that does everything, by putting the stances that are missing where they cost least. */
export function mended(problem: ReadyCover, begun: readonly number[]): readonly number[] {
  let row = begun;
  for (;;) {
    const { done, isWhole } = visitsOf(problem, row);
    if (isWhole) return row;
    const missing = problem.tasks.findIndex(
      (task, i) => done[i] === 0 && task.after.every((one) => done[one] === 1),
    );
    row = withTask(problem, row, missing);
  }
}

/** The row with one more stance, from which a task gets done, where that costs least. */
function withTask(problem: ReadyCover, row: readonly number[], task: number): readonly number[] {
  const { stances, cost, tasks } = problem;
  const arc = (a: number, b: number): number => cost[a * stances + b] ?? 0;
  const options = (tasks[task]?.at ?? []).flatMap((stance) =>
    Array.from({ length: row.length + 1 }, (_, at) => {
      const [before, after] = [row[at - 1] ?? 0, row[at] ?? stances - 1];
      return { stance, at, extra: arc(before, stance) + arc(stance, after) - arc(before, after) };
    }),
  );
  options.sort((a, b) => a.extra - b.extra || a.at - b.at || a.stance - b.stance);
  for (const { stance, at } of options) {
    const longer = row.toSpliced(at, 0, stance);
    if (visitsOf(problem, longer).done[task] === 1) return longer;
  }
  return [...row, tasks[task]?.at[0] ?? 0]; // at the end, all that it waits for has been done
}

/** Thins a row out and puts it in order until neither gains. */
function improved(problem: ReadyCover, begun: readonly number[]): readonly number[] {
  let row = polished(problem, begun);
  for (;;) {
    const next = betterChoice(problem, row);
    if (next === undefined) return row;
    row = polished(problem, next);
  }
}

/** The first cheaper row with a stance less, another stance, or one more that makes others needless. */
function betterChoice(problem: ReadyCover, row: readonly number[]): readonly number[] | undefined {
  const cost = coverCost(problem, row);
  const isBetter = (other: readonly number[]): boolean =>
    coverCost(problem, other) < cost - LEAST_GAIN && visitsOf(problem, other).isWhole;
  for (const at of row.keys()) {
    const fewer = row.toSpliced(at, 1);
    if (isBetter(fewer)) return fewer;
  }
  for (let stance = 0; stance < problem.stances; stance += 1) {
    if (problem.tasksAt[stance]?.length === 0) continue;
    for (const at of row.keys()) {
      const other = row.with(at, stance);
      if (isBetter(other)) return other;
    }
    if (!row.includes(stance)) {
      const other = thinned(problem, cheapestInsertion(problem, row, stance));
      if (coverCost(problem, other) < cost - LEAST_GAIN) return other;
    }
  }
  return undefined;
}

function cheapestInsertion(
  { stances, cost }: ReadyCover,
  row: readonly number[],
  stance: number,
): readonly number[] {
  const arc = (a: number, b: number): number => cost[a * stances + b] ?? 0;
  let best = { at: 0, extra: Number.POSITIVE_INFINITY };
  for (let at = 0; at <= row.length; at += 1) {
    const [before, after] = [row[at - 1] ?? 0, row[at] ?? stances - 1];
    const extra = arc(before, stance) + arc(stance, after) - arc(before, after);
    if (extra < best.extra) best = { at, extra };
  }
  return row.toSpliced(best.at, 0, stance);
}

/** Without every stance that can be left out, the one that saves most first. */
function thinned(problem: ReadyCover, begun: readonly number[]): readonly number[] {
  let row = begun;
  for (;;) {
    let best: { readonly row: readonly number[]; readonly cost: number } | undefined;
    for (const at of row.keys()) {
      const fewer = row.toSpliced(at, 1);
      const cost = coverCost(problem, fewer);
      if ((best === undefined || cost < best.cost) && visitsOf(problem, fewer).isWhole)
        best = { row: fewer, cost };
    }
    if (best === undefined) return row;
    row = best.row;
  }
}
