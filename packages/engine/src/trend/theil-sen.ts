import { normalQuantile } from "../conformity/normal-quantile.ts";
import { InputError } from "../input-error.ts";
import { EXACT_UP_TO, kendallTail_1, kendallVariance, tiesOf } from "./kendall.ts";
import { roundingSd } from "./least-squares.ts";
import { checkSeries, checkShare, checkValues, FEWEST_READINGS, type TooFew, tooFew } from "./series.ts";
import { medianOf } from "./statistics.ts";

/** A robust straight line: the median of the slopes of all pairs. */
export interface RobustLine {
  readonly kind: "robust-line";
  readonly n: number;
  readonly slope_perDay: number;
  /** The slope's interval. */
  readonly low: number;
  readonly high: number;
  /** The line at time 0. */
  readonly intercept: number;
}

/** Two million slopes: as many as a phone sorts through while a person waits. */
const MOST_READINGS = 2000;

/** The value that would stand at a place if the list were sorted, which it partly is afterwards. */
function select(values: Float64Array, place: number): number {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const pivot = values[(low + high) >> 1] ?? 0;
    let up = low;
    let down = high;
    while (up <= down) {
      while ((values[up] ?? 0) < pivot) up += 1;
      while ((values[down] ?? 0) > pivot) down -= 1;
      if (up > down) break;
      const held = values[up] ?? 0;
      values[up] = values[down] ?? 0;
      values[down] = held;
      up += 1;
      down -= 1;
    }
    if (place <= down) high = down;
    else if (place >= up) low = up;
    else break;
  }
  return values[place] ?? 0;
}

function slopesOf(t_d: readonly number[], y: readonly number[]): Float64Array {
  const slopes = new Float64Array((y.length * (y.length - 1)) / 2);
  let at = 0;
  for (let i = 0; i < y.length; i += 1) {
    const time = t_d[i] ?? 0;
    const value = y[i] ?? 0;
    for (let j = i + 1; j < y.length; j += 1) {
      slopes[at] = ((y[j] ?? 0) - value) / ((t_d[j] ?? 0) - time);
      at += 1;
    }
  }
  return slopes;
}

/** The largest S that is still no surprise; undefined where even the largest of all is none. */
function largestPlainS(n: number, ties: readonly number[], risk_1: number): number | undefined {
  if (n > EXACT_UP_TO) return -normalQuantile(risk_1 / 2) * Math.sqrt(kendallVariance(n, ties));
  const most = (n * (n - 1)) / 2 - ties.reduce((sum, count) => sum + (count * (count - 1)) / 2, 0);
  for (let s = 0; s <= most; s += 1) if (kendallTail_1(n, s, ties) <= risk_1 / 2) return s - 1;
  return undefined;
}

/**
 * The median slope of all pairs (Theil and Sen's), which a few wild readings do not turn, with the interval that
 * Kendall's S gives. The interval never has less than the confidence asked for: its ends are taken outwards.
 *
 * @param t_d times in days, each later than the one before; 2,000 at most
 * @param confidence_1 of the interval; where so few readings cannot give it, the answer is `too-few`
 * @param resolution the step of the gauge: readings that are all the same do not make the slope sure
 * @throws {InputError} `not-a-number`, `out-of-range`
 * @source Sen, Estimates of the regression coefficient based on Kendall's tau, 1968; Hollander and Wolfe,
 *   Nonparametric Statistical Methods, 9.3; Gilbert, 1987, 16.5
 */
export function theilSen(
  t_d: readonly number[],
  y: readonly number[],
  confidence_1: number,
  resolution = 0,
): RobustLine | TooFew {
  checkSeries(t_d, y);
  checkShare("confidence_1", confidence_1);
  checkValues("resolution", [resolution]);
  const n = y.length;
  if (n < FEWEST_READINGS) return tooFew(n);
  if (n > MOST_READINGS) {
    throw new InputError("out-of-range", "y", {
      expected: `${MOST_READINGS} readings at most`,
      received: String(n),
      remedy: "take the latest ones: every pair of readings is one slope",
    });
  }
  const ties = tiesOf(y);
  // A series of one value has no order to count; all slopes are zero, and the resolution alone gives the width.
  const plain = ties[0] === n ? 0 : largestPlainS(n, ties, 1 - confidence_1);
  if (plain === undefined) return tooFew(n);
  const slopes = slopesOf(t_d, y);
  const count = slopes.length;
  const below = Math.max(0, Math.floor((count - plain) / 2) - 1);
  const low = select(slopes, below);
  const high = select(slopes, count - 1 - below);
  const upper = select(slopes, Math.floor(count / 2));
  const lower = select(slopes, Math.floor((count - 1) / 2));
  const slope_perDay = lower + (upper - lower) / 2;
  const middle_d = t_d.reduce((sum, time) => sum + time / n, 0);
  const spread_d = Math.sqrt(t_d.reduce((sum, time) => sum + (time - middle_d) ** 2, 0));
  const least = (-normalQuantile((1 - confidence_1) / 2) * roundingSd(Math.abs(resolution))) / spread_d;
  return {
    kind: "robust-line",
    n,
    slope_perDay,
    low: Math.min(low, slope_perDay - least),
    high: Math.max(high, slope_perDay + least),
    intercept: medianOf(y) - slope_perDay * medianOf(t_d),
  };
}
