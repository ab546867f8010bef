import { type AbortPoint, abortPoint } from "@witnessmark/engine";
import type { RunwayCondition } from "@witnessmark/ledger";
import { type DistanceAnswer, distanceOf } from "./distances.ts";
import type { Missing } from "./figure.ts";
import { flapsOf, type PerformanceAsk } from "./read-performance.ts";
import { stallWith } from "./speeds.ts";
import type { Warned } from "./told.ts";

/** From the decision to full braking. Common practice. */
export const REACTION_S = 3;

export interface AbortFigures extends AbortPoint {
  readonly liftOff_mPerS: number;
  readonly touchdown_mPerS: number;
  readonly takeOffRoll_m: number;
  readonly landingRoll_m: number;
  readonly available_m: number;
  readonly status: Warned;
}

export type AbortFound =
  | { readonly ok: true; readonly abort: AbortFigures }
  | { readonly ok: false; readonly missing: readonly Missing[] };

export interface AbortAsk extends PerformanceAsk {
  readonly condition: RunwayCondition;
  readonly takeOff: DistanceAnswer;
}

const rollOf = ({ needs }: DistanceAnswer): number | undefined =>
  needs.find(({ name }) => name === "ground roll")?.needed_m;

/**
 * Where on the runway to stop if the speed is not there, and whether it then stops in time: braking as in the landing
 * of this day at the mass of the take-off. Undefined where the book gives no speeds for it.
 *
 * @throws {InputError} for rolls or speeds that the engine refuses
 */
export function abortOf(ask: AbortAsk): AbortFound | undefined {
  const { performance, runway, condition, at, takeOff } = ask;
  const { liftOffFactor_1, touchdownFactor_1 } = performance;
  const takeOffRoll_m = rollOf(takeOff);
  if (liftOffFactor_1 === undefined || touchdownFactor_1 === undefined || takeOffRoll_m === undefined)
    return undefined;
  const lift = stallWith(ask, flapsOf(performance, "take-off-over-50ft"));
  const down = stallWith(ask, flapsOf(performance, "landing-over-50ft"));
  if (lift === undefined || down === undefined) return undefined;
  const landing = distanceOf("landing", { performance, runway, condition, at });
  const missing = [
    ...("what" in lift ? [lift] : []),
    ...("what" in down ? [down] : []),
    ...(landing.ok ? [] : landing.missing),
  ];
  if ("what" in lift || "what" in down || !landing.ok) return { ok: false, missing };
  const landingRoll_m = rollOf(landing.answer);
  if (landingRoll_m === undefined)
    return { ok: false, missing: [{ what: "a table of landing-ground-roll in the book" }] };
  const rolls = {
    liftOffSpeed_mPerS: lift.value * liftOffFactor_1,
    takeOffRoll_m,
    touchdownSpeed_mPerS: down.value * touchdownFactor_1,
    landingRoll_m,
    reaction_s: REACTION_S,
  };
  const point = abortPoint(runway.asda_m, rolls);
  return {
    ok: true,
    abort: {
      ...point,
      liftOff_mPerS: rolls.liftOffSpeed_mPerS,
      touchdown_mPerS: rolls.touchdownSpeed_mPerS,
      takeOffRoll_m,
      landingRoll_m,
      available_m: runway.asda_m,
      status: point.stopsWithinRunway ? "clear" : "caution",
    },
  };
}
