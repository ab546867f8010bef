import { isAbove } from "./edges.ts";
import { finite } from "./ruling.ts";

/** The cabin's pressure altitude at a time; between two points it changes steadily. */
export interface CabinPoint {
  readonly time_s: number;
  readonly cabinAltitude_m: number;
}

/** Two points at least, all figures finite, time never running backwards. */
export function isProfile(profile: readonly CabinPoint[] | undefined): profile is readonly CabinPoint[] {
  if (profile === undefined || profile.length < 2) return false;
  return profile.every(({ time_s, cabinAltitude_m }, at) => {
    const before = profile[at - 1];
    const ordered = before === undefined || before.time_s <= time_s;
    return ordered && finite(time_s) !== undefined && finite(cabinAltitude_m) !== undefined;
  });
}

/** How much of a steady change lies above an altitude, 0 to 1. */
function shareAbove(one_m: number, other_m: number, edge_m: number): number {
  const low_m = Math.min(one_m, other_m);
  const high_m = Math.max(one_m, other_m);
  if (isAbove(low_m, edge_m)) return 1;
  if (!isAbove(high_m, edge_m)) return 0;
  return low_m >= edge_m ? 1 : (high_m - edge_m) / (high_m - low_m);
}

/** The time spent above an altitude; the altitude itself is not above. */
export function timeAbove_s(profile: readonly CabinPoint[], edge_m: number): number {
  return profile.reduce((sum_s, point, at) => {
    const before = profile[at - 1];
    if (before === undefined) return sum_s;
    const share_1 = shareAbove(before.cabinAltitude_m, point.cabinAltitude_m, edge_m);
    return sum_s + (point.time_s - before.time_s) * share_1;
  }, 0);
}

/** The time spent above one altitude, up to and including another. */
export const timeBetween_s = (profile: readonly CabinPoint[], above_m: number, upTo_m: number): number =>
  Math.max(0, timeAbove_s(profile, above_m) - timeAbove_s(profile, upTo_m));

/** What is left of a time once it is over 30 minutes. */
const FREE_S = 30 * 60;
export const beyondHalfAnHour_s = (time_s: number): number => (isAbove(time_s, FREE_S) ? time_s - FREE_S : 0);
