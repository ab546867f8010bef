import type { Method } from "@witnessmark/book";
import { look_s } from "./walk/step-times.ts";
import { WALK_COSTS } from "./walk/walk-costs.ts";
import type { Step, Stop } from "./walk-plan.ts";

/** To take a piece of ground gear off, or put it on, and stow it. From memory. */
const PIECE_S = 12;

/**
 * Metres from stance to stance, in straight lines, in the order of the walk.
 *
 * @param stops stances placed in metres (x aft, y right)
 */
export const walkingDistance_m = (stops: readonly Pick<Stop, "stance">[]): number =>
  stops.slice(1).reduce((sum_m, { stance: { place: to } }, before) => {
    const from = stops[before]?.stance.place ?? to;
    return sum_m + Math.hypot(to[0] - from[0], to[1] - from[1]);
  }, 0);

/** What a look takes for each method, as a share of the book's least: learnt from past walks (`timesLeast`). */
export type Learnt = ReadonlyMap<Method, number>;

/** Seconds that a step is likely to take, unhurried. */
export const step_s = (step: Step, learnt: Learnt = new Map()): number =>
  step.kind === "check"
    ? look_s({ method: step.check.method, least_s: step.check.least.valueSI }, learnt)
    : step.item.count * PIECE_S;

/**
 * Seconds for an unhurried walk: every look, every piece of ground gear, and the way between the stances.
 *
 * @param isLeft steps for which this is false are done: neither they nor a stop at which nothing is left is counted
 */
export function estimate_s(
  stops: readonly Stop[],
  options: {
    readonly walking_s?: number | undefined;
    readonly learnt?: Learnt;
    readonly isLeft?: (step: Step) => boolean;
  } = {},
): number {
  const { isLeft = () => true, learnt } = options;
  const left = stops.filter(({ steps }) => steps.some(isLeft));
  const steps = left.flatMap((stop) => stop.steps).filter(isLeft);
  const looking_s = steps.reduce((sum_s, step) => sum_s + step_s(step, learnt), 0);
  return Math.round(looking_s + (options.walking_s ?? walkingDistance_m(left) / WALK_COSTS.pace_mPerS));
}
