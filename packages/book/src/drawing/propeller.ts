import type { Geometry } from "../schema/geometry.ts";
import { cubicTo, moveTo, type Px, smoothPath } from "./path.ts";
import type { Projection } from "./projection.ts";

type Propeller = Geometry["propellers"][number];

const HUB_RADIUS_m = 0.16;
const BLADE_HALF_THICKNESS_m = 0.055;
const BLADE_HALF_WIDTH_1 = 0.075;
/** [metres aft of the propeller, half height in metres], from the backplate to the tip of the spinner. */
const SPINNER: readonly (readonly [number, number])[] = [
  [0.16, 0.2],
  [-0.05, 0.185],
  [-0.25, 0.1],
  [-0.37, 0],
];
/** How far the spinner reaches ahead of the blades, metres. */
export const SPINNER_REACH_m = 0.37;

/** Two blades edge on, one each side of the hub; `centre_m` is y in plan and z in the side view. */
export function bladesEdgeOn(propeller: Propeller, centre_m: number, project: Projection): string {
  const { x, radius } = propeller;
  const t = BLADE_HALF_THICKNESS_m;
  const hub_m = Math.min(HUB_RADIUS_m, radius / 2);
  return [1, -1]
    .map((way) => {
      const at = (out_m: number, aft_m: number): Px => project(x + aft_m, centre_m + out_m * way);
      return `${
        moveTo(at(hub_m, -t * 0.7)) +
        cubicTo({ arm1: at(radius * 0.45, -t * 1.9), arm2: at(radius * 0.8, -t * 1.2), to: at(radius, 0) }) +
        cubicTo({ arm1: at(radius * 0.8, t * 0.9), arm2: at(radius * 0.45, t * 1.1), to: at(hub_m, t * 0.7) })
      }Z`;
    })
    .join("");
}

const BLADES = 2;

/** Every blade from ahead, the first upright. Like all who look at it, it stands still. */
export function bladesAhead(propeller: Propeller, project: Projection): string {
  const { y, z, radius, blades = BLADES } = propeller;
  const hub_m = Math.min(HUB_RADIUS_m, radius / 2);
  return Array.from({ length: blades }, (_, i) => {
    const turn_rad = (i * 2 * Math.PI) / blades;
    const at = (out_m: number, aside_m: number): Px =>
      project(
        y + Math.sin(turn_rad) * out_m + Math.cos(turn_rad) * aside_m,
        z + Math.cos(turn_rad) * out_m - Math.sin(turn_rad) * aside_m,
      );
    const w = radius * BLADE_HALF_WIDTH_1;
    return `${
      moveTo(at(hub_m, -w * 0.5)) +
      cubicTo({ arm1: at(radius * 0.45, -w * 1.3), arm2: at(radius * 0.85, -w * 1.1), to: at(radius, 0) }) +
      cubicTo({ arm1: at(radius * 0.85, w * 0.8), arm2: at(radius * 0.45, w * 0.9), to: at(hub_m, w * 0.5) })
    }Z`;
  }).join("");
}

/** The spinner; the same from above and from the side. */
export function spinner(propeller: Propeller, centre_m: number, project: Projection): string {
  const upper = SPINNER.map(([aft_m, out_m]) => project(propeller.x + aft_m, centre_m + out_m));
  const lower = SPINNER.slice(0, -1)
    .toReversed()
    .map(([aft_m, out_m]) => project(propeller.x + aft_m, centre_m - out_m));
  return `${smoothPath([...upper, ...lower])}Z`;
}
