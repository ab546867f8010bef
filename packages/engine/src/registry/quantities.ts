import {
  altimeterSettingSimple,
  altimeterSettingUs,
  stationPressureUs,
} from "../air/altimeter-setting-us.ts";
import {
  altimeterCheckMargin,
  flightLevelAdjustment,
  indicationChange,
  pressureAltitude,
  qfe,
  reportedQnh,
  settingBeyondScale,
} from "../air/altimetry.ts";
import { coldTemperatureError, coldTemperatureRule, coldTemperatureTable } from "../air/cold-temperature.ts";
import { densityAltitude, moistDensityAltitude, virtualTemperature } from "../air/density-altitude.ts";
import { freezingLevelRule } from "../air/freezing-level.ts";
import { frostMargin, skinTemperatureRule } from "../air/frost.ts";
import {
  dewPoint,
  enhancementFactor,
  frostPoint,
  relativeHumidity,
  vapourPressureIce,
  vapourPressureWater,
} from "../air/humidity.ts";
import {
  cloudBaseRule,
  densityAltitudeFahrenheitRule,
  densityAltitudeNws,
  densityAltitudeRule,
  pressureAltitudeHectopascalRule,
  pressureAltitudeInchRule,
  standardTemperatureRule,
} from "../air/rules-of-thumb.ts";
import {
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
} from "../air/standard-atmosphere.ts";
import {
  vapourPressureBolton,
  vapourPressureBuck,
  vapourPressureMurphyKoopIce,
  vapourPressureMurphyKoopWater,
  vapourPressureNws,
  vapourPressureSonntag,
} from "../air/vapour-pressure-forms.ts";
import {
  capabilityIndex,
  conformanceAbove,
  conformanceBelow,
  conformanceBetween,
  nonconformanceBetween,
} from "../conformity/conformance.ts";
import {
  acceptanceFactorLinear,
  acceptanceFactorRss,
  acceptanceFactorTwoPercent,
  coverageFactorStudent,
  guardBandNormal,
  guardBandRectangular,
  guardBandStudent,
} from "../conformity/guard-band.ts";
import {
  gaugeUncertainty,
  gaugeUncertainty95,
  uncertaintyFromCoverage,
  uncertaintyFromHalfWidth,
  uncertaintyFromMultiple,
  uncertaintyOfCycle,
} from "../conformity/uncertainty-quantities.ts";
import {
  endurance,
  enduranceByVolume,
  fuelFromTotaliser,
  fuelImbalance,
  fuelImbalanceByVolume,
  fuelMass,
  fuelVolume,
} from "../fuel/amount.ts";
import { coldSoakedTemperature, freezingMargin, recoveryTemperature } from "../fuel/cold-soak.ts";
import { fuelFromLastFlight } from "../fuel/from-last-flight.ts";
import { fuelConsistency, reconciledFuel, reconciledFuelUncertainty } from "../fuel/reconcile.ts";
import { fuelDensity, fuelDensity15, fuelVolumeCorrection } from "../fuel/volume-correction.ts";
import { nitrogenPressureAtTemperature, oxygenPressureAtTemperature } from "../gas/cylinder-pressure.ts";
import { gaugePressureAtAmbient, gaugePressureAtTemperature } from "../gas/gauge-pressure.ts";
import {
  idealFreeVolume,
  oxygenContents,
  oxygenUsable,
  oxygenUsableShare,
  oxygenWaterVolume,
} from "../gas/oxygen-contents.ts";
import {
  nitrogenCompressibility,
  nitrogenDensity,
  oxygenCompressibility,
  oxygenDensity,
} from "../gas/real-gas.ts";
import { btpsToStpd, ntpdToStpd } from "../gas/reference-states.ts";
import { strutExtensionChange } from "../gas/strut.ts";
import {
  tyreActionBand,
  tyreHighestPressure,
  tyreLoadedPressure,
  tyreLoss,
  tyreRetentionLimit,
  tyreShareOfService,
} from "../gas/tyre.ts";
import { hydroplaningSpeedRolling, hydroplaningSpeedTouchdown, tyrePressureRule } from "../gas/tyre-rules.ts";
import {
  centreOfGravity,
  centreOfGravityFromMoments,
  lateralCentreOfGravity,
  lateralMoment,
  totalMass,
  totalMoment,
  totalOfMoments,
} from "../load/centre-of-gravity.ts";
import {
  ballastNeeded,
  centreAfterChange,
  centreShift,
  massToCentreLimit,
  massToShift,
} from "../load/changes.ts";
import { armOfPercentMac, percentMac } from "../load/chord.ts";
import { floorLoading, mostOnFloor } from "../load/floor.ts";
import { centreLimit, momentLimit } from "../load/limit-lines.ts";
import {
  passengerFromStated,
  sampleForMean,
  spreadOfMean,
  spreadOfTotal,
  surveySample,
} from "../load/mass-statistics.ts";
import {
  minimumFuelForCheck,
  negligibleMassChange,
  noseWheelCentre,
  tailWheelCentre,
  weighedCentre,
  weighedMass,
} from "../load/weighing.ts";
import {
  descentRateNeeded,
  firstAidOxygen,
  oxygenDuration,
  oxygenMeanFlow,
  oxygenPartCapacity,
  oxygenSupply,
  oxygenTotalFlow,
} from "../oxygen/duration.ts";
import { leastAddedOxygenFlow, maskFlowPureOxygen, oxygenFlowRule } from "../oxygen/mask-flow.ts";
import {
  alveolarOxygenPressure,
  ambientOxygenPressure,
  seaLevelOxygenEquivalent,
  trachealOxygenPressure,
} from "../oxygen/partial-pressure.ts";
import { accelerateStopEstimate, halfwaySpeedRule, latestAbortSpeedEstimate } from "../runway/abort.ts";
import {
  climbAngle,
  climbGradientBetween,
  climbGradientOfRate,
  climbRateForGradient,
  runwayHeightChange,
} from "../runway/climb.ts";
import {
  densityLandingRule,
  fastApproachRule,
  highThresholdRule,
  massLandingRule,
  massSpeedRule,
  massTakeOffRule,
  windDistanceRule,
} from "../runway/rules-of-thumb.ts";
import {
  approachSpeed,
  levelStallSpeed,
  loadFactorInTurn,
  manoeuvringSpeed,
  stallSpeedAtLoadFactor,
  stallSpeedAtMass,
  trueAirspeed,
} from "../runway/speeds.ts";
import {
  julianDay,
  sunApparentLongitude,
  sunAzimuth,
  sunDeclination,
  sunElevation,
  sunEquationOfCentre,
  sunMeanAnomaly,
  sunMeanLongitude,
  sunRightAscension,
} from "../sun/sun-position.ts";
import { civilDawn, civilDusk, sunrise, sunset } from "../sun/sun-times.ts";
import {
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
} from "../trend/trend-quantities.ts";
import {
  crosswindComponent,
  headwindComponent,
  sectorCrosswind,
  sectorHeadwind,
  trueDirection,
  windTowardsEast,
  windTowardsNorth,
} from "../wind/components.ts";
import {
  angleAtCrosswindLimit,
  countedWind,
  demonstratedCrosswind,
  gustAdditive,
  windAtCrosswindLimit,
} from "../wind/limits.ts";
import { DefinitionError } from "./check-definition.ts";
import type { AnyQuantity } from "./quantity.ts";

