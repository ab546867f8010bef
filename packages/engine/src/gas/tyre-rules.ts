import { defineQuantity } from "../registry/define-quantity.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { differenceToSI, fromSI, toSI } from "../units/convert.ts";
import { SOLID_TEMPERATURE_RANGE_K, TYRE_RANGE_Pa } from "./inputs.ts";

const FIVE_FAHRENHEIT_K = differenceToSI(5, "degF");

export const tyrePressureRule = defineQuantity({
  id: "tyre-pressure-rule",
  title: "Tyre pressure at another temperature by the rule of 1 % per 5 °F",
  inputs: [
    { name: "gaugePressure_Pa", unit: "Pa", range: TYRE_RANGE_Pa, meaning: "pressure that the gauge shows" },
    {
      name: "temperature_K",
      unit: "K",
      range: SOLID_TEMPERATURE_RANGE_K,
      meaning: "temperature of the tyre when read",
    },
    {
      name: "newTemperature_K",
      unit: "K",
      range: SOLID_TEMPERATURE_RANGE_K,
      meaning: "the other temperature",
    },
  ],
  output: { name: "gaugePressure2_Pa", unit: "Pa" },
  formula: "p2 = p1 (1 + 1 % per 5 °F (T2 − T1))",
  sources: [
    {
      title: "AOPA, training and safety tip on tyre pressure",
      edition: "3 February 2026",
      status: "published",
    },
  ],
  crossCheckOnly: true,
  notes: ["Understates the change of a low-pressure tyre: the gas law acts on absolute pressure."],
  compute: ({ gaugePressure_Pa, temperature_K, newTemperature_K }) =>
    gaugePressure_Pa * (1 + (0.01 * (newTemperature_K - temperature_K)) / FIVE_FAHRENHEIT_K),
});

const HYDROPLANING: QuantitySource = {
  title: "NASA TN D-2056 and NASA TM-85652",
  locator: "spin-down and spin-up speeds",
  status: "published",
};

const TYRE_PRESSURE_Pa = {
  name: "tyrePressure_Pa",
  unit: "Pa",
  range: [5e4, 3e6],
  meaning: "inflation pressure, gauge",
} as const;

export const hydroplaningSpeedRolling = defineQuantity({
  id: "hydroplaning-speed-rolling",
  title: "Ground speed above which a rolling tyre hydroplanes on a flooded runway",
  inputs: [TYRE_PRESSURE_Pa],
  output: { name: "groundSpeed_mPerS", unit: "mPerS" },
  formula: "9 sqrt(p) kt, p in psi",
  sources: [HYDROPLANING],
  notes: ["Flooded runway only; on a thin film a tyre may slide at lower speeds."],
  compute: ({ tyrePressure_Pa }) => toSI(9 * Math.sqrt(fromSI(tyrePressure_Pa, "psi")), "kt"),
});

export const hydroplaningSpeedTouchdown = defineQuantity({
  id: "hydroplaning-speed-touchdown",
  title: "Ground speed above which a tyre that is not yet spun up hydroplanes on a flooded runway",
  inputs: [TYRE_PRESSURE_Pa],
  output: { name: "groundSpeed_mPerS", unit: "mPerS" },
  formula: "7.7 sqrt(p) kt, p in psi",
  sources: [HYDROPLANING],
  notes: ["Flooded runway only; on a thin film a tyre may slide at lower speeds."],
  compute: ({ tyrePressure_Pa }) => toSI(7.7 * Math.sqrt(fromSI(tyrePressure_Pa, "psi")), "kt"),
});
