export { type Span, type Timeline, type Turn, timeline } from "./ahead/timeline.ts";
export {
  allTips,
  type Share,
  type Steady,
  type TippingPoint,
  type Tips,
  tippingPoints,
  tipsOfFlight,
} from "./ahead/tipping-points.ts";
export { assess, clockOf } from "./assess.ts";
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
export { askedByChance } from "./evidence/by-chance.ts";
export { CORRECTED_HEIGHT_M } from "./flight/conditions/air.ts";
export type { DaylightFigures } from "./flight/conditions/daylight.ts";
export { axisText, type DistanceAnswer, type Need, type TableMode } from "./flight/conditions/distances.ts";
export type { ConditionFault } from "./flight/conditions/faults.ts";
export {
  type FieldFigures,
  type FieldFiguresOptions,
  type FlightMasses,
  fieldFigures,
} from "./flight/conditions/field-figures.ts";
export type { FieldWeather, FieldWind } from "./flight/conditions/field-weather.ts";
export { type Figure, isSettled, type Missing, type Origin } from "./flight/conditions/figure.ts";
export { type HottestThatFits, hottestThatFits } from "./flight/conditions/hottest.ts";
export type { IceFigures } from "./flight/conditions/ice.ts";
export { placeText } from "./flight/conditions/place.ts";
export type { ReportFigures } from "./flight/conditions/report-figures.ts";
export { FIELD_ROLES, type FieldRole } from "./flight/conditions/role.ts";
export type { RunwayWindFigures, WindLimit, WindMargin } from "./flight/conditions/runway-wind.ts";
export type { FieldTime } from "./flight/conditions/times.ts";
export type { TypedFigures } from "./flight/conditions/typed-conditions.ts";
export { windText } from "./flight/conditions/wind-text.ts";
export { type FlightField, fieldOf } from "./flight/field-of.ts";
export {
  type InputFault,
  type InputPlace,
  type Limited,
  type MissingPart,
  SURE_FROM_1,
} from "./flight/figures.ts";
export { type ColdFuel, coldFuel } from "./flight/fuel/cold-fuel.ts";
export { fuelSinceLastFlight, type LastFlightFuel } from "./flight/fuel/from-last-flight.ts";
export { type FuelFigures, fuelFigures } from "./flight/fuel/fuel-figures.ts";
export {
  checksOfTank,
  type TankReading,
  type TankReconciled,
  tankReconciled,
} from "./flight/fuel/tank-readings.ts";
export { leavingAt } from "./flight/leaving-at.ts";
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
export { type CylinderNow, cylinderReading } from "./flight/oxygen/cylinder.ts";
export { type OxygenFigures, oxygenFigures } from "./flight/oxygen/oxygen-figures.ts";
export type { SeatInUse } from "./flight/oxygen/persons.ts";
export type { PlannedBurn } from "./flight/planned-burn.ts";
export { flightInHand } from "./flight-in-hand.ts";
export { BADNESS } from "./order.ts";
export { type CheckedReading, checkReading } from "./reading/check-reading.ts";
export { band, judge } from "./reading/judge.ts";
export type { Band } from "./reading/limit-now.ts";
export { type LimitWords, limitWords } from "./reading/limit-words.ts";
export type { Given, ReadingVerdict } from "./reading/reading-verdict.ts";
export { equipmentOf } from "./relief/equipment-of.ts";
export { releaseOf } from "./relief/release-of.ts";
export { nextReliefEnd_ms, type ReliefEnded, reliefsEnded } from "./relief/relief-ended.ts";
export { type ReliefStanding, reliefOnRecord, reliefStanding } from "./relief/relief-in-force.ts";
export { packOf, type ReliefAnswer, reliefOf } from "./relief/relief-of.ts";
export { type Reopened, reopenedBy } from "./reopened-by.ts";
export { ADVISORY_FACTORS, type AdvisoryFactor } from "./rules/advisory-factors.ts";
export type { CabinPoint } from "./rules/cabin-profile.ts";
export type { Ceiling } from "./rules/ceiling.ts";
export {
  NOT_FOR_PILOT_OWNER_NAMES,
  NOT_FOR_PILOT_OWNERS,
  OF_THE_PILOT_OWNER,
  pilotOwnerTask,
} from "./rules/eu-part-nco/release.ts";
export { finalReserve, type RequiredFuelInput, requiredFuel } from "./rules/fuel.ts";
export { NIGHT_DEFINITIONS, type NightDefinitionId, nightAt, type SunTimes } from "./rules/night.ts";
export { CLASS_WORDS, classOfBook } from "./rules/pilot/aircraft-class.ts";
export { type Medical, type MedicalClass, medicalUntil } from "./rules/pilot/medical.ts";
export { PILOT_ITEMS, type PilotItem, pilotItemsFor } from "./rules/pilot/pilot-items.ts";
export {
  type Ask,
  type RuleAnswer,
  type RuleQuestion,
  type Said,
  SUBJECTS as RULE_SUBJECTS,
} from "./rules/questions/question.ts";
export { ruleQuestions } from "./rules/questions/rule-questions.ts";
export type { ReliefRuling, ReliefSaid, RuledStep } from "./rules/relief.ts";
export type { RulePack } from "./rules/rule-pack.ts";
export { rulePacks } from "./rules/rule-packs.ts";
export type { CannotTell, Citation, MissingInput, Ruling } from "./rules/ruling.ts";
export { type ComponentAboard, componentAboard, componentRan } from "./timed/component-aboard.ts";
export type { Item as FollowedItem } from "./timed/due.ts";
export { type DueForecast, dueForecast } from "./timed/due-forecast.ts";
export { localDayOf } from "./timed/local-day.ts";
export {
  type LimitLeft,
  type TimedFigure,
  type TimedRequest,
  type TimedState,
  timedFigures,
} from "./timed/timed-figures.ts";
export { pilotOf, timedVerdict } from "./timed/timed-verdicts.ts";
export { leftText, untilText } from "./timed/timed-words.ts";
export { totalWhenShown } from "./timed/use-of-flight.ts";
export { type Expected, expectedNow, oddWhileTyped, type Typed as TypedReading } from "./trend/expected.ts";
export { asRead, type Shown } from "./trend/refer.ts";
export { isFollowed, referredPoint } from "./trend/series.ts";
export type { Forecast, Restart, Series, Trend, TrendFit, TrendPoint } from "./trend/trend.ts";
export { TREND_SOURCES } from "./trend/trend-verdicts.ts";
export { limitText, slopeText, valueText } from "./trend/trend-words.ts";
export { allSeries, compareTrends, trendOf, trendsOf } from "./trend/trends.ts";
export { walkInHand } from "./walk/looks.ts";
