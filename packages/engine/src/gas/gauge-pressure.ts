import { defineQuantity } from "../registry/define-quantity.ts";
import { AMBIENT_PRESSURE_Pa, GAUGE_PRESSURE_Pa, IDEAL_GAS, SOLID_TEMPERATURE_RANGE_K } from "./inputs.ts";

/**
 * Tyres, struts and accumulators: what the gauge would show at another temperature if no gas were lost.
 * Constant volume, ideal gas; above about 70 bar use `cylinderPressureAtTemperature`.
 */
export const gaugePressureAtTemperature = defineQuantity({
  id: "gauge-pressure-at-temperature",
  title: "Gauge pressure of the same gas at another temperature",
  inputs: [
    GAUGE_PRESSURE_Pa,
    {
      name: "temperature_K",
      unit: "K",
      range: SOLID_TEMPERATURE_RANGE_K,
      meaning: "temperature of the gas when read",
    },
    {
      name: "newTemperature_K",
      unit: "K",
      range: SOLID_TEMPERATURE_RANGE_K,
      meaning: "temperature of the gas for which the pressure is asked",
    },
    AMBIENT_PRESSURE_Pa,
  ],
  output: { name: "gaugePressure2_Pa", unit: "Pa" },
  formula: "p2 = (p1 + pa) T2 / T1 − pa",
  sources: [IDEAL_GAS],
  notes: ["Constant volume and ideal gas; above about 70 bar use the real gas of the cylinder quantities."],
  compute: ({ gaugePressure_Pa, temperature_K, newTemperature_K, ambientPressure_Pa }) =>
    (gaugePressure_Pa + ambientPressure_Pa) * (newTemperature_K / temperature_K) - ambientPressure_Pa,
});

/** What the gauge would show of the same gas at the same temperature where the air outside has another pressure. */
export const gaugePressureAtAmbient = defineQuantity({
  id: "gauge-pressure-at-ambient",
  title: "Gauge pressure of the same gas in other surrounding air",
  inputs: [
    GAUGE_PRESSURE_Pa,
    AMBIENT_PRESSURE_Pa,
    {
      name: "newAmbientPressure_Pa",
      unit: "Pa",
      range: AMBIENT_PRESSURE_Pa.range,
      meaning: "pressure of the air where the gauge is to be read",
    },
  ],
  output: { name: "gaugePressure2_Pa", unit: "Pa" },
  formula: "p2 = p1 + pa1 − pa2",
  sources: [IDEAL_GAS],
  compute: ({ gaugePressure_Pa, ambientPressure_Pa, newAmbientPressure_Pa }) =>
    gaugePressure_Pa + ambientPressure_Pa - newAmbientPressure_Pa,
});
