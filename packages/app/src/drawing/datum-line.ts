import { type Book, extent } from "@witnessmark/book";
import { type Camera, fromDatum, type OnPlane, type Px } from "./camera.ts";
import { measurePlaces, type PlacedDimension, textSquares } from "./dimension-places.ts";
import type { DrawingView } from "./drawing-props.ts";
import type { Place, Square } from "./label-places.ts";

/** The line from which the book counts aft, and where its name stands; pixels from the datum. */
export interface DatumLine {
  readonly from: Px;
  readonly to: Px;
  readonly at: Place;
  /** What the name covers. */
  readonly squares: readonly Square[];
}

/** So far past the aircraft, metres, and from there to the name, pixels. */
const PAST_m = 0.2;
const LINE_px = 2;
const NAME_px = { past: 13, wide: 46, high: 15 } as const;

/**
 * The datum across the aircraft, its name at the end that is free: from above from tip to tip, from the side from the
 * ground to above the highest part. From ahead there is none.
 */
export function datumLine(
  view: DrawingView,
  geometry: Book["geometry"],
  camera: Camera,
  measures: readonly PlacedDimension[],
  marks: readonly Square[],
): DatumLine | null {
  if (view === "front") return null;
  const { left_m, right_m, top_m } = extent(geometry);
  const ends: readonly [OnPlane, OnPlane] =
    view === "plan"
      ? [
          [left_m - PAST_m, 0],
          [right_m + PAST_m, 0],
        ]
      : [
          [0, PAST_m],
          [0, -top_m - PAST_m],
        ];
  const [from, to] = [fromDatum(camera, ends[0]), fromDatum(camera, ends[1])];
  const lines = measures.flatMap(measurePlaces).map((place) => ({ ...place, half_px: LINE_px }));
  const taken = [...marks, ...measures.flatMap(textSquares), ...lines];
  const beyond = (end: Px, other: Px): Place => {
    const [dx, dy] = [end[0] - other[0], end[1] - other[1]];
    const length = Math.hypot(dx, dy) || 1;
    // the name is set level: along a level line half of it lies between its middle and the end
    const by_px = NAME_px.past + (Math.abs(dx) / length) * (NAME_px.wide / 2 - NAME_px.past / 2);
    return { x: end[0] + (dx / length) * by_px, y: end[1] + (dy / length) * by_px };
  };
  const choices = [beyond(to, from), beyond(from, to)].map((at) => ({
    at,
    on: taken.filter(
      ({ x, y, half_px }) =>
        Math.abs(x - at.x) < NAME_px.wide / 2 + half_px && Math.abs(y - at.y) < NAME_px.high / 2 + half_px,
    ).length,
  }));
  const [best] = choices.toSorted((a, b) => a.on - b.on);
  if (best === undefined) return null;
  const { at } = best;
  const squares = [-1, 0, 1].map((side) => ({
    x: at.x + (side * (NAME_px.wide - NAME_px.high)) / 2,
    y: at.y,
    half_px: NAME_px.high / 2,
  }));
  return { from, to, at, squares };
}
