import type { MissingInput } from "./ruling.ts";

/** A text of a rule and the first day on which it applies, `2022-10-30`. */
export interface Dated {
  readonly from: string;
}

const DAY = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/;

export const DATE_MISSING: MissingInput = {
  input: "on",
  what: "the date of the flight, as 2026-11-12, on which it depends which text applies",
};

/**
 * The text that applies on a day: the last one whose first day is not after it.
 *
 * @param on a day in UTC: `2026-11-12`
 * @returns `undefined` when the day is missing, is no date, or is before the first text
 */
export function inForce<Text extends Dated>(
  texts: readonly Text[],
  on: string | undefined,
): Text | undefined {
  if (on === undefined || !DAY.test(on)) return undefined;
  return texts
    .filter(({ from }) => from <= on)
    .toSorted((one, other) => (one.from < other.from ? -1 : 1))
    .at(-1);
}
