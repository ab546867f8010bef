import { MONTH_NAMES, WEEKDAY_NAMES } from "@witnessmark/engine";

/**
 * Times on the sheet are the pilot's own, with UTC beside them where a report would use it. The offset comes from the
 * time as the phone wrote it, so a sheet printed elsewhere says the same.
 */
const ISO = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d)(?::(\d\d)(?:\.\d+)?)?(Z|[+-]\d\d:\d\d)$/;

/** Minutes east of UTC in a time written as ISO 8601 with offset; 0 when it has none that can be read. */
export function offset_min(iso: string): number {
  const zone = ISO.exec(iso)?.[7];
  if (zone === undefined || zone === "Z") return 0;
  const size_min = Number(zone.slice(1, 3)) * 60 + Number(zone.slice(4, 6));
  return zone.startsWith("-") ? -size_min : size_min;
}

const two = (n: number) => String(n).padStart(2, "0");

/** `09:05`, or `09:05:12` with seconds. */
export function clockText(at_ms: number, east_min: number, seconds = false): string {
  const local = new Date(at_ms + east_min * 60_000);
  const text = `${two(local.getUTCHours())}:${two(local.getUTCMinutes())}`;
  return seconds ? `${text}:${two(local.getUTCSeconds())}` : text;
}

/** `09:05, 08:05 UTC`; once only where local time is UTC. */
export function clockWithUtc(at_ms: number, east_min: number): string {
  return east_min === 0
    ? `${clockText(at_ms, 0)} UTC`
    : `${clockText(at_ms, east_min)}, ${clockText(at_ms, 0)} UTC`;
}

/** `Thursday 12 November 2026` */
export function dateText(at_ms: number, east_min: number): string {
  const local = new Date(at_ms + east_min * 60_000);
  return `${WEEKDAY_NAMES[local.getUTCDay()]} ${local.getUTCDate()} ${MONTH_NAMES[local.getUTCMonth()]} ${local.getUTCFullYear()}`;
}
