export { ASPECTS, type Aspect, type Outcome, type Problem } from "./aspect.ts";
export { type Ceiling, ceilingOf } from "./ceiling.ts";
export type { From, Source, State, WorstCase } from "./conditions.ts";
export { type Conditions, changesOf, conditionsAt, type Slice } from "./conditions-at.ts";
export type { DayTime } from "./day-time.ts";
export { type Decoded, decodeReports } from "./decode.ts";
export type { Elements } from "./elements.ts";
export {
  type CategoryAnswer,
  ceilingCategory,
  FLIGHT_CATEGORIES,
  type FlightCategory,
  flightCategory,
  visibilityCategory,
  worseCategory,
} from "./flight-category.ts";
export { type FrostAnswer, type NightGround, reportedFrost } from "./frost.ts";
export type { Group, Section } from "./group.ts";
export type { CloudAmount, CloudLayer, SkyStatement } from "./groups/clouds.ts";
export type { RunwayState } from "./groups/runway-state.ts";
export type { RunwayVisualRange } from "./groups/runway-visual-range.ts";
export type { WholeDegrees } from "./groups/temperature.ts";
export type { SectorVisibility, Visibility } from "./groups/visibility.ts";
export { type WeatherCode, weatherCodeOf } from "./groups/weather-code.ts";
export { weatherText } from "./groups/weather-text.ts";
export { inSector, type Wind } from "./groups/wind.ts";
export { type FreezingPrecipitation, freezingPrecipitation, type Hazard, hazardsOf } from "./hazards.ts";
export {
  type IcingAnswer,
  type IcingGround,
  type MoistureGround,
  reportedIcing,
  visibleMoisture,
} from "./icing.ts";
export { durationText, instantNear } from "./instant.ts";
export { type ObservedConditions, observedConditions } from "./observed-conditions.ts";
export {
  CLOCK_ERROR_MS,
  type Placed,
  type PlacedForecast,
  type PlacedObservation,
  type PlacedPeriod,
  placeReport,
  type Unplaced,
} from "./placed.ts";
export { OBSERVATION_CURRENT_MS, type ReadReport, type ReportAsk, readReport } from "./read-report.ts";
export type { Remark } from "./remarks/remark.ts";
export {
  type Forecast,
  type ForecastPeriod,
  isKnown,
  type Observation,
  type PeriodKind,
  type Report,
  type Trend,
} from "./report.ts";
