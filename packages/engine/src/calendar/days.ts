import { dateOfParts, partsOf, refuseUncountable } from "./local-date.ts";

const DAYS_IN_ERA = 146_097; // 400 Gregorian years
const YEARS_IN_ERA = 400;
const DAY_OF_1970 = 719_468; // days from 0000-03-01 to 1970-01-01

/**
 * Days since 1970-01-01, which is day 0. Years are counted from March, so that the leap day is a year's last.
 *
 * @throws {InputError} `out-of-range` for a date that does not exist
 * @source the rule of the Gregorian calendar (leap years: every fourth, not every hundredth, every four-hundredth)
 */
export function dayNumber(date: string): number {
  const { year, month, day } = partsOf(date);
  const fromMarch = month > 2 ? year : year - 1;
  const era = Math.floor(fromMarch / YEARS_IN_ERA);
  const yearOfEra = fromMarch - era * YEARS_IN_ERA;
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * DAYS_IN_ERA + dayOfEra - DAY_OF_1970;
}

/**
 * The date of a number of days since 1970-01-01.
 *
 * @throws {InputError} `not-a-number` for a part of a day, `out-of-range` before the year 1 or after 9999
 */
export function dateOfDayNumber(day: number): string {
  refuseUncountable("day", day);
  const shifted = day + DAY_OF_1970;
  const era = Math.floor(shifted / DAYS_IN_ERA);
  const dayOfEra = shifted - era * DAYS_IN_ERA;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const fromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  return dateOfParts({
    year: yearOfEra + era * YEARS_IN_ERA + (month <= 2 ? 1 : 0),
    month,
    day: dayOfYear - Math.floor((153 * fromMarch + 2) / 5) + 1,
  });
}

/** Days from one date to another; below zero when the second is earlier. */
export const daysBetween = (from: string, to: string): number => dayNumber(to) - dayNumber(from);

/** The date a number of days after another (before it, when below zero). */
export const addDays = (date: string, days: number): string => dateOfDayNumber(dayNumber(date) + days);
