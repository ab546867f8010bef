import { InputError } from "../input-error.ts";
import { checkPositive, checkValues } from "./series.ts";

/** Places of a list, counted from 0, at which a chart signals. */
type Signals = readonly number[];

export interface CusumSettings {
  /** What the values should be. */
  readonly target: number;
  /** Slack, in the unit of the values: half the shift that is to be found. */
  readonly reference: number;
  /** From above which a sum signals, in the unit of the values. */
  readonly decision: number;
}

export interface CusumChart {
  /** Sum of what lay above target and slack, and of what lay below; never below 0. */
  readonly upper: readonly number[];
  readonly lower: readonly number[];
  readonly signals: Signals;
}

/**
 * The tabular cumulative sum of both sides, from zero.
 *
 * @throws {InputError} `not-a-number`, `out-of-range`
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3
 */
export function cusum(y: readonly number[], { target, reference, decision }: CusumSettings): CusumChart {
  checkValues("y", y);
  checkValues("target", [target]);
  checkPositive("decision", decision);
  if (!(reference >= 0)) {
    throw new InputError("out-of-range", "reference", { expected: "0 or more", received: String(reference) });
  }
  const upper: number[] = [];
  const lower: number[] = [];
  const signals: number[] = [];
  for (const [index, value] of y.entries()) {
    const above = Math.max(0, value - target - reference + (upper[index - 1] ?? 0));
    const below = Math.max(0, target - reference - value + (lower[index - 1] ?? 0));
    upper.push(above);
    lower.push(below);
    if (above > decision || below > decision) signals.push(index);
  }
  return { upper, lower, signals };
}

export interface EwmaSettings {
  readonly target: number;
  /** Standard deviation of one value. */
  readonly sd: number;
  /** Weight of the newest value, above 0 to 1. */
  readonly weight_1: number;
  /** Width of the limits in standard deviations of the average. */
  readonly width_1: number;
  /** Whether the limits are narrower at the beginning, as the average then is, or those it tends to. */
  readonly limits: "from-the-start" | "steady";
}

export interface EwmaChart {
  readonly average: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly signals: Signals;
}

/**
 * The exponentially weighted moving average, from the target.
 *
 * @throws {InputError} `not-a-number`, `out-of-range`
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4
 */
export function ewma(y: readonly number[], settings: EwmaSettings): EwmaChart {
  const { target, sd, weight_1, width_1, limits } = settings;
  checkValues("y", y);
  checkValues("target", [target]);
  checkPositive("sd", sd);
  checkPositive("width_1", width_1);
  if (!(weight_1 > 0 && weight_1 <= 1)) {
    throw new InputError("out-of-range", "weight_1", {
      expected: "a share above 0, 1 at most",
      received: String(weight_1),
    });
  }
  const average: number[] = [];
  const halves: number[] = [];
  for (const [index, value] of y.entries()) {
    average.push(weight_1 * value + (1 - weight_1) * (average[index - 1] ?? target));
    const reached = limits === "steady" ? 1 : 1 - (1 - weight_1) ** (2 * (index + 1));
    halves.push(width_1 * sd * Math.sqrt((weight_1 / (2 - weight_1)) * reached));
  }
  return {
    average,
    low: halves.map((half) => target - half),
    high: halves.map((half) => target + half),
    signals: average.flatMap((value, index) =>
      Math.abs(value - target) > (halves[index] ?? 0) ? [index] : [],
    ),
  };
}
