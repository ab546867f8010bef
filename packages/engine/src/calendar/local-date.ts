import { InputError } from "../input-error.ts";
import { MONTH_NAMES } from "./names.ts";

/** A local date is a text, `YYYY-MM-DD`: the rule's local day, never an instant of universal time. */

const SHAPE = /^(\d{4})-(\d{2})-(\d{2})$/;
const MONTHS_IN_YEAR = 12;
const FIRST_YEAR = 1;
const LAST_YEAR = 9999;
const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** A day of the Gregorian calendar, taken apart; month and day count from 1. */
export interface DateParts {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

const isLeapYear = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);

/** The number of days in a month; month counts from 1. */
export const daysInMonth = (year: number, month: number): number =>
  month === 2 && isLeapYear(year) ? 29 : (DAYS_IN_MONTH[month - 1] ?? 0);

function partsOrNothing(text: string): DateParts | undefined {
  const found = SHAPE.exec(text);
  if (found === null) return undefined;
  const [year = 0, month = 0, day = 0] = found.slice(1).map(Number);
  const exists = year >= FIRST_YEAR && month >= 1 && day >= 1 && day <= daysInMonth(year, month);
  return exists ? { year, month, day } : undefined;
}

/** What is wrong with a text that is no local date, in words. */
function remedyFor(text: string): string {
  const found = SHAPE.exec(text);
  if (found === null) return "write the year in four digits, month and day in two, joined by hyphens";
  const [year = 0, month = 0, day = 0] = found.slice(1).map(Number);
  if (month < 1 || month > MONTHS_IN_YEAR) return "the month is 01 to 12";
  if (year < FIRST_YEAR || day < 1) return "years and days begin with 1";
  return `${MONTH_NAMES[month - 1]} ${year} ends with day ${daysInMonth(year, month)}`;
}

/** Whether a text is a day of the calendar, written `YYYY-MM-DD`. */
export const isLocalDate = (text: string): boolean => partsOrNothing(text) !== undefined;

/**
 * Year, month and day of a local date.
 *
 * @throws {InputError} `out-of-range`; names the date and what is wrong with it
 */
export function partsOf(date: string): DateParts {
  const parts = partsOrNothing(date);
  if (parts !== undefined) return parts;
  throw new InputError("out-of-range", "date", {
    expected: "a day of the calendar, written YYYY-MM-DD",
    received: `"${date}"`,
    remedy: remedyFor(date),
  });
}

/**
 * The local date of a year, a month and a day that are known to belong together.
 *
 * @throws {InputError} `out-of-range` for a year before 1 or after 9999, which the text has no room for
 */
export function dateOfParts({ year, month, day }: DateParts): string {
  if (!(year >= FIRST_YEAR && year <= LAST_YEAR)) {
    throw new InputError("out-of-range", "date", {
      expected: `a day in the years ${FIRST_YEAR} to ${LAST_YEAR}`,
      received: `one in the year ${year}`,
    });
  }
  const digits = (value: number, length: number): string => String(value).padStart(length, "0");
  return `${digits(year, 4)}-${digits(month, 2)}-${digits(day, 2)}`;
}

/** @throws {InputError} `not-a-number` for a count that is not a whole number */
export function refuseUncountable(field: string, value: number): void {
  if (Number.isSafeInteger(value)) return;
  throw new InputError("not-a-number", field, { expected: "a whole number", received: String(value) });
}
