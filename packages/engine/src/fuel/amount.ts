import { exactSum } from "../load/exact-sum.ts";
import { PHAK } from "../load/inputs.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { refuseDerived } from "../registry/refuse-derived.ts";

const FUEL_kg = {
  name: "fuel_kg",
  unit: "kg",
  range: [0, 300_000],
  meaning: "mass of the fuel",
} as const;

const VOLUME_m3 = {
  name: "volume_m3",
  unit: "m3",
  range: [0, 400],
  meaning: "volume of the fuel, at the temperature that its density is for",
} as const;

const DENSITY_kgPerM3 = {
  name: "density_kgPerM3",
  unit: "kgPerM3",
  range: [600, 1100],
  meaning: "density at the temperature of the tank",
} as const;

const WHICH_DENSITY =
  "For mass and centre of gravity take the greater density that is likely, for endurance the lesser.";

const DEFINITION: QuantitySource = { title: "Definition of density", status: "common practice" };

export const fuelMass = defineQuantity({
  id: "fuel-mass",
  title: "Mass of fuel from its volume",
  inputs: [VOLUME_m3, DENSITY_kgPerM3],
  output: { name: "fuel_kg", unit: "kg" },
  formula: "V ρ",
  sources: [PHAK],
  notes: [WHICH_DENSITY],
  compute: ({ volume_m3, density_kgPerM3 }) => volume_m3 * density_kgPerM3,
});

export const fuelVolume = defineQuantity({
  id: "fuel-volume",
  title: "Volume of fuel from its mass",
  inputs: [FUEL_kg, DENSITY_kgPerM3],
  output: { name: "volume_m3", unit: "m3" },
  formula: "m / ρ",
  sources: [DEFINITION],
  notes: [WHICH_DENSITY],
  compute: ({ fuel_kg, density_kgPerM3 }) => fuel_kg / density_kgPerM3,
});

const ENDURANCE: QuantitySource = {
  title: "Usable fuel over burn; the burn of the reserve is the reserve's own",
  status: "common practice",
};
const ENDURANCE_NOTES = [
  "Round down. Unusable fuel does not count. Without reserve: what a rule asks for comes off first.",
] as const;

export const endurance = defineQuantity({
  id: "endurance",
  title: "Time until usable fuel is gone, by mass",
  inputs: [
    { ...FUEL_kg, meaning: "usable fuel" },
    { name: "burn_kgPerS", unit: "kgPerS", range: [1e-5, 10], meaning: "burn of all engines" },
  ],
  output: { name: "endurance_s", unit: "s" },
  formula: "m / burn",
  sources: [ENDURANCE],
  notes: ENDURANCE_NOTES,
  compute: ({ fuel_kg, burn_kgPerS }) => fuel_kg / burn_kgPerS,
});

export const enduranceByVolume = defineQuantity({
  id: "endurance-by-volume",
  title: "Time until usable fuel is gone, by volume",
  inputs: [
    { ...VOLUME_m3, meaning: "usable fuel" },
    { name: "burn_m3PerS", unit: "m3PerS", range: [1e-8, 0.02], meaning: "burn of all engines" },
  ],
  output: { name: "endurance_s", unit: "s" },
  formula: "V / burn",
  sources: [ENDURANCE],
  notes: ENDURANCE_NOTES,
  compute: ({ volume_m3, burn_m3PerS }) => volume_m3 / burn_m3PerS,
});

const SUBTRACTION: QuantitySource = {
  title: "Subtraction; the limit is the type's own",
  status: "common practice",
};
const SIGN = "Above zero the right side is heavy, below zero the left.";

export const fuelImbalance = defineQuantity({
  id: "fuel-imbalance",
  title: "Fuel on the right side less fuel on the left, by mass",
  inputs: [
    { ...FUEL_kg, name: "left_kg", meaning: "fuel in each tank on the left", many: true },
    { ...FUEL_kg, name: "right_kg", meaning: "fuel in each tank on the right", many: true },
  ],
  output: { name: "imbalance_kg", unit: "kg" },
  formula: "sum of right − sum of left",
  sources: [SUBTRACTION],
  notes: [SIGN],
  compute: ({ left_kg, right_kg }) => exactSum([...right_kg, ...left_kg.map((mass) => -mass)]),
});

export const fuelImbalanceByVolume = defineQuantity({
  id: "fuel-imbalance-by-volume",
  title: "Fuel on the right side less fuel on the left, by volume",
  inputs: [
    { ...VOLUME_m3, name: "left_m3", meaning: "fuel in each tank on the left", many: true },
    { ...VOLUME_m3, name: "right_m3", meaning: "fuel in each tank on the right", many: true },
  ],
  output: { name: "imbalance_m3", unit: "m3" },
  formula: "sum of right − sum of left",
  sources: [SUBTRACTION],
  notes: [SIGN],
  compute: ({ left_m3, right_m3 }) => exactSum([...right_m3, ...left_m3.map((volume) => -volume)]),
});

export const fuelFromTotaliser = defineQuantity({
  id: "fuel-from-totaliser",
  title: "Fuel left by what was aboard and what the flow meter counted",
  inputs: [
    { ...FUEL_kg, name: "start_kg", meaning: "fuel aboard when the flow meter was at zero" },
    { ...FUEL_kg, name: "used_kg", meaning: "fuel that the flow meter counted since" },
    { ...FUEL_kg, name: "added_kg", meaning: "fuel taken in since" },
  ],
  output: { name: "left_kg", unit: "kg" },
  formula: "start + added − used",
  sources: [{ title: "Sum of what went in and out", status: "common practice" }],
  notes: ["As right as the start figure; a leak does not pass the flow meter."],
  compute: ({ start_kg, used_kg, added_kg }) => {
    const left_kg = start_kg + added_kg - used_kg;
    refuseDerived("fuel-from-totaliser", "left_kg", left_kg, "kg", [0, 2 * FUEL_kg.range[1]]);
    return left_kg;
  },
});
