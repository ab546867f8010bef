import { InputError } from "../input-error.ts";
import { normalBelow_1 } from "./normal.ts";

/** Conforming with at least this probability is clear. */
export const CLEAR_FROM_1 = 0.95;

/** A reading, its standard uncertainty and its limits, all in one unit; at least one limit. */
export interface JudgedReading {
  readonly value: number;
  readonly standardUncertainty: number;
  readonly low?: number;
  readonly high?: number;
}

export interface Judgement {
  readonly status: "clear" | "caution" | "stop";
  /** Probability that the true value is within the limits; 0 to 1. */
  readonly probability_1: number;
  /** To the nearest limit, in the unit of the reading; zero on it, negative past it. */
  readonly margin: number;
  readonly nearest: "low" | "high";
}

/** The probability of a normal variable between two limits, taken in the tail where digits are kept. */
export function probabilityBetween_1(value: number, deviation: number, low: number, high: number): number {
  if (deviation === 0) return value >= low && value <= high ? 1 : 0;
  const below = (low - value) / deviation;
  const above = (high - value) / deviation;
  const share =
    below > 0 ? normalBelow_1(-below) - normalBelow_1(-above) : normalBelow_1(above) - normalBelow_1(below);
  return Math.min(1, Math.max(0, share));
}

function refuse({ value, standardUncertainty, low, high }: JudgedReading): void {
  if (low === undefined && high === undefined) {
    throw new InputError("missing", "low, high", {
      expected: "at least one limit",
      received: "none",
      remedy: "a reading without a limit is open, not judged",
    });
  }
  for (const [field, number] of Object.entries({ value, low, high })) {
    if (number === undefined || Number.isFinite(number)) continue;
    throw new InputError("not-a-number", field, { expected: "a finite number", received: String(number) });
  }
  if (!(standardUncertainty >= 0 && Number.isFinite(standardUncertainty))) {
    throw new InputError("out-of-range", "standardUncertainty", {
      expected: "zero or more",
      received: String(standardUncertainty),
    });
  }
  if (low !== undefined && high !== undefined && low > high) {
    throw new InputError("out-of-range", "low", {
      expected: `at most the high limit, ${high}`,
      received: String(low),
    });
  }
}

/**
 * The rule for every reading: outside a limit is stop. Inside, and conforming with a probability of at least 0.95, is
 * clear. Inside, but closer than that, is caution: too close to call with this gauge.
 *
 * @throws {InputError} `missing` without a limit, `not-a-number`, `out-of-range`
 * @source JCGM 106:2012, 7.2 to 7.4: probability of conformity, normal distribution, one- and two-sided
 */
export function judgeReading(reading: JudgedReading): Judgement {
  refuse(reading);
  const { value, standardUncertainty } = reading;
  const low = reading.low ?? Number.NEGATIVE_INFINITY;
  const high = reading.high ?? Number.POSITIVE_INFINITY;
  const probability_1 = probabilityBetween_1(value, standardUncertainty, low, high);
  const nearest = value - low <= high - value ? "low" : "high";
  const margin = nearest === "low" ? value - low : high - value;
  const status = margin < 0 ? "stop" : probability_1 >= CLEAR_FROM_1 ? "clear" : "caution";
  return { status, probability_1, margin, nearest };
}
