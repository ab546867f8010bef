import { SEA_LEVEL_PA } from "../air/standard-atmosphere-model.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import { AMBIENT_PRESSURE_Pa, GAS_TEMPERATURE_K, GAUGE_PRESSURE_Pa, IDEAL_GAS, REAL_GAS } from "./inputs.ts";
import { realDensity_kgPerM3 } from "./real-gas-model.ts";

/** Density of free oxygen at 70 °F and 760 mmHg, dry (NTPD). */
const FREE_OXYGEN_KGPERM3 = 1.3261;

const WATER_VOLUME_m3 = {
  name: "waterVolume_m3",
  unit: "m3",
  range: [1e-4, 0.2],
  meaning: "inner volume of the cylinder",
} as const;

const RESIDUAL_PRESSURE_Pa = {
  name: "residualPressure_Pa",
  unit: "Pa",
  range: GAUGE_PRESSURE_Pa.range,
  meaning: "gauge pressure that is left in the cylinder",
} as const;

/** Free litres are at 70 °F and 760 mmHg, dry. */
const freeVolume_m3 = (
  waterVolume_m3: number,
  gauge_Pa: number,
  ambient_Pa: number,
  temperature_K: number,
): number =>
  (waterVolume_m3 * realDensity_kgPerM3("oxygen", gauge_Pa + ambient_Pa, temperature_K)) /
  FREE_OXYGEN_KGPERM3;

export const oxygenContents = defineQuantity({
  id: "oxygen-contents",
  title: "Free oxygen in a cylinder",
  inputs: [WATER_VOLUME_m3, GAUGE_PRESSURE_Pa, GAS_TEMPERATURE_K, AMBIENT_PRESSURE_Pa],
  output: { name: "freeGas_m3", unit: "m3" },
  formula: "V rho(p + pa, T) / 1.3261 kg/m³",
  sources: [REAL_GAS],
  notes: [
    "At 70 °F and 760 mmHg, dry (NTPD); 7.7 % more than litres at 0 °C (STPD).",
    "Counts the gas that is left when the gauge shows zero.",
  ],
  compute: ({ waterVolume_m3, gaugePressure_Pa, temperature_K, ambientPressure_Pa }) =>
    freeVolume_m3(waterVolume_m3, gaugePressure_Pa, ambientPressure_Pa, temperature_K),
});

export const oxygenUsable = defineQuantity({
  id: "oxygen-usable",
  title: "Free oxygen in a cylinder above a residual pressure",
  inputs: [WATER_VOLUME_m3, GAUGE_PRESSURE_Pa, RESIDUAL_PRESSURE_Pa, GAS_TEMPERATURE_K, AMBIENT_PRESSURE_Pa],
  output: { name: "usableGas_m3", unit: "m3" },
  formula: "V (rho(p + pa, T) − rho(pr + pa, T)) / 1.3261 kg/m³, at least 0",
  sources: [REAL_GAS],
  notes: ["At 70 °F and 760 mmHg, dry (NTPD)."],
  compute: ({ waterVolume_m3, gaugePressure_Pa, residualPressure_Pa, temperature_K, ambientPressure_Pa }) => {
    const all_m3 = freeVolume_m3(waterVolume_m3, gaugePressure_Pa, ambientPressure_Pa, temperature_K);
    const left_m3 = freeVolume_m3(waterVolume_m3, residualPressure_Pa, ambientPressure_Pa, temperature_K);
    return Math.max(0, all_m3 - left_m3);
  },
});

const FULL_PRESSURE_Pa = {
  name: "fullPressure_Pa",
  unit: "Pa",
  range: [1e6, 20.8e6],
  meaning: "gauge pressure of the full cylinder",
} as const;

const FULL_TEMPERATURE_K = {
  ...GAS_TEMPERATURE_K,
  name: "fullTemperature_K",
  meaning: "temperature for which the full pressure is stated",
} as const;

export const oxygenUsableShare = defineQuantity({
  id: "oxygen-usable-share",
  title: "Share of its usable oxygen that a cylinder has",
  inputs: [
    GAUGE_PRESSURE_Pa,
    GAS_TEMPERATURE_K,
    FULL_PRESSURE_Pa,
    FULL_TEMPERATURE_K,
    {
      name: "unusableShare_1",
      unit: "1",
      range: [0, 0.9],
      meaning: "share of the full contents that cannot be used",
    },
    AMBIENT_PRESSURE_Pa,
  ],
  output: { name: "usableShare_1", unit: "1" },
  formula: "(rho / rho_full − r) / (1 − r), at least 0",
  sources: [REAL_GAS],
  notes: ["Over 1 means more than full."],
  compute: (given) => {
    const ambient_Pa = given.ambientPressure_Pa;
    const now = realDensity_kgPerM3("oxygen", given.gaugePressure_Pa + ambient_Pa, given.temperature_K);
    const full = realDensity_kgPerM3("oxygen", given.fullPressure_Pa + ambient_Pa, given.fullTemperature_K);
    return Math.max(0, (now / full - given.unusableShare_1) / (1 - given.unusableShare_1));
  },
});

export const oxygenWaterVolume = defineQuantity({
  id: "oxygen-water-volume",
  title: "Inner volume of an oxygen cylinder from its nominal contents",
  inputs: [
    {
      name: "nominalContents_m3",
      unit: "m3",
      range: [0.01, 30],
      meaning: "free oxygen when full, at 70 °F and 760 mmHg",
    },
    FULL_PRESSURE_Pa,
    FULL_TEMPERATURE_K,
    AMBIENT_PRESSURE_Pa,
  ],
  output: { name: "waterVolume_m3", unit: "m3" },
  formula: "V = nominal × 1.3261 kg/m³ / rho(p_full + pa, T_full)",
  sources: [REAL_GAS],
  notes: ["The ideal gas would make it about 6 % too large."],
  compute: ({ nominalContents_m3, fullPressure_Pa, fullTemperature_K, ambientPressure_Pa }) =>
    (nominalContents_m3 * FREE_OXYGEN_KGPERM3) /
    realDensity_kgPerM3("oxygen", fullPressure_Pa + ambientPressure_Pa, fullTemperature_K),
});

export const idealFreeVolume = defineQuantity({
  id: "ideal-free-volume",
  title: "Free gas of a cylinder as an ideal gas at one temperature",
  inputs: [WATER_VOLUME_m3, GAUGE_PRESSURE_Pa],
  output: { name: "freeGas_m3", unit: "m3" },
  formula: "V (p + p0) / p0",
  sources: [IDEAL_GAS],
  crossCheckOnly: true,
  notes: ["Oxygen at 1800 psi and 70 °F holds about 6 % more."],
  compute: ({ waterVolume_m3, gaugePressure_Pa }) =>
    (waterVolume_m3 * (gaugePressure_Pa + SEA_LEVEL_PA)) / SEA_LEVEL_PA,
});