/** Every quantity of the program, in the order in which a person meets them. */
const ALL: readonly AnyQuantity[] = [
  // air: standard atmosphere
  standardTemperature,
  standardPressure,
  standardDensity,
  standardSpeedOfSound,
  temperatureRatio,
  pressureRatio,
  densityRatio,
  geopotentialAltitude,
  altitudeOfPressure,
  altitudeOfDensity,
  // air: altimetry
  pressureAltitude,
  qfe,
  indicationChange,
  stationPressureUs,
  altimeterSettingUs,
  altimeterSettingSimple,
  reportedQnh,
  settingBeyondScale,
  altimeterCheckMargin,
  flightLevelAdjustment,
  // air: humidity
  vapourPressureWater,
  vapourPressureIce,
  dewPoint,
  frostPoint,
  relativeHumidity,
  enhancementFactor,
  // air: density altitude
  densityAltitude,
  virtualTemperature,
  moistDensityAltitude,
  // air: rules of thumb
  standardTemperatureRule,
  pressureAltitudeInchRule,
  pressureAltitudeHectopascalRule,
  densityAltitudeRule,
  densityAltitudeFahrenheitRule,
  densityAltitudeNws,
  cloudBaseRule,
  // air: vapour pressure forms
  vapourPressureNws,
  vapourPressureBolton,
  vapourPressureBuck,
  vapourPressureSonntag,
  vapourPressureMurphyKoopWater,
  vapourPressureMurphyKoopIce,
  // gas: gauge pressure
  gaugePressureAtTemperature,
  gaugePressureAtAmbient,
  // gas: tyre
  tyreShareOfService,
  tyreLoss,
  tyreActionBand,
  tyreLoadedPressure,
  tyreHighestPressure,
  tyreRetentionLimit,
  tyrePressureRule,
  hydroplaningSpeedRolling,
  hydroplaningSpeedTouchdown,
  // gas: strut
  strutExtensionChange,
  // gas: real gas
  oxygenDensity,
  nitrogenDensity,
  oxygenCompressibility,
  nitrogenCompressibility,
  // gas: cylinder pressure
  oxygenPressureAtTemperature,
  nitrogenPressureAtTemperature,
  // gas: oxygen contents
  oxygenContents,
  oxygenUsable,
  oxygenUsableShare,
  oxygenWaterVolume,
  idealFreeVolume,
  ntpdToStpd,
  btpsToStpd,
  // oxygen: in the body
  ambientOxygenPressure,
  trachealOxygenPressure,
  alveolarOxygenPressure,
  seaLevelOxygenEquivalent,
  // oxygen: flow, supply, duration
  maskFlowPureOxygen,
  leastAddedOxygenFlow,
  oxygenTotalFlow,
  oxygenMeanFlow,
  oxygenSupply,
  oxygenPartCapacity,
  oxygenDuration,
  firstAidOxygen,
  oxygenFlowRule,
  descentRateNeeded,
  // conformity: conformance
  conformanceAbove,
  conformanceBelow,
  conformanceBetween,
  nonconformanceBetween,
  capabilityIndex,
  // conformity: uncertainty quantities
  gaugeUncertainty,
  gaugeUncertainty95,
  uncertaintyFromMultiple,
  uncertaintyFromCoverage,
  uncertaintyFromHalfWidth,
  uncertaintyOfCycle,
  // conformity: guard band
  guardBandNormal,
  guardBandStudent,
  guardBandRectangular,
  coverageFactorStudent,
  acceptanceFactorRss,
  acceptanceFactorLinear,
  acceptanceFactorTwoPercent,
  // load: centre of gravity
  totalMass,
  totalMoment,
  totalOfMoments,
  centreOfGravity,
  centreOfGravityFromMoments,
  lateralMoment,
  lateralCentreOfGravity,
  // load: changes
  centreShift,
  massToShift,
  centreAfterChange,
  ballastNeeded,
  massToCentreLimit,
  // load: chord
  percentMac,
  armOfPercentMac,
  // load: weighing
  weighedMass,
  weighedCentre,
  noseWheelCentre,
  tailWheelCentre,
  negligibleMassChange,
  minimumFuelForCheck,
  // load: floor
  floorLoading,
  mostOnFloor,
  // load: limit lines
  centreLimit,
  momentLimit,
  // fuel: volume correction
  fuelVolumeCorrection,
  fuelDensity,
  fuelDensity15,
  // fuel: amount
  fuelMass,
  fuelVolume,
  endurance,
  enduranceByVolume,
  fuelImbalance,
  fuelImbalanceByVolume,
  fuelFromTotaliser,
  // fuel: cold soak
  freezingMargin,
  recoveryTemperature,
  coldSoakedTemperature,
  // air: cold and frost
  coldTemperatureError,
  coldTemperatureTable,
  coldTemperatureRule,
  freezingLevelRule,
  frostMargin,
  skinTemperatureRule,
  // wind
  headwindComponent,
  crosswindComponent,
  sectorHeadwind,
  sectorCrosswind,
  windTowardsEast,
  windTowardsNorth,
  trueDirection,
  windAtCrosswindLimit,
  angleAtCrosswindLimit,
  demonstratedCrosswind,
  countedWind,
  gustAdditive,
  // sun
  civilDawn,
  sunrise,
  sunset,
  civilDusk,
  julianDay,
  sunMeanLongitude,
  sunMeanAnomaly,
  sunEquationOfCentre,
  sunApparentLongitude,
  sunRightAscension,
  sunDeclination,
  sunElevation,
  sunAzimuth,
  // runway: speeds and climb
  loadFactorInTurn,
  stallSpeedAtLoadFactor,
  stallSpeedAtMass,
  levelStallSpeed,
  manoeuvringSpeed,
  approachSpeed,
  trueAirspeed,
  climbRateForGradient,
  climbGradientOfRate,
  climbGradientBetween,
  climbAngle,
  runwayHeightChange,
  // runway: rules of thumb and estimates
  windDistanceRule,
  massSpeedRule,
  massTakeOffRule,
  massLandingRule,
  densityLandingRule,
  fastApproachRule,
  highThresholdRule,
  halfwaySpeedRule,
  accelerateStopEstimate,
  latestAbortSpeedEstimate,
  // load: mass statistics
  spreadOfTotal,
  spreadOfMean,
  sampleForMean,
  surveySample,
  passengerFromStated,
  // fuel: reconcile
  fuelFromLastFlight,
  reconciledFuel,
  reconciledFuelUncertainty,
  fuelConsistency,
  // trends
  seriesSpread,
  seriesAutocorrelation,
  modifiedZScore,
  trendSlope,
  trendValue,
  trendSpread,
  predictionLow,
  predictionHigh,
  robustSlope,
  robustSlopeLow,
  robustSlopeHigh,
  kendallScore,
  kendallProbability,
  cusumUpper,
  cusumLower,
  ewmaAverage,
  ewmaHalfWidth,
  limitMetExpected,
  limitMetEarliest,
];

function byId(all: readonly AnyQuantity[]): ReadonlyMap<string, AnyQuantity> {
  const map = new Map<string, AnyQuantity>();
  for (const quantity of all) {
    if (map.has(quantity.id)) throw new DefinitionError(`${quantity.id}: two quantities have this id`);
    map.set(quantity.id, quantity);
  }
  return map;
}

/** The registry: every quantity by its id. */
export const quantities: ReadonlyMap<string, AnyQuantity> = byId(ALL);
