import type { Server } from "node:http";
import { createAdaptorServer } from "@hono/node-server";
import type { Store } from "@witnessmark/store";
import { buildApi } from "./api.ts";
import { GENEROUS, type RateLimit } from "./guard/limits.ts";
import { namesOf } from "./guard/names.ts";
import { RateLimiter } from "./guard/rate-limiter.ts";
import { LiveHub } from "./routes/live-hub.ts";
import { compressAll, readAppFiles } from "./static/app-files.ts";
import { type WeatherService, weatherService } from "./weather/weather-service.ts";

export interface ServerOptions {
  /** Where everything is kept. It stays open when the server is closed. */
  readonly store: Store;
  readonly operator: string;
  /** 0 for any free one. */
  readonly port: number;
  /** This machine only, when left out. */
  readonly host?: string;
  /** The built app; without it only the routes are served. */
  readonly appDirectory?: string;
  /** How the outside sees this server, such as `https://walk.example`; this machine's own names always count. */
  readonly allowedOrigins?: readonly string[];
  /** A proxy of ours stands in front and writes X-Forwarded-For. */
  readonly behindProxy?: boolean;
  /** Where reports are fetched from; nowhere, when left out. */
  readonly weather?: WeatherService;
  readonly rateLimit?: RateLimit;
  readonly now_ms?: () => number;
  /** Told of faults that no answer can tell of. By default they go to standard error. */
  readonly onProblem?: (problem: unknown) => void;
}

export interface RunningServer {
  /** Such as `http://127.0.0.1:4460`, without a slash at the end. */
  readonly url: string;
  /** Takes no new requests, ends the live lines, and lets what has begun come to its end. */
  close(): Promise<void>;
}

/** How long a request that has begun may take after `close`. */
const GRACE_MS = 5_000;

/**
 * Serves the app and the routes.
 *
 * @throws {Error} when the port is taken, or an origin is not one
 */
export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const { store, operator, host = "127.0.0.1", now_ms = Date.now, onProblem = console.error } = options;
  const behindProxy = options.behindProxy ?? false;
  const own = store.forOperator(operator);
  const live = new LiveHub(store, own, onProblem);
  const weather = options.weather ?? weatherService("off");
  const parts = { store, own, operator, live, weather, behindProxy, now_ms, onProblem };
  const files = options.appDirectory === undefined ? new Map() : readAppFiles(options.appDirectory);
  const limiter = new RateLimiter(options.rateLimit ?? GENEROUS);

  // The names hold the port, and a free port is known only once listening; nothing is answered before.
  let fetch: ReturnType<typeof buildApi>["fetch"] | null = null;
  const server = createAdaptorServer({
    fetch: (request, env) => (fetch === null ? new Response(null, { status: 503 }) : fetch(request, env)),
  }) as Server; // plain HTTP/1.1, as no other was asked for
  const port = await listen(server, options.port, host);
  const names = namesOf(port, options.allowedOrigins ?? []);
  fetch = buildApi(parts, { names, limiter, behindProxy, now_ms }, files).fetch;
  compressAll(files).catch(onProblem);

  return {
    url: `http://${host.includes(":") ? `[${host}]` : host}:${port}`,
    close: async () => {
      const closed = new Promise<void>((resolve) => server.close(() => resolve()));
      live.close();
      // A connection falls idle when its request is answered, and would then be kept for the next one.
      const idle = setInterval(() => server.closeIdleConnections(), 20);
      const force = setTimeout(() => server.closeAllConnections(), GRACE_MS);
      await closed;
      clearInterval(idle);
      clearTimeout(force);
    },
  };
}

function listen(server: Server, port: number, host: string): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once("error", (error) => {
      const taken = "code" in error && error.code === "EADDRINUSE";
      reject(
        taken
          ? new Error(
              `Port ${port} is taken by another program. Stop it, or choose another port: PORT=${port + 1}.`,
              { cause: error },
            )
          : error,
      );
    });
    server.listen(port, host, () => {
      const address = server.address();
      if (address === null || typeof address === "string") reject(new Error("Expected a port, found none."));
      else resolve(address.port);
    });
  });
}
