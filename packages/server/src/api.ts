import { OpenAPIHono } from "@hono/zod-openapi";
import { compress } from "hono/compress";
import { type Env, type GateParts, gate } from "./guard/gate.ts";
import { securityHeaders } from "./guard/security-headers.ts";
import { answerError, Refusal } from "./refusal.ts";
import { aboutRoutes } from "./routes/about.ts";
import { calendarRoutes } from "./routes/calendar.ts";
import { addDescription } from "./routes/description.ts";
import { eventRoutes } from "./routes/events.ts";
import { ledgerFileRoutes } from "./routes/ledger-file.ts";
import { liveRoutes } from "./routes/live.ts";
import { neededRoutes } from "./routes/needed.ts";
import type { Parts } from "./routes/parts.ts";
import { photoRoutes } from "./routes/photos.ts";
import { recordRoutes } from "./routes/record.ts";
import { sheetRoutes } from "./routes/sheet.ts";
import { weatherRoutes } from "./routes/weather.ts";
import type { AppFile } from "./static/app-files.ts";
import { serveApp } from "./static/serve-app.ts";

/** Every route under /api. */
function routes(parts: Parts) {
  return new OpenAPIHono<Env>()
    .route("/", aboutRoutes(parts))
    .route("/", eventRoutes(parts))
    .route("/", neededRoutes(parts))
    .route("/", photoRoutes(parts))
    .route("/", liveRoutes(parts))
    .route("/", ledgerFileRoutes(parts))
    .route("/", recordRoutes(parts))
    .route("/", calendarRoutes(parts))
    .route("/", sheetRoutes(parts))
    .route("/", weatherRoutes(parts));
}

/** The routes as types, for the client. */
export type Api = ReturnType<typeof routes>;

/** The whole program that answers requests: what stands before it, the routes, the app. */
export function buildApi(
  parts: Parts,
  gateParts: GateParts,
  files: ReadonlyMap<string, AppFile>,
): OpenAPIHono<Env> {
  const api = new OpenAPIHono<Env>();
  api.onError((error, c) => answerError(error, c, parts.onProblem));
  api.notFound((c) => answerError(nothingHere(c.req.path, files.size > 0), c, parts.onProblem));
  api.use(securityHeaders);
  api.use(gate(gateParts));
  api.use("/api/aircraft/*", compress());
  api.route("/api", routes(parts));
  addDescription(api);
  api.use(serveApp(files));
  return api;
}

function nothingHere(path: string, hasApp: boolean): Refusal {
  const message =
    path.startsWith("/api/") || hasApp
      ? "There is nothing at this address. The routes are listed at /api."
      : "The app is not built, so only the server's routes are here; they are listed at /api. Build the app and start again.";
  return new Refusal(404, "nothing-here", message);
}
