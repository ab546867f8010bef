import { withSymbol } from "../units/format.ts";
import { toSignificant } from "../units/plain-number.ts";
import type { UnitId } from "../units/units.ts";

const DIGITS = 6;

/** A value with its unit and no more digits than help: `288.15 K`, `−5000 m`. */
export const valueText = (value: number, unit: UnitId): string =>
  withSymbol(toSignificant(value, DIGITS), unit);

/** `−5000 m to 20000 m` */
export const rangeText = ([low, high]: readonly [number, number], unit: UnitId): string =>
  `${valueText(low, unit)} to ${valueText(high, unit)}`;
