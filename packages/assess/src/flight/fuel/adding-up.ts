import { roundToSafeSide } from "@witnessmark/engine";

const TENTHS = 10;

/**
 * Parts of a sum in tenths such that those add up to the sum in tenths, which is rounded up: each part is less than a
 * tenth off.
 *
 * @param parts_kg zero or more each
 */
export function addingUp_kg(parts_kg: readonly number[]): readonly number[] {
  let sum_kg = 0;
  let before = 0;
  return parts_kg.map((part_kg) => {
    sum_kg += part_kg;
    const upTo = roundToSafeSide(sum_kg * TENTHS, 1, "up");
    const own = upTo - before;
    before = upTo;
    return own / TENTHS;
  });
}
