import type { Geometry } from "../schema/geometry.ts";
import { cubicTo, lineTo, moveTo, type Px, polygon, polyline, smoothPath } from "./path.ts";
import type { Projection } from "./projection.ts";

/** What a wing half and a tailplane half have in common. */
export type LiftingSurface = Pick<Geometry["wing"], "root" | "kinks" | "tip" | "tipRound">;

/** The right half lies at +1, the left at −1. */
export type Half = 1 | -1;
export const HALVES: readonly Half[] = [1, -1];

const between = (a: number, b: number, share_1: number): number => a + (b - a) * share_1;

/** A half narrower than this has no taper to speak of; dividing by its span would run off to infinity. */
const LEAST_SPAN_m = 0.001;

/** x of a place on the surface: at a distance from the centre line, at a fraction of the chord there. */
export function chordwise_m(surface: LiftingSurface, out_m: number, chordFraction_1: number): number {
  const [inner, outer, share_1] = panelAt(surface, Math.abs(out_m));
  return (
    between(inner.leadingEdge, outer.leadingEdge, share_1) +
    between(inner.chord, outer.chord, share_1) * chordFraction_1
  );
}

/** z of the chord at a distance from the centre line. */
export function chordHeight_m(surface: LiftingSurface, out_m: number): number {
  const [inner, outer, share_1] = panelAt(surface, Math.abs(out_m));
  return between(inner.z, outer.z, share_1);
}

type End = LiftingSurface["root"];

/** Root, kinks and tip, from the inside out. */
export const endsOf = ({ root, kinks = [], tip }: LiftingSurface): readonly [End, ...End[]] => [
  root,
  ...kinks,
  tip,
];

/** The two ends between which a distance from the centre line lies, and where; the outer panels go on beyond root and tip. */
function panelAt(surface: LiftingSurface, out_m: number): readonly [End, End, number] {
  const ends = endsOf(surface);
  let [inner, outer] = [surface.root, surface.tip];
  for (const [i, end] of ends.entries()) {
    const next = ends[i + 1];
    if (next === undefined) break;
    [inner, outer] = [end, next];
    if (out_m <= next.y) break;
  }
  const span_m = outer.y - inner.y;
  return [inner, outer, span_m < LEAST_SPAN_m ? 0 : (out_m - inner.y) / span_m];
}

/**
 * One half seen from above; open at the root, which lies inside the fuselage.
 *
 * @param joined whether it goes on to the centre line, where it meets the other half: a wing over the fuselage
 */
export function planHalf(surface: LiftingSurface, half: Half, project: Projection, joined = false): string {
  const { root, kinks = [], tip, tipRound } = surface;
  const inner = joined ? 0 : root.y;
  const at = (x_m: number, out_m: number): Px => project(x_m, out_m * half);
  const leading = tip.leadingEdge;
  const trailing = leading + tip.chord;
  const past = tip.y + tipRound;
  return (
    moveTo(at(root.leadingEdge, inner)) +
    (joined ? lineTo(at(root.leadingEdge, root.y)) : "") +
    kinks.map(({ leadingEdge, y }) => lineTo(at(leadingEdge, y))).join("") +
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
    kinks
      .toReversed()
      .map(({ leadingEdge, chord, y }) => lineTo(at(leadingEdge + chord, y)))
      .join("") +
    lineTo(at(root.leadingEdge + root.chord, root.y)) +
    (joined ? lineTo(at(root.leadingEdge + root.chord, inner)) : "")
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
  const { from_m, to_m, fore_1, aft_1 } = patch;
  const along = (fraction_1: number): readonly Px[] =>
    stationsBetween(surface, [from_m, to_m]).map((out_m) =>
      project(chordwise_m(surface, out_m, fraction_1), out_m * half),
    );
  return polygon([...along(fore_1), ...along(aft_1).toReversed()]);
}

/** A line along one half at a fraction of the chord: a hinge, the back of a boot. */
export const planSpanwise = (
  surface: LiftingSurface,
  half: Half,
  span: readonly [from_m: number, to_m: number],
  fraction_1: number,
  project: Projection,
): string =>
  polyline(
    stationsBetween(surface, span).map((out_m) =>
      project(chordwise_m(surface, out_m, fraction_1), out_m * half),
    ),
  );

/** Both ends of a span and every kink between them. */
const stationsBetween = (
  { kinks = [] }: LiftingSurface,
  [from_m, to_m]: readonly [number, number],
): readonly number[] => [from_m, ...kinks.map(({ y }) => y).filter((y) => y > from_m && y < to_m), to_m];

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
