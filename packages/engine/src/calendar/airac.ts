import { addDays, dateOfDayNumber, dayNumber } from "./days.ts";
import { dateOfParts, partsOf } from "./local-date.ts";

const CYCLE_D = 28;
/** A day on which a cycle began. @source AIRAC effective dates of 2020, published table */
const ANCHOR = "2020-01-02";

/** One 28-day cycle of aeronautical data. It changes at midnight universal time, so its dates are of that day. */
export interface AiracCycle {
  /** Year of the first day and place in that year, `2613`; repeats after a hundred years. */
  readonly ident: string;
  readonly from: string;
  /** The last day, included. */
  readonly to: string;
}

const cyclesSinceAnchor = (date: string): number =>
  Math.floor((dayNumber(date) - dayNumber(ANCHOR)) / CYCLE_D);

const firstDayOf = (cycle: number): string => dateOfDayNumber(dayNumber(ANCHOR) + cycle * CYCLE_D);

/**
 * The first days of all cycles that begin in a year: 13 or 14 of them.
 *
 * @throws {InputError} `out-of-range` for a year before 1 or after 9999
 */
export function airacDatesOf(year: number): readonly string[] {
  const dates: string[] = [];
  const newYear = dateOfParts({ year, month: 1, day: 1 });
  let date = firstDayOf(cyclesSinceAnchor(newYear));
  if (date < newYear) date = addDays(date, CYCLE_D);
  for (; partsOf(date).year === year; date = addDays(date, CYCLE_D)) dates.push(date);
  return dates;
}

/**
 * The cycle in force on a day of universal time.
 *
 * @throws {InputError} `out-of-range` for a date that does not exist
 * @source ICAO Annex 15: effective dates at intervals of 28 days; the ident takes the year of the effective date
 */
export function airacCycleOn(date: string): AiracCycle {
  const from = firstDayOf(cyclesSinceAnchor(date));
  const { year } = partsOf(from);
  const place = Math.floor((dayNumber(from) - dayNumber(dateOfParts({ year, month: 1, day: 1 }))) / CYCLE_D);
  const ident = `${String(year % 100).padStart(2, "0")}${String(place + 1).padStart(2, "0")}`;
  return { ident, from, to: addDays(from, CYCLE_D - 1) };
}
