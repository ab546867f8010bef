import { createRoute } from "@hono/zod-openapi";
import { z } from "zod";
import { clientOf } from "../guard/gate.ts";
import { LIVE_IN_ALL, LIVE_PER_CLIENT } from "../guard/limits.ts";
import { Refusal } from "../refusal.ts";
import { newRoutes, refusals } from "./new-routes.ts";
import type { Parts } from "./parts.ts";

const live = createRoute({
  method: "get",
  path: "/live",
  summary: "Hear of new events as they come (server-sent events)",
  description:
    "Events named `head`, each with {aircraft, head, epoch}: first how every aircraft stands, then each change. A hint: pull to know.",
  responses: {
    200: { description: "A stream without end", content: { "text/event-stream": { schema: z.string() } } },
    ...refusals,
  },
});

export function liveRoutes({ live: hub, behindProxy }: Parts) {
  return newRoutes().openapi(live, (c) => {
    const client = clientOf(c, behindProxy);
    const { ofClient, inAll } = hub.count(client);
    if (ofClient >= LIVE_PER_CLIENT || inAll >= LIVE_IN_ALL) {
      throw new Refusal(
        429,
        "too-many-live",
        "There are too many live connections. The app goes on without one.",
        {
          retryAfter_s: 30,
        },
      );
    }
    return c.body(hub.open(client), 200, {
      "Content-Type": "text/event-stream",
      "Cache-Control": "no-store",
      "X-Accel-Buffering": "no",
    });
  });
}
