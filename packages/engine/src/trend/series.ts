import { InputError } from "../input-error.ts";

/** What comes instead of an answer where there are too few readings for one. */
export interface TooFew {
  readonly kind: "too-few";
  readonly n: number;
}

/** With four readings no trend can be told from chance at 5 %: Kendall's two-sided p does not get below 0.083. */
export const FEWEST_READINGS = 5;

/** Squares and products of five thousand of these stay finite. */
const LARGEST = 1e100;

export const tooFew = (n: number): TooFew => ({ kind: "too-few", n });

/** @throws {InputError} `not-a-number`, `out-of-range`; names the list and the place in it */
export function checkValues(field: string, values: readonly number[]): void {
  for (const [index, value] of values.entries()) {
    if (Math.abs(value) <= LARGEST) continue;
    throw new InputError(Number.isNaN(value) ? "not-a-number" : "out-of-range", field, {
      expected: `finite numbers, of ${LARGEST} at most`,
      received: `${value} as value ${index + 1}`,
    });
  }
}

/**
 * Refuses what is no series: lists of two lengths, and what is no number.
 *
 * @throws {InputError} `not-a-number`, `out-of-range`
 */
export function checkPaired(t_d: readonly number[], y: readonly number[]): void {
  if (t_d.length !== y.length) {
    throw new InputError("out-of-range", "y", {
      expected: `as many readings as times, ${t_d.length}`,
      received: String(y.length),
      remedy: "give one reading for each time, in the same order",
    });
  }
  checkValues("t_d", t_d);
  checkValues("y", y);
}

/**
 * Refuses what is no series in the order of time.
 *
 * @throws {InputError} `not-a-number`, `out-of-range`; two readings at one time have no order and are refused by place
 */
export function checkSeries(t_d: readonly number[], y: readonly number[]): void {
  checkPaired(t_d, y);
  for (const [index, time] of t_d.entries()) {
    const before = t_d[index - 1];
    if (before === undefined || time > before) continue;
    throw new InputError("out-of-range", "t_d", {
      expected: "each reading later than the one before it",
      received: `${before} d and then ${time} d, as values ${index} and ${index + 1}`,
      remedy: "sort the readings by time, and keep one of those that were taken at the same time",
    });
  }
}

/** @throws {InputError} `out-of-range` for a share that is not between 0 and 1 */
export function checkShare(field: string, share_1: number): void {
  if (share_1 > 0 && share_1 < 1) return;
  throw new InputError("out-of-range", field, {
    expected: "a share above 0 and below 1",
    received: String(share_1),
  });
}

/** @throws {InputError} `out-of-range` for what is not above zero and finite */
export function checkPositive(field: string, value: number): void {
  if (value > 0 && value <= LARGEST) return;
  throw new InputError("out-of-range", field, { expected: "a number above 0", received: String(value) });
}
