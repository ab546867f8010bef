import { defineQuantity } from "../registry/define-quantity.ts";
import { refuseDerived } from "../registry/refuse-derived.ts";
import { exactSum, exactSumOfProducts } from "./exact-sum.ts";
import {
  AC_43_13,
  ARM_RANGE_m,
  MASS_RANGE_kg,
  WEIGHT_AND_BALANCE_HANDBOOK,
  WHOLE_RANGE_kg,
} from "./inputs.ts";
import { pairs, refuseUnequal } from "./refuse-unequal.ts";

const HANDBOOK = { ...WEIGHT_AND_BALANCE_HANDBOOK, locator: "chapter 3" } as const;

const SCALE_kg = {
  name: "scale_kg",
  unit: "kg",
  range: MASS_RANGE_kg,
  meaning: "what each scale shows",
  many: true,
} as const;
const TARE_kg = {
  name: "tare_kg",
  unit: "kg",
  range: MASS_RANGE_kg,
  meaning: "chocks and stands on each scale, in the order of the scales",
  many: true,
} as const;

/** Mass on each scale without what only holds the aircraft. */
function net_kg(
  quantity: string,
  scale_kg: readonly number[],
  tare_kg: readonly number[],
): readonly number[] {
  refuseUnequal(quantity, ["scale_kg", scale_kg], ["tare_kg", tare_kg]);
  return pairs(scale_kg, tare_kg).map(([scale, tare]) => {
    refuseDerived(quantity, "net_kg", scale - tare, "kg", MASS_RANGE_kg);
    return scale - tare;
  });
}

export const weighedMass = defineQuantity({
  id: "weighed-mass",
  title: "Mass of an aircraft on scales",
  inputs: [SCALE_kg, TARE_kg],
  output: { name: "mass_kg", unit: "kg" },
  formula: "sum of (scale − tare)",
  sources: [HANDBOOK],
  compute: ({ scale_kg, tare_kg }) => exactSum(net_kg("weighed-mass", scale_kg, tare_kg)),
});

export const weighedCentre = defineQuantity({
  id: "weighed-centre",
  title: "Centre of gravity of an aircraft on scales",
  inputs: [
    SCALE_kg,
    TARE_kg,
    {
      name: "scaleArm_m",
      unit: "m",
      range: ARM_RANGE_m,
      meaning: "arm of the point that stands on each scale, in the order of the scales",
      many: true,
    },
  ],
  output: { name: "centreOfGravity_m", unit: "m" },
  formula: "(sum of (scale − tare) x) / (sum of (scale − tare))",
  sources: [HANDBOOK],
  notes: ["The aircraft stands level, as its manual says."],
  compute: ({ scale_kg, tare_kg, scaleArm_m }) => {
    const net = net_kg("weighed-centre", scale_kg, tare_kg);
    refuseUnequal("weighed-centre", ["scale_kg", scale_kg], ["scaleArm_m", scaleArm_m]);
    const total_kg = exactSum(net);
    refuseDerived("weighed-centre", "mass_kg", total_kg, "kg", [WHOLE_RANGE_kg[0], Number.MAX_VALUE]);
    return exactSumOfProducts(pairs(net, scaleArm_m)) / total_kg;
  },
});

const MAIN_WHEELS_m = {
  name: "mainWheels_m",
  unit: "m",
  range: ARM_RANGE_m,
  meaning: "arm of the main wheels; below zero where the datum is behind them",
} as const;
const WHEELBASE_m = {
  name: "wheelbase_m",
  unit: "m",
  range: [0.1, 100],
  meaning: "distance between the main wheels and the nose or tail wheel",
} as const;
const THIRD_WHEEL_kg = {
  name: "thirdWheelMass_kg",
  unit: "kg",
  range: MASS_RANGE_kg,
  meaning: "mass on the nose or tail wheel, without tare",
} as const;
const WEIGHED_kg = {
  name: "mass_kg",
  unit: "kg",
  range: WHOLE_RANGE_kg,
  meaning: "mass on all wheels, without tare",
} as const;

const WHEELS = [MAIN_WHEELS_m, WHEELBASE_m, THIRD_WHEEL_kg, WEIGHED_kg] as const;

export const noseWheelCentre = defineQuantity({
  id: "nose-wheel-centre",
  title: "Centre of gravity of a weighed aeroplane with a nose wheel",
  inputs: WHEELS,
  output: { name: "centreOfGravity_m", unit: "m" },
  formula: "D − F L / W",
  sources: [HANDBOOK],
  notes: ["With the datum behind the main wheels D is below zero: −(D + F L / W) with D as a distance."],
  compute: ({ mainWheels_m, wheelbase_m, thirdWheelMass_kg, mass_kg }) => {
    refuseDerived("nose-wheel-centre", "thirdWheelMass_kg", thirdWheelMass_kg, "kg", [0, mass_kg]);
    return mainWheels_m - (thirdWheelMass_kg * wheelbase_m) / mass_kg;
  },
});

export const tailWheelCentre = defineQuantity({
  id: "tail-wheel-centre",
  title: "Centre of gravity of a weighed aeroplane with a tail wheel",
  inputs: WHEELS,
  output: { name: "centreOfGravity_m", unit: "m" },
  formula: "D + R L / W",
  sources: [HANDBOOK],
  notes: ["With the datum behind the main wheels D is below zero: −D + R L / W with D as a distance."],
  compute: ({ mainWheels_m, wheelbase_m, thirdWheelMass_kg, mass_kg }) => {
    refuseDerived("tail-wheel-centre", "thirdWheelMass_kg", thirdWheelMass_kg, "kg", [0, mass_kg]);
    return mainWheels_m + (thirdWheelMass_kg * wheelbase_m) / mass_kg;
  },
});

const LB_kg = 0.45359237;

export const negligibleMassChange = defineQuantity({
  id: "negligible-mass-change",
  title: "Greatest change of the empty mass that counts as negligible",
  inputs: [{ name: "emptyMass_kg", unit: "kg", range: WHOLE_RANGE_kg, meaning: "empty mass in force" }],
  output: { name: "change_kg", unit: "kg" },
  formula: "1 lb up to 5,000 lb, 2 lb to 50,000 lb, 5 lb above",
  sources: [{ ...AC_43_13, locator: "paragraph 10-2c" }],
  notes: [
    "At exactly 5,000 lb the text says nothing; the smaller figure is given.",
    "The centre of gravity may change by less than 0.05 % of the mean aerodynamic chord.",
  ],
  compute: ({ emptyMass_kg }) => {
    const pounds = emptyMass_kg / LB_kg;
    return (pounds <= 5000 ? 1 : pounds <= 50_000 ? 2 : 5) * LB_kg;
  },
});

const HP_W = LB_kg * 9.80665 * 0.3048 * 550;

export const minimumFuelForCheck = defineQuantity({
  id: "minimum-fuel-for-check",
  title: "Minimum fuel for an adverse-loading check of a piston aeroplane",
  inputs: [
    {
      name: "power_W",
      unit: "W",
      range: [1e3, 1e7],
      meaning: "maximum-except-take-off power of all engines",
    },
  ],
  output: { name: "fuel_kg", unit: "kg" },
  formula: "1/12 US gal of 6 lb for each horsepower",
  sources: [{ ...AC_43_13, locator: "paragraph 10-2p" }],
  compute: ({ power_W }) => (power_W / HP_W / 2) * LB_kg,
});
