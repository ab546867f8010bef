import type { Stance } from "@witnessmark/book";
import type { Ground } from "../geometry/convex.ts";
import type { Obstacle } from "../geometry/obstacles.ts";
import { walkingPaths } from "../geometry/walking-paths.ts";
import type { Doorway } from "./door.ts";
import type { WalkCosts } from "./walk-costs.ts";

/** Somewhere one can be: a stance, or the place where the walk begins or ends. */
export type Somewhere = Pick<Stance, "place" | "posture"> & { readonly isEnd?: boolean };

export interface StanceCosts {
  /** Seconds from each to each, stops and postures counted; a stop's share is half paid coming, half going. */
  readonly seconds: Float64Array;
  readonly metres: Float64Array;
  /** Whether a way leads there from the first place. */
  isReached(place: number): boolean;
  /** The corners of the way on the ground; the straight line where no way leads. */
  way(from: number, to: number): readonly Ground[];
}

/**
 * From one place to another, on the ground round the obstacles, inside in a straight line, in and out by the door.
 * Where no way leads, the straight line counts and half of the longest way besides: such a place is still come to, at
 * the end of an order that is otherwise good, and no detour through it is ever a short cut.
 */
export function stanceCosts(
  somewhere: readonly Somewhere[],
  obstacles: readonly Obstacle[],
  door: Doorway,
  costs: WalkCosts,
): StanceCosts {
  const count = somewhere.length;
  const ends = somewhere.map(({ place, posture }) => (posture === "inside" ? door.outside : place));
  const paths = walkingPaths(ends, obstacles);
  const isWay = (metres: number | undefined): metres is number =>
    metres !== undefined && metres < Number.POSITIVE_INFINITY;
  const noWay_m = paths.metres.reduce((most_m, m) => (isWay(m) ? Math.max(most_m, m) : most_m), 1) / 2;
  const onGround_m = (a: number, b: number): number => {
    const metres = paths.metres[a * count + b];
    return isWay(metres) ? metres : apart_m(ends[a] ?? [0, 0], ends[b] ?? [0, 0]) + noWay_m;
  };
  /** Inside, as far as the door. */
  const within_m = ({ place, posture }: Somewhere): number =>
    posture === "inside" ? apart_m(place, door.inside) : 0;
  const metres = new Float64Array(count * count);
  const seconds = new Float64Array(count * count);
  for (const [a, from] of somewhere.entries()) {
    for (const [b, to] of somewhere.entries()) {
      if (a === b) continue;
      const at = a * count + b;
      const way_m = areInside(from, to)
        ? apart_m(from.place, to.place)
        : within_m(from) + within_m(to) + onGround_m(a, b);
      metres[at] = way_m;
      seconds[at] = wholeMs(way_m / costs.pace_mPerS + stops_s(from, to, costs) + change_s(from, to, costs));
    }
  }
  return {
    seconds,
    metres,
    isReached: (place) => isWay(paths.metres[place]),
    way(from, to) {
      const [start, end] = [somewhere[from], somewhere[to]];
      if (start === undefined || end === undefined) return [];
      const way = areInside(start, end) ? [] : paths.way(from, to);
      return way.length > 0 ? way : [start.place, end.place];
    },
  };
}

const apart_m = (a: Ground, b: Ground): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
/**
 * Upwards to whole milliseconds: what roots and cosines differ by from one machine to another in their last digit never
 * decides between two orders. Upwards, so that a detour is still no shorter than the straight way.
 */
const wholeMs = (time_s: number): number => Math.ceil(time_s * 1000 - 1e-6) / 1000;
const areInside = (a: Somewhere, b: Somewhere): boolean => a.posture === "inside" && b.posture === "inside";
const stops_s = (from: Somewhere, to: Somewhere, { stop_s }: WalkCosts): number =>
  (from.isEnd === true ? 0 : stop_s / 2) + (to.isEnd === true ? 0 : stop_s / 2);

function change_s(from: Somewhere, to: Somewhere, { posture_s, boarding_s }: WalkCosts): number {
  if (from.posture === to.posture) return 0;
  // in and out is the same from a crouch: one rises at the door anyhow
  if (from.posture === "inside" || to.posture === "inside") {
    return boarding_s + (from.posture === "crouch" || to.posture === "crouch" ? posture_s : 0);
  }
  return posture_s;
}
