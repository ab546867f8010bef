export { gearStance, planWalk } from "./plan-walk.ts";
export { PlannerError } from "./planner-error.ts";
export type { SequenceProblem } from "./sequence/sequence-problem.ts";
export { costOf, keepsRules } from "./sequence/sequence-problem.ts";
export { type SearchOptions, type SequenceAnswer, solveSequence } from "./sequence/solve-sequence.ts";
export { type Answered, nextStep, stepsLeft, stepsOf, stopOf } from "./steps.ts";
export type { Step, Stop, WalkPlan } from "./walk-plan.ts";
