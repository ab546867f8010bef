import { PRESSURE_RANGE_Pa } from "../air/standard-atmosphere-model.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { GAS_TEMPERATURE_RANGE_K } from "./real-gas-model.ts";

/** What the quantities of this folder have in common. */

export const GAUGE_PRESSURE_Pa = {
  name: "gaugePressure_Pa",
  unit: "Pa",
  range: [0, 20.8e6],
  meaning: "pressure that the gauge shows",
} as const;

/** Gauge pressures of tyres, flat to the highest in use. */
export const TYRE_RANGE_Pa = [0, 3e6] as const;

export const AMBIENT_PRESSURE_Pa = {
  name: "ambientPressure_Pa",
  unit: "Pa",
  range: PRESSURE_RANGE_Pa,
  meaning: "pressure of the air outside, from the elevation when nothing better is known",
} as const;

/** Of what holds a gas that is treated as ideal: −70 °C, cold-soaked, to 200 °C, beside a hot brake. */
export const SOLID_TEMPERATURE_RANGE_K = [203.15, 473.15] as const;

export const GAS_TEMPERATURE_K = {
  name: "temperature_K",
  unit: "K",
  range: GAS_TEMPERATURE_RANGE_K,
  meaning: "temperature of the gas, not of the air outside",
} as const;

export const NEW_TEMPERATURE_K = {
  name: "newTemperature_K",
  unit: "K",
  range: GAS_TEMPERATURE_RANGE_K,
  meaning: "temperature of the gas for which the pressure is asked",
} as const;

export const IDEAL_GAS: QuantitySource = {
  title: "Ideal gas law at constant volume, absolute pressure and absolute temperature",
  status: "common practice",
};

export const REAL_GAS: QuantitySource = {
  title:
    "Schmidt and Wagner equation of state for oxygen, reference equation for nitrogen; short form fitted to them",
  edition: "1985; evaluated with CoolProp 8.0.0",
  locator: "228 to 340 K, 0 to 21 MPa absolute",
  status: "published",
};
