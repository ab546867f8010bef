import { createRoute, type RouteConfigToTypedResponse } from "@hono/zod-openapi";
import type { LedgerEvent } from "@witnessmark/ledger";
import { recordOfLedger } from "@witnessmark/sheet";
import { z } from "zod";
import { Refusal } from "../refusal.ts";
import { AircraftParam } from "../schemas.ts";
import { eventsUpTo, headOf } from "./kept-events.ts";
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
    const events: LedgerEvent[] = [];
    for await (const event of eventsUpTo(own, aircraft, await headOf(own, aircraft))) events.push(event);
    const result = await recordOfLedger(events, { from, to, now_ms: now_ms() });
    if (!result.ok) {
      if (result.why === "bad-period")
        throw new Refusal(400, result.why, `${result.says}.`, { field: result.field });
      throw new Refusal(404, result.why, `${result.says}.`);
    }
    const { record, ledgerText } = result;
    // the PDF library is not needed for anything else, and the server starts faster without it
    const { renderRecordPdf } = await import("@witnessmark/sheet/pdf");
    const pdf = await renderRecordPdf({ record, ledgerText, paper });
    const { period } = record;
    return c.newResponse(new Uint8Array(pdf), 200, {
      "Content-Type": "application/pdf",
      "Content-Disposition": `inline; filename="${aircraft.replaceAll(/[^\w-]/g, "_")}-record-${period.from}-${period.to}.pdf"`,
      "Cache-Control": "no-store",
    }) as Response & RouteConfigToTypedResponse<typeof recordFile>; // bytes; their type in the routes is text
  });
}
