import type { Ink } from "./ink.ts";

/** A square of a picture's ink, smoothed, with the curvature of its hills. */
export interface SmoothedWindow {
  /** Half its side, without the pixels that only the derivatives need. */
  readonly reach_px: number;
  /** Smoothed ink, slope and curvature at a whole pixel of the picture inside the window. */
  at(x_px: number, y_px: number): Relief;
}

/** Ink as a landscape: slopes for each pixel, curvatures for each pixel squared. */
export interface Relief {
  readonly slopeX: number;
  readonly slopeY: number;
  readonly bendXX: number;
  readonly bendXY: number;
  readonly bendYY: number;
}

/** Width of the smoothing: a line up to some seven pixels wide has its top in its middle then. */
export const SIGMA_px = 2;
const KERNEL_REACH_px = 3 * SIGMA_px;
const KERNEL = (() => {
  const weights = Array.from({ length: 2 * KERNEL_REACH_px + 1 }, (_, i) =>
    Math.exp(-((i - KERNEL_REACH_px) ** 2) / (2 * SIGMA_px ** 2)),
  );
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight) => weight / sum);
})();

/** The ink around a pixel, smoothed with a Gaussian; beyond the edge of the picture lies paper. */
export function smoothedWindow(
  ink: Ink,
  middleX_px: number,
  middleY_px: number,
  reach_px: number,
): SmoothedWindow {
  const side = 2 * (reach_px + 1) + 1; // one more all round, for the derivatives
  const left = middleX_px - reach_px - 1;
  const top = middleY_px - reach_px - 1;
  const tall = side + 2 * KERNEL_REACH_px;
  const across = new Float64Array(side * tall);
  for (let row = 0; row < tall; row += 1) {
    const y = top + row - KERNEL_REACH_px;
    if (y < 0 || y >= ink.height) continue;
    for (let column = 0; column < side; column += 1) {
      let sum = 0;
      for (let k = 0; k < KERNEL.length; k += 1) {
        const x = left + column + k - KERNEL_REACH_px;
        if (x >= 0 && x < ink.width) sum += (KERNEL[k] ?? 0) * (ink.data[y * ink.width + x] ?? 0);
      }
      across[row * side + column] = sum;
    }
  }
  const smooth = new Float64Array(side * side);
  for (let row = 0; row < side; row += 1) {
    for (let column = 0; column < side; column += 1) {
      let sum = 0;
      for (let k = 0; k < KERNEL.length; k += 1) {
        sum += (KERNEL[k] ?? 0) * (across[(row + k) * side + column] ?? 0);
      }
      smooth[row * side + column] = sum;
    }
  }
  const value = (column: number, row: number): number => smooth[row * side + column] ?? 0;
  return {
    reach_px,
    at(x_px, y_px) {
      const column = x_px - left;
      const row = y_px - top;
      const here = value(column, row);
      return {
        slopeX: (value(column + 1, row) - value(column - 1, row)) / 2,
        slopeY: (value(column, row + 1) - value(column, row - 1)) / 2,
        bendXX: value(column + 1, row) - 2 * here + value(column - 1, row),
        bendYY: value(column, row + 1) - 2 * here + value(column, row - 1),
        bendXY:
          (value(column + 1, row + 1) -
            value(column - 1, row + 1) -
            value(column + 1, row - 1) +
            value(column - 1, row - 1)) /
          4,
      };
    },
  };
}
