import type { Px } from "./path.ts";

/**
 * From metres of the book to pixels of the drawing. In plan it takes x (aft) and y (right); in elevation x and z (up).
 */
export interface Projection {
  (along_m: number, across_m: number): Px;
  readonly pxPerMetre: number;
}

const withScale = (project: (along_m: number, across_m: number) => Px, pxPerMetre: number): Projection =>
  Object.assign(project, { pxPerMetre });

/** Plan, nose up, right wing to the right: for walking. The origin is where the datum falls. */
export const noseUp = (pxPerMetre: number, originX_px: number, originY_px: number): Projection =>
  withScale((x_m, y_m) => [originX_px + y_m * pxPerMetre, originY_px + x_m * pxPerMetre], pxPerMetre);

/** Plan, nose to the left, right wing up: stands over the side view. */
export const noseLeft = (pxPerMetre: number, originX_px: number, originY_px: number): Projection =>
  withScale((x_m, y_m) => [originX_px + x_m * pxPerMetre, originY_px - y_m * pxPerMetre], pxPerMetre);

/** Seen from ahead: the right wing to the left, z up; takes y and z. The origin is the centre line on the ground. */
export const frontElevation = (pxPerMetre: number, originX_px: number, originY_px: number): Projection =>
  withScale((y_m, z_m) => [originX_px - y_m * pxPerMetre, originY_px - z_m * pxPerMetre], pxPerMetre);

/** Side view, nose to the left, z up; the origin is the datum on the ground. */
export const elevation = (pxPerMetre: number, originX_px: number, originY_px: number): Projection =>
  withScale((x_m, z_m) => [originX_px + x_m * pxPerMetre, originY_px - z_m * pxPerMetre], pxPerMetre);
