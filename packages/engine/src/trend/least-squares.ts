import { studentFactor } from "../conformity/student.ts";
import { InputError } from "../input-error.ts";
import { exactSum, exactSumOfProducts } from "../load/exact-sum.ts";
import { pairs } from "../load/refuse-unequal.ts";
import { checkPaired, checkShare, checkValues, FEWEST_READINGS, type TooFew, tooFew } from "./series.ts";

/** A straight line by least squares. The slope is for each day, everything else in the unit of the readings. */
export interface LineFit {
  readonly kind: "line";
  readonly n: number;
  readonly slope: number;
  /** The line at time 0. */
  readonly intercept: number;
  /** Standard deviation of one reading about the line, with n − 2; not below what the resolution brings. */
  readonly residualSd: number;
  readonly slopeSd: number;
  readonly interceptSd: number;
  readonly degreesOfFreedom: number;
  readonly meanTime_d: number;
  readonly meanValue: number;
  /** Sum of (t − mean t)². */
  readonly timeSquares_d2: number;
  readonly firstTime_d: number;
  readonly lastTime_d: number;
}

/** A value with its limits, at one time. */
export interface Interval {
  readonly expected: number;
  readonly low: number;
  readonly high: number;
}

/** Standard deviation that reading a gauge to its resolution brings by itself. @source JCGM 100, F.2.2.1 */
export const roundingSd = (resolution: number): number => resolution / Math.sqrt(12);

/**
 * A straight line through readings, by least squares about the means. Several readings at one time count each.
 *
 * @param t_d times in days, any order
 * @param resolution the step of the gauge, in the unit of the readings: no line is surer than its steps allow
 * @throws {InputError} `not-a-number`; `out-of-range`, also where all readings were taken at one time
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 4.1.4.1
 */
export function leastSquares(t_d: readonly number[], y: readonly number[], resolution = 0): LineFit | TooFew {
  checkPaired(t_d, y);
  checkValues("resolution", [resolution]);
  const n = y.length;
  if (n < FEWEST_READINGS) return tooFew(n);
  const meanTime_d = exactSum(t_d) / n;
  const meanValue = exactSum(y) / n;
  const times = t_d.map((time) => time - meanTime_d);
  const values = y.map((value) => value - meanValue);
  const timeSquares_d2 = exactSumOfProducts(pairs(times, times));
  const firstTime_d = t_d.reduce((a, b) => Math.min(a, b));
  const lastTime_d = t_d.reduce((a, b) => Math.max(a, b));
  if (!(lastTime_d > firstTime_d && timeSquares_d2 > 0)) {
    throw new InputError("out-of-range", "t_d", {
      expected: "readings of two different times at least",
      received: `${n} at ${lastTime_d} d`,
      remedy: "a slope needs time to pass",
    });
  }
  const slope = exactSumOfProducts(pairs(times, values)) / timeSquares_d2;
  const rest = values.map((value, index) => value - slope * (times[index] ?? 0));
  const degreesOfFreedom = n - 2;
  const scatter = Math.sqrt(exactSumOfProducts(pairs(rest, rest)) / degreesOfFreedom);
  const residualSd = Math.max(scatter, roundingSd(Math.abs(resolution)));
  return {
    kind: "line",
    n,
    slope,
    intercept: exactSumOfProducts([
      [meanValue, 1],
      [-slope, meanTime_d],
    ]),
    residualSd,
    slopeSd: residualSd / Math.sqrt(timeSquares_d2),
    interceptSd: residualSd * Math.sqrt(1 / n + meanTime_d ** 2 / timeSquares_d2),
    degreesOfFreedom,
    meanTime_d,
    meanValue,
    timeSquares_d2,
    firstTime_d,
    lastTime_d,
  };
}

/** The line at a time, with the standard deviation of the line there and of one more reading there. */
export function lineAt(
  fit: LineFit,
  t_d: number,
): { readonly value: number; readonly lineSd: number; readonly readingSd: number } {
  checkValues("t_d", [t_d]);
  const away_d = t_d - fit.meanTime_d;
  const share = 1 / fit.n + away_d ** 2 / fit.timeSquares_d2;
  return {
    value: fit.meanValue + fit.slope * away_d,
    lineSd: fit.residualSd * Math.sqrt(share),
    readingSd: fit.residualSd * Math.sqrt(1 + share),
  };
}

/** Student's factor for the confidence of an interval about a line. */
export function factorOf(fit: LineFit, confidence_1: number): number {
  checkShare("confidence_1", confidence_1);
  return studentFactor(confidence_1, fit.degreesOfFreedom);
}

const around = (expected: number, half: number): Interval => ({
  expected,
  low: expected - half,
  high: expected + half,
});

/**
 * Within what one more reading at a time is to be expected.
 *
 * @throws {InputError} `out-of-range` for a confidence that is not between 0 and 1
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 4.5.2.1
 */
export function predictionInterval(fit: LineFit, t0_d: number, confidence_1: number): Interval {
  const { value, readingSd } = lineAt(fit, t0_d);
  return around(value, factorOf(fit, confidence_1) * readingSd);
}

/** Within what the line itself lies at a time: the mean of many readings there. */
export function lineInterval(fit: LineFit, t0_d: number, confidence_1: number): Interval {
  const { value, lineSd } = lineAt(fit, t0_d);
  return around(value, factorOf(fit, confidence_1) * lineSd);
}
