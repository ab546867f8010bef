import type { Geometry } from "../schema/geometry.ts";
import { type Px, smoothPath } from "./path.ts";
import type { Projection } from "./projection.ts";

/** [x, half width, top z, bottom z], metres. */
export type Station = Geometry["fuselage"][number];

const between = (a: number, b: number, share_1: number): number => a + (b - a) * share_1;

/** The section of a body at a place along it, straight between stations; the end sections hold beyond the ends. */
export function sectionAt(stations: readonly Station[], x_m: number): Station {
  let before: Station | undefined;
  for (const station of stations) {
    if (x_m <= station[0]) {
      if (before === undefined) return station;
      const length_m = station[0] - before[0];
      const share_1 = length_m > 0 ? (x_m - before[0]) / length_m : 1;
      return [
        x_m,
        between(before[1], station[1], share_1),
        between(before[2], station[2], share_1),
        between(before[3], station[3], share_1),
      ];
    }
    before = station;
  }
  return before ?? [x_m, 0, 0, 0];
}

function closed(oneSide: readonly Px[], otherSide: readonly Px[]): string {
  return `${smoothPath(oneSide)}${smoothPath(otherSide.toReversed(), "join")}Z`;
}

/** The outline of a body from above, smooth through its stations. */
export const planBody = (stations: readonly Station[], centre_m: number, project: Projection): string =>
  closed(
    stations.map(([x, halfWidth]) => project(x, centre_m + halfWidth)),
    stations.map(([x, halfWidth]) => project(x, centre_m - halfWidth)),
  );

/** The outline of a body from the side. */
export const sideBody = (stations: readonly Station[], project: Projection): string =>
  closed(
    stations.map(([x, , top]) => project(x, top)),
    stations.map(([x, , , bottom]) => project(x, bottom)),
  );
