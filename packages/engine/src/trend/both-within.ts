import { normalBelow_1 } from "../conformity/normal.ts";

const STEPS = 32; // even; Simpson's rule gives ten digits of so smooth a curve

/**
 * The probability that two standard normal values are both within ±width.
 *
 * @param width 0 or more
 * @param correlation_1 −1 to 1
 * @source Plackett's identity, 1954, in the angle whose sine is the correlation
 */
export function bothWithin_1(width: number, correlation_1: number): number {
  const one = 1 - 2 * normalBelow_1(-width);
  const end = Math.asin(Math.abs(correlation_1)); // the same for either sign
  const at = (angle: number): number => {
    const sine = Math.sin(angle);
    const near = Math.exp(-(width * width) / (1 + sine));
    return near - (sine < 1 ? Math.exp(-(width * width) / (1 - sine)) : 0);
  };
  let sum = at(0) + at(end);
  for (let step = 1; step < STEPS; step += 1) sum += (step % 2 === 1 ? 4 : 2) * at((step * end) / STEPS);
  return Math.min(one, one * one + (sum * end) / (3 * STEPS) / Math.PI);
}
