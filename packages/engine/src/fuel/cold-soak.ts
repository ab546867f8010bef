import { defineQuantity } from "../registry/define-quantity.ts";
import { FUEL_TEMPERATURE_K } from "./volume-correction.ts";

export const freezingMargin = defineQuantity({
  id: "freezing-margin",
  title: "How far fuel is above its freezing point",
  inputs: [
    FUEL_TEMPERATURE_K,
    {
      name: "freezingPoint_K",
      unit: "K",
      range: [193.15, 253.15],
      meaning:
        "freezing point of the fuel: of the batch where it is known, else the greatest that its specification allows",
    },
  ],
  output: { name: "margin_K", unit: "K" },
  formula: "T − freezing point",
  sources: [
    {
      title: "Common flight-manual practice: keep 3 K above the freezing point",
      status: "common practice",
    },
  ],
  notes: [
    "Where the book gives a minimum fuel temperature, that is the limit.",
    "A difference: 1 K is 1 °C.",
  ],
  compute: ({ fuelTemperature_K, freezingPoint_K }) => fuelTemperature_K - freezingPoint_K,
});

/** Specific heat of dry air at constant pressure: 7/2 R / M of the standard atmosphere. */
const AIR_J_PER_KG_K = 3.5 * 287.05287;

export const recoveryTemperature = defineQuantity({
  id: "recovery-temperature",
  title: "Temperature of the skin of a tank in flight, below which its fuel cannot cool",
  inputs: [
    { name: "oat_K", unit: "K", range: [183.15, 333.15], meaning: "static temperature of the air" },
    { name: "trueAirspeed_mPerS", unit: "mPerS", range: [0, 300], meaning: "true airspeed" },
    { name: "recovery_1", unit: "1", range: [0, 1], meaning: "recovery factor: 0.85 to 0.9 on a wing" },
  ],
  output: { name: "skin_K", unit: "K" },
  formula: "T + r V² / (2 cp)",
  sources: [
    {
      title: "Adiabatic wall temperature of compressible flow, cp = 7/2 R of the standard atmosphere",
      status: "common practice",
    },
  ],
  compute: ({ oat_K, trueAirspeed_mPerS, recovery_1 }) =>
    oat_K + (recovery_1 * trueAirspeed_mPerS ** 2) / (2 * AIR_J_PER_KG_K),
});

export const coldSoakedTemperature = defineQuantity({
  id: "cold-soaked-temperature",
  title: "Temperature of fuel after a time in the cold",
  inputs: [
    FUEL_TEMPERATURE_K,
    { name: "skin_K", unit: "K", range: [183.15, 333.15], meaning: "temperature of the tank's skin" },
    { name: "time_s", unit: "s", range: [0, 1e6], meaning: "time in the cold" },
    {
      name: "timeConstant_s",
      unit: "s",
      range: [60, 1e6],
      meaning: "time in which the difference to the skin falls to 37 %, from past flights of the type",
    },
  ],
  output: { name: "soaked_K", unit: "K" },
  formula: "skin + (T − skin) exp(−t / τ)",
  sources: [{ title: "Newton's law of cooling", status: "common practice" }],
  notes: ["Never below the colder of the two. The time constant is the type's own; none is assumed."],
  compute: ({ fuelTemperature_K, skin_K, time_s, timeConstant_s }) =>
    skin_K + (fuelTemperature_K - skin_K) * Math.exp(-time_s / timeConstant_s),
});
