import { defineQuantity } from "../registry/define-quantity.ts";
import { refuseDerived } from "../registry/refuse-derived.ts";
import { DEW_POINT_K, overWater_Pa, refuseSupersaturation } from "./humidity.ts";
import { OAT_K, PRESSURE_ALTITUDE_m, STATION_PRESSURE_Pa } from "./inputs.ts";
import { STANDARD_ATMOSPHERE, WMO_8 } from "./sources.ts";
import {
  DENSITY_RANGE_kgPerM3,
  GAS_CONSTANT_JPerKgK,
  heightOfDensity_m,
  pressureAt_Pa,
} from "./standard-atmosphere-model.ts";

/** One less the ratio of the molar masses of water vapour and dry air. */
const VAPOUR_DEFICIT_1 = 0.378;

const densityAltitudeOf_m = (quantity: string, density_kgPerM3: number): number => {
  refuseDerived(quantity, "density_kgPerM3", density_kgPerM3, "kgPerM3", DENSITY_RANGE_kgPerM3);
  return heightOfDensity_m(density_kgPerM3);
};

export const densityAltitude = defineQuantity({
  id: "density-altitude",
  title: "Density altitude of dry air",
  inputs: [PRESSURE_ALTITUDE_m, OAT_K],
  output: { name: "densityAltitude_m", unit: "m" },
  formula: "rho = p(PA) / (R T); DA = standard altitude of rho",
  sources: [STANDARD_ATMOSPHERE],
  notes: [
    "The basis of flight manual charts, which ask for pressure altitude and temperature; moisture adds to it.",
  ],
  compute: ({ pressureAltitude_m, oat_K }) =>
    densityAltitudeOf_m(
      "density-altitude",
      pressureAt_Pa(pressureAltitude_m) / (GAS_CONSTANT_JPerKgK * oat_K),
    ),
});

const virtualOf_K = (stationPressure_Pa: number, temperature_K: number, dewPoint_K: number): number =>
  temperature_K / (1 - (VAPOUR_DEFICIT_1 * overWater_Pa(dewPoint_K)) / stationPressure_Pa);

export const virtualTemperature = defineQuantity({
  id: "virtual-temperature",
  title: "Virtual temperature of moist air",
  inputs: [STATION_PRESSURE_Pa, OAT_K, DEW_POINT_K],
  output: { name: "virtualTemperature_K", unit: "K" },
  formula: "Tv = T / (1 − 0.378 e / p), e = e_w(td)",
  sources: [WMO_8],
  compute: ({ stationPressure_Pa, oat_K, dewPoint_K }) => {
    refuseSupersaturation("virtual-temperature", dewPoint_K, oat_K);
    return virtualOf_K(stationPressure_Pa, oat_K, dewPoint_K);
  },
});

export const moistDensityAltitude = defineQuantity({
  id: "moist-density-altitude",
  title: "Density altitude of moist air",
  inputs: [STATION_PRESSURE_Pa, OAT_K, DEW_POINT_K],
  output: { name: "densityAltitude_m", unit: "m" },
  formula: "rho = p / (R Tv), Tv = T / (1 − 0.378 e / p); DA = standard altitude of rho",
  sources: [STANDARD_ATMOSPHERE, WMO_8],
  notes: ["Shown beside the dry density altitude; flight manual charts take the dry one."],
  compute: ({ stationPressure_Pa, oat_K, dewPoint_K }) => {
    refuseSupersaturation("moist-density-altitude", dewPoint_K, oat_K);
    const virtual_K = virtualOf_K(stationPressure_Pa, oat_K, dewPoint_K);
    return densityAltitudeOf_m(
      "moist-density-altitude",
      stationPressure_Pa / (GAS_CONSTANT_JPerKgK * virtual_K),
    );
  },
});
