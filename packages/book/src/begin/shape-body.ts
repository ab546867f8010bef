import { sectionAt } from "../drawing/fuselage-body.ts";
import { SPINNER_REACH_m } from "../drawing/propeller.ts";
import type { Geometry } from "../schema/geometry.ts";
import type { Figures } from "./figures.ts";
import { cm } from "./round.ts";

/** Lengths below are those of an aircraft of this length, and grow with it. From memory of such drawings. */
const DRAWN_AT_m = 7.5;
/** How a tail-wheel aircraft sits, as rise for each metre forward. About ten degrees; from memory. */
const TAIL_DOWN_1 = 0.17;
const BLADE_CLEARANCE_m = 0.28;
/** Where the main wheels stand, as a share of the length. From memory of such drawings. */
const MAIN_WHEEL_1 = { "nose-wheel": 0.47, "tail-wheel": 0.22, "mono-wheel": 0.38 } as const;
/** A glider is no wider than its pilot, and stands low. From memory. */
const GLIDER_HALF_WIDTH_m = 0.32;
const GLIDER_AXIS_m = 0.72;

type StationShares = readonly [along_1: number, width_1: number, up_m: number, down_m: number];

/** From memory of such drawings. */
const GLIDER_STATIONS: readonly StationShares[] = [
  [0, 0.1, 0.02, -0.12],
  [0.05, 0.55, 0.2, -0.3],
  [0.16, 0.95, 0.42, -0.38],
  [0.3, 1, 0.46, -0.4],
  [0.42, 0.82, 0.36, -0.32],
  [0.58, 0.36, 0.2, -0.12],
  [0.9, 0.2, 0.14, -0.02],
  [0.99, 0.1, 0.12, 0.02],
];
const NOSE_OF_SINGLE: StationShares = [0.035, 0.35, 0.2, -0.2];
const NOSE_OF_TWIN: StationShares = [0, 0.1, 0.05, -0.2];
const CABIN_STATIONS: readonly StationShares[] = [
  [0.12, 0.78, 0.42, -0.46],
  [0.26, 0.95, 0.52, -0.56],
  [0.36, 1, 0.96, -0.58],
  [0.52, 1, 0.94, -0.54],
  [0.74, 0.42, 0.48, -0.16],
  [0.92, 0.14, 0.38, 0.06],
  [0.985, 0.06, 0.34, 0.14],
];

/** The fuselage, and the heights that all else is put at. */
export interface Body {
  readonly fuselage: Geometry["fuselage"];
  readonly halfWidth_m: number;
  /** Of the propeller, whether there is one or not. */
  readonly radius_m: number;
  /** The middle of the fuselage above the ground, where the main wheels are. */
  readonly base_m: number;
  readonly main_x_m: number;
  /** How much larger it is than the aircraft of the drawing. */
  readonly grow: number;
  /** How much higher a place is than it would be with the fuselage level. */
  readonly tilt_m: (x_m: number) => number;
  readonly topAt_m: (x_m: number) => number;
  readonly bottomAt_m: (x_m: number) => number;
}

export function bodyOf({ length_m, tail, gear, engine, engines, seats }: Figures): Body {
  const grow = length_m / DRAWN_AT_m;
  const isTwin = engines === 2;
  const isGlider = engine === "none";
  const usualWidth_m = seats <= 2 && length_m < 8 ? 0.5 : 0.075 * length_m;
  const halfWidth_m = isGlider ? GLIDER_HALF_WIDTH_m : cm(Math.min(0.85, Math.max(0.38, usualWidth_m)));
  const radius_m = cm(Math.min(1.3, Math.max(0.75, 0.12 * length_m * (isTwin ? 0.85 : 1))));
  const axis_m = isGlider ? GLIDER_AXIS_m : radius_m + BLADE_CLEARANCE_m;
  const main_x_m = MAIN_WHEEL_1[gear] * length_m;
  const tilt_m = (x_m: number): number => (gear === "tail-wheel" ? (main_x_m - x_m) * TAIL_DOWN_1 : 0);
  // with its tail down an aircraft must stand higher, or the fuselage aft would lie on the ground
  const base_m = gear === "tail-wheel" ? axis_m + 0.1 : axis_m;
  const shares = isGlider ? GLIDER_STATIONS : [isTwin ? NOSE_OF_TWIN : NOSE_OF_SINGLE, ...CABIN_STATIONS];
  const fuselage = shares.map(([along_1, width_1, up_m, down_m], index): Geometry["fuselage"][number] => {
    // without a fin behind it the fuselage itself reaches to the end
    const isEnd = tail === "v" && index === shares.length - 1;
    const isBehindBlades = engines === 1 && index === 0;
    const x_m = isBehindBlades ? SPINNER_REACH_m + 0.03 : (isEnd ? 1 : along_1) * length_m;
    const z_m = base_m + tilt_m(x_m);
    const bottom_m = cm(Math.max(0.2, z_m + down_m * grow));
    return [cm(x_m), cm(halfWidth_m * width_1), cm(Math.max(bottom_m + 0.06, z_m + up_m * grow)), bottom_m];
  });
  return {
    fuselage,
    halfWidth_m,
    radius_m,
    base_m,
    main_x_m,
    grow,
    tilt_m,
    topAt_m: (x_m) => sectionAt(fuselage, x_m)[2],
    bottomAt_m: (x_m) => sectionAt(fuselage, x_m)[3],
  };
}
