import { defineQuantity } from "../registry/define-quantity.ts";
import { refuseDerived } from "../registry/refuse-derived.ts";
import { AIM_HALFWAY, STEADY_ACCELERATION } from "./sources.ts";

const LIFT_OFF_SPEED_mPerS = {
  name: "liftOffSpeed_mPerS",
  unit: "mPerS",
  range: [5, 120],
  meaning: "lift-off speed",
} as const;

export const halfwaySpeedRule = defineQuantity({
  id: "halfway-speed-rule",
  title: "Speed to have by the middle of the runway, or stop",
  inputs: [LIFT_OFF_SPEED_mPerS],
  output: { name: "halfwaySpeed_mPerS", unit: "mPerS" },
  formula: "70 % of the lift-off speed",
  sources: [AIM_HALFWAY],
  crossCheckOnly: true,
  notes: [
    "A reason to stop, never a reason to go on: it knows no obstacle and no stopping distance.",
    "A steady acceleration has 70.7 % of the speed at half of the way, so the runway is then just used up.",
  ],
  compute: ({ liftOffSpeed_mPerS }) => 0.7 * liftOffSpeed_mPerS,
});

const ROLLS = [
  LIFT_OFF_SPEED_mPerS,
  {
    name: "takeOffRoll_m",
    unit: "m",
    range: [20, 4000],
    meaning: "take-off ground roll of this day, all factors in",
  },
  {
    name: "touchdownSpeed_mPerS",
    unit: "mPerS",
    range: [5, 120],
    meaning: "touchdown speed that the landing ground roll is for",
  },
  {
    name: "landingRoll_m",
    unit: "m",
    range: [20, 4000],
    meaning: "landing ground roll of this day, all factors in",
  },
  {
    name: "reaction_s",
    unit: "s",
    range: [0, 10],
    meaning: "time from the decision to full braking, rolling on at that speed",
  },
] as const;

interface Rolls {
  readonly liftOffSpeed_mPerS: number;
  readonly takeOffRoll_m: number;
  readonly touchdownSpeed_mPerS: number;
  readonly landingRoll_m: number;
}

/** Metres of runway for each m²/s² of speed: one to reach the speed, one to lose it. */
const perSpeedSquared = (rolls: Rolls): number =>
  rolls.takeOffRoll_m / rolls.liftOffSpeed_mPerS ** 2 + rolls.landingRoll_m / rolls.touchdownSpeed_mPerS ** 2;

const ESTIMATE_NOTES = [
  "Acceleration and braking each taken as steady, from the two ground rolls; the manual's own figure comes first.",
  "A real acceleration falls off with speed, so the speed is reached later than this says.",
] as const;

export const accelerateStopEstimate = defineQuantity({
  id: "accelerate-stop-estimate",
  title: "Runway used by a take-off that is stopped at a speed",
  inputs: [
    { name: "abortSpeed_mPerS", unit: "mPerS", range: [0, 120], meaning: "speed at which it is stopped" },
    ...ROLLS,
  ],
  output: { name: "accelerateStop_m", unit: "m" },
  formula: "V² (take-off roll / Vlo² + landing roll / Vtd²) + V × reaction time",
  sources: [STEADY_ACCELERATION],
  crossCheckOnly: true,
  notes: ESTIMATE_NOTES,
  compute: ({
    abortSpeed_mPerS,
    liftOffSpeed_mPerS,
    takeOffRoll_m,
    touchdownSpeed_mPerS,
    landingRoll_m,
    reaction_s,
  }) => {
    const a = perSpeedSquared({ liftOffSpeed_mPerS, takeOffRoll_m, touchdownSpeed_mPerS, landingRoll_m });
    const used_m = abortSpeed_mPerS ** 2 * a + abortSpeed_mPerS * reaction_s;
    const share_1 = abortSpeed_mPerS / liftOffSpeed_mPerS;
    refuseDerived("accelerate-stop-estimate", "shareOfLiftOffSpeed_1", share_1, "1", [0, 1]);
    return used_m;
  },
});

export const latestAbortSpeedEstimate = defineQuantity({
  id: "latest-abort-speed-estimate",
  title: "Fastest speed from which a take-off can still be stopped on the runway",
  inputs: [
    {
      name: "available_m",
      unit: "m",
      range: [20, 6000],
      meaning: "accelerate-stop distance available (ASDA)",
    },
    ...ROLLS,
  ],
  output: { name: "abortSpeed_mPerS", unit: "mPerS" },
  formula:
    "the V at which V² (take-off roll / Vlo² + landing roll / Vtd²) + V × reaction time is the distance, at most Vlo",
  sources: [STEADY_ACCELERATION],
  crossCheckOnly: true,
  notes: ESTIMATE_NOTES,
  compute: ({
    available_m,
    liftOffSpeed_mPerS,
    takeOffRoll_m,
    touchdownSpeed_mPerS,
    landingRoll_m,
    reaction_s,
  }) => {
    const a = perSpeedSquared({ liftOffSpeed_mPerS, takeOffRoll_m, touchdownSpeed_mPerS, landingRoll_m });
    // The root in the form that keeps its digits: 2 c / (b + sqrt(b² + 4 a c)).
    const speed = (2 * available_m) / (reaction_s + Math.sqrt(reaction_s ** 2 + 4 * a * available_m));
    return Math.min(speed, liftOffSpeed_mPerS);
  },
});

/** Where along the runway a take-off is judged, and by what. */
export interface AbortPoint {
  readonly at_m: number;
  readonly speed_mPerS: number;
  /** What the estimate says of stopping from there. */
  readonly stop_m: number;
  readonly stopsWithinRunway: boolean;
  readonly method: string;
}

/**
 * The point at which to stop if the speed is not there: 70 % of the lift-off speed by the middle of the runway (AIM
 * 7-5-7), with the estimate of whether the rest of the runway is enough to stop from that speed there.
 *
 * @param available_m the runway that may be used to stop (ASDA), from where the take-off begins
 * @throws {InputError} `out-of-range`, `not-a-number`, from the quantities it uses
 */
export function abortPoint(available_m: number, given: Rolls & { readonly reaction_s: number }): AbortPoint {
  const { liftOffSpeed_mPerS, touchdownSpeed_mPerS, landingRoll_m, reaction_s } = given;
  const speed_mPerS = halfwaySpeedRule.compute({ liftOffSpeed_mPerS });
  // Refuses what is out of range, so that nothing below is made of nonsense.
  latestAbortSpeedEstimate.compute({ available_m, ...given });
  const braking_m = landingRoll_m * (speed_mPerS / touchdownSpeed_mPerS) ** 2;
  const at_m = available_m / 2;
  const stop_m = at_m + speed_mPerS * reaction_s + braking_m;
  return {
    at_m,
    speed_mPerS,
    stop_m,
    stopsWithinRunway: stop_m <= available_m,
    method: "70 % of the lift-off speed by half of the runway; braking as in the landing ground roll",
  };
}
