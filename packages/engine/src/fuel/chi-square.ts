import { erfc } from "../conformity/normal.ts";

/**
 * The probability that chi-square is above a value by chance.
 *
 * @param value 0 or more
 * @param freedom degrees of freedom, a whole number above 0
 * @source NIST Digital Library of Mathematical Functions, 8.4.8 and 8.8.2: closed sums of the incomplete gamma function
 */
export function chiSquareAbove_1(value: number, freedom: number): number {
  const half = value / 2;
  const odd = freedom % 2 === 1;
  // Even: e^(−x/2) Σ (x/2)^k / k!. Odd: erfc(√(x/2)) + e^(−x/2) Σ (x/2)^(k − 1/2) / Γ(k + 1/2).
  let term = odd ? 2 * Math.sqrt(half / Math.PI) : 1;
  let sum = 0;
  const terms = odd ? (freedom - 1) / 2 : freedom / 2;
  for (let k = 1; k <= terms; k += 1) {
    sum += term;
    term *= half / (odd ? k + 0.5 : k);
  }
  return Math.min(1, (odd ? erfc(Math.sqrt(half)) : 0) + Math.exp(-half) * sum);
}
