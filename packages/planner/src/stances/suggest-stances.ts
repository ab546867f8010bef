import type { Geometry, Hazard } from "@witnessmark/book";
import { readyCover } from "../cover/cover-problem.ts";
import { proveCover } from "../cover/prove-cover.ts";
import { solveCover } from "../cover/solve-cover.ts";
import { obstaclesOf } from "../geometry/obstacles.ts";
import { PERSON, type Person } from "../geometry/person.ts";
import { doorway } from "../walk/door.ts";
import { stanceCosts } from "../walk/stance-costs.ts";
import { WALK_COSTS } from "../walk/walk-costs.ts";
import { type Candidate, candidateStances, type Target } from "./candidate-stances.ts";

export interface SuggestOptions {
  readonly hazards?: readonly Hazard[];
  readonly person?: Person;
  readonly seed?: number;
  readonly rounds?: number;
  readonly proofStates?: number;
}

/** Stances for targets outside the aircraft, in the order of a walk from the door and back. */
export interface SuggestedStances {
  readonly stances: readonly Candidate[];
  /** Targets that no place on the ground serves: too high without a line of sight, hidden, or inside. */
  readonly outOfReach: readonly string[];
  readonly cost_s: number;
  readonly bound_s: number;
}

/** Where to stand for all that is to be done outside, from the drawing alone: for a book that has no stances yet. */
export function suggestStances(
  geometry: Geometry,
  targets: readonly Target[],
  options: SuggestOptions = {},
): SuggestedStances {
  const obstacles = obstaclesOf(geometry, options.hazards);
  const found = candidateStances(geometry, obstacles, targets, options.person ?? PERSON);
  const door = doorway(geometry);
  const end = { place: door.outside, posture: "stand", isEnd: true } as const;
  const { seconds } = stanceCosts([end, ...found, end], obstacles, door, WALK_COSTS);
  const at = targets.map((_, i) => found.flatMap(({ serves }, j) => (serves.includes(i) ? [j + 1] : [])));
  const isServed = (i: number): boolean => (at[i]?.length ?? 0) > 0;
  const asked = targets.flatMap((_, i) => (isServed(i) ? [i] : []));
  const problem = readyCover({
    stances: found.length + 2,
    cost: seconds,
    tasks: asked.map((i) => ({ at: at[i] ?? [], after: [] })),
  });
  const { visits } = solveCover(problem, { rounds: options.rounds ?? 20, seed: options.seed ?? 1 });
  const proof = proveCover(problem, visits, { target_1: 0.02, states: options.proofStates ?? 2000 });
  const stances = proof.visits.flatMap(({ stance, tasks }) => {
    const candidate = found[stance - 1];
    const serves = tasks.flatMap((task) => asked[task] ?? []);
    if (candidate === undefined) return [];
    return [{ ...candidate, serves, needsStep: candidate.needsStep.filter((one) => serves.includes(one)) }];
  });
  return {
    stances,
    outOfReach: targets.flatMap(({ id }, i) => (isServed(i) ? [] : [id])),
    cost_s: proof.cost,
    bound_s: proof.bound,
  };
}
