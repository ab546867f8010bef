import type { Gauge } from "@witnessmark/book";
import {
  decimalsOf,
  differenceFromSI,
  differenceToSI,
  formatValue,
  fromSI,
  roundToSafeSide,
  toSI,
  UNITS,
  type UnitId,
  withSymbol,
} from "@witnessmark/engine";
import type { Margin } from "../assessment.ts";

/** In what unit, and to what step, the values of one gauge are shown. */
export interface Figures {
  readonly unit: UnitId;
  /** The smallest step, in `unit`. */
  readonly step: number;
}

/** As the gauge shows; a step written in another unit becomes the power of ten below it. */
export function figuresOf(gauge: Gauge): Figures {
  const { value, unit } = gauge.resolution;
  if (unit === gauge.unit) return { unit, step: value };
  const step = differenceFromSI(differenceToSI(value, unit), gauge.unit);
  return { unit: gauge.unit, step: 10 ** Math.floor(Math.log10(step)) };
}

/** A value in SI, as the gauge shows it, with its unit. */
export const shown = (valueSI: number, { unit, step }: Figures): string =>
  withSymbol(formatValue(valueSI, unit, step), unit);

/** A limit, rounded to the side that does not flatter: a low limit up, a high limit down; without its unit. */
export const limitDigits = (limitSI: number, end: "low" | "high", { unit, step }: Figures): string =>
  formatValue(
    toSI(roundToSafeSide(fromSI(limitSI, unit), step, end === "low" ? "up" : "down"), unit),
    unit,
    step,
  );

/** The same with its unit. */
export const limitShown = (limitSI: number, end: "low" | "high", figures: Figures): string =>
  withSymbol(limitDigits(limitSI, end, figures), figures.unit);

/** Which words say how many there are beyond what is needed, or to what may be; a bare number would not say of what. */
const COUNTED = {
  under: { left: "more than needed", none: "just enough", past: "too few" },
  over: { left: "fewer than may be", none: "no more may be", past: "too many" },
} as const;

/**
 * What is left to a limit of things that are counted.
 *
 * @param margin whole, negative when past it
 * @param past what it is when it is past: `under` the low limit, `over` the high one
 */
export function countMarginOf(margin: number, past: "under" | "over"): Margin {
  const value = Math.floor(margin);
  const words = COUNTED[past];
  if (value === 0) return { value, unit: "", text: words.none };
  return { value, unit: "", text: `${Math.abs(value)} ${value > 0 ? words.left : words.past}` };
}

/**
 * What is left to a limit, rounded down; negative, and rounded away from zero, when past it.
 *
 * @param marginSI a difference in SI
 * @param past what it is when it is past: `under` the low limit, `over` the high one
 */
export function marginOf(marginSI: number, past: "under" | "over", { unit, step }: Figures): Margin {
  const value = roundToSafeSide(differenceFromSI(marginSI, unit), step, "down");
  const size = withSymbol(Math.abs(value).toFixed(decimalsOf(step)), unit);
  return { value, unit: UNITS[unit].symbol, text: value < 0 ? `${size} ${past}` : size };
}
