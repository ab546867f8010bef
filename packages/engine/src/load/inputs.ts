import type { QuantitySource } from "../registry/quantity.ts";

/** What the quantities of loading have in common. Arms are aft of the datum, lateral arms to the right of the centre line. */

/** From nothing to the heaviest aeroplane there is. */
export const MASS_RANGE_kg = [0, 700_000] as const;
/** Of anything that has a centre of gravity: one gram at least. */
export const WHOLE_RANGE_kg = [1e-3, 700_000] as const;
export const ARM_RANGE_m = [-100, 100] as const;
export const MOMENT_RANGE_kgm = [-7e7, 7e7] as const;

export const MASSES_kg = {
  name: "mass_kg",
  unit: "kg",
  range: MASS_RANGE_kg,
  meaning: "mass of each item",
  many: true,
} as const;

export const ARMS_m = {
  name: "arm_m",
  unit: "m",
  range: ARM_RANGE_m,
  meaning: "arm of each item, aft of the datum, in the order of the masses",
  many: true,
} as const;

export const LATERAL_ARMS_m = {
  name: "lateralArm_m",
  unit: "m",
  range: ARM_RANGE_m,
  meaning: "arm of each item to the right of the centre line, in the order of the masses",
  many: true,
} as const;

export const MOMENTS_kgm = {
  name: "moment_kgm",
  unit: "kgm",
  range: MOMENT_RANGE_kgm,
  meaning: "moment of each item about the datum",
  many: true,
} as const;

export const TOTAL_MASS_kg = {
  name: "totalMass_kg",
  unit: "kg",
  range: WHOLE_RANGE_kg,
  meaning: "mass of the loaded aircraft before the change",
} as const;

export const CENTRE_m = {
  name: "centreOfGravity_m",
  unit: "m",
  range: ARM_RANGE_m,
  meaning: "centre of gravity before the change, aft of the datum",
} as const;

export const PHAK: QuantitySource = {
  title: "Pilot's Handbook of Aeronautical Knowledge",
  edition: "FAA-H-8083-25C, 2023",
  locator: "chapter 10",
  status: "published",
};

export const WEIGHT_AND_BALANCE_HANDBOOK: QuantitySource = {
  title: "Aircraft Weight and Balance Handbook",
  edition: "FAA-H-8083-1B, 2016",
  status: "published",
};

export const AC_43_13: QuantitySource = {
  title: "AC 43.13-1B, Acceptable Methods, Techniques, and Practices: Aircraft Inspection and Repair",
  edition: "Change 1, 2001",
  locator: "chapter 10",
  status: "published",
};
