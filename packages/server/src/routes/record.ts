import { createRoute, type RouteConfigToTypedResponse } from "@hono/zod-openapi";
import { z } from "zod";
import { Refusal } from "../refusal.ts";
import { AircraftParam } from "../schemas.ts";
import { headOf, textsUpTo } from "./kept-events.ts";
import { makeRecord } from "./make-record.ts";
import { newRoutes, refusals } from "./new-routes.ts";
import type { Parts } from "./parts.ts";

const recordFile = createRoute({
  method: "get",
  path: "/aircraft/{aircraft}/record.pdf",
  summary: "The aircraft's record for a period as a PDF, with the whole ledger attached",
  request: {
    params: z.object({ aircraft: AircraftParam }),
    query: z.object({
      from: z.string().optional().meta({ description: "The first day; the first on record when left out." }),
      to: z.string().optional().meta({ description: "The last day; today when left out." }),
      paper: z.enum(["A4", "LETTER"]).default("A4"),
    }),
  },
  responses: {
    200: { description: "A PDF file", content: { "application/pdf": { schema: z.string() } } },
    ...refusals,
  },
});

export function recordRoutes({ own, now_ms }: Parts) {
  return newRoutes().openapi(recordFile, async (c) => {
    const { aircraft } = c.req.valid("param");
    const { from, to, paper } = c.req.valid("query");
    const { head } = await headOf(own, aircraft);
    const made = await makeRecord(() => textsUpTo(own, aircraft, head), {
      from,
      to,
      paper,
      now_ms: now_ms(),
      count: head,
    });
    if (!made.ok) {
      const { why, says, field } = made;
      throw new Refusal(
        why === "bad-period" ? 400 : 404,
        why,
        `${says}.`,
        field === undefined ? {} : { field },
      );
    }
    return c.newResponse(new Uint8Array(made.pdf), 200, {
      "Content-Type": "application/pdf",
      "Content-Disposition": `inline; filename="${aircraft.replaceAll(/[^\w-]/g, "_")}-record-${made.from}-${made.to}.pdf"`,
      "Cache-Control": "no-store",
    }) as Response & RouteConfigToTypedResponse<typeof recordFile>; // bytes; their type in the routes is text
  });
}
