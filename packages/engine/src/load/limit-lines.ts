import { InputError } from "../input-error.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import { refuseDerived } from "../registry/refuse-derived.ts";
import { ARM_RANGE_m, MASS_RANGE_kg, PHAK, WHOLE_RANGE_kg } from "./inputs.ts";
import { pairs, refuseUnequal } from "./refuse-unequal.ts";

const INPUTS = [
  { name: "mass_kg", unit: "kg", range: WHOLE_RANGE_kg, meaning: "mass at which the limit is asked for" },
  {
    name: "cornerMass_kg",
    unit: "kg",
    range: MASS_RANGE_kg,
    meaning: "mass at each corner of the limit, rising",
    many: true,
  },
  {
    name: "cornerArm_m",
    unit: "m",
    range: ARM_RANGE_m,
    meaning: "limiting arm at each corner, in the order of the masses",
    many: true,
  },
] as const;

/** The arm of a limit at a mass, linear between its corners; nothing below the first and above the last. */
function limitArm_m(
  quantity: string,
  mass_kg: number,
  cornerMass_kg: readonly number[],
  cornerArm_m: readonly number[],
): number {
  refuseUnequal(quantity, ["cornerMass_kg", cornerMass_kg], ["cornerArm_m", cornerArm_m]);
  const corners = pairs(cornerMass_kg, cornerArm_m);
  const [first] = corners;
  if (first === undefined) return Number.NaN; // the registry lets no empty list through
  let [lowMass, lowArm] = first;
  for (const [mass, arm] of corners.slice(1)) {
    if (!(mass > lowMass)) {
      throw new InputError("out-of-range", "cornerMass_kg", {
        quantity,
        expected: "masses that rise from corner to corner",
        received: `${mass} kg after ${lowMass} kg`,
      });
    }
    if (mass_kg >= lowMass && mass_kg <= mass) {
      return lowArm + ((arm - lowArm) * (mass_kg - lowMass)) / (mass - lowMass);
    }
    [lowMass, lowArm] = [mass, arm];
  }
  refuseDerived(quantity, "mass_kg", mass_kg, "kg", [first[0], lowMass]);
  return first[1]; // one corner, and the mass is there
}

const NOTES = [
  "Nothing is given beyond the corners: where the limit stays the same down to a lower mass, that is a corner too.",
] as const;

export const centreLimit = defineQuantity({
  id: "centre-limit",
  title: "Limiting arm of the centre of gravity at a mass",
  inputs: INPUTS,
  output: { name: "limit_m", unit: "m" },
  formula: "linear in mass between the corners",
  sources: [PHAK],
  notes: NOTES,
  compute: ({ mass_kg, cornerMass_kg, cornerArm_m }) =>
    limitArm_m("centre-limit", mass_kg, cornerMass_kg, cornerArm_m),
});

export const momentLimit = defineQuantity({
  id: "moment-limit",
  title: "Limiting moment at a mass, from a limit of the centre of gravity",
  inputs: INPUTS,
  output: { name: "moment_kgm", unit: "kgm" },
  formula: "m × (limiting arm, linear in mass between the corners)",
  sources: [PHAK],
  notes: [
    ...NOTES,
    "A straight line between two moments is not the same: it is up to 640 lb in off in one published table.",
  ],
  compute: ({ mass_kg, cornerMass_kg, cornerArm_m }) =>
    mass_kg * limitArm_m("moment-limit", mass_kg, cornerMass_kg, cornerArm_m),
});
