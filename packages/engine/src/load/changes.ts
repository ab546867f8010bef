import { defineQuantity } from "../registry/define-quantity.ts";
import { refuseDerived } from "../registry/refuse-derived.ts";
import { exactSumOfProducts } from "./exact-sum.ts";
import {
  ARM_RANGE_m,
  CENTRE_m,
  MASS_RANGE_kg,
  MOMENT_RANGE_kgm,
  PHAK,
  TOTAL_MASS_kg,
  WEIGHT_AND_BALANCE_HANDBOOK,
  WHOLE_RANGE_kg,
} from "./inputs.ts";

const SHIFTED_MASS_kg = {
  name: "shiftedMass_kg",
  unit: "kg",
  range: MASS_RANGE_kg,
  meaning: "mass of what is moved",
} as const;
const FROM_m = { name: "from_m", unit: "m", range: ARM_RANGE_m, meaning: "arm where it is" } as const;
const TO_m = { name: "to_m", unit: "m", range: ARM_RANGE_m, meaning: "arm where it goes" } as const;

export const centreShift = defineQuantity({
  id: "centre-shift",
  title: "How far the centre of gravity goes when something is moved",
  inputs: [TOTAL_MASS_kg, SHIFTED_MASS_kg, FROM_m, TO_m],
  output: { name: "change_m", unit: "m" },
  formula: "m (to − from) / M",
  sources: [PHAK],
  notes: ["Above zero it goes aft. The aircraft's mass includes what is moved."],
  compute: ({ totalMass_kg, shiftedMass_kg, from_m, to_m }) => {
    refuseDerived("centre-shift", "shiftedMass_kg", shiftedMass_kg, "kg", [0, totalMass_kg]);
    return (shiftedMass_kg * (to_m - from_m)) / totalMass_kg;
  },
});

export const massToShift = defineQuantity({
  id: "mass-to-shift",
  title: "Mass that has to be moved to bring the centre of gravity where it is wanted",
  inputs: [
    TOTAL_MASS_kg,
    CENTRE_m,
    {
      name: "wanted_m",
      unit: "m",
      range: ARM_RANGE_m,
      meaning: "arm at which the centre of gravity is wanted",
    },
    FROM_m,
    TO_m,
  ],
  output: { name: "shiftedMass_kg", unit: "kg" },
  formula: "M (wanted − CG) / (to − from)",
  sources: [PHAK],
  notes: ["Round up to whole units. Below zero it would have to be moved the other way."],
  compute: ({ totalMass_kg, centreOfGravity_m, wanted_m, from_m, to_m }) => {
    const distance_m = to_m - from_m;
    refuseDerived("mass-to-shift", "distance_m", Math.abs(distance_m), "m", [1e-6, 200]);
    return (totalMass_kg * (wanted_m - centreOfGravity_m)) / distance_m;
  },
});

export const centreAfterChange = defineQuantity({
  id: "centre-after-change",
  title: "Centre of gravity after something is put in or taken out",
  inputs: [
    TOTAL_MASS_kg,
    CENTRE_m,
    {
      name: "addedMass_kg",
      unit: "kg",
      range: [-MASS_RANGE_kg[1], MASS_RANGE_kg[1]],
      meaning: "mass that is put in; below zero where it is taken out",
    },
    { name: "arm_m", unit: "m", range: ARM_RANGE_m, meaning: "arm of what is put in or taken out" },
  ],
  output: { name: "newCentre_m", unit: "m" },
  formula: "CG + m (x − CG) / (M + m)",
  sources: [PHAK],
  compute: ({ totalMass_kg, centreOfGravity_m, addedMass_kg, arm_m }) => {
    const mass_kg = totalMass_kg + addedMass_kg;
    refuseDerived("centre-after-change", "newMass_kg", mass_kg, "kg", [
      WHOLE_RANGE_kg[0],
      2 * WHOLE_RANGE_kg[1],
    ]);
    return centreOfGravity_m + (addedMass_kg * (arm_m - centreOfGravity_m)) / mass_kg;
  },
});

const LIMIT_m = {
  name: "limit_m",
  unit: "m",
  range: ARM_RANGE_m,
  meaning: "arm of the limit that has to be met",
} as const;

export const ballastNeeded = defineQuantity({
  id: "ballast-needed",
  title: "Ballast that brings the centre of gravity to a limit",
  inputs: [
    TOTAL_MASS_kg,
    CENTRE_m,
    LIMIT_m,
    { name: "ballastArm_m", unit: "m", range: ARM_RANGE_m, meaning: "arm at which the ballast goes" },
  ],
  output: { name: "ballast_kg", unit: "kg" },
  formula: "M (limit − CG) / (x ballast − limit)",
  sources: [{ ...WEIGHT_AND_BALANCE_HANDBOOK, locator: "chapter 5, ballast" }],
  notes: [
    "Round up to whole units. Below zero this place cannot help: mass would have to come out of it.",
    "The limit at the new, greater mass must be no tighter; check the loading again with the ballast in.",
  ],
  compute: ({ totalMass_kg, centreOfGravity_m, limit_m, ballastArm_m }) => {
    const distance_m = ballastArm_m - limit_m;
    refuseDerived("ballast-needed", "distance_m", Math.abs(distance_m), "m", [1e-6, 200]);
    return (totalMass_kg * (limit_m - centreOfGravity_m)) / distance_m;
  },
});

export const massToCentreLimit = defineQuantity({
  id: "mass-to-centre-limit",
  title: "Mass that can be put in at an arm until the centre of gravity meets a limit",
  inputs: [
    TOTAL_MASS_kg,
    {
      name: "totalMoment_kgm",
      unit: "kgm",
      range: MOMENT_RANGE_kgm,
      meaning: "moment of the loaded aircraft before the change",
    },
    {
      name: "arm_m",
      unit: "m",
      range: ARM_RANGE_m,
      meaning: "arm of what is put in, or of the fuel that burns",
    },
    LIMIT_m,
  ],
  output: { name: "addedMass_kg", unit: "kg" },
  formula: "(limit M − moment) / (x − limit)",
  sources: [PHAK],
  notes: [
    "Round down in magnitude. Below zero it is what comes out, or burns, until the limit is met.",
    "Mass limits are tests of their own: the nearer of the two is met first.",
  ],
  compute: ({ totalMass_kg, totalMoment_kgm, arm_m, limit_m }) => {
    const distance_m = arm_m - limit_m;
    refuseDerived("mass-to-centre-limit", "distance_m", Math.abs(distance_m), "m", [1e-6, 200]);
    return (
      exactSumOfProducts([
        [limit_m, totalMass_kg],
        [-1, totalMoment_kgm],
      ]) / distance_m
    );
  },
});
