import type { Book, Hazard, Stance, WalkKind } from "@witnessmark/book";
import { type CoverProblem, coverCost, readyCover, type Visit, visitsOf } from "../cover/cover-problem.ts";
import { proveCover } from "../cover/prove-cover.ts";
import { mended, solveCover } from "../cover/solve-cover.ts";
import type { Ground } from "../geometry/convex.ts";
import { obstaclesOf } from "../geometry/obstacles.ts";
import { PERSON, type Person } from "../geometry/person.ts";
import type { Step, Stop } from "../walk-plan.ts";
import { doorway } from "./door.ts";
import { inGivenOrder } from "./given-order.ts";
import { lastStances, lateOf } from "./order-faults.ts";
import { type StanceCosts, stanceCosts } from "./stance-costs.ts";
import { WALK_COSTS, type WalkCosts } from "./walk-costs.ts";
import { type StepRules, type StepTask, stepRules, walkTasks } from "./walk-tasks.ts";

export interface OrderOptions {
  readonly also?: ReadonlySet<string>;
  /** Which steps are still to do; all of them when left out. */
  readonly isLeft?: (step: Step) => boolean;
  /** Where the pilot stands; at the door when left out. */
  readonly from?: Ground;
  /** The order of the approved manual, as ids of checks and ground gear: it is followed, and only stances are chosen. */
  readonly manualOrder?: readonly string[];
  /** Stances at which one is to look last, once all else is done: before boarding, say. The book's when left out. */
  readonly last?: readonly string[];
  /** The book's when left out. */
  readonly hazards?: readonly Hazard[];
  readonly person?: Person;
  readonly costs?: WalkCosts;
  readonly seed?: number;
  /** How long to search; the same numbers give the same order. */
  readonly rounds?: number;
  /** How long to look for a proof; none when 0. */
  readonly proofStates?: number;
  /** How near the proof is to come, as a share. */
  readonly target_1?: number;
  /** Told now and then; true ends the search with what there is. */
  readonly onProgress?: (progress: { readonly best_s: number; readonly bound_s: number }) => boolean;
}

/** An order for a walk, and how good it is known to be. Seconds are for walking, stops and postures, not for looking. */
export interface PlannedOrder {
  readonly stops: readonly Stop[];
  /** The same, by the numbers of `poseWalk`. */
  readonly visits: readonly Visit[];
  /** From the corner of one way to the next, stop by stop, and back to the door. */
  readonly ways: readonly (readonly Ground[])[];
  readonly distance_m: number;
  readonly cost_s: number;
  /** No order costs less than this. */
  readonly bound_s: number;
  /** How far the order may be from the best, as a share of its cost; 0 when it is proven to be the best. */
  readonly gap_1: number;
  /** What the order of the book, or of its manual, costs. */
  readonly given_s: number;
  /** What another order would save, where a manual's order is followed; else what this one saves. */
  readonly saves_s: number;
  readonly follows: "manual" | "planned";
}

const ROUNDS = 60;
const STATES = 20_000;
const TARGET_1 = 0.02;

/** The walk as a problem of stances and tasks: the first stance is where one begins, the last is the door. */
export interface PosedWalk {
  readonly tasks: readonly StepTask[];
  readonly problem: CoverProblem;
  readonly costs: StanceCosts;
  /** `stances[number - 1]` is the stance of a number in the problem. */
  readonly stances: readonly Stance[];
}

export function poseWalk(book: Book, kind: WalkKind, options: OrderOptions = {}): PosedWalk {
  const obstacles = obstaclesOf(book.geometry, options.hazards ?? book.hazards);
  const from = { obstacles, person: options.person ?? PERSON };
  const door = doorway(book.geometry);
  const end = { place: door.outside, posture: "stand", isEnd: true } as const;
  const start = { ...end, place: options.from ?? door.outside };
  const costs = stanceCosts([start, ...book.stances, end], obstacles, door, options.costs ?? WALK_COSTS);
  const rules = stepRules(book, kind, options.also ?? new Set(), options.isLeft ?? (() => true));
  const posed = walkTasks(book, rules, from, (stance) => costs.isReached(stance + 1));
  const tasks = lastAt(posed, rules, lastStances(book, options.last));
  const problem = {
    stances: book.stances.length + 2,
    cost: costs.seconds,
    tasks: tasks.map(({ at, after }) => ({ at: at.map((stance) => stance + 1), after })),
  };
  return { tasks, problem, costs, stances: book.stances };
}

