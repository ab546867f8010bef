import { defineQuantity } from "../registry/define-quantity.ts";
import { IDEAL_GAS, SOLID_TEMPERATURE_RANGE_K } from "./inputs.ts";

/** The load fixes a strut's pressure, so cold shows as less extension and not as a lower pressure. */
export const strutExtensionChange = defineQuantity({
  id: "strut-extension-change",
  title: "Change of a strut's extension with temperature at a constant load",
  inputs: [
    {
      name: "gasVolume_m3",
      unit: "m3",
      range: [1e-6, 0.05],
      meaning: "volume of the gas at the first temperature",
    },
    { name: "pistonArea_m2", unit: "m2", range: [1e-5, 0.2], meaning: "area of the piston" },
    {
      name: "temperature_K",
      unit: "K",
      range: SOLID_TEMPERATURE_RANGE_K,
      meaning: "temperature of the gas when measured",
    },
    {
      name: "newTemperature_K",
      unit: "K",
      range: SOLID_TEMPERATURE_RANGE_K,
      meaning: "the other temperature",
    },
  ],
  output: { name: "extensionChange_m", unit: "m" },
  formula: "dx = V / A (T2 / T1 − 1)",
  sources: [
    { ...IDEAL_GAS, title: "Ideal gas law at constant pressure: the load sets the pressure of a strut" },
  ],
  notes: ["The oil shrinks as well. Friction makes single readings unreliable: rock the aircraft first."],
  compute: ({ gasVolume_m3, pistonArea_m2, temperature_K, newTemperature_K }) =>
    (gasVolume_m3 / pistonArea_m2) * (newTemperature_K / temperature_K - 1),
});
