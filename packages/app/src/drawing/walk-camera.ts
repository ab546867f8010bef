import { type Book, extent } from "@witnessmark/book";
import { type Box, boxOf, type Camera } from "./camera.ts";
import type { WalkScene } from "./walk-scene.ts";

/** Near enough that a stance fills the picture; the widest of these at which it still fits is taken. */
const NEAR_SCALES = [44, 38, 32, 26, 21] as const;

/** So much of a phone's drawing is always clear of tools, however high the card under it stands. */
const CLEAR_HIGH_px = 148;

/**
 * A phone's view: the stance in hand and what is looked at from it, about 0,0. It does not depend on how high the
 * drawing is: the page lays it out about its middle, so that a taller card moves nothing in it.
 *
 * @param width_px of the drawing
 */
export function nearCamera(scene: WalkScene, width_px: number): Camera {
  const near = scene.points.filter((point) => point.near).map((point) => [point.x_m, point.y_m] as const);
  const stance = scene.here?.stance.place;
  const places = [...near, ...(stance === undefined ? [] : [stance])];
  const box = places.length === 0 ? { fore: 0, aft: 6, left: -3, right: 3 } : boxOf(places);
  const fits = (scale: number) =>
    (box.aft - box.fore) * scale + 56 <= CLEAR_HIGH_px &&
    (box.right - box.left) * scale + 60 <= width_px * 0.72;
  const pxPerMetre = NEAR_SCALES.find(fits) ?? NEAR_SCALES[NEAR_SCALES.length - 1] ?? 21;
  return {
    pxPerMetre,
    originX_px: Math.round(-((box.left + box.right) / 2) * pxPerMetre),
    originY_px: Math.round(-((box.fore + box.aft) / 2) * pxPerMetre),
  };
}

/** What has to be in the picture when the whole walk is drawn. */
export function walkBox(book: Pick<Book, "geometry">, scene: Pick<WalkScene, "stops">): Box {
  const body = extent(book.geometry);
  return boxOf([
    [body.fore_m, body.left_m],
    [body.aft_m, body.right_m],
    ...scene.stops.filter(({ stance }) => stance.posture !== "inside").map(({ stance }) => stance.place),
  ]);
}
