import { InputError } from "../input-error.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import type { QuantitySource } from "../registry/quantity.ts";

/** 15 °C, at which fuel densities are stated. */
export const STATED_AT_K = 288.15;

const D1250: QuantitySource = {
  title: "ASTM D1250 / API MPMS chapter 11.1, petroleum measurement tables",
  edition: "1980, table 54B",
  locator: "volume correction to 15 °C by product group; the constants for 15 °C",
  status: "published",
};

/** The least and greatest density at 15 °C that the groups below cover together. */
export const DENSITY_15_RANGE_kgPerM3 = [653, 838.5] as const;
const GASOLINE_BELOW = 770.5;
const JET_FROM = 787.5;

/** Thermal expansion at 15 °C, per kelvin, by product group. */
function expansion_perK(density15: number): number {
  if (density15 < GASOLINE_BELOW) return 346.4228 / density15 ** 2 + 0.4388 / density15;
  if (density15 < JET_FROM) return 2680.3206 / density15 ** 2 - 0.00336312; // between gasoline and jet
  return 594.5418 / density15 ** 2;
}

/**
 * Volume at 15 °C over volume at a temperature.
 *
 * @param density15_kgPerM3 653 to 838.5: gasoline, the transition, jet fuel and kerosene
 */
export function volumeCorrection_1(density15_kgPerM3: number, temperature_K: number): number {
  const expanded = expansion_perK(density15_kgPerM3) * (temperature_K - STATED_AT_K);
  return Math.exp(-expanded * (1 + 0.8 * expanded));
}

export const DENSITY_15_kgPerM3 = {
  name: "density15_kgPerM3",
  unit: "kgPerM3",
  range: DENSITY_15_RANGE_kgPerM3,
  meaning: "density of the fuel at 15 °C, from the delivery note or the book",
} as const;

/** −50 °C to 60 °C: what a tank outdoors can have. */
export const FUEL_TEMPERATURE_K = {
  name: "fuelTemperature_K",
  unit: "K",
  range: [223.15, 333.15],
  meaning: "temperature of the fuel in the tank, not of the air",
} as const;

const NOTES = [
  "Groups by density at 15 °C: gasoline below 770.5 kg/m³, transition to 787.5, jet fuel to 838.5; nothing is given beyond.",
  "Printed tables agree within their last digit, 0.00006.",
] as const;

export const fuelVolumeCorrection = defineQuantity({
  id: "fuel-volume-correction",
  title: "Volume of fuel at 15 °C over its volume at the temperature of the tank",
  inputs: [DENSITY_15_kgPerM3, FUEL_TEMPERATURE_K],
  output: { name: "correction_1", unit: "1" },
  formula: "exp(−a ΔT (1 + 0.8 a ΔT)), a = K0 / ρ15² + K1 / ρ15, ΔT = T − 15 °C",
  sources: [D1250],
  notes: NOTES,
  compute: ({ density15_kgPerM3, fuelTemperature_K }) =>
    volumeCorrection_1(density15_kgPerM3, fuelTemperature_K),
});

export const fuelDensity = defineQuantity({
  id: "fuel-density",
  title: "Density of fuel at the temperature of the tank",
  inputs: [DENSITY_15_kgPerM3, FUEL_TEMPERATURE_K],
  output: { name: "density_kgPerM3", unit: "kgPerM3" },
  formula: "ρ15 × volume correction",
  sources: [D1250],
  notes: [...NOTES, "The buoyancy of air, about 1.1 kg/m³, is left out."],
  compute: ({ density15_kgPerM3, fuelTemperature_K }) =>
    density15_kgPerM3 * volumeCorrection_1(density15_kgPerM3, fuelTemperature_K),
});

/**
 * The density at 15 °C that gives a density at a temperature. In each group density rises with density at 15 °C, so
 * bisection finds it; where two groups meet the curve has a step of less than 0.1 kg/m³, and the step is taken.
 */
function densityAt15(observed: number, temperature_K: number): number {
  const seen = (density15: number): number => density15 * volumeCorrection_1(density15, temperature_K);
  let [low, high]: [number, number] = [...DENSITY_15_RANGE_kgPerM3];
  if (!(observed >= seen(low) && observed <= seen(high))) {
    throw new InputError("out-of-range", "observedDensity_kgPerM3", {
      quantity: "fuel-density-15",
      value: observed,
      range: [seen(low), seen(high)],
      expected: `${seen(low).toFixed(1)} to ${seen(high).toFixed(1)} kg/m³ at this temperature`,
      received: `${observed} kg/m³`,
      remedy: "check the hydrometer, its unit and the temperature; nothing is computed outside the range",
    });
  }
  for (let step = 0; step < 100; step += 1) {
    const middle = (low + high) / 2;
    if (seen(middle) < observed) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

export const fuelDensity15 = defineQuantity({
  id: "fuel-density-15",
  title: "Density of fuel at 15 °C from a hydrometer reading",
  inputs: [
    {
      name: "observedDensity_kgPerM3",
      unit: "kgPerM3",
      range: [600, 900],
      meaning: "what the hydrometer shows",
    },
    FUEL_TEMPERATURE_K,
  ],
  output: { name: "density15_kgPerM3", unit: "kgPerM3" },
  formula: "the ρ15 for which ρ15 × volume correction is the density observed",
  sources: [D1250],
  notes: [...NOTES, "The hydrometer's own expansion, below 0.03 %, is left out."],
  compute: ({ observedDensity_kgPerM3, fuelTemperature_K }) =>
    densityAt15(observedDensity_kgPerM3, fuelTemperature_K),
});
