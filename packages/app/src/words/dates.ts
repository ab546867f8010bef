import { MONTH_NAMES, shortName, WEEKDAY_NAMES } from "@witnessmark/engine";

// the app speaks one language, so it does not ask the browser for the names of days and months
const weekday = (at: Date): string => WEEKDAY_NAMES[at.getDay()] ?? "";
const month = (at: Date): string => MONTH_NAMES[at.getMonth()] ?? "";

const two = (n: number) => String(n).padStart(2, "0");

/** "07:42", local. */
export function clockTime(at_ms: number): string {
  const at = new Date(at_ms);
  return `${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** "06:42 UTC". */
export function utcTime(at_ms: number): string {
  const at = new Date(at_ms);
  return `${two(at.getUTCHours())}:${two(at.getUTCMinutes())} UTC`;
}

/** "Thu 12 Nov". */
export function shortDay(at_ms: number): string {
  const at = new Date(at_ms);
  return `${shortName(weekday(at))} ${at.getDate()} ${shortName(month(at))}`;
}

/** "9 Nov": for a label beside a stripe. */
export function dayMonth(at_ms: number): string {
  const at = new Date(at_ms);
  return `${at.getDate()} ${shortName(month(at))}`;
}

/** "Thursday 12 November 2026". */
export function longDay(at_ms: number): string {
  const at = new Date(at_ms);
  return `${weekday(at)} ${at.getDate()} ${month(at)} ${at.getFullYear()}`;
}

/** "31 May 2028", of a day as it is kept: `2028-05-31`. */
export const dayOfDate = (date: string): string =>
  longDay(new Date(`${date}T12:00`).getTime()).replace(/^\w+ /, "");

const dayNumber = (at_ms: number) => {
  const at = new Date(at_ms);
  return Math.round(Date.UTC(at.getFullYear(), at.getMonth(), at.getDate()) / 86_400_000);
};

export const isSameDay = (a_ms: number, b_ms: number): boolean => dayNumber(a_ms) === dayNumber(b_ms);

/** "07:42" today, "yesterday 18:10", otherwise "Mon 9 Nov". */
export function whenShort(at_ms: number, now_ms: number): string {
  const days = dayNumber(now_ms) - dayNumber(at_ms);
  if (days === 0) return clockTime(at_ms);
  if (days === 1) return `yesterday ${clockTime(at_ms)}`;
  return shortDay(at_ms);
}

/** The same with the time of the day: "07:42" today, "yesterday 18:10", otherwise "Mon 9 Nov 08:05". */
export function momentShort(at_ms: number, now_ms: number): string {
  const days = dayNumber(now_ms) - dayNumber(at_ms);
  return days === 0 || days === 1 ? whenShort(at_ms, now_ms) : `${shortDay(at_ms)} ${clockTime(at_ms)}`;
}

/** "for 4 min", "for 2 h 10 min": how long something lasted, whole minutes, at least one. */
export function lasting(span_ms: number): string {
  const minutes = Math.max(1, Math.round(span_ms / 60_000));
  const hours = Math.floor(minutes / 60);
  if (hours === 0) return `${minutes} min`;
  return minutes % 60 === 0 ? `${hours} h` : `${hours} h ${minutes % 60} min`;
}

/** The local time with its offset, as events keep it: 2026-11-12T07:42:05+01:00. */
export function isoWithOffset(at_ms: number): string {
  const at = new Date(at_ms);
  const offset_min = -at.getTimezoneOffset();
  const sign = offset_min < 0 ? "-" : "+";
  const size = Math.abs(offset_min);
  const date = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  const time = `${two(at.getHours())}:${two(at.getMinutes())}:${two(at.getSeconds())}`;
  return `${date}T${time}${sign}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

/** The value of a `datetime-local` field for a moment. */
export function fieldTime(at_ms: number): string {
  return isoWithOffset(at_ms).slice(0, 16);
}

/** The moment that a `datetime-local` field holds, or `null` while it is empty or half typed. */
export function momentOfField(text: string): number | null {
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}/.test(text)) return null;
  const at_ms = new Date(text).getTime();
  return Number.isNaN(at_ms) ? null : at_ms;
}
