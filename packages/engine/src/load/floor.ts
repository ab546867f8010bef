import { defineQuantity } from "../registry/define-quantity.ts";
import { exactSum } from "./exact-sum.ts";
import { MASS_RANGE_kg, WEIGHT_AND_BALANCE_HANDBOOK } from "./inputs.ts";

const AREA_m2 = {
  name: "area_m2",
  unit: "m2",
  range: [1e-4, 1000],
  meaning: "area of the floor that carries it",
} as const;

const HANDBOOK = { ...WEIGHT_AND_BALANCE_HANDBOOK, locator: "floor load limits" } as const;

export const floorLoading = defineQuantity({
  id: "floor-loading",
  title: "Mass on each square of floor",
  inputs: [
    {
      name: "mass_kg",
      unit: "kg",
      range: MASS_RANGE_kg,
      meaning: "mass of each thing that stands on it: load, pallet, lashings",
      many: true,
    },
    AREA_m2,
  ],
  output: { name: "floorLoad_kgPerM2", unit: "kgPerM2" },
  formula: "(sum of m) / A",
  sources: [HANDBOOK],
  notes: ["The area that touches: feet and wheels carry more than the pallet's outline says."],
  compute: ({ mass_kg, area_m2 }) => exactSum(mass_kg) / area_m2,
});

export const mostOnFloor = defineQuantity({
  id: "most-on-floor",
  title: "Greatest load that a floor takes beside what already stands on it",
  inputs: [
    {
      name: "floorLimit_kgPerM2",
      unit: "kgPerM2",
      range: [1e-3, 1e5],
      meaning: "greatest mass on each square of floor",
    },
    AREA_m2,
    {
      name: "standing_kg",
      unit: "kg",
      range: MASS_RANGE_kg,
      meaning: "mass of pallet, lashings and what else stands on it; 0 for nothing",
      many: true,
    },
  ],
  output: { name: "load_kg", unit: "kg" },
  formula: "limit × A − sum of what stands on it",
  sources: [HANDBOOK],
  notes: ["Round down. Below zero the floor is over its limit as it is."],
  compute: ({ floorLimit_kgPerM2, area_m2, standing_kg }) =>
    floorLimit_kgPerM2 * area_m2 - exactSum(standing_kg),
});
