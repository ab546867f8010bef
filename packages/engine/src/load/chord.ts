import { defineQuantity } from "../registry/define-quantity.ts";
import { ARM_RANGE_m, CENTRE_m, WEIGHT_AND_BALANCE_HANDBOOK } from "./inputs.ts";

const LEADING_EDGE_m = {
  name: "leadingEdge_m",
  unit: "m",
  range: ARM_RANGE_m,
  meaning: "arm of the leading edge of the mean aerodynamic chord",
} as const;

const CHORD_m = {
  name: "chord_m",
  unit: "m",
  range: [0.05, 20],
  meaning: "length of the mean aerodynamic chord",
} as const;

const HANDBOOK = { ...WEIGHT_AND_BALANCE_HANDBOOK, locator: "chapter 3, mean aerodynamic chord" } as const;

export const percentMac = defineQuantity({
  id: "percent-mac",
  title: "Centre of gravity as a share of the mean aerodynamic chord",
  inputs: [CENTRE_m, LEADING_EDGE_m, CHORD_m],
  output: { name: "position_1", unit: "1" },
  formula: "(CG − LEMAC) / MAC",
  sources: [HANDBOOK],
  notes: ["For display; limits are compared in length."],
  compute: ({ centreOfGravity_m, leadingEdge_m, chord_m }) => (centreOfGravity_m - leadingEdge_m) / chord_m,
});

export const armOfPercentMac = defineQuantity({
  id: "arm-of-percent-mac",
  title: "Arm of a place on the mean aerodynamic chord",
  inputs: [
    {
      name: "position_1",
      unit: "1",
      range: [-5, 5],
      meaning: "share of the chord, from its leading edge",
    },
    LEADING_EDGE_m,
    CHORD_m,
  ],
  output: { name: "arm_m", unit: "m" },
  formula: "LEMAC + share × MAC",
  sources: [HANDBOOK],
  compute: ({ position_1, leadingEdge_m, chord_m }) => leadingEdge_m + position_1 * chord_m,
});
