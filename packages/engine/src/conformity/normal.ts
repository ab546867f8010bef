const SQRT_PI = Math.sqrt(Math.PI);
const SERIES_BELOW = 1.25; // above it 120 levels of the fraction give every digit of a double
const FRACTION_LEVELS = 120;
const NOTHING_BEYOND = 27; // erfc(27) is below the smallest normal double

/** erf by its series of positive terms: 2/√π e^(−x²) Σ 2ⁿ x^(2n+1) / (2n+1)!!; for 0 ≤ x ≤ 1.25. */
function erfSeries(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; term > sum * Number.EPSILON * 0.01; n += 1) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return ((2 * Math.exp(-x * x)) / SQRT_PI) * sum;
}

/** erfc by its continued fraction, evaluated from a fixed depth upward; for x > 1.25. */
function erfcFraction(x: number): number {
  let tail = x;
  for (let k = FRACTION_LEVELS; k >= 1; k -= 1) tail = x + k / 2 / tail;
  return Math.exp(-x * x) / (SQRT_PI * tail);
}

/**
 * Complementary error function, to about 14 significant digits.
 *
 * @param x any finite number
 * @source NIST Digital Library of Mathematical Functions, 7.6.2 (series) and 7.9.1 (continued fraction)
 */
export function erfc(x: number): number {
  const magnitude = Math.abs(x);
  if (magnitude <= SERIES_BELOW) return 1 - Math.sign(x) * erfSeries(magnitude);
  const tail = magnitude >= NOTHING_BEYOND ? 0 : erfcFraction(magnitude);
  return x > 0 ? tail : 2 - tail;
}

/** The share of a standard normal distribution below z; 0 to 1. */
export const normalBelow_1 = (z: number): number => 0.5 * erfc(-z / Math.SQRT2);
