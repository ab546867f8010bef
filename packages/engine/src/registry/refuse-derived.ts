import { InputError } from "../input-error.ts";
import type { UnitId } from "../units/units.ts";
import { rangeText, valueText } from "./range-text.ts";

/**
 * Refuses inputs that are each in range and together lead outside what the formula holds for.
 *
 * @param name what they lead to, with its unit: `density_kgPerM3`
 * @throws {InputError} `out-of-range`
 */
export function refuseDerived(
  quantity: string,
  name: string,
  value: number,
  unit: UnitId,
  range: readonly [number, number],
): void {
  if (value >= range[0] && value <= range[1]) return;
  throw new InputError("out-of-range", name, {
    quantity,
    value,
    range,
    expected: `inputs that lead to ${rangeText(range, unit)}`,
    received: valueText(value, unit),
    remedy: "check the inputs against each other; nothing is computed outside the range",
  });
}
