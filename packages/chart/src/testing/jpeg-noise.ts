import type { GreyImage } from "../picture/ink.ts";

/**
 * The luminance table that JPEG encoders begin from.
 *
 * @source ITU-T T.81 (09/1992), annex K, table K.1
 */
const LUMINANCE = [
  16, 11, 10, 16, 24, 40, 51, 61, 12, 12, 14, 19, 26, 58, 60, 55, 14, 13, 16, 24, 40, 57, 69, 56, 14, 17, 22,
  29, 51, 87, 80, 62, 18, 22, 37, 56, 68, 109, 103, 77, 24, 35, 55, 64, 81, 104, 113, 92, 49, 64, 78, 87, 103,
  121, 120, 101, 72, 92, 95, 98, 112, 100, 103, 99,
] as const;

const SIDE = 8;
/** Row k, column n: the k-th cosine at the n-th place. @source ITU-T T.81, annex A.3.3 */
const COSINES = Float64Array.from({ length: SIDE * SIDE }, (_, i) => {
  const [k, n] = [Math.floor(i / SIDE), i % SIDE];
  return (k === 0 ? Math.SQRT1_2 : 1) * 0.5 * Math.cos(((2 * n + 1) * k * Math.PI) / 16);
});

/**
 * What a JPEG of this quality leaves of a grey picture: each block of eight by eight is rounded in its cosines.
 *
 * @param quality 1 to 100, as encoders commonly scale the table: 50 is the table itself
 */
export function jpegNoise({ width, height, data }: GreyImage, quality: number): GreyImage {
  const scale = quality < 50 ? 50 / quality : 2 - quality / 50;
  const steps = LUMINANCE.map((step) => Math.max(1, Math.round(step * scale)));
  const out = new Uint8ClampedArray(data);
  const block = new Float64Array(SIDE * SIDE);
  for (let top = 0; top + SIDE <= height; top += SIDE) {
    for (let left = 0; left + SIDE <= width; left += SIDE) {
      for (let i = 0; i < block.length; i += 1) {
        block[i] = (data[(top + (i >> 3)) * width + left + (i & 7)] ?? 0) - 128;
      }
      const cosines = turned(turned(block, false), false);
      for (const [i, step] of steps.entries()) cosines[i] = Math.round((cosines[i] ?? 0) / step) * step;
      const back = turned(turned(cosines, true), true);
      for (let i = 0; i < block.length; i += 1) {
        out[(top + (i >> 3)) * width + left + (i & 7)] = (back[i] ?? 0) + 128;
      }
    }
  }
  return { width, height, data: out };
}

/** One pass along the rows, laid down as columns; two passes are the whole transform. */
function turned(block: Float64Array, isBack: boolean): Float64Array {
  const out = new Float64Array(SIDE * SIDE);
  for (let row = 0; row < SIDE; row += 1) {
    for (let k = 0; k < SIDE; k += 1) {
      let sum = 0;
      for (let n = 0; n < SIDE; n += 1) {
        const at = isBack ? n * SIDE + k : k * SIDE + n;
        sum += (COSINES[at] ?? 0) * (block[row * SIDE + n] ?? 0);
      }
      out[k * SIDE + row] = sum;
    }
  }
  return out;
}
