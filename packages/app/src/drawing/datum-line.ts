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
 * Where the datum runs across the aircraft: from above from tip to tip, from the side from the ground to above the
 * highest part. From ahead there is none.
 */
export function datumEnds(
  view: DrawingView,
  geometry: Book["geometry"],
  camera: Camera,
): readonly [Px, Px] | null {
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
  return [fromDatum(camera, ends[0]), fromDatum(camera, ends[1])];
}

/** The line of the datum with its name, at the end that is free. */
export function datumLine(
  [from, to]: readonly [Px, Px],
  measures: readonly PlacedDimension[],
  marks: readonly Square[],
): DatumLine {
  const lines = measures.flatMap(measurePlaces).map((place) => ({ ...place, half_px: LINE_px }));
  const taken = [...marks, ...measures.flatMap(textSquares), ...lines];
  const covers = ([x, y]: Px): number =>
    taken.filter(
      (each) =>
        Math.abs(each.x - x) < NAME_px.wide / 2 + each.half_px &&
        Math.abs(each.y - y) < NAME_px.high / 2 + each.half_px,
    ).length;
  const [[x, y] = to] = [...besides(to, from), ...besides(from, to)].toSorted(
    (a, b) => covers(a) - covers(b),
  );
  const at: Place = { x, y };
  const squares = [-1, 0, 1].map((side) => ({
    x: at.x + (side * (NAME_px.wide - NAME_px.high)) / 2,
    y: at.y,
    half_px: NAME_px.high / 2,
  }));
  return { from, to, at, squares };
}

/** Where the name may stand at an end: past an upright line, over or under a level one, so that it needs no margin. */
function besides([x, y]: Px, [otherX, otherY]: Px): readonly Px[] {
  const [dx, dy] = [Math.sign(x - otherX), Math.sign(y - otherY)];
  if (Math.abs(y - otherY) >= Math.abs(x - otherX)) return [[x, y + dy * NAME_px.past]];
  return [-1, 1].map((side): Px => [x - (dx * NAME_px.wide) / 2, y + side * NAME_px.past]);
}
