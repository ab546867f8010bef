import { InputError } from "../input-error.ts";

/** A day of the Gregorian calendar; months and days count from 1. */
export interface CalendarDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

export const DAY_MS = 86_400_000;
const JULIAN_DAY_OF_1970 = 2_440_587.5;

/** Julian day of an instant of universal time, and back. @source Meeus, Astronomical Algorithms, chapter 7 */
export const julianDayOf_d = (at_ms: number): number => JULIAN_DAY_OF_1970 + at_ms / DAY_MS;
export const instantOf_ms = (julianDay_d: number): number => (julianDay_d - JULIAN_DAY_OF_1970) * DAY_MS;

/**
 * The instant at which a date begins in universal time.
 *
 * @param quantity that the refusal names, where there is one
 * @throws {InputError} `out-of-range` for a day that no calendar has (30 February)
 */
export function beginningOf_ms({ year, month, day }: CalendarDate, quantity?: string): number {
  const at_ms = Date.UTC(year, month - 1, day);
  const read = new Date(at_ms);
  const same =
    read.getUTCFullYear() === year && read.getUTCMonth() === month - 1 && read.getUTCDate() === day;
  if (same && year >= 1901 && year <= 2099) return at_ms;
  throw new InputError("out-of-range", "date", {
    ...(quantity === undefined ? {} : { quantity }),
    expected: "a day of the calendar from 1901 to 2099",
    received: `year ${year}, month ${month}, day ${day}`,
  });
}

/** How the clock of a place runs: a fixed offset from universal time (east above zero), or a zone of the IANA list. */
export type LocalClock = { readonly utcOffset_s: number } | { readonly zone: string };

const MOST_OFFSET_S = 18 * 3600;

/** Making one takes a millisecond, and a zone's rules do not change while the program runs. */
const formats = new Map<string, Intl.DateTimeFormat>();

function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known !== undefined) return known;
  try {
    const format = new Intl.DateTimeFormat("en-GB", {
      timeZone: zone,
      hourCycle: "h23",
      year: "numeric",
      month: "numeric",
      day: "numeric",
      hour: "numeric",
      minute: "numeric",
      second: "numeric",
    });
    formats.set(zone, format);
    return format;
  } catch (cause) {
    if (!(cause instanceof RangeError)) throw cause;
    throw new InputError("out-of-range", "zone", {
      expected: "a time zone of the IANA list, such as Europe/London, or a fixed offset",
      received: `"${zone}"`,
    });
  }
}

function zoneOffset_s(zone: string, at_ms: number): number {
  const whole_ms = Math.floor(at_ms / 1000) * 1000;
  const parts = new Map(
    formatOf(zone)
      .formatToParts(whole_ms)
      .map(({ type, value }) => [type, Number(value)]),
  );
  const part = (type: Intl.DateTimeFormatPartTypes): number => parts.get(type) ?? Number.NaN;
  const local_ms = Date.UTC(
    part("year"),
    part("month") - 1,
    part("day"),
    part("hour"),
    part("minute"),
    part("second"),
  );
  return (local_ms - whole_ms) / 1000;
}

/**
 * How far a clock is ahead of universal time at an instant.
 *
 * @throws {InputError} `out-of-range` for a zone that is not known, or an offset beyond 18 hours
 */
export function utcOffsetAt_s(clock: LocalClock, at_ms: number): number {
  if ("zone" in clock) return zoneOffset_s(clock.zone, at_ms);
  if (Math.abs(clock.utcOffset_s) <= MOST_OFFSET_S) return clock.utcOffset_s;
  throw new InputError("out-of-range", "utcOffset_s", {
    expected: "an offset from universal time of −18 h to 18 h",
    received: `${clock.utcOffset_s} s`,
  });
}

/**
 * The instant at which a clock shows a time of day on a date. Where it shows it twice, the first; where it skips it,
 * the instant at which the old time would have been shown.
 */
export function localInstant_ms(date: CalendarDate, afterMidnight_s: number, clock: LocalClock): number {
  const shown_ms = beginningOf_ms(date) + afterMidnight_s * 1000;
  // A change of the clock near the time lies between these two.
  const offsets_s = [-DAY_MS, DAY_MS].map((away_ms) => utcOffsetAt_s(clock, shown_ms + away_ms));
  const possible = offsets_s
    .map((offset_s) => ({ at_ms: shown_ms - offset_s * 1000, offset_s }))
    .filter(({ at_ms, offset_s }) => utcOffsetAt_s(clock, at_ms) === offset_s)
    .map(({ at_ms }) => at_ms);
  return possible.length > 0 ? Math.min(...possible) : shown_ms - (offsets_s[0] ?? 0) * 1000;
}
