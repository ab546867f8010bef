import { createRoute, z } from "@hono/zod-openapi";
import { WeatherAnswerSchema } from "../schemas.ts";
import { newRoutes, refusals } from "./new-routes.ts";
import type { Parts } from "./parts.ts";

const CODES = "one to eight codes of four letters or figures, with commas";

const weather = createRoute({
  method: "get",
  path: "/weather",
  summary: "The latest reports of some fields, as text, from the weather service that this server asks",
  request: {
    query: z.object({
      codes: z
        .string()
        .regex(/^[A-Z0-9]{4}(,[A-Z0-9]{4}){0,7}$/, { error: CODES })
        .meta({ description: CODES }),
    }),
  },
  responses: {
    200: { description: "What it has", content: { "application/json": { schema: WeatherAnswerSchema } } },
    ...refusals,
  },
});

export function weatherRoutes({ weather: service, now_ms }: Parts) {
  return newRoutes().openapi(weather, async (c) => {
    const codes = [...new Set(c.req.valid("query").codes.split(","))];
    const reports = [...(await service.reports(codes))];
    const at = new Date(now_ms()).toISOString();
    return c.json({ from: service.from ?? "", at, reports }, 200, { "Cache-Control": "no-store" });
  });
}
