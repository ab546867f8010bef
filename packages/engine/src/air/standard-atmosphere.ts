import { defineQuantity } from "../registry/define-quantity.ts";
import { STANDARD_ATMOSPHERE } from "./sources.ts";
import {
  DENSITY_RANGE_kgPerM3,
  densityAt_kgPerM3,
  GAS_CONSTANT_JPerKgK,
  HEIGHT_RANGE_m,
  heightOfDensity_m,
  heightOfPressure_m,
  NOMINAL_EARTH_RADIUS_M,
  PRESSURE_RANGE_Pa,
  pressureAt_Pa,
  RATIO_OF_SPECIFIC_HEATS_1,
  SEA_LEVEL_K,
  SEA_LEVEL_KGPERM3,
  SEA_LEVEL_PA,
  temperatureAt_K,
} from "./standard-atmosphere-model.ts";

const GEOPOTENTIAL_ALTITUDE_m = {
  name: "geopotentialAltitude_m",
  unit: "m",
  range: HEIGHT_RANGE_m,
  meaning: "geopotential altitude; a pressure altitude is one",
} as const;

export const standardTemperature = defineQuantity({
  id: "standard-temperature",
  title: "Temperature of the standard atmosphere",
  inputs: [GEOPOTENTIAL_ALTITUDE_m],
  output: { name: "temperature_K", unit: "K" },
  formula: "to 11 km: T0 − 0.0065 H; above: 216.65 K",
  sources: [STANDARD_ATMOSPHERE],
  compute: ({ geopotentialAltitude_m }) => temperatureAt_K(geopotentialAltitude_m),
});

export const standardPressure = defineQuantity({
  id: "standard-pressure",
  title: "Pressure of the standard atmosphere",
  inputs: [GEOPOTENTIAL_ALTITUDE_m],
  output: { name: "pressure_Pa", unit: "Pa" },
  formula: "to 11 km: p0 (1 − 0.0065 H / T0)^(g / (0.0065 R)); above: p11 exp(−g (H − 11 000) / (R T11))",
  sources: [STANDARD_ATMOSPHERE],
  compute: ({ geopotentialAltitude_m }) => pressureAt_Pa(geopotentialAltitude_m),
});

export const standardDensity = defineQuantity({
  id: "standard-density",
  title: "Density of the standard atmosphere",
  inputs: [GEOPOTENTIAL_ALTITUDE_m],
  output: { name: "density_kgPerM3", unit: "kgPerM3" },
  formula: "rho = p / (R T)",
  sources: [STANDARD_ATMOSPHERE],
  compute: ({ geopotentialAltitude_m }) => densityAt_kgPerM3(geopotentialAltitude_m),
});

export const standardSpeedOfSound = defineQuantity({
  id: "standard-speed-of-sound",
  title: "Speed of sound in the standard atmosphere",
  inputs: [GEOPOTENTIAL_ALTITUDE_m],
  output: { name: "speedOfSound_mPerS", unit: "mPerS" },
  formula: "a = sqrt(1.4 R T)",
  sources: [STANDARD_ATMOSPHERE],
  compute: ({ geopotentialAltitude_m }) =>
    Math.sqrt(RATIO_OF_SPECIFIC_HEATS_1 * GAS_CONSTANT_JPerKgK * temperatureAt_K(geopotentialAltitude_m)),
});

export const temperatureRatio = defineQuantity({
  id: "temperature-ratio",
  title: "Temperature ratio theta of the standard atmosphere",
  inputs: [GEOPOTENTIAL_ALTITUDE_m],
  output: { name: "temperatureRatio_1", unit: "1" },
  formula: "theta = T / T0",
  sources: [STANDARD_ATMOSPHERE],
  compute: ({ geopotentialAltitude_m }) => temperatureAt_K(geopotentialAltitude_m) / SEA_LEVEL_K,
});

export const pressureRatio = defineQuantity({
  id: "pressure-ratio",
  title: "Pressure ratio delta of the standard atmosphere",
  inputs: [GEOPOTENTIAL_ALTITUDE_m],
  output: { name: "pressureRatio_1", unit: "1" },
  formula: "delta = p / p0",
  sources: [STANDARD_ATMOSPHERE],
  compute: ({ geopotentialAltitude_m }) => pressureAt_Pa(geopotentialAltitude_m) / SEA_LEVEL_PA,
});

export const densityRatio = defineQuantity({
  id: "density-ratio",
  title: "Density ratio sigma of the standard atmosphere",
  inputs: [GEOPOTENTIAL_ALTITUDE_m],
  output: { name: "densityRatio_1", unit: "1" },
  formula: "sigma = rho / rho0",
  sources: [STANDARD_ATMOSPHERE],
  compute: ({ geopotentialAltitude_m }) => densityAt_kgPerM3(geopotentialAltitude_m) / SEA_LEVEL_KGPERM3,
});

export const geopotentialAltitude = defineQuantity({
  id: "geopotential-altitude",
  title: "Geopotential altitude of a height measured by tape",
  inputs: [
    {
      name: "geometricHeight_m",
      unit: "m",
      range: [-5000, 20_063], // 20 063 m is 20 000 m geopotential
      meaning: "height above mean sea level, measured",
    },
  ],
  output: { name: "geopotentialAltitude_m", unit: "m" },
  formula: "H = r h / (r + h), r = 6 356 766 m",
  sources: [STANDARD_ATMOSPHERE],
  compute: ({ geometricHeight_m }) =>
    (NOMINAL_EARTH_RADIUS_M * geometricHeight_m) / (NOMINAL_EARTH_RADIUS_M + geometricHeight_m),
});

export const altitudeOfPressure = defineQuantity({
  id: "altitude-of-pressure",
  title: "Pressure altitude of a static pressure",
  inputs: [{ name: "pressure_Pa", unit: "Pa", range: PRESSURE_RANGE_Pa, meaning: "static pressure" }],
  output: { name: "pressureAltitude_m", unit: "m" },
  formula: "the inverse of the standard pressure",
  sources: [STANDARD_ATMOSPHERE],
  compute: ({ pressure_Pa }) => heightOfPressure_m(pressure_Pa),
});

export const altitudeOfDensity = defineQuantity({
  id: "altitude-of-density",
  title: "Density altitude of a density",
  inputs: [
    { name: "density_kgPerM3", unit: "kgPerM3", range: DENSITY_RANGE_kgPerM3, meaning: "density of the air" },
  ],
  output: { name: "densityAltitude_m", unit: "m" },
  formula: "the inverse of the standard density",
  sources: [STANDARD_ATMOSPHERE],
  compute: ({ density_kgPerM3 }) => heightOfDensity_m(density_kgPerM3),
});
