import { createRoute, type RouteConfigToTypedResponse } from "@hono/zod-openapi";
import { ledgerLines, wallTime } from "@witnessmark/ledger";
import { z } from "zod";
import { AircraftParam } from "../schemas.ts";
import { eventsUpTo, headOf } from "./kept-events.ts";
import { newRoutes, refusals } from "./new-routes.ts";
import type { Parts } from "./parts.ts";

const ledgerFile = createRoute({
  method: "get",
  path: "/aircraft/{aircraft}/ledger.jsonl",
  summary: "The whole ledger of an aircraft as a file that can be verified by itself",
  request: { params: z.object({ aircraft: AircraftParam }) },
  responses: {
    200: { description: "JSON Lines", content: { "application/jsonl": { schema: z.string() } } },
    ...refusals,
  },
});

export function ledgerFileRoutes({ own, operator, now_ms, onProblem }: Parts) {
  return newRoutes().openapi(ledgerFile, async (c) => {
    const { aircraft } = c.req.valid("param");
    const { head } = await headOf(own, aircraft);
    const about = { aircraft, operator, exportedAt: wallTime(now_ms(), 0) };
    const lines = ledgerLines(about, head, eventsUpTo(own, aircraft, head));
    return c.newResponse(asStream(lines, onProblem), 200, {
      "Content-Type": "application/jsonl; charset=utf-8",
      "Content-Disposition": `attachment; filename="${aircraft.replaceAll(/[^\w-]/g, "_")}.jsonl"`,
      "Cache-Control": "no-store",
    }) as Response & RouteConfigToTypedResponse<typeof ledgerFile>; // lines of JSON; its type in the routes is text
  });
}

/** When a line fails the file ends there, without its last line: whoever reads it sees that it was cut. */
function asStream(
  lines: AsyncGenerator<string, void, undefined>,
  onProblem: (problem: unknown) => void,
): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  return new ReadableStream({
    async pull(controller) {
      try {
        const next = await lines.next();
        if (next.done === true) controller.close();
        else controller.enqueue(encoder.encode(`${next.value}\n`));
      } catch (error) {
        onProblem(error);
        controller.error(error);
      }
    },
    async cancel() {
      await lines.return();
    },
  });
}
