import { defineQuantity } from "../registry/define-quantity.ts";
import { refuseDerived } from "../registry/refuse-derived.ts";
import { exactSum, exactSumOfProducts } from "./exact-sum.ts";
import {
  ARMS_m,
  LATERAL_ARMS_m,
  MASSES_kg,
  MOMENTS_kgm,
  PHAK,
  WEIGHT_AND_BALANCE_HANDBOOK,
  WHOLE_RANGE_kg,
} from "./inputs.ts";
import { pairs, refuseUnequal } from "./refuse-unequal.ts";

const EXACT = "Added without error and rounded once, so the order of the items does not matter.";

export const totalMass = defineQuantity({
  id: "total-mass",
  title: "Mass of everything aboard, with the aircraft",
  inputs: [MASSES_kg],
  output: { name: "totalMass_kg", unit: "kg" },
  formula: "sum of m",
  sources: [PHAK],
  notes: [EXACT],
  compute: ({ mass_kg }) => exactSum(mass_kg),
});

export const totalMoment = defineQuantity({
  id: "total-moment",
  title: "Moment of everything aboard about the datum",
  inputs: [MASSES_kg, ARMS_m],
  output: { name: "moment_kgm", unit: "kgm" },
  formula: "sum of m x",
  sources: [PHAK],
  notes: [
    EXACT,
    "The moment in the weighing record is better than empty mass times a printed, rounded arm: use total-of-moments with it.",
  ],
  compute: ({ mass_kg, arm_m }) => {
    refuseUnequal("total-moment", ["mass_kg", mass_kg], ["arm_m", arm_m]);
    return exactSumOfProducts(pairs(mass_kg, arm_m));
  },
});

export const totalOfMoments = defineQuantity({
  id: "total-of-moments",
  title: "Moment of everything aboard, from the moment of each item",
  inputs: [MOMENTS_kgm],
  output: { name: "totalMoment_kgm", unit: "kgm" },
  formula: "sum of M",
  sources: [PHAK],
  notes: [EXACT],
  compute: ({ moment_kgm }) => exactSum(moment_kgm),
});

/** Moment over mass, refused where there is no mass. */
function quotient(quantity: string, moment_kgm: number, mass_kg: readonly number[]): number {
  const total_kg = exactSum(mass_kg);
  refuseDerived(quantity, "totalMass_kg", total_kg, "kg", [WHOLE_RANGE_kg[0], Number.MAX_VALUE]);
  return moment_kgm / total_kg;
}

export const centreOfGravity = defineQuantity({
  id: "centre-of-gravity",
  title: "Centre of gravity of everything aboard, with the aircraft",
  inputs: [MASSES_kg, ARMS_m],
  output: { name: "centreOfGravity_m", unit: "m" },
  formula: "(sum of m x) / (sum of m)",
  sources: [PHAK],
  notes: [EXACT, "The same place whichever datum the arms are taken from."],
  compute: ({ mass_kg, arm_m }) => {
    refuseUnequal("centre-of-gravity", ["mass_kg", mass_kg], ["arm_m", arm_m]);
    return quotient("centre-of-gravity", exactSumOfProducts(pairs(mass_kg, arm_m)), mass_kg);
  },
});

export const centreOfGravityFromMoments = defineQuantity({
  id: "centre-of-gravity-from-moments",
  title: "Centre of gravity from the mass and the moment of each item",
  inputs: [MASSES_kg, MOMENTS_kgm],
  output: { name: "centreOfGravity_m", unit: "m" },
  formula: "(sum of M) / (sum of m)",
  sources: [PHAK],
  notes: [EXACT, "For loading graphs, moment tables and the moment of a weighing record."],
  compute: ({ mass_kg, moment_kgm }) => {
    refuseUnequal("centre-of-gravity-from-moments", ["mass_kg", mass_kg], ["moment_kgm", moment_kgm]);
    return quotient("centre-of-gravity-from-moments", exactSum(moment_kgm), mass_kg);
  },
});

export const lateralMoment = defineQuantity({
  id: "lateral-moment",
  title: "Moment of everything aboard about the centre line",
  inputs: [MASSES_kg, LATERAL_ARMS_m],
  output: { name: "lateralMoment_kgm", unit: "kgm" },
  formula: "sum of m y; above zero the right side is heavy",
  sources: [{ ...WEIGHT_AND_BALANCE_HANDBOOK, locator: "lateral balance" }],
  notes: [EXACT],
  compute: ({ mass_kg, lateralArm_m }) => {
    refuseUnequal("lateral-moment", ["mass_kg", mass_kg], ["lateralArm_m", lateralArm_m]);
    return exactSumOfProducts(pairs(mass_kg, lateralArm_m));
  },
});

export const lateralCentreOfGravity = defineQuantity({
  id: "lateral-centre-of-gravity",
  title: "Centre of gravity to the right of the centre line",
  inputs: [MASSES_kg, LATERAL_ARMS_m],
  output: { name: "lateralCentre_m", unit: "m" },
  formula: "(sum of m y) / (sum of m)",
  sources: [{ ...WEIGHT_AND_BALANCE_HANDBOOK, locator: "lateral balance" }],
  notes: [EXACT],
  compute: ({ mass_kg, lateralArm_m }) => {
    refuseUnequal("lateral-centre-of-gravity", ["mass_kg", mass_kg], ["lateralArm_m", lateralArm_m]);
    return quotient("lateral-centre-of-gravity", exactSumOfProducts(pairs(mass_kg, lateralArm_m)), mass_kg);
  },
});
