import { normalBelow_1 } from "../conformity/normal.ts";
import { checkSeries, FEWEST_READINGS, type TooFew, tooFew } from "./series.ts";

/** Kendall's test for a trend. */
export interface Kendall {
  readonly kind: "kendall";
  readonly n: number;
  /** Pairs that go up less pairs that go down. */
  readonly s: number;
  /** Variance of s without a trend, with ties. */
  readonly variance: number;
  /** Two-sided probability of an s at least as far from 0, without a trend. */
  readonly p: number;
  readonly tau_1: number;
  /** Whether p counts every order, or comes from the normal approximation. */
  readonly isExact: boolean;
}

/** Up to which n every order is counted. */
export const EXACT_UP_TO = 10;

/** How often each value comes, of those that come more than once. */
export function tiesOf(y: readonly number[]): readonly number[] {
  const counts = new Map<number, number>();
  for (const value of y) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts.values()].filter((count) => count > 1);
}

/** Merges two halves in place and counts the pairs in which the first is larger. */
function mergeCounting(values: Float64Array, spare: Float64Array, from: number, to: number): number {
  if (to - from < 2) return 0;
  const middle = (from + to) >> 1;
  let falling = mergeCounting(values, spare, from, middle) + mergeCounting(values, spare, middle, to);
  let left = from;
  let right = middle;
  for (let at = from; at < to; at += 1) {
    const a = values[left] ?? 0;
    const b = values[right] ?? 0;
    if (left < middle && (right >= to || a <= b)) {
      spare[at] = a;
      left += 1;
    } else {
      spare[at] = b;
      falling += middle - left;
      right += 1;
    }
  }
  values.set(spare.subarray(from, to), from);
  return falling;
}

const pairsOf = (n: number): number => (n * (n - 1)) / 2;

/** Pairs that go up less pairs that go down, in n log n steps. */
export function kendallS(y: readonly number[]): number {
  const falling = mergeCounting(Float64Array.from(y), new Float64Array(y.length), 0, y.length);
  const tied = tiesOf(y).reduce((sum, count) => sum + pairsOf(count), 0);
  return pairsOf(y.length) - tied - 2 * falling;
}

/** @source Kendall, Rank Correlation Methods, 1975: variance with ties */
export function kendallVariance(n: number, ties: readonly number[]): number {
  const part = (count: number): number => count * (count - 1) * (2 * count + 5);
  return ties.reduce((rest, count) => rest - part(count), part(n)) / 18;
}

/** Multiplies by 1 + q + … + q^(size − 1), or divides by it where that leaves nothing over. */
function timesRun(counts: readonly number[], size: number): readonly number[] {
  return Array.from({ length: counts.length + size - 1 }, (_, at) => {
    let sum = 0;
    for (let back = 0; back < size; back += 1) sum += counts[at - back] ?? 0;
    return sum;
  });
}
function overRun(counts: readonly number[], size: number): readonly number[] {
  const quotient: number[] = [];
  for (let at = 0; at < counts.length - size + 1; at += 1) {
    let left = counts[at] ?? 0;
    for (let back = 1; back < size; back += 1) left -= quotient[at - back] ?? 0;
    quotient.push(left);
  }
  return quotient;
}

/**
 * How many orders have each number of falling pairs: the product of runs for all values, over that for each tie.
 *
 * @source MacMahon: orders of a multiset by inversions
 */
function ordersByFalling(n: number, ties: readonly number[]): readonly number[] {
  let counts: readonly number[] = [1];
  for (let size = 2; size <= n; size += 1) counts = timesRun(counts, size);
  for (const tie of ties) for (let size = 2; size <= tie; size += 1) counts = overRun(counts, size);
  return counts;
}

/**
 * The probability of an S of at least s by chance, every order counted.
 *
 * @param n up to 18, beyond which the orders are no whole doubles
 * @param ties how often each value comes, of those that come more than once
 */
export function kendallTail_1(n: number, s: number, ties: readonly number[] = []): number {
  const orders = ordersByFalling(n, ties);
  const most = orders.length - 1;
  let all = 0;
  let beyond = 0;
  for (const [falling, count] of orders.entries()) {
    all += count;
    if (most - 2 * falling >= s) beyond += count;
  }
  return beyond / all;
}

/** Two-sided p of an S: exact for few readings, normal with a correction for continuity for more. */
export function kendallP_1(n: number, s: number, ties: readonly number[]): number {
  if (s === 0) return 1;
  if (n <= EXACT_UP_TO) return Math.min(1, 2 * kendallTail_1(n, Math.abs(s), ties));
  const z = (Math.abs(s) - 1) / Math.sqrt(kendallVariance(n, ties));
  return Math.min(1, 2 * normalBelow_1(-z));
}

/**
 * Kendall's test of readings against time (Mann and Kendall's): whether there is a trend, of whatever shape.
 *
 * @param t_d times in days, each later than the one before
 * @throws {InputError} `not-a-number`, `out-of-range`
 * @source Kendall, Rank Correlation Methods, 1975; Gilbert, Statistical Methods for Environmental Pollution Monitoring,
 *   1987, chapter 16
 */
export function kendall(t_d: readonly number[], y: readonly number[]): Kendall | TooFew {
  checkSeries(t_d, y);
  const n = y.length;
  if (n < FEWEST_READINGS) return tooFew(n);
  const ties = tiesOf(y);
  const s = kendallS(y);
  return {
    kind: "kendall",
    n,
    s,
    variance: kendallVariance(n, ties),
    p: kendallP_1(n, s, ties),
    tau_1: s / pairsOf(n),
    isExact: n <= EXACT_UP_TO,
  };
}
