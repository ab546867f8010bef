import type { Geometry } from "../schema/geometry.ts";
import { cubicTo, lineTo, moveTo, type Px, polygon, polyline, smoothPath } from "./path.ts";
import type { Projection } from "./projection.ts";

/** What a wing half and a tailplane half have in common. */
export type LiftingSurface = Pick<Geometry["wing"], "root" | "tip" | "tipRound">;

/** The right half lies at +1, the left at −1. */
export type Half = 1 | -1;
export const HALVES: readonly Half[] = [1, -1];

const between = (a: number, b: number, share_1: number): number => a + (b - a) * share_1;

/** A half narrower than this has no taper to speak of; dividing by its span would run off to infinity. */
const LEAST_SPAN_m = 0.001;

/** x of a place on the surface: at a distance from the centre line, at a fraction of the chord there. */
export function chordwise_m(surface: LiftingSurface, out_m: number, chordFraction_1: number): number {
  const { root, tip } = surface;
  const span_m = tip.y - root.y;
  const share_1 = span_m < LEAST_SPAN_m ? 0 : (Math.abs(out_m) - root.y) / span_m;
  return (
    between(root.leadingEdge, tip.leadingEdge, share_1) +
    between(root.chord, tip.chord, share_1) * chordFraction_1
  );
}

/** One half seen from above; open at the root, which lies inside the fuselage. */
export function planHalf(surface: LiftingSurface, half: Half, project: Projection): string {
  const { root, tip, tipRound } = surface;
  const at = (x_m: number, out_m: number): Px => project(x_m, out_m * half);
  const leading = tip.leadingEdge;
  const trailing = leading + tip.chord;
  const past = tip.y + tipRound;
  return (
    moveTo(at(root.leadingEdge, root.y)) +
    lineTo(at(leading, tip.y)) +
    cubicTo({
      arm1: at(leading + 0.04 * tip.chord, past),
      arm2: at(leading + 0.3 * tip.chord, past),
      to: at(leading + 0.62 * tip.chord, past),
    }) +
    cubicTo({
      arm1: at(leading + 0.85 * tip.chord, past),
      arm2: at(trailing, tip.y + tipRound / 2),
      to: at(trailing, tip.y),
    }) +
    lineTo(at(root.leadingEdge + root.chord, root.y))
  );
}

export interface Patch {
  readonly from_m: number;
  readonly to_m: number;
  readonly fore_1: number;
  readonly aft_1: number;
}

/** A patch of one half, between two distances from the centre line and two fractions of the chord. */
export function planPatch(surface: LiftingSurface, half: Half, patch: Patch, project: Projection): string {
  const corner = (out_m: number, fraction_1: number): Px =>
    project(chordwise_m(surface, out_m, fraction_1), out_m * half);
  const { from_m, to_m, fore_1, aft_1 } = patch;
  return polygon([corner(from_m, fore_1), corner(to_m, fore_1), corner(to_m, aft_1), corner(from_m, aft_1)]);
}

/** A line along one half at a fraction of the chord: a hinge, the back of a boot. */
export const planSpanwise = (
  surface: LiftingSurface,
  half: Half,
  span: readonly [from_m: number, to_m: number],
  fraction_1: number,
  project: Projection,
): string => polyline(span.map((out_m) => project(chordwise_m(surface, out_m, fraction_1), out_m * half)));

/** A line across one half from one fraction of the chord to another: the end of a flap, a joint in a boot. */
export const planChordwise = (
  surface: LiftingSurface,
  half: Half,
  out_m: number,
  fractions_1: readonly [number, number],
  project: Projection,
): string =>
  polyline(fractions_1.map((fraction_1) => project(chordwise_m(surface, out_m, fraction_1), out_m * half)));

/** Places round an aerofoil: [fraction of the chord, height as a share of the thickness]. */
const AEROFOIL: readonly (readonly [number, number])[] = [
  [1, 0],
  [0.6, 0.62],
  [0.28, 0.85],
  [0.05, 0.42],
  [0, 0],
  [0.05, -0.3],
  [0.3, -0.4],
  [1, 0],
];

/** The section of a surface seen from the side. */
export function sideSection(end: LiftingSurface["root"], thickness_1: number, project: Projection): string {
  const around = AEROFOIL.map(([along_1, up_1]) =>
    project(end.leadingEdge + end.chord * along_1, end.z + end.chord * thickness_1 * up_1),
  );
  return `${smoothPath(around)}Z`;
}
