import { InputError } from "../input-error.ts";
import { exactSum, exactSumOfProducts } from "../load/exact-sum.ts";
import { checkSeries, checkValues, FEWEST_READINGS } from "./series.ts";

export interface Statistics {
  readonly n: number;
  readonly mean: number;
  /** Standard deviation of one value, with n − 1. */
  readonly sd: number;
  /** Correlation of each value with the next; 0 for values that are all the same. */
  readonly autocorrelation_1: number;
}

/**
 * Mean, standard deviation and lag-one autocorrelation; the sums are rounded once, at their end.
 *
 * @param y two values at least
 * @throws {InputError} `not-a-number`, `out-of-range`
 * @source NIST StRD, Univariate Summary Statistics: definitions
 */
export function statisticsOf(y: readonly number[]): Statistics {
  checkValues("y", y);
  if (y.length < 2) {
    throw new InputError("out-of-range", "y", {
      expected: "two values at least",
      received: String(y.length),
    });
  }
  const mean = exactSum(y) / y.length;
  const away = y.map((value) => value - mean);
  const squares = exactSumOfProducts(away.map((one) => [one, one] as const));
  const lagged = exactSumOfProducts(away.slice(1).map((one, index) => [one, away[index] ?? 0] as const));
  return {
    n: y.length,
    mean,
    sd: Math.sqrt(squares / (y.length - 1)),
    autocorrelation_1: squares === 0 ? 0 : lagged / squares,
  };
}

/** The middle value, or the mean of the two middle ones. @param values one at least */
export function medianOf(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  const upper = sorted[Math.floor(sorted.length / 2)] ?? 0;
  const lower = sorted[Math.floor((sorted.length - 1) / 2)] ?? 0;
  return lower + (upper - lower) / 2;
}

const TO_SIGMA = 0.6745; // a normal value lies within 0.6745 sigma in half of all cases
const MEAN_TO_SIGMA = 1.253_314; // √(π/2): sigma over the mean absolute deviation
/** From which a modified z-score is called odd. @source NIST/SEMATECH e-Handbook, 1.3.5.17 */
export const ODD_FROM = 3.5;

/**
 * How far each value lies from the median, in robust standard deviations. Where more than half of the values are the
 * same, the mean absolute deviation stands in; where all are, every score is 0.
 *
 * @throws {InputError} `not-a-number`, `out-of-range`
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17: Iglewicz and Hoaglin, 1993
 */
export function modifiedZ(y: readonly number[]): readonly number[] {
  checkValues("y", y);
  const median = medianOf(y);
  const away = y.map((value) => Math.abs(value - median));
  const middle = medianOf(away);
  const scale = middle > 0 ? middle / TO_SIGMA : (MEAN_TO_SIGMA * exactSum(away)) / Math.max(1, away.length);
  return y.map((value) => (scale === 0 ? 0 : (value - median) / scale));
}

/**
 * Standard deviation of one reading, from how far each lies off the line between its neighbours: a slow trend is no
 * part of it.
 *
 * @returns undefined below five readings
 * @throws {InputError} `not-a-number`, `out-of-range`
 * @source Gasser, Sroka and Jennen-Steinmetz, Residual variance and residual pattern in nonlinear regression, 1986
 */
export function scatterOf(t_d: readonly number[], y: readonly number[]): number | undefined {
  checkSeries(t_d, y);
  if (y.length < FEWEST_READINGS) return undefined;
  const squares: number[] = [];
  for (let index = 1; index + 1 < y.length; index += 1) {
    const [t0 = 0, t1 = 0, t2 = 0] = t_d.slice(index - 1, index + 2);
    const [y0 = 0, y1 = 0, y2 = 0] = y.slice(index - 1, index + 2);
    const a = (t2 - t1) / (t2 - t0);
    const b = (t1 - t0) / (t2 - t0);
    squares.push((a * (y0 - y1) + b * (y2 - y1)) ** 2 / (a * a + b * b + 1));
  }
  return Math.sqrt(exactSum(squares) / squares.length);
}
