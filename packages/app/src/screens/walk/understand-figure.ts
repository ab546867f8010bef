import { fromSI, toSI, UNITS, type UnitId, withSymbol } from "@witnessmark/engine";
import { readFigure } from "../../words/figures.ts";
import type { Understood } from "./figure-popup.tsx";

/**
 * Reads a figure that no gauge's range guards: a temperature, the size of a fault.
 *
 * @param unit the unit chosen on the screen; another one of its dimension may be typed after the number
 * @param example a value that would be right
 */
export function understandFigure(
  text: string,
  unit: UnitId,
  example: string,
  bounds: { readonly least?: number } = {},
): Understood {
  const typed = readFigure(text, withSymbol(example, unit));
  if (!typed.ok) return { ok: false, message: typed.why };
  const given = typed.unit ?? unit;
  if (UNITS[given].dimension !== UNITS[unit].dimension) {
    return {
      ok: false,
      message: `${UNITS[given].symbol} does not measure this; type it in ${UNITS[unit].symbol}`,
    };
  }
  if (bounds.least !== undefined && typed.value < bounds.least) {
    return { ok: false, message: `It cannot be less than ${withSymbol(String(bounds.least), unit)}` };
  }
  if (UNITS[given].dimension === "temperature" && !isWeather(typed.value, given)) {
    return {
      ok: false,
      message: `${withSymbol(String(typed.value), given)} is no temperature of anything here`,
    };
  }
  // a size is kept in the unit of its limit, so that the two can be set side by side
  return given === unit || UNITS[unit].dimension === "temperature"
    ? { ok: true, read: { value: typed.value, unit: given } }
    : { ok: true, read: { value: fromSI(toSI(typed.value, given), unit), unit } };
}

/** A wide guard against slips: tyres, bottles and oil stand between −90 and 250 °C. */
const isWeather = (value: number, unit: UnitId): boolean => {
  const value_K = toSI(value, unit);
  return value_K > 183 && value_K < 523;
};
