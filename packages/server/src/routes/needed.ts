import { createRoute, type RouteConfigToTypedResponse } from "@hono/zod-openapi";
import { z } from "zod";
import { AircraftParam, NeededAnswerSchema } from "../schemas.ts";
import { pageJson } from "./events.ts";
import { neededEvents } from "./needed-events.ts";
import { newRoutes, refusals } from "./new-routes.ts";
import type { Parts } from "./parts.ts";

const Place = z.coerce.number().int().min(0).max(Number.MAX_SAFE_INTEGER);

const needed = createRoute({
  method: "get",
  path: "/aircraft/{aircraft}/needed",
  summary: "What a new phone needs of a long ledger: all but what was answered on walks long past",
  request: {
    params: z.object({ aircraft: AircraftParam }),
    query: z.object({
      after: Place.default(0),
      upTo: Place.optional().meta({
        description: "As the first answer says it; the head when it is left out.",
      }),
    }),
  },
  responses: {
    200: { description: "A page", content: { "application/json": { schema: NeededAnswerSchema } } },
    ...refusals,
  },
});

export function neededRoutes({ own }: Parts) {
  const find = neededEvents(own);
  return newRoutes().openapi(needed, async (c) => {
    const { after, upTo } = c.req.valid("query");
    const page = await find(c.req.valid("param").aircraft, { after, upTo });
    const { upTo: end, to, wholeFrom } = page;
    return c.newResponse(pageJson(page, { upTo: end, to, wholeFrom }), 200, {
      "Cache-Control": "no-store",
      "Content-Type": "application/json",
    }) as Response & RouteConfigToTypedResponse<typeof needed>; // what pageJson writes
  });
}
