import type { Point } from "../schema/book-source.ts";
import type { Geometry } from "../schema/geometry.ts";
import { movedAlong } from "./along.ts";
import { type Figures, mustBeAnAircraft } from "./figures.ts";
import { placedParts } from "./placed-parts.ts";
import { shapeOf } from "./shape-of.ts";

/**
 * What a book begun from these figures would show: the shape, and the points at their places.
 *
 * @throws {InputError} figures that no aircraft has
 */
export function drawnFrom(figures: Figures): {
  readonly geometry: Geometry;
  readonly points: readonly Pick<Point, "id" | "place">[];
} {
  mustBeAnAircraft(figures);
  const geometry = shapeOf(figures);
  return movedAlong({ geometry, points: placedParts(geometry, figures) }, -figures.datumAft_m);
}
