import { createRoute, type RouteConfigToTypedResponse } from "@hono/zod-openapi";
import type { LedgerEvent } from "@witnessmark/ledger";
import { z } from "zod";
import { Refusal } from "../refusal.ts";
import { AircraftParam } from "../schemas.ts";
import { eventsUpTo, headOf } from "./kept-events.ts";
import { newRoutes, refusals } from "./new-routes.ts";
import type { Parts } from "./parts.ts";

const sheetFile = createRoute({
  method: "get",
  path: "/aircraft/{aircraft}/decisions/{decision}/sheet.pdf",
  summary: "The sheet of a signed decision as a PDF, with the signed record attached",
  request: {
    params: z.object({
      aircraft: AircraftParam,
      decision: z.uuid({ error: "expected the id of a decision" }),
    }),
    query: z.object({ paper: z.enum(["A4", "LETTER"]).default("A4") }),
  },
  responses: {
    200: { description: "A PDF file", content: { "application/pdf": { schema: z.string() } } },
    ...refusals,
  },
});

export function sheetRoutes({ own }: Parts) {
  return newRoutes().openapi(sheetFile, async (c) => {
    const { aircraft, decision: id } = c.req.valid("param");
    const events: LedgerEvent[] = [];
    const { head } = await headOf(own, aircraft);
    for await (const event of eventsUpTo(own, aircraft, head)) events.push(event);
    // what reads a book and draws a sheet is not needed for anything else, and the server starts faster without it
    const { sheetOfDecision } = await import("@witnessmark/sheet");
    const result = await sheetOfDecision(events, id);
    if (!result.ok) {
      const status = result.why === "no-such-decision" ? 404 : 409;
      throw new Refusal(status, result.why, `${result.says}.`);
    }
    const { sheet, book, decision, record } = result;
    const { renderSheetPdf } = await import("@witnessmark/sheet/pdf");
    const pdf = await renderSheetPdf({
      sheet,
      book,
      attachments: [
        { name: "decision.json", text: record, description: "The signed decision and its assessment" },
      ],
      at: new Date(decision.recordedAt),
      paper: c.req.valid("query").paper,
    });
    return c.newResponse(new Uint8Array(pdf), 200, {
      "Content-Type": "application/pdf",
      "Content-Disposition": `inline; filename="${aircraft.replaceAll(/[^\w-]/g, "_")}-${decision.recordedAt.slice(0, 10)}.pdf"`,
      "Cache-Control": "no-store",
    }) as Response & RouteConfigToTypedResponse<typeof sheetFile>; // bytes; their type in the routes is text
  });
}
