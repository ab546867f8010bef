export { type Span, type Timeline, type Turn, timeline } from "./ahead/timeline.ts";
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
export type { InputFault, InputPlace, Limited, MissingPart } from "./flight/figures.ts";
export {
  type EdgeMargins,
  type EnvelopeFigures,
  faultsAt,
  type GroupFigures,
  type Knowledge,
  type LoadFigures,
  type LoadMoment,
  type LoadState,
  type NearestEdge,
  type PathPoint,
  type StationFigures,
  type TankFigures,
  type WorstPoint,
} from "./flight/load/figures.ts";
export { loadFigures } from "./flight/load/load-figures.ts";
export { flightInHand } from "./flight-in-hand.ts";
export { BADNESS } from "./order.ts";
export { type CheckedReading, checkReading } from "./reading/check-reading.ts";
export { band, judge } from "./reading/judge.ts";
export type { Band } from "./reading/limit-now.ts";
export type { Given, ReadingVerdict } from "./reading/reading-verdict.ts";
export { type Reopened, reopenedBy } from "./reopened-by.ts";
export { ADVISORY_FACTORS, type AdvisoryFactor } from "./rules/advisory-factors.ts";
export type { CabinPoint } from "./rules/cabin-profile.ts";
export type { Ceiling } from "./rules/ceiling.ts";
export { type FlightCategory, flightCategory } from "./rules/flight-category.ts";
export { finalReserve, type RequiredFuelInput, requiredFuel } from "./rules/fuel.ts";
export { NIGHT_DEFINITIONS, type NightDefinitionId, nightAt, type SunTimes } from "./rules/night.ts";
export type { RulePack } from "./rules/rule-pack.ts";
export { rulePacks } from "./rules/rule-packs.ts";
export type { CannotTell, Citation, MissingInput, Ruling } from "./rules/ruling.ts";
export { walkInHand } from "./walk/looks.ts";
