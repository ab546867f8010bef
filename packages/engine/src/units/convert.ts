import { InputError } from "../input-error.ts";
import { UNITS, type UnitId, type UnitSpec } from "./units.ts";

/**
 * A value in a unit, as its SI value.
 *
 * @throws {InputError} `not-a-number` for NaN and the infinities
 */
export function toSI(value: number, unit: UnitId): number {
  if (!Number.isFinite(value)) {
    throw new InputError("not-a-number", `value_${unit}`, {
      expected: "a finite number",
      received: String(value),
    });
  }
  const spec: UnitSpec = UNITS[unit];
  return (value + (spec.offset ?? 0)) * spec.factor;
}

/**
 * An SI value in another unit of the same dimension.
 *
 * @throws {InputError} `not-a-number` for NaN and the infinities
 */
export function fromSI(valueSI: number, unit: UnitId): number {
  if (!Number.isFinite(valueSI)) {
    throw new InputError("not-a-number", `value_${unit}`, {
      expected: "a finite number",
      received: String(valueSI),
    });
  }
  const spec: UnitSpec = UNITS[unit];
  return valueSI / spec.factor - (spec.offset ?? 0);
}

/** A difference (an accuracy, a margin, a step) in SI: no offset, so 9 °F is 5 K. */
export function differenceToSI(difference: number, unit: UnitId): number {
  return difference * UNITS[unit].factor;
}

/** A difference in SI, in another unit of the same dimension. */
export function differenceFromSI(differenceSI: number, unit: UnitId): number {
  return differenceSI / UNITS[unit].factor;
}
