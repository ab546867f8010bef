import { type UnitId, withSymbol } from "@witnessmark/engine";
import { figure } from "../../words/figures.ts";

const DIGITS = 6;

/** Below this many places a power of ten reads better than noughts. */
const SMALL_1 = 1e-4;
const SUPERSCRIPT = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** A number with no more digits than help (six that count), thousands apart: `29,527.6`, `0.00325`, `3.15 × 10⁻⁶`. */
export function plainFigure(value: number, digits = DIGITS): string {
  if (value === 0) return "0";
  const size = Math.abs(value);
  if (size < SMALL_1) {
    const [mantissa = "", power = ""] = value.toExponential(digits - 1).split("e");
    const raised = [...power.replace("-", "⁻").replace("+", "")].map((sign) =>
      sign === "⁻" ? sign : (SUPERSCRIPT[Number(sign)] ?? sign),
    );
    return `${figure(Number(mantissa), decimalsIn(mantissa))} × 10${raised.join("")}`;
  }
  const rounded = Number(value.toPrecision(digits));
  const decimals = Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(rounded))));
  return figure(rounded, decimalsIn(rounded.toFixed(decimals)));
}

const decimalsIn = (text: string): number =>
  text.includes(".") ? (text.replace(/0+$/, "").split(".")[1]?.length ?? 0) : 0;

export const plainMeasure = (value: number, unit: UnitId, digits = DIGITS): string =>
  withSymbol(plainFigure(value, digits), unit);
