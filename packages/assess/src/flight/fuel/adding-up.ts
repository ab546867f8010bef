const TENTHS = 10;
/** What sums of binary fractions leave over is no tenth more. */
const DUST = 1e-6;

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
    const upTo = Math.ceil(sum_kg * TENTHS - DUST);
    const own = upTo - before;
    before = upTo;
    return own / TENTHS;
  });
}
