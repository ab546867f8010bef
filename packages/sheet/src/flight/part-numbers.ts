import type { SheetNumber } from "./number-line.ts";

/** The numbers in two parts, each in its order. */
export interface PartedNumbers {
  readonly here: readonly SheetNumber[];
  readonly overleaf: readonly SheetNumber[];
}

/**
 * The numbers for a page that may have no room for all: those that are not clear stay first, then as many more as there
 * is room for. Undefined where not even those have room.
 *
 * @param fits whether a page has room for these, and for the line that says how many follow
 */
export function partNumbers(
  numbers: readonly SheetNumber[],
  fits: (here: readonly SheetNumber[], follow: number) => boolean,
): PartedNumbers | undefined {
  const stay = new Set(numbers.filter(({ status }) => status !== "clear"));
  const hereOf = (kept: ReadonlySet<SheetNumber>): readonly SheetNumber[] =>
    numbers.filter((number) => kept.has(number));
  if (!fits(hereOf(stay), numbers.length - stay.size)) return undefined;
  for (const number of numbers) {
    if (stay.has(number)) continue;
    const more = new Set([...stay, number]);
    if (!fits(hereOf(more), numbers.length - more.size)) break;
    stay.add(number);
  }
  return { here: hereOf(stay), overleaf: numbers.filter((number) => !stay.has(number)) };
}
