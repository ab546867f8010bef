import type { Step, Stop } from "./walk-plan.ts";

/** The book's `least` is the bare minimum for one look; an unhurried one takes about twice that. From memory. */
const UNHURRIED_1 = 2;
/** To take a piece of ground gear off, or put it on, and stow it. From memory. */
const PIECE_S = 12;
/** A slow walk round something, eyes on it. From memory. */
const PACE_MPerS = 0.8;

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

const step_s = (step: Step): number =>
  step.kind === "check" ? step.check.least.valueSI * UNHURRIED_1 : step.item.count * PIECE_S;

/** Seconds for an unhurried walk: every look, every piece of ground gear, and the way between the stances. */
export const estimate_s = (stops: readonly Stop[]): number =>
  Math.round(
    stops.flatMap((stop) => stop.steps).reduce((sum_s, step) => sum_s + step_s(step), 0) +
      walkingDistance_m(stops) / PACE_MPerS,
  );
