import { createRoute } from "@hono/zod-openapi";
import program from "../../package.json" with { type: "json" };
import { type About, PROTOCOL_VERSION } from "../protocol.ts";
import { AboutSchema } from "../schemas.ts";
import { newRoutes, refusals } from "./new-routes.ts";
import type { Parts } from "./parts.ts";

const about = createRoute({
  method: "get",
  path: "/about",
  summary: "What this server is, and its clock",
  responses: {
    200: { description: "This server", content: { "application/json": { schema: AboutSchema } } },
    ...refusals,
  },
});

export function aboutRoutes({ store, operator, now_ms }: Parts) {
  return newRoutes().openapi(about, async (c) => {
    const answer: About = {
      program: "witnessmark",
      version: program.version,
      protocolVersion: PROTOCOL_VERSION,
      operator,
      epoch: await store.epoch(),
      now: new Date(now_ms()).toISOString(),
    };
    return c.json(answer, 200, { "Cache-Control": "no-store" });
  });
}
