/** Where everything of the wind drawing stands, in pixels: landing direction up, threshold at the wind's point. */
export interface WindLayout {
  readonly width_px: number;
  readonly height_px: number;
  /** Middle of the runway, and where the wind's arrow ends. */
  readonly runwayX_px: number;
  readonly touch_px: number;
  readonly pxPerMps: number;
  /** Which side the limit is drawn on: −1 left. */
  readonly side: -1 | 1;
  readonly limitX_px: number;
  readonly crossX_px: number;
  /** The ends of the arrow, the steady wind's and the gust's; absent for a wind without a direction. */
  readonly steady?: readonly [x_px: number, y_px: number];
  readonly gust?: readonly [x_px: number, y_px: number];
}

export interface WindGiven {
  readonly width_px: number;
  readonly crosswind_mPerS: number;
  readonly limit_mPerS: number;
  readonly side: -1 | 1;
  /** From where, against the runway's heading, clockwise; absent for a wind that may come from anywhere. */
  readonly angle_rad?: number;
  readonly speed_mPerS: number;
  readonly gust_mPerS?: number;
}

export const WIND_HEIGHT_px = 212;
/** Room for the figure of the margin beyond the limit, and for the headwind's on the other side. */
const [BEYOND_px, OTHER_px] = [72, 140];
/** Above the drawing, and above the numbers of the runway. */
const [TOP_px, NUMBERS_px] = [18, 74];

/**
 * The scale is the largest at which both the limit and the whole wind are in the picture, so that what is left between
 * them is drawn true.
 */
export function windLayout(given: WindGiven): WindLayout {
  const { width_px, crosswind_mPerS, limit_mPerS, side, angle_rad, speed_mPerS, gust_mPerS } = given;
  const strongest = Math.max(speed_mPerS, gust_mPerS ?? 0);
  const along = angle_rad === undefined ? 0 : strongest * Math.cos(angle_rad);
  const height_px = WIND_HEIGHT_px;
  const sideways_px = width_px - BEYOND_px - OTHER_px;
  const upright_px = height_px - TOP_px - NUMBERS_px;
  const widest = Math.max(limit_mPerS, crosswind_mPerS, 1);
  const bySide = sideways_px / widest;
  const byLength = Math.abs(along) < 0.5 ? Number.POSITIVE_INFINITY : upright_px / Math.abs(along);
  const byCircle =
    angle_rad === undefined ? upright_px / 2 / Math.max(strongest, 0.5) : Number.POSITIVE_INFINITY;
  const pxPerMps = Math.min(bySide, byLength, byCircle);
  const runwayX_px = side < 0 ? BEYOND_px + widest * bySide : width_px - BEYOND_px - widest * bySide;
  const touch_px =
    angle_rad === undefined
      ? TOP_px + upright_px / 2
      : along >= 0
        ? height_px - NUMBERS_px - (upright_px - along * pxPerMps) / 3
        : TOP_px + (upright_px + along * pxPerMps) / 3;
  const at = (size: number): readonly [number, number] => [
    runwayX_px + size * Math.sin(angle_rad ?? 0) * pxPerMps,
    touch_px - size * Math.cos(angle_rad ?? 0) * pxPerMps,
  ];
  return {
    width_px,
    height_px,
    runwayX_px,
    touch_px,
    pxPerMps,
    side,
    limitX_px: runwayX_px + side * limit_mPerS * pxPerMps,
    crossX_px: runwayX_px + side * crosswind_mPerS * pxPerMps,
    ...(angle_rad === undefined ? {} : { steady: at(speed_mPerS) }),
    ...(angle_rad === undefined || gust_mPerS === undefined ? {} : { gust: at(gust_mPerS) }),
  };
}
