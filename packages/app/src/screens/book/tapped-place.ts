import { ALLOWED_OUTSIDE_m, type Book, distanceOutside_m, extent, outlineOf } from "@witnessmark/book";
import type { PlaceOnView } from "../../drawing/aircraft-drawing.tsx";
import type { DraftPoint } from "./walk-points.ts";

/**
 * Where on the aircraft a tap on one of its views is meant. From the side one sees not how far out: there it is as far
 * out as the nearest point, or in the middle.
 *
 * @returns nothing for a tap outside the aircraft
 */
export function tappedPlace(
  { x_m, y_m, z_m }: PlaceOnView,
  geometry: Book["geometry"],
  points: readonly DraftPoint[],
): { readonly x_m: number; readonly y_m: number; readonly z_m?: number } | null {
  if (x_m === undefined) return null;
  const parts = outlineOf(geometry);
  const isOn = (out_m: number) =>
    Math.min(...parts.map((part) => distanceOutside_m(part, [x_m, out_m]))) <= ALLOWED_OUTSIDE_m;
  if (y_m !== undefined) return isOn(y_m) ? { x_m, y_m } : null;
  if (z_m === undefined || z_m < 0 || z_m > extent(geometry).top_m + ALLOWED_OUTSIDE_m) return null;
  const away = ({ place }: DraftPoint) => Math.hypot(place[0] - x_m, place[2] - z_m);
  const [nearest] = points.toSorted((a, b) => away(a) - away(b));
  const found = [nearest?.place[1] ?? 0, 0].find(isOn);
  return found === undefined ? null : { x_m, y_m: found, z_m };
}
