import { normalBelow_1 } from "./normal.ts";

const DENSITY_AT_ZERO = 1 / Math.sqrt(2 * Math.PI);
const MOST_STEPS = 1000; // a tail of 1e-300 takes about 700, one of 1e-9 about 30

/**
 * The standard normal z below which a share lies. Newton's method on the tail probability, from zero, which cannot
 * overshoot: the tail is convex beyond zero.
 *
 * @param share_1 above 0 and below 1
 */
export function normalQuantile(share_1: number): number {
  if (share_1 > 0.5) return -normalQuantile(1 - share_1);
  let z = 0;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const excess = normalBelow_1(z) - share_1;
    const next = z - excess / (DENSITY_AT_ZERO * Math.exp((-z * z) / 2));
    if (Math.abs(next - z) <= 1e-15 * Math.max(1, Math.abs(next))) return next;
    z = next;
  }
  return z;
}
