import type { TimedFigure } from "@witnessmark/assess";
import ical, { ICalCalendarMethod } from "ical-generator";

const DAY_S = 86_400;
/** How long before its last day one is told. */
const TOLD_BEFORE_d = 14;

/**
 * The last days of what runs out by date, as whole days of a calendar (iCalendar, RFC 5545). What runs out by hours
 * or landings has no day and is not in it.
 *
 * @param made_ms when the calendar is made, milliseconds since 1970 UTC
 */
export function timedCalendar(
  registration: string,
  figures: readonly TimedFigure[],
  made_ms: number,
): string {
  const calendar = ical({
    name: `${registration}: what runs out`,
    prodId: { company: "Witnessmark", product: "Witnessmark", language: "EN" },
    method: ICalCalendarMethod.PUBLISH,
  });
  for (const { item, limits } of figures) {
    for (const left of limits) {
      if (left.by !== "date") continue;
      const event = calendar.createEvent({
        id: `${registration}-${item.id}-${left.on}@witnessmark.invalid`,
        start: new Date(`${left.on}T00:00:00Z`),
        allDay: true,
        timezone: "UTC",
        stamp: new Date(made_ms),
        summary: `${registration}: last day of ${item.name}`,
        description: `${item.why}${item.instead === undefined ? "" : ` Without it: ${item.instead}.`}`,
      });
      event.createAlarm({ type: "display" as never, trigger: TOLD_BEFORE_d * DAY_S }); // its enum by its value
    }
  }
  return calendar.toString();
}
