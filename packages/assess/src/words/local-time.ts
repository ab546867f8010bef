import { MONTH_NAMES, shortName, WEEKDAY_NAMES } from "@witnessmark/engine";

/** The place from which times are told: the offset of the last look, and the moment of the assessment. */
export interface LocalClock {
  readonly now_ms: number;
  /** Local time minus UTC, minutes, east positive. */
  readonly offset_min: number;
}

const MIN_MS = 60_000;
const DAY_MS = 86_400_000;
const OFFSET = /([+-])(\d\d):?(\d\d)$/;

/** Minutes east of UTC in a time written as ISO 8601; 0 for `Z`, or when it says none. */
export function offsetOf_min(iso: string): number {
  const found = OFFSET.exec(iso);
  if (found === null || !iso.includes("T")) return 0;
  const [, sign, hours, minutes] = found;
  const size_min = Number(hours) * 60 + Number(minutes);
  return sign === "-" ? -size_min : size_min;
}

const two = (count: number): string => String(count).padStart(2, "0");

const local = (at_ms: number, { offset_min }: LocalClock): Date => new Date(at_ms + offset_min * MIN_MS);

const dayNumber = (at_ms: number, { offset_min }: LocalClock): number =>
  Math.floor((at_ms + offset_min * MIN_MS) / DAY_MS);

/** Whether it is on the local day of the moment of the assessment. */
export const isToday = (at_ms: number, clock: LocalClock): boolean =>
  dayNumber(at_ms, clock) === dayNumber(clock.now_ms, clock);

/** `07:41` */
export function clockText(at_ms: number, clock: LocalClock): string {
  const at = local(at_ms, clock);
  return `${two(at.getUTCHours())}:${two(at.getUTCMinutes())}`;
}

/** `Sunday` within the last or next six days, else `12 Nov`, with its year when that is another. */
export function dayText(at_ms: number, clock: LocalClock): string {
  const at = local(at_ms, clock);
  if (Math.abs(dayNumber(at_ms, clock) - dayNumber(clock.now_ms, clock)) < 7)
    return WEEKDAY_NAMES[at.getUTCDay()] ?? "";
  const year = at.getUTCFullYear();
  const date = `${at.getUTCDate()} ${shortName(MONTH_NAMES[at.getUTCMonth()] ?? "")}`;
  return year === local(clock.now_ms, clock).getUTCFullYear() ? date : `${date} ${year}`;
}

/** `07:41` today, `Thursday 07:41` this week, else `12 Nov 07:41`. */
export function momentText(at_ms: number, clock: LocalClock): string {
  const time = clockText(at_ms, clock);
  return isToday(at_ms, clock) ? time : `${dayText(at_ms, clock)} ${time}`;
}

/** `at 07:41` today, else `on Thursday at 07:41`, `on 12 Nov at 07:41`. */
export function whenText(at_ms: number, clock: LocalClock): string {
  const time = `at ${clockText(at_ms, clock)}`;
  return isToday(at_ms, clock) ? time : `on ${dayText(at_ms, clock)} ${time}`;
}

/** The last millisecond of a local day. */
export const endOfDay_ms = (at_ms: number, clock: LocalClock): number =>
  (dayNumber(at_ms, clock) + 1) * DAY_MS - clock.offset_min * MIN_MS - 1;