/** The steps that are done at a last stance wait for all others but those that wait for them, and are done nowhere else. */
function lastAt(
  tasks: readonly StepTask[],
  rules: readonly StepRules[],
  stances: ReadonlySet<number>,
): readonly StepTask[] {
  const { lasts, late } = lateOf(rules, stances);
  if (lasts.length === 0) return tasks;
  const others = tasks.flatMap((_, i) => (late.has(i) ? [] : [i]));
  const isLast = new Set(lasts);
  return tasks.map((task, i) =>
    isLast.has(i)
      ? { ...task, at: [rules[i]?.own ?? 0], after: [...new Set([...task.after, ...others])] }
      : task,
  );
}

/** The row of stances as the book lists them, mended where it does not do everything. */
export function bookRow({ problem }: PosedWalk): readonly number[] {
  const ready = readyCover(problem);
  const all = Array.from({ length: problem.stances - 2 }, (_, i) => i + 1);
  const own = all.filter((stance) => problem.tasks.some(({ at }) => at[0] === stance));
  return visitsOf(ready, mended(ready, own)).visits.map(({ stance }) => stance);
}

/**
 * The order in which a walk is best walked; or, where the manual has one, that order with stances chosen for it.
 *
 * @throws {PlannerError} where no way leads to a stance, or steps wait for each other
 */
export function planOrder(book: Book, kind: WalkKind, options: OrderOptions = {}): PlannedOrder {
  const posed = poseWalk(book, kind, options);
  const { problem } = posed;
  const given = bookRow(posed);
  const isOver = (best_s: number, bound_s: number): boolean =>
    options.onProgress?.({ best_s, bound_s }) === true;
  const found = solveCover(problem, {
    seed: options.seed ?? 1,
    rounds: options.rounds ?? ROUNDS,
    from: given,
    shouldStop: (best) => isOver(best, 0),
  });
  const proof = proveCover(problem, found.visits, {
    target_1: options.target_1 ?? TARGET_1,
    states: options.proofStates ?? STATES,
    shouldStop: (bound, best) => isOver(best, bound),
  });
  const manual = options.manualOrder === undefined ? undefined : inGivenOrder(posed, options.manualOrder);
  const visits = manual ?? proof.visits;
  const cost_s = rowCost(problem, visits);
  const given_s = manual === undefined ? coverCost(problem, given) : cost_s;
  return {
    stops: stopsOf(posed, visits),
    visits,
    ...walked(posed, visits),
    cost_s,
    bound_s: proof.bound,
    gap_1: cost_s > 0 ? Math.max(0, 1 - proof.bound / cost_s) : 0,
    given_s,
    saves_s: Math.max(0, given_s - proof.cost),
    follows: manual === undefined ? "planned" : "manual",
  };
}

/** What visits cost, from the first stance of the problem to its last. */
export const rowCost = (problem: CoverProblem, visits: readonly Visit[]): number =>
  coverCost(
    problem,
    visits.map(({ stance }) => stance),
  );

/** Visits as stops of a walk. */
export function stopsOf({ tasks, stances }: PosedWalk, visits: readonly Visit[]): readonly Stop[] {
  const stops: Stop[] = [];
  for (const visit of visits) {
    const stance = stances[visit.stance - 1];
    const [first, ...rest] = visit.tasks.flatMap((task) => tasks[task]?.step ?? []);
    if (stance !== undefined && first !== undefined) {
      stops.push({ number: stops.length + 1, stance, steps: [first, ...rest] });
    }
  }
  return stops;
}

/** The ways from visit to visit, and how long they are together. */
export function walked({ problem, costs }: PosedWalk, visits: readonly Visit[]) {
  const row = [0, ...visits.map(({ stance }) => stance), problem.stances - 1];
  const legs = row.slice(1).map((to, i) => [row[i] ?? 0, to] as const);
  return {
    ways: legs.map(([from, to]) => costs.way(from, to)),
    distance_m: legs.reduce(
      (sum_m, [from, to]) => sum_m + (costs.metres[from * problem.stances + to] ?? 0),
      0,
    ),
  };
}
