export { gearStance, planWalk } from "./plan-walk.ts";
export { type Answered, nextStep, stepsLeft, stepsOf, stopOf } from "./steps.ts";
export type { Step, Stop, WalkPlan } from "./walk-plan.ts";
