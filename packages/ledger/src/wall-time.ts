/**
 * A moment as a wall clock shows it: ISO 8601 with milliseconds and offset, `2031-05-04T09:07:00.000+02:00`.
 *
 * @param time_ms milliseconds since 1970 UTC, in the years 0 to 9999
 * @param zone_min local time minus UTC, minutes, east positive
 * @throws {RangeError} outside those years
 */
export function wallTime(time_ms: number, zone_min: number): string {
  const zone = Math.trunc(zone_min);
  const local = new Date(time_ms + zone * 60_000).toISOString();
  if (local.length !== 24) {
    throw new RangeError(`wall time: expected a year from 0 to 9999, received ${local}`);
  }
  const size = Math.abs(zone);
  const hours = String(Math.floor(size / 60)).padStart(2, "0");
  const minutes = String(size % 60).padStart(2, "0");
  return `${local.slice(0, 23)}${zone < 0 ? "-" : "+"}${hours}:${minutes}`;
}
