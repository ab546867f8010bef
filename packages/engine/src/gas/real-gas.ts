import { defineQuantity } from "../registry/define-quantity.ts";
import { GAS_TEMPERATURE_K, REAL_GAS } from "./inputs.ts";
import { compressibility_1, GAS_PRESSURE_LIMIT_PA, type Gas, realDensity_kgPerM3 } from "./real-gas-model.ts";

const ABSOLUTE_PRESSURE_Pa = {
  name: "pressure_Pa",
  unit: "Pa",
  range: [1000, GAS_PRESSURE_LIMIT_PA],
  meaning: "absolute pressure of the gas",
} as const;

const densityOf = (gas: Gas) =>
  defineQuantity({
    id: `${gas}-density`,
    title: `Density of ${gas} as a real gas`,
    inputs: [ABSOLUTE_PRESSURE_Pa, GAS_TEMPERATURE_K],
    output: { name: "density_kgPerM3", unit: "kgPerM3" },
    formula:
      "rho = M d with p = 1000 d R T Z(d, T), Z = 1 + d (a0 + a1 τ + a2 τ²) + d² (b0 + b1 τ) + c d³, τ = 300 K / T",
    sources: [REAL_GAS],
    compute: ({ pressure_Pa, temperature_K }) => realDensity_kgPerM3(gas, pressure_Pa, temperature_K),
  });

const compressibilityOf = (gas: Gas) =>
  defineQuantity({
    id: `${gas}-compressibility`,
    title: `Compressibility factor of ${gas}`,
    inputs: [ABSOLUTE_PRESSURE_Pa, GAS_TEMPERATURE_K],
    output: { name: "compressibility_1", unit: "1" },
    formula: "Z = p / (1000 d R T)",
    sources: [REAL_GAS],
    compute: ({ pressure_Pa, temperature_K }) => compressibility_1(gas, pressure_Pa, temperature_K),
  });

export const oxygenDensity = densityOf("oxygen");
export const nitrogenDensity = densityOf("nitrogen");
export const oxygenCompressibility = compressibilityOf("oxygen");
export const nitrogenCompressibility = compressibilityOf("nitrogen");
