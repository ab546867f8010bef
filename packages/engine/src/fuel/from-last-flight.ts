import { defineQuantity } from "../registry/define-quantity.ts";

const MOST_KG = 1_000_000;

/** What is in the tanks by arithmetic: what was left by the last flight, and what went in and out since. */
export const fuelFromLastFlight = defineQuantity({
  id: "fuel-from-last-flight",
  title: "Fuel by arithmetic from the last flight",
  inputs: [
    {
      name: "left_kg",
      unit: "kg",
      range: [0, MOST_KG],
      meaning: "what was left at the end of the last flight",
    },
    { name: "added_kg", unit: "kg", range: [0, MOST_KG], meaning: "all that was filled in since" },
    { name: "drained_kg", unit: "kg", range: [0, MOST_KG], meaning: "all that was drained since" },
  ],
  output: { name: "aboard_kg", unit: "kg" },
  formula: "left + added − drained, not below 0",
  sources: [
    {
      title: "Fuel on arrival plus fuel uplifted, as it is entered in a journey or technical log",
      edition: "common practice of every operator",
      status: "common practice",
    },
  ],
  notes: [
    "It knows nothing of a leak, of theft, or of fuel that nobody wrote down: that is what it is compared for.",
  ],
  compute: ({ left_kg, added_kg, drained_kg }) => Math.max(0, left_kg + added_kg - drained_kg),
});
