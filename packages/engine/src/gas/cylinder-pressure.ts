import { InputError } from "../input-error.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import { valueText } from "../registry/range-text.ts";
import {
  AMBIENT_PRESSURE_Pa,
  GAS_TEMPERATURE_K,
  GAUGE_PRESSURE_Pa,
  NEW_TEMPERATURE_K,
  REAL_GAS,
} from "./inputs.ts";
import { GAS_PRESSURE_LIMIT_PA, type Gas, realDensity_kgPerM3, realPressure_Pa } from "./real-gas-model.ts";

/** A settled cylinder or accumulator: its gauge at another temperature, contents and volume unchanged, real gas. */
const ofGas = (gas: Gas) => {
  const id = `${gas}-pressure-at-temperature`;
  return defineQuantity({
    id,
    title: `Gauge pressure of the same ${gas} at another temperature, real gas`,
    inputs: [GAUGE_PRESSURE_Pa, GAS_TEMPERATURE_K, NEW_TEMPERATURE_K, AMBIENT_PRESSURE_Pa],
    output: { name: "gaugePressure2_Pa", unit: "Pa" },
    formula: "rho = rho(p1 + pa, T1); p2 = p(rho, T2) − pa; p = 1000 d R T Z(d, T)",
    sources: [REAL_GAS],
    notes: ["The temperature is that of the gas; if it is not known, take the warmest that is credible."],
    compute: ({ gaugePressure_Pa, temperature_K, newTemperature_K, ambientPressure_Pa }) => {
      const density_kgPerM3 = realDensity_kgPerM3(gas, gaugePressure_Pa + ambientPressure_Pa, temperature_K);
      const pressure_Pa = realPressure_Pa(gas, density_kgPerM3, newTemperature_K);
      if (pressure_Pa > GAS_PRESSURE_LIMIT_PA) {
        throw new InputError("out-of-range", "newTemperature_K", {
          quantity: id,
          value: newTemperature_K,
          expected: `a temperature at which the gas stays below ${valueText(GAS_PRESSURE_LIMIT_PA / 1e6, "MPa")} absolute`,
          received: `${valueText(newTemperature_K, "K")}, where it has ${valueText(pressure_Pa / 1e6, "MPa")}`,
          remedy: "nothing is computed outside the range of the gas equation",
        });
      }
      return pressure_Pa - ambientPressure_Pa;
    },
  });
};

export const oxygenPressureAtTemperature = ofGas("oxygen");
export const nitrogenPressureAtTemperature = ofGas("nitrogen");

/** The same, by the name of the gas. */
export const cylinderPressureAtTemperature = {
  oxygen: oxygenPressureAtTemperature,
  nitrogen: nitrogenPressureAtTemperature,
} as const;
