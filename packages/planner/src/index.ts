export { type CoverProblem, coverCost, type Task, type Visit } from "./cover/cover-problem.ts";
export { type Proof, type ProofOptions, proveCover } from "./cover/prove-cover.ts";
export { type CoverAnswer, solveCover } from "./cover/solve-cover.ts";
export { estimate_s, type Learnt, step_s } from "./estimate.ts";
export type { Ground } from "./geometry/convex.ts";
export { CLEAR_OF_BLADES_m, CLEAR_OF_TIPS_m, type Obstacle, obstaclesOf } from "./geometry/obstacles.ts";
export { PERSON, type Person } from "./geometry/person.ts";
export { type Reach, reachOf } from "./geometry/reach.ts";
export { canSee, type Space } from "./geometry/solids.ts";
export { type WalkingPaths, walkingPaths } from "./geometry/walking-paths.ts";
export { gearStance, planWalk } from "./plan-walk.ts";
export { PlannerError } from "./planner-error.ts";
export { below, type Chance, chanceOf } from "./random.ts";
export { costOf, keepsRules, type SequenceProblem } from "./sequence/sequence-problem.ts";
export { type SearchOptions, type SequenceAnswer, solveSequence } from "./sequence/solve-sequence.ts";
export { type Candidate, candidateStances, type Target } from "./stances/candidate-stances.ts";
export { type SuggestedStances, type SuggestOptions, suggestStances } from "./stances/suggest-stances.ts";
export { type Answered, nextStep, stepsLeft, stepsOf, stopOf } from "./steps.ts";
export { isInArc } from "./walk/arc.ts";
export { type Doorway, doorway } from "./walk/door.ts";
export { manualOrder } from "./walk/manual-order.ts";
export { hasFaults, type OrderFaults, orderFaults } from "./walk/order-faults.ts";
export {
  type OrderOptions,
  type PlannedOrder,
  type PosedWalk,
  planOrder,
  poseWalk,
} from "./walk/plan-order.ts";
export { type SharedWalk, shareWalk } from "./walk/share-walk.ts";
export { type Share, type SplitOptions, type SplitWalk, splitWalk } from "./walk/split-walk.ts";
export { look_s, type PastLook, timesLeast } from "./walk/step-times.ts";
export { WALK_COSTS, type WalkCosts } from "./walk/walk-costs.ts";
export { walkInOrder } from "./walk/walk-in-order.ts";
export {
  ORDER_VERSION,
  type OrderedStop,
  orderedStops,
  orderedWalk,
  orderLeft,
  orderOf,
  type WalkOrder,
} from "./walk/walk-order.ts";
export type { Step, Stop, WalkPlan } from "./walk-plan.ts";
