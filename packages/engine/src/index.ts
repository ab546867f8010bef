export { altimeterSettingSimple, altimeterSettingUs, stationPressureUs } from "./air/altimeter-setting-us.ts";
export {
  altimeterCheckMargin,
  flightLevelAdjustment,
  indicationChange,
  pressureAltitude,
  qfe,
  reportedQnh,
  settingBeyondScale,
} from "./air/altimetry.ts";
export { type CarburettorIcing, carburettorIcing } from "./air/carburettor-icing.ts";
export {
  type ColdCorrectionRounding,
  coldCorrectionRounding,
  coldTemperatureError,
  coldTemperatureRule,
  coldTemperatureTable,
} from "./air/cold-temperature.ts";
export { densityAltitude, moistDensityAltitude, virtualTemperature } from "./air/density-altitude.ts";
export {
  freezingLevelRule,
  type IcingQuestion,
  icingConditions,
  USUAL_ICING_FROM_K,
} from "./air/freezing-level.ts";
export {
  type FrostNight,
  type FrostOutlook,
  frostMargin,
  frostOutlook,
  skinTemperatureRule,
} from "./air/frost.ts";
export {
  dewPoint,
  enhancementFactor,
  frostPoint,
  relativeHumidity,
  vapourPressureIce,
  vapourPressureWater,
} from "./air/humidity.ts";
export {
  cloudBaseRule,
  densityAltitudeFahrenheitRule,
  densityAltitudeNws,
  densityAltitudeRule,
  pressureAltitudeHectopascalRule,
  pressureAltitudeInchRule,
  standardTemperatureRule,
} from "./air/rules-of-thumb.ts";
export {
  altitudeOfDensity,
  altitudeOfPressure,
  densityRatio,
  geopotentialAltitude,
  pressureRatio,
  standardDensity,
  standardPressure,
  standardSpeedOfSound,
  standardTemperature,
  temperatureRatio,
} from "./air/standard-atmosphere.ts";
export {
  vapourPressureBolton,
  vapourPressureBuck,
  vapourPressureMurphyKoopIce,
  vapourPressureMurphyKoopWater,
  vapourPressureNws,
  vapourPressureSonntag,
} from "./air/vapour-pressure-forms.ts";
export { type AiracCycle, airacCycleOn, airacDatesOf } from "./calendar/airac.ts";
export { addDays, dateOfDayNumber, dayNumber, daysBetween } from "./calendar/days.ts";
export { isLocalDate } from "./calendar/local-date.ts";
export { addMonths, ageOn, endOfMonthAfter, startOfMonthBefore } from "./calendar/months.ts";
export { MONTH_NAMES, shortName, WEEKDAY_NAMES } from "./calendar/names.ts";
export {
  capabilityIndex,
  conformanceAbove,
  conformanceBelow,
  conformanceBetween,
  nonconformanceBetween,
} from "./conformity/conformance.ts";
export {
  acceptanceFactorLinear,
  acceptanceFactorRss,
  acceptanceFactorTwoPercent,
  coverageFactorStudent,
  guardBandNormal,
  guardBandRectangular,
  guardBandStudent,
} from "./conformity/guard-band.ts";
export {
  CLEAR_FROM_1,
  type JudgedReading,
  type Judgement,
  judgeReading,
} from "./conformity/judge-reading.ts";
export { type GaugeStatement, standardUncertainty } from "./conformity/uncertainty.ts";
export {
  gaugeUncertainty,
  gaugeUncertainty95,
  uncertaintyFromCoverage,
  uncertaintyFromHalfWidth,
  uncertaintyFromMultiple,
  uncertaintyOfCycle,
} from "./conformity/uncertainty-quantities.ts";
export {
  endurance,
  enduranceByVolume,
  fuelFromTotaliser,
  fuelImbalance,
  fuelImbalanceByVolume,
  fuelMass,
  fuelVolume,
} from "./fuel/amount.ts";
export { coldSoakedTemperature, freezingMargin, recoveryTemperature } from "./fuel/cold-soak.ts";
export { fuelFromLastFlight } from "./fuel/from-last-flight.ts";
export {
  FUEL_KINDS,
  type FuelKind,
  type FuelKindFacts,
  HANDBOOK_FLUID_LBPERUSGAL,
} from "./fuel/fuel-kinds.ts";
export {
  type FuelSource,
  fuelConsistency,
  type ReconciledFuel,
  reconciledFuel,
  reconciledFuelUncertainty,
  reconcileFuel,
} from "./fuel/reconcile.ts";
export { fuelDensity, fuelDensity15, fuelVolumeCorrection } from "./fuel/volume-correction.ts";
export {
  cylinderPressureAtTemperature,
  nitrogenPressureAtTemperature,
  oxygenPressureAtTemperature,
} from "./gas/cylinder-pressure.ts";
export { gaugePressureAtAmbient, gaugePressureAtTemperature } from "./gas/gauge-pressure.ts";
export {
  idealFreeVolume,
  oxygenContents,
  oxygenUsable,
  oxygenUsableShare,
  oxygenWaterVolume,
} from "./gas/oxygen-contents.ts";
export {
  nitrogenCompressibility,
  nitrogenDensity,
  oxygenCompressibility,
  oxygenDensity,
} from "./gas/real-gas.ts";
export type { Gas } from "./gas/real-gas-model.ts";
export { btpsToStpd, ntpdToStpd } from "./gas/reference-states.ts";
export { strutExtensionChange } from "./gas/strut.ts";
export {
  tyreActionBand,
  tyreHighestPressure,
  tyreLoadedPressure,
  tyreLoss,
  tyreRetentionLimit,
  tyreShareOfService,
} from "./gas/tyre.ts";
export { type TyreAction, type TyreActionKind, tyreAction } from "./gas/tyre-action.ts";
export { hydroplaningSpeedRolling, hydroplaningSpeedTouchdown, tyrePressureRule } from "./gas/tyre-rules.ts";
export { InputError, type InputErrorCode, type InputErrorDetail } from "./input-error.ts";
export { type AdverseLoading, adverseLoading, type VariableItem } from "./load/adverse-loading.ts";
export {
  type Burn,
  type BurnPath,
  type BurnPiece,
  type BurnPlan,
  type BurnState,
  burnPath,
} from "./load/burn-path.ts";
export {
  centreOfGravity,
  centreOfGravityFromMoments,
  lateralCentreOfGravity,
  lateralMoment,
  totalMass,
  totalMoment,
  totalOfMoments,
} from "./load/centre-of-gravity.ts";
export {
  ballastNeeded,
  centreAfterChange,
  centreShift,
  massToCentreLimit,
  massToShift,
} from "./load/changes.ts";
export { armOfPercentMac, percentMac } from "./load/chord.ts";
export {
  armsInEnvelope,
  type Envelope,
  type EnvelopeMargins,
  type EnvelopePlace,
  type MassAndArm,
  pointInEnvelope,
} from "./load/envelope.ts";
export {
  type BurnMoment,
  type EnvelopeAlongBurn,
  envelopeAlongBurn,
  isInsideAlongBurn,
} from "./load/envelope-along-burn.ts";
export { type EnvelopeFault, type EnvelopeFaultCode, envelopeFaults } from "./load/envelope-faults.ts";
export { floorLoading, mostOnFloor } from "./load/floor.ts";
export { centreLimit, momentLimit } from "./load/limit-lines.ts";
export { type LoadedState, type LoadItem, loadedState } from "./load/loaded-state.ts";
export {
  CHECKED_BAG_SURVEY,
  passengerFromStated,
  sampleForMean,
  spreadOfMean,
  spreadOfTotal,
  surveySample,
} from "./load/mass-statistics.ts";
export {
  MASS_SPREADS,
  type MassKnowledge,
  type MassSpread,
  massSpread,
  STANDARD_MASSES,
  type StandardMass,
} from "./load/standard-masses.ts";
export {
  type LimitedGroup,
  type LimitedStation,
  type StationMargin,
  stationMargins,
} from "./load/station-margins.ts";
export { type LimitLine, type MomentRow, suspectRows } from "./load/suspect-rows.ts";
export { checkTank, type TankArm, type TankFuel, tankArm_m, usable_m3 } from "./load/tank.ts";
export {
  type EdgeProbability,
  probabilityOfEdges,
  probabilityOfMassLimit,
  probabilityWithin,
  type UncertainItem,
  type UncertainState,
  uncertainState,
} from "./load/uncertain-load.ts";
export {
  minimumFuelForCheck,
  negligibleMassChange,
  noseWheelCentre,
  tailWheelCentre,
  weighedCentre,
  weighedMass,
} from "./load/weighing.ts";
export {
  CREW_EQUIPMENT_SOURCE,
  type CrewOxygenEquipment,
  crewOxygenEquipment,
} from "./oxygen/crew-equipment.ts";
export {
  type DescentSupply,
  descentSupply,
  type EmergencyDescent,
  everyThousandFeet_m,
  type MeanFlow,
  meanFlowBetween,
} from "./oxygen/descent-flow.ts";
export {
  descentRateNeeded,
  firstAidOxygen,
  oxygenDuration,
  oxygenMeanFlow,
  oxygenPartCapacity,
  oxygenSupply,
  oxygenTotalFlow,
} from "./oxygen/duration.ts";
export { type FlowFound, type FlowRow, flowAt } from "./oxygen/flow-table.ts";
export { leastAddedOxygenFlow, maskFlowPureOxygen, oxygenFlowRule } from "./oxygen/mask-flow.ts";
export {
  alveolarOxygenPressure,
  ambientOxygenPressure,
  seaLevelOxygenEquivalent,
  trachealOxygenPressure,
} from "./oxygen/partial-pressure.ts";
export {
  TRACHEAL_TARGETS,
  type TrachealTarget,
  type TrachealTargetFor,
  type TrachealTargetFound,
  trachealTarget,
} from "./oxygen/tracheal-target.ts";
export {
  type TimeSpan,
  USEFUL_CONSCIOUSNESS,
  USEFUL_CONSCIOUSNESS_SOURCE,
  type UsefulConsciousness,
  type UsefulConsciousnessFound,
  usefulConsciousness,
} from "./oxygen/useful-consciousness.ts";
export { DefinitionError } from "./registry/check-definition.ts";
export { defineQuantity } from "./registry/define-quantity.ts";
export { quantities } from "./registry/quantities.ts";
export type {
  AnyQuantity,
  InputSpec,
  InputsOf,
  InputValue,
  OutputSpec,
  Quantity,
  QuantitySource,
} from "./registry/quantity.ts";
export { quantityOf, stemOf, type Worked, type WorkedInput, work } from "./registry/work.ts";
export {
  type AbortPoint,
  abortPoint,
  accelerateStopEstimate,
  halfwaySpeedRule,
  latestAbortSpeedEstimate,
} from "./runway/abort.ts";
export {
  type ClimbFromSeaLevel,
  climbAngle,
  climbBetween,
  climbGradientBetween,
  climbGradientOfRate,
  climbRateForGradient,
  runwayHeightChange,
} from "./runway/climb.ts";
export {
  CHAIN_STAGES,
  type ChainStage,
  type ChainStep,
  type DistanceChain,
  type DistanceFactor,
  type DistanceFigures,
  distanceChain,
  type FactorBase,
} from "./runway/distance-chain.ts";
export {
  EUROPEAN_SLOPE_RULE,
  type FactorAnswer,
  type SlopeRule,
  slopeFactor,
  type WindNote,
  type WindNotes,
  windNoteFactor,
} from "./runway/factor-rules.ts";
export {
  type FactorSet,
  LEAFLET_7_VARIATIONS,
  PUBLISHED_FACTORS,
  type PublishedFactor,
  type RunwayPhase,
  type RunwaySurface,
  type SurfaceCondition,
  safetyFactors,
  surfaceFactors,
  TURBOPROP_CONDITION_FACTORS,
} from "./runway/published-factors.ts";
export {
  densityLandingRule,
  fastApproachRule,
  highThresholdRule,
  massLandingRule,
  massSpeedRule,
  massTakeOffRule,
  windDistanceRule,
} from "./runway/rules-of-thumb.ts";
export {
  approachSpeed,
  levelStallSpeed,
  loadFactorInTurn,
  manoeuvringSpeed,
  stallSpeedAtLoadFactor,
  stallSpeedAtMass,
  trueAirspeed,
} from "./runway/speeds.ts";
export { type CalendarDate, type LocalClock, localInstant_ms, utcOffsetAt_s } from "./sun/calendar.ts";
export {
  arePositionLightsRequired,
  civilNights,
  isCivilNight,
  isPassengerRecencyNight,
  passengerRecencyNightOf,
  passengerRecencyNights,
  positionLightNights,
} from "./sun/night.ts";
export type { Span } from "./sun/sun-crossings.ts";
export { type SunDay, type SunPassage, sunDay } from "./sun/sun-day.ts";
export {
  julianDay,
  sunApparentLongitude,
  sunAzimuth,
  sunDeclination,
  sunElevation,
  sunEquationOfCentre,
  sunMeanAnomaly,
  sunMeanLongitude,
  sunRightAscension,
} from "./sun/sun-position.ts";
export type { EarthPlace } from "./sun/sun-position-model.ts";
export { civilDawn, civilDusk, sunrise, sunset } from "./sun/sun-times.ts";
export {
  type HarmlessEnd,
  interpolateTable,
  type TableAnswer,
  type TableCorner,
  type TableReading,
} from "./table/interpolate-table.ts";
export { axisValuesOfCell, type Table, type TableAxis, tableFaults } from "./table/table.ts";
export { type Trend, type TrendFault, trendFaults } from "./table/table-trend.ts";
export { type ChangePoint, changePoint, type Side } from "./trend/change-point.ts";
export {
  type CusumChart,
  type CusumSettings,
  cusum,
  type EwmaChart,
  type EwmaSettings,
  ewma,
} from "./trend/control-charts.ts";
export { type Crossing, crossing } from "./trend/crossing.ts";
export { type Kendall, kendall } from "./trend/kendall.ts";
export {
  type Interval,
  type LineFit,
  leastSquares,
  lineAt,
  lineInterval,
  predictionInterval,
} from "./trend/least-squares.ts";
export { type LinearFit, linearFit, polynomialFit } from "./trend/linear-fit.ts";
export { type OutlierStep, type Outliers, outliersOf } from "./trend/outliers.ts";
export { FEWEST_READINGS, type TooFew } from "./trend/series.ts";
export { type LeakSettings, type LeakWatch, slowLeak } from "./trend/slow-leak.ts";
export {
  medianOf,
  modifiedZ,
  ODD_FROM,
  type Statistics,
  scatterOf,
  statisticsOf,
} from "./trend/statistics.ts";
export { type RobustLine, theilSen } from "./trend/theil-sen.ts";
export {
  cusumLower,
  cusumUpper,
  ewmaAverage,
  ewmaHalfWidth,
  kendallProbability,
  kendallScore,
  limitMetEarliest,
  limitMetExpected,
  modifiedZScore,
  predictionHigh,
  predictionLow,
  robustSlope,
  robustSlopeHigh,
  robustSlopeLow,
  seriesAutocorrelation,
  seriesSpread,
  trendSlope,
  trendSpread,
  trendValue,
} from "./trend/trend-quantities.ts";
export { differenceFromSI, differenceToSI, fromSI, toSI } from "./units/convert.ts";
export { decimalsOf, formatMeasure, formatValue, withSymbol } from "./units/format.ts";
export { type Measure, measure, parseMeasure } from "./units/measure.ts";
export { roundToSafeSide } from "./units/round.ts";
export { roundStep } from "./units/round-step.ts";
export {
  type Dimension,
  isUnitId,
  type SiUnit,
  siUnitOf,
  UNITS,
  type UnitId,
  type UnitSpec,
  unitFromText,
  unitsOf,
} from "./units/units.ts";
export { type Arc, onArc } from "./wind/circle.ts";
export {
  crosswindComponent,
  headwindComponent,
  sectorCrosswind,
  sectorHeadwind,
  trueDirection,
  windTowardsEast,
  windTowardsNorth,
} from "./wind/components.ts";
export {
  angleAtCrosswindLimit,
  countedWind,
  demonstratedCrosswind,
  gustAdditive,
  windAtCrosswindLimit,
} from "./wind/limits.ts";
export {
  isGustReported,
  type RunwayWind,
  roundedRunwayWind,
  strongestWind_mPerS,
  type Wind,
  type WindDirection,
  windOnRunway,
} from "./wind/runway-wind.ts";
