import { createRoute, type RouteConfigToTypedResponse } from "@hono/zod-openapi";
import { type LedgerEvent, ledgerLines, parseEvent, saysOfFaults, wallTime } from "@witnessmark/ledger";
import type { OperatorStore } from "@witnessmark/store";
import { z } from "zod";
import { EVENTS_MOST_B } from "../guard/limits.ts";
import { PAGE_EVENTS } from "../protocol.ts";
import { Refusal } from "../refusal.ts";
import { AircraftParam } from "../schemas.ts";
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
    const { head } = await own.page(aircraft, { after: 0, limit: 1, most_B: 1 });
    if (head === 0) throw new Refusal(404, "no-such-aircraft", `There are no events of ${aircraft} here.`);
    const about = { aircraft, operator, exportedAt: wallTime(now_ms(), 0) };
    const lines = ledgerLines(about, head, eventsUpTo(own, aircraft, head));
    return c.newResponse(asStream(lines, onProblem), 200, {
      "Content-Type": "application/jsonl; charset=utf-8",
      "Content-Disposition": `attachment; filename="${aircraft.replaceAll(/[^\w-]/g, "_")}.jsonl"`,
      "Cache-Control": "no-store",
    }) as Response & RouteConfigToTypedResponse<typeof ledgerFile>; // lines of JSON; its type in the routes is text
  });
}

/** Page by page, so that a ledger of ten years does not have to fit into memory. */
async function* eventsUpTo(own: OperatorStore, aircraft: string, head: number): AsyncGenerator<LedgerEvent> {
  let after = 0;
  while (after < head) {
    const { events } = await own.page(aircraft, {
      after,
      limit: Math.min(PAGE_EVENTS, head - after),
      most_B: EVENTS_MOST_B,
    });
    if (events.length === 0)
      throw new Error(`${aircraft}: expected an event after number ${after}, found none.`);
    for (const { ledgerSeq, text } of events) {
      const parsed = parseEvent(JSON.parse(text));
      if (!parsed.ok)
        throw new Error(`${aircraft}: number ${ledgerSeq} does not read: ${saysOfFaults(parsed.faults)}`);
      yield parsed.event;
      after = ledgerSeq;
    }
  }
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
