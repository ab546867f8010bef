import type { DayTime } from "./day-time.ts";

const DAY_MS = 86_400_000;
/** A day of the month further away than this may as well be one of another month. */
const REACH_MS = 16 * DAY_MS;

/**
 * The instant of a day and time nearest to a reference, over ends of months and years and with leap years.
 *
 * @returns UTC in ms, or `undefined` when no such day lies within 16 days of the reference (a 30th asked for on 1 March)
 */
export function instantNear({ day, hour, minute }: DayTime, reference_ms: number): number | undefined {
  if (!Number.isFinite(reference_ms)) return undefined;
  const reference = new Date(reference_ms);
  let nearest: number | undefined;
  for (const months of [-1, 0, 1]) {
    const first_ms = Date.UTC(reference.getUTCFullYear(), reference.getUTCMonth() + months, day);
    if (new Date(first_ms).getUTCDate() !== day) continue; // no such day in that month
    const instant_ms = first_ms + (hour * 60 + minute) * 60_000;
    const away = Math.abs(instant_ms - reference_ms);
    if (away <= REACH_MS && (nearest === undefined || away < Math.abs(nearest - reference_ms)))
      nearest = instant_ms;
  }
  return nearest;
}

/** Years 0 to 99 are no years of a flight, and `Date.UTC` takes them for 1900 and on. */
export const isoMinute = (instant_ms: number): string =>
  `${new Date(instant_ms).toISOString().slice(0, 16).replace("T", " ")} UTC`;

/** 45 min, 1 h 7 min, 3 days 2 h. */
export function durationText(duration_ms: number): string {
  const minutes = Math.floor(Math.abs(duration_ms) / 60_000);
  if (minutes < 60) return `${minutes} min`;
  if (minutes < 1440) return `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
  const days = Math.floor(minutes / 1440);
  return `${days} ${days === 1 ? "day" : "days"} ${Math.floor((minutes % 1440) / 60)} h`;
}
