/** A place on a picture: pixels from its upper left corner, to the right and down. */
export interface PicturePoint {
  readonly x_px: number;
  readonly y_px: number;
}

/** How far apart two places lie, px. */
export const distance_px = (one: PicturePoint, other: PicturePoint): number =>
  Math.hypot(one.x_px - other.x_px, one.y_px - other.y_px);
