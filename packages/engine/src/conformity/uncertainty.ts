import { InputError } from "../input-error.ts";

/** What is known of a gauge, all in one unit. */
export interface GaugeStatement {
  /** Half width of the interval that the maker states; 0 or more. */
  readonly accuracy: number;
  /** What the interval is: a bound that is never passed (rectangular), or one that holds 95 % (normal). */
  readonly coverage: "bound" | "95-percent";
  /** The smallest step that can be read; 0 when it is not known or does not count. */
  readonly resolution: number;
}

/** Half width of the central 95 % of a normal distribution, in standard deviations. */
export const NORMAL_95_1 = 1.959963984540054;

/** Combined standard uncertainty of a rectangular bound and a reading step. */
export const rectangularUncertainty = (halfWidth: number, step: number): number =>
  Math.hypot(halfWidth / Math.sqrt(3), step / Math.sqrt(12));

/** Combined standard uncertainty of a 95 % interval and a reading step. */
export const normal95Uncertainty = (halfWidth: number, step: number): number =>
  Math.hypot(halfWidth / NORMAL_95_1, step / Math.sqrt(12));

/**
 * Standard uncertainty of one reading of a gauge: a/√3 for a bound or a/1.96 for a 95 % interval, and δ/√12 for the
 * step it is read to, combined as root of the sum of squares.
 *
 * @returns in the unit of the inputs
 * @throws {InputError} `out-of-range`
 * @source JCGM 100:2008 (GUM), 4.3.4, 4.3.7 and F.2.2.1
 */
export function standardUncertainty({ accuracy, coverage, resolution }: GaugeStatement): number {
  for (const [field, value] of [
    ["accuracy", accuracy],
    ["resolution", resolution],
  ] as const) {
    if (value >= 0 && Number.isFinite(value)) continue;
    throw new InputError("out-of-range", field, {
      expected: "zero or more, in the gauge's unit",
      received: String(value),
    });
  }
  return coverage === "bound"
    ? rectangularUncertainty(accuracy, resolution)
    : normal95Uncertainty(accuracy, resolution);
}
