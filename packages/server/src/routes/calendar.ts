import { createRoute, type RouteConfigToTypedResponse } from "@hono/zod-openapi";
import { z } from "zod";
import { AircraftParam } from "../schemas.ts";
import { headOf } from "./kept-events.ts";
import { newRoutes, refusals } from "./new-routes.ts";
import type { Parts } from "./parts.ts";

const DAY_ms = 86_400_000;
/** A cache, for calendars that ask every few minutes: so many aircraft at once. */
const KNOWN_MOST = 50;

const calendarFeed = createRoute({
  method: "get",
  path: "/aircraft/{aircraft}/runs-out.ics",
  summary: "The last days of what runs out by date, as a calendar (iCalendar) that a program can follow",
  request: { params: z.object({ aircraft: AircraftParam }) },
  responses: {
    200: { description: "iCalendar", content: { "text/calendar": { schema: z.string() } } },
    ...refusals,
  },
});

export function calendarRoutes({ own, now_ms }: Parts) {
  /** What was answered on this day up to this head of this database. */
  const known = new Map<string, { readonly key: string; readonly calendar: Promise<string> }>();

  async function calendarOf(aircraft: string): Promise<string> {
    const { head, epoch } = await headOf(own, aircraft);
    const now = now_ms();
    const key = JSON.stringify([epoch, head, Math.floor(now / DAY_ms)]);
    const before = known.get(aircraft);
    if (before?.key === key) return before.calendar;
    // loaded when it is first asked for, as what draws a sheet is: the server starts faster without it
    const calendar = import("./runs-out-calendar.ts").then(({ runsOutCalendar }) =>
      runsOutCalendar(own, aircraft, head, now),
    );
    known.delete(aircraft);
    known.set(aircraft, { key, calendar });
    calendar.catch(() => known.get(aircraft)?.calendar === calendar && known.delete(aircraft)); // whoever asked is told
    const [oldest] = known.keys();
    if (known.size > KNOWN_MOST && oldest !== undefined) known.delete(oldest);
    return calendar;
  }

  return newRoutes().openapi(calendarFeed, async (c) => {
    const { aircraft } = c.req.valid("param");
    const calendar = await calendarOf(aircraft);
    return c.newResponse(calendar, 200, {
      "Content-Type": "text/calendar; charset=utf-8",
      "Content-Disposition": `inline; filename="${aircraft.replaceAll(/[^\w-]/g, "_")}-runs-out.ics"`,
      "Cache-Control": "no-cache",
    }) as Response & RouteConfigToTypedResponse<typeof calendarFeed>; // its type in the routes is text
  });
}
