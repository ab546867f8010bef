export { assess } from "./assess.ts";
export type {
  Assessment,
  Flight,
  Margin,
  Source,
  Standing,
  Verdict,
  VerdictTopic,
  Working,
  WorkingLine,
} from "./assessment.ts";
export { assessmentHash, decisionBody } from "./decision/hash.ts";
export {
  type DecisionFault,
  type DecisionNeed,
  decisionFaults,
  decisionNeeds,
  type Reason,
} from "./decision/needs.ts";
export { standing } from "./decision/standing.ts";
export { type BookReader, type DecisionCheck, verifyDecision } from "./decision/verify.ts";
export { BADNESS } from "./order.ts";
export { type CheckedReading, checkReading } from "./reading/check-reading.ts";
export { band, judge } from "./reading/judge.ts";
export type { Band } from "./reading/limit-now.ts";
export type { Given, ReadingVerdict } from "./reading/reading-verdict.ts";
export { type Reopened, reopenedBy } from "./reopened-by.ts";
export { walkInHand } from "./walk/looks.ts";
