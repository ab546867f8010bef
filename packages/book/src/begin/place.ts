import type { Figures } from "./figures.ts";
import type { Shape } from "./shape-stands.ts";

/** [x, y, z], metres, in the book's axes. */
export type Xyz = readonly [x_m: number, y_m: number, z_m: number];

/** Where a part sits on a drawn aircraft; for one that is there on both sides, its place on the right. */
export type PlaceOn = (shape: Shape, figures: Figures) => Xyz;

/**
 * A place on the wing.
 *
 * @param out_1 share of the way from the centre line to the tip
 * @param chord_1 share of the chord, from the leading edge
 */
export const onWing =
  (out_1: number, chord_1: number): PlaceOn =>
  ({ geometry: { wing } }) =>
    onSurface(wing, out_1, chord_1);

export const onTailplane =
  (out_1: number, chord_1: number): PlaceOn =>
  ({ geometry: { tailplane } }) =>
    onSurface(tailplane, out_1, chord_1);

interface End {
  readonly y: number;
  readonly leadingEdge: number;
  readonly chord: number;
  readonly z: number;
}

function onSurface(
  { root, tip }: { readonly root: End; readonly tip: End },
  out_1: number,
  chord_1: number,
): Xyz {
  const y_m = Math.max(root.y, out_1 * tip.y);
  const share_1 = (y_m - root.y) / (tip.y - root.y);
  const mix = (from: number, to: number) => from + (to - from) * share_1;
  return [
    mix(root.leadingEdge, tip.leadingEdge) + chord_1 * mix(root.chord, tip.chord),
    y_m,
    mix(root.z, tip.z),
  ];
}

/**
 * A place on the fuselage.
 *
 * @param along_1 share of the length, from the nose
 * @param side_1 share of half the cabin's width; 0 on the centre line
 * @param up_1 share of the height there, from the underside
 */
export const onFuselage =
  (along_1: number, side_1: number, up_1: number): PlaceOn =>
  ({ halfWidth_m, topAt_m, bottomAt_m }, { length_m }) => {
    const x_m = along_1 * length_m;
    const [low_m, high_m] = [bottomAt_m(x_m), topAt_m(x_m)];
    return [x_m, side_1 * halfWidth_m, low_m + up_1 * (high_m - low_m)];
  };

/** How much further forward one sits in a glider, as a share of its length. From memory of such drawings. */
const GLIDER_FORWARD_1 = 0.19;

/** A place in the cabin, given as on an aircraft with its engine in the nose. */
export const inCabin =
  (along_1: number, side_1: number, up_1: number): PlaceOn =>
  (shape, figures) =>
    onFuselage(
      figures.engine === "none" ? along_1 - GLIDER_FORWARD_1 : along_1,
      side_1,
      up_1,
    )(shape, figures);

/** A place by the main wheel: metres aft and inboard of it, and above the ground. */
export const byMainWheel =
  (aft_m: number, inboard_m: number, up_m: number): PlaceOn =>
  ({ mainWheel }) => [mainWheel.x_m + aft_m, mainWheel.y_m - inboard_m, up_m];

/** A place by the engine on the right, or the only one: metres aft of its propeller, to the right and up. */
export const byEngine =
  (aft_m: number, right_m: number, up_m: number): PlaceOn =>
  ({ engine: { x_m, y_m, z_m } = { x_m: 0, y_m: 0, z_m: 1 } }) => [x_m + aft_m, y_m + right_m, z_m + up_m];

/** A place by the wheel at the nose or the tail. */
export const bySmallWheel =
  (aft_m: number, up_m: number): PlaceOn =>
  ({ smallWheel }) => [(smallWheel?.x_m ?? 0) + aft_m, 0, up_m];
