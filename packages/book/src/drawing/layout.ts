import type { Geometry } from "../schema/geometry.ts";
import { sectionAt } from "./fuselage-body.ts";

/** The wing lies on the fuselage, or above it: seen from above it hides the cabin. */
export function isHighWing({ wing: { root }, fuselage }: Pick<Geometry, "wing" | "fuselage">): boolean {
  const [, , top, bottom] = sectionAt(fuselage, root.leadingEdge + root.chord / 2);
  return root.z >= top - 0.2 * (top - bottom);
}

/** How a tail is put together, from where its surfaces are. */
export type TailKind = "conventional" | "cruciform" | "t" | "v";

/** Shares of the fin's height above the fuselage from which a tailplane is half-way up, and from which it is on top. */
const HALF_WAY_1 = 0.25;
const ON_TOP_1 = 0.75;

export function tailKind({ fin, tailplane: { root }, fuselage }: Geometry): TailKind {
  if (fin === undefined) return "v";
  const heights = fin.outline.map(([, z]) => z);
  const top_m = Math.max(...heights);
  const foot_m = sectionAt(fuselage, root.leadingEdge + root.chord / 2)[2];
  const up_1 = top_m > foot_m ? (root.z - foot_m) / (top_m - foot_m) : 0;
  return up_1 >= ON_TOP_1 ? "t" : up_1 >= HALF_WAY_1 ? "cruciform" : "conventional";
}

type Wheel = Geometry["wheels"][number];

/** y of the top of a leg, metres: where the book says; else above the wheel, or the side of the fuselage under a high wing. */
export function legTopY_m(geometry: Geometry, wheel: Wheel): number {
  if (wheel.topY !== undefined) return wheel.topY;
  const halfWidth_m = sectionAt(geometry.fuselage, wheel.x + (wheel.rake ?? 0))[1];
  const under = geometry.nacelles.some(({ y }) => Math.abs(y - wheel.y) < 0.6);
  if (under || Math.abs(wheel.y) <= halfWidth_m || !isHighWing(geometry)) return wheel.y;
  return Math.sign(wheel.y) * halfWidth_m * 0.8;
}
