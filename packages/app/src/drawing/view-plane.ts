import { type Book, extent } from "@witnessmark/book";
import type { Box, OnPlane } from "./camera.ts";
import { cm } from "./centimetre.ts";
import type { DrawingMark, DrawingView, PlaceOnView } from "./drawing-props.ts";

/** Where a place of the aircraft lies on the plane of a view, metres across and down. */
export function onPlaneOf(view: DrawingView, [x_m, y_m, z_m]: DrawingMark["place"]): OnPlane {
  switch (view) {
    case "plan":
      return [y_m, x_m];
    case "side":
      return [x_m, -z_m];
    case "front":
      return [-y_m, -z_m];
    default:
      return view satisfies never;
  }
}

/** The two metres that a place on the plane gives, to the centimetre. */
export function placeOf(view: DrawingView, [across_m, down_m]: OnPlane): PlaceOnView {
  switch (view) {
    case "plan":
      return { x_m: cm(down_m), y_m: cm(across_m) };
    case "side":
      return { x_m: cm(across_m), z_m: cm(-down_m) };
    case "front":
      return { y_m: cm(-across_m), z_m: cm(-down_m) };
    default:
      return view satisfies never;
  }
}

/** A little ground under the wheels. */
const GROUND_m = 0.25;

/** What has to be in the picture: the aircraft, and in plan where one stands. */
export function viewBox(
  view: DrawingView,
  geometry: Book["geometry"],
  stances: readonly (readonly [x_m: number, y_m: number])[] = [],
): Box {
  const { fore_m, aft_m, left_m, right_m, top_m } = extent(geometry);
  switch (view) {
    case "plan":
      return {
        fore: Math.min(fore_m, ...stances.map(([x]) => x)),
        aft: Math.max(aft_m, ...stances.map(([x]) => x)),
        left: Math.min(left_m, ...stances.map(([, y]) => y)),
        right: Math.max(right_m, ...stances.map(([, y]) => y)),
      };
    case "side":
      return { fore: -top_m, aft: GROUND_m, left: fore_m, right: aft_m };
    case "front":
      return { fore: -top_m, aft: GROUND_m, left: -right_m, right: -left_m };
    default:
      return view satisfies never;
  }
}

/** The same with the datum in the picture, wherever it lies. */
export function withDatum(view: DrawingView, box: Box): Box {
  if (view === "plan") return { ...box, fore: Math.min(box.fore, 0), aft: Math.max(box.aft, 0) };
  return view === "side" ? { ...box, left: Math.min(box.left, 0), right: Math.max(box.right, 0) } : box;
}
