import { InputError } from "../input-error.ts";

/**
 * Refuses lists that belong together, value by value, and are not of one length.
 *
 * @param first name and values of the list that the other has to match
 * @throws {InputError} `out-of-range`, for the second
 */
export function refuseUnequal(
  quantity: string,
  first: readonly [name: string, values: readonly number[]],
  second: readonly [name: string, values: readonly number[]],
): void {
  const [name, { length }] = first;
  if (second[1].length === length) return;
  throw new InputError("out-of-range", second[0], {
    quantity,
    expected: `as many values as ${name} has, ${length}`,
    received: `${second[1].length}`,
    remedy: "give one for each item, in the same order",
  });
}

/** Two lists of one length, value by value. */
export const pairs = (a: readonly number[], b: readonly number[]): readonly (readonly [number, number])[] =>
  a.flatMap((one, index) => {
    const other = b[index];
    return other === undefined ? [] : [[one, other] as const];
  });
