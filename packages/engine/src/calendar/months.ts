import { InputError } from "../input-error.ts";
import { dateOfParts, daysInMonth, partsOf, refuseUncountable } from "./local-date.ts";

/** Year and month, a number of months after a date's own. */
function monthAfter(date: string, months: number): { readonly year: number; readonly month: number } {
  refuseUncountable("months", months);
  const { year, month } = partsOf(date);
  const counted = year * 12 + month - 1 + months;
  const whole = Math.floor(counted / 12);
  return { year: whole, month: counted - whole * 12 + 1 };
}

/**
 * The same day of the month, some months later (earlier, when below zero); the month's last day where it has no such
 * day: one month after 31 January is 28 or 29 February.
 *
 * @throws {InputError} `out-of-range` for a date that does not exist, `not-a-number` for a part of a month
 */
export function addMonths(date: string, months: number): string {
  const { year, month } = monthAfter(date, months);
  return dateOfParts({ year, month, day: Math.min(partsOf(date).day, daysInMonth(year, month)) });
}

/**
 * The last day of the month that is some months after a date's own: until when "the preceding n calendar months" hold.
 *
 * @throws {InputError} `out-of-range` for a date that does not exist, `not-a-number` for a part of a month
 */
export function endOfMonthAfter(date: string, months: number): string {
  const { year, month } = monthAfter(date, months);
  return dateOfParts({ year, month, day: daysInMonth(year, month) });
}

/**
 * The first day of the month that is some months before a date's own: since when "the n calendar months before the
 * month of the flight" run.
 *
 * @throws {InputError} `out-of-range` for a date that does not exist, `not-a-number` for a part of a month
 */
export const startOfMonthBefore = (date: string, months: number): string =>
  dateOfParts({ ...monthAfter(date, -months), day: 1 });

/**
 * Whole years of age on a day. Whoever was born on 29 February is a year older on the 28th where there is no 29th:
 * the earlier day, since limits get tighter with age.
 *
 * @throws {InputError} `out-of-range` for a date that does not exist, or a birth after the day asked for
 */
export function ageOn(birth: string, on: string): number {
  const born = partsOf(birth);
  const then = partsOf(on);
  if (birth > on) {
    throw new InputError("out-of-range", "birth", {
      expected: `a day up to ${on}`,
      received: birth,
      remedy: "check the two dates; one of them is another person's or misread",
    });
  }
  const years = then.year - born.year;
  return addMonths(birth, 12 * years) <= on ? years : years - 1;
}
