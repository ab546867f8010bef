export type { Step, Stop, WalkPlan } from "./walk-plan.ts";
