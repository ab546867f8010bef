import { InputError } from "../input-error.ts";
import { fromSI } from "./convert.ts";
import { toDecimals } from "./plain-number.ts";
import { UNITS, type UnitId } from "./units.ts";

const MOST_DECIMALS = 9;

/**
 * How many decimals a gauge of this resolution is read to: 0.05 has two, 0.5 one, 1 and 20 none.
 *
 * @param resolution the smallest step of the gauge in its own unit, above zero
 * @throws {InputError} `out-of-range`
 */
export function decimalsOf(resolution: number): number {
  if (!(resolution > 0 && Number.isFinite(resolution))) {
    throw new InputError("out-of-range", "resolution", {
      expected: "a step above zero",
      received: String(resolution),
    });
  }
  for (let decimals = 0; decimals < MOST_DECIMALS; decimals += 1) {
    const scaled = resolution * 10 ** decimals;
    if (scaled >= 1 - 1e-9 && Math.abs(scaled - Math.round(scaled)) <= 1e-9 * scaled) return decimals;
  }
  return MOST_DECIMALS;
}

/**
 * A value as a gauge of this resolution shows it, without its unit: `4.85`, `−4`, `1250`. Rounds to nearest; where
 * rounding must not flatter, use `roundToSafeSide` first.
 *
 * @param valueSI the value in SI
 * @param resolution the smallest step of the gauge, in `unit`
 * @throws {InputError} `not-a-number`, `out-of-range` (resolution)
 */
export const formatValue = (valueSI: number, unit: UnitId, resolution: number): string =>
  toDecimals(fromSI(valueSI, unit), decimalsOf(resolution));

/** The number and its unit with a no-break space between them: `4.85 bar`, `12 %`; an angle takes none: `12°`. */
export const withSymbol = (digits: string, unit: UnitId): string => {
  const { symbol } = UNITS[unit];
  if (symbol === "") return digits;
  return symbol === "°" ? `${digits}${symbol}` : `${digits}\u00A0${symbol}`;
};

/** As `formatValue`, with its unit. */
export const formatMeasure = (valueSI: number, unit: UnitId, resolution: number): string =>
  withSymbol(formatValue(valueSI, unit, resolution), unit);
