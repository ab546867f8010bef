import { defineQuantity } from "../registry/define-quantity.ts";
import { AIM_CLIMB, PHAK_PERFORMANCE, PHAK_RUNWAY } from "./sources.ts";

const GRADIENT_1 = {
  name: "gradient_1",
  unit: "1",
  range: [-0.5, 1],
  meaning: "gradient over the ground: height for distance",
} as const;

const GROUND_SPEED_mPerS = {
  name: "groundSpeed_mPerS",
  unit: "mPerS",
  range: [5, 300],
  meaning: "speed over the ground, wind included",
} as const;

export const climbRateForGradient = defineQuantity({
  id: "climb-rate-for-gradient",
  title: "Rate of climb that a gradient asks for",
  inputs: [GRADIENT_1, GROUND_SPEED_mPerS],
  output: { name: "rateOfClimb_mPerS", unit: "mPerS" },
  formula: "rate = gradient × ground speed",
  sources: [AIM_CLIMB],
  notes: ["Rounded up. A tailwind in the climb raises it."],
  compute: ({ gradient_1, groundSpeed_mPerS }) => gradient_1 * groundSpeed_mPerS,
});

export const climbGradientOfRate = defineQuantity({
  id: "climb-gradient-of-rate",
  title: "Gradient over the ground that a rate of climb makes",
  inputs: [
    { name: "rateOfClimb_mPerS", unit: "mPerS", range: [-20, 50], meaning: "rate of climb" },
    GROUND_SPEED_mPerS,
  ],
  output: { name: "gradient_1", unit: "1" },
  formula: "gradient = rate / ground speed",
  sources: [AIM_CLIMB],
  notes: ["Rounded down before it is compared with a gradient that is asked for."],
  compute: ({ rateOfClimb_mPerS, groundSpeed_mPerS }) => rateOfClimb_mPerS / groundSpeed_mPerS,
});

export const climbGradientBetween = defineQuantity({
  id: "climb-gradient-between",
  title: "Gradient between two heights over a distance",
  inputs: [
    { name: "heightGain_m", unit: "m", range: [-15_000, 15_000], meaning: "height to gain" },
    { name: "distance_m", unit: "m", range: [1, 1e6], meaning: "distance over the ground" },
  ],
  output: { name: "gradient_1", unit: "1" },
  formula: "gradient = height / distance",
  sources: [PHAK_PERFORMANCE],
  compute: ({ heightGain_m, distance_m }) => heightGain_m / distance_m,
});

export const climbAngle = defineQuantity({
  id: "climb-angle",
  title: "Angle of a gradient",
  inputs: [GRADIENT_1],
  output: { name: "angle_rad", unit: "rad" },
  formula: "arctan(gradient)",
  sources: [{ title: "Trigonometry", status: "common practice" }],
  compute: ({ gradient_1 }) => Math.atan(gradient_1),
});

export const runwayHeightChange = defineQuantity({
  id: "runway-height-change",
  title: "Height that a sloping runway gains along its length",
  inputs: [
    { name: "slope_1", unit: "1", range: [-0.25, 0.25], meaning: "slope, up above zero" },
    { name: "length_m", unit: "m", range: [0, 6000], meaning: "length" },
  ],
  output: { name: "heightChange_m", unit: "m" },
  formula: "slope × length",
  sources: [PHAK_RUNWAY],
  compute: ({ slope_1, length_m }) => slope_1 * length_m,
});

/** What a climb chart that counts from sea level gives at one level. */
export interface ClimbFromSeaLevel {
  readonly fuel_kg: number;
  readonly time_s: number;
  readonly distance_m: number;
}

/**
 * A climb between two levels, from a chart that counts each from sea level: the difference of the two readings.
 *
 * @source FAA-H-8083-25C chapter 11, sample problem 4 (which prints 4 min for 10.5 − 6)
 */
export const climbBetween = (upper: ClimbFromSeaLevel, lower: ClimbFromSeaLevel): ClimbFromSeaLevel => ({
  fuel_kg: upper.fuel_kg - lower.fuel_kg,
  time_s: upper.time_s - lower.time_s,
  distance_m: upper.distance_m - lower.distance_m,
});
