import { type Book, extent } from "@witnessmark/book";
import { CLEAR_OF_BLADES_m, CLEAR_OF_TIPS_m } from "@witnessmark/planner";
import { figure } from "../words/figures.ts";
import type { OnPlane } from "./camera.ts";
import type { DrawingMark, DrawingView } from "./drawing-props.ts";
import { onPlaneOf } from "./view-plane.ts";

/** A measure drawn between two places of a view's plane, metres. */
export interface DrawingDimension {
  readonly from: OnPlane;
  readonly to: OnPlane;
  /** Which way it stands off from what it measures, as a direction on the plane, and in which row: 1 is the nearest. */
  readonly off: OnPlane;
  readonly row: number;
  readonly text: string;
}

/** Where one does not stand: a circle or a box on the ground plan, metres. */
export interface DrawingZone {
  readonly name: string;
  readonly place: readonly [x_m: number, y_m: number];
  /** Half its size aft and right; a circle where they are the same thing. */
  readonly reach: { readonly radius_m: number } | { readonly aft_m: number; readonly right_m: number };
}

/** "10.70 m", or in feet. */
export type LengthWords = (length_m: number) => string;

const DOWN: OnPlane = [0, 1];

/** Span and length in plan, length and height from the side: what a three-view drawing gives. */
export function overallDimensions(
  view: DrawingView,
  geometry: Book["geometry"],
  words: LengthWords,
): readonly DrawingDimension[] {
  const { fore_m, aft_m, left_m, right_m } = extent(geometry);
  // height is of what stands still: a blade stops anywhere
  const { top_m } = extent({ ...geometry, propellers: [] });
  if (view === "plan")
    return [
      { from: [left_m, aft_m], to: [right_m, aft_m], off: DOWN, row: 1, text: words(right_m - left_m) },
      { from: [left_m, fore_m], to: [left_m, aft_m], off: [-1, 0], row: 1, text: words(aft_m - fore_m) },
    ];
  if (view === "front")
    return [
      { from: [-right_m, 0], to: [-left_m, 0], off: DOWN, row: 1, text: words(right_m - left_m) },
      { from: [-left_m, -top_m], to: [-left_m, 0], off: [1, 0], row: 1, text: words(top_m) },
    ];
  return [
    { from: [fore_m, 0], to: [aft_m, 0], off: DOWN, row: 1, text: words(aft_m - fore_m) },
    { from: [aft_m, -top_m], to: [aft_m, 0], off: [1, 0], row: 1, text: words(top_m) },
  ];
}

export const metres: LengthWords = (length_m) => `${figure(length_m, 2)} m`;

/** "1.52 m aft of the datum, 1.07 m left, 0.22 m up" */
export const placeWords = ([x_m, y_m, z_m]: DrawingMark["place"]): string =>
  `${fromDatumWords(x_m, metres)}, ${metres(Math.abs(y_m))} ${y_m < 0 ? "left" : "right"}, ${metres(z_m)} up`;

/** "1.52 m aft of the datum", or ahead of it. */
export const fromDatumWords = (x_m: number, words: LengthWords): string =>
  `${words(Math.abs(x_m))} ${x_m < 0 ? "ahead" : "aft"} of the datum`;

/** A place counted from the datum: how far aft and how high from the side, how far aft and how far from the middle in plan. */
export function placeDimensions(
  view: DrawingView,
  place: DrawingMark["place"],
  geometry: Book["geometry"],
  words: LengthWords,
): readonly DrawingDimension[] {
  const { fore_m, aft_m, right_m, top_m } = extent(geometry);
  const [x_m, y_m, z_m] = place;
  const [u, v] = onPlaneOf(view, place);
  const some = (length_m: number) => Math.abs(length_m) >= LEAST_m;
  if (view === "plan")
    return [
      ...(some(x_m)
        ? [
            {
              from: [right_m, 0],
              to: [right_m, v],
              off: [1, 0],
              row: 1,
              text: fromDatumWords(x_m, words),
            } as const,
          ]
        : []),
      ...(some(y_m)
        ? [{ from: [0, aft_m], to: [u, aft_m], off: DOWN, row: 1, text: words(Math.abs(y_m)) } as const]
        : []),
    ];
  if (view === "front") return [];
  return [
    ...(some(x_m)
      ? [
          {
            from: [0, -top_m],
            to: [u, -top_m],
            off: [0, -1],
            row: 1,
            text: fromDatumWords(x_m, words),
          } as const,
        ]
      : []),
    ...(some(z_m)
      ? [{ from: [fore_m, 0], to: [fore_m, v], off: [-1, 0], row: 1, text: words(z_m) } as const]
      : []),
  ];
}

/** Shorter, a measure is only its arrows. */
const LEAST_m = 0.05;
/** The arcs of the propellers, and what else the book keeps people out of or has them walk round. */
export const zonesOf = ({
  geometry,
  hazards = [],
}: Pick<Book, "geometry" | "hazards">): readonly DrawingZone[] => [
  ...geometry.propellers.map(
    ({ x, y, radius }): DrawingZone => ({
      name: "propeller arc",
      place: [x, y],
      reach: { aft_m: CLEAR_OF_BLADES_m, right_m: radius + CLEAR_OF_TIPS_m },
    }),
  ),
  ...hazards.map(({ name, place, radius }): DrawingZone => ({ name, place, reach: { radius_m: radius } })),
];
