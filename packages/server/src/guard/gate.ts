import type { HttpBindings } from "@hono/node-server";
import type { Context, MiddlewareHandler } from "hono";
import { Refusal } from "../refusal.ts";
import type { Names } from "./names.ts";
import type { RateLimiter } from "./rate-limiter.ts";

export interface GateParts {
  readonly names: Names;
  readonly limiter: RateLimiter;
  /** A proxy that we run stands in front and writes X-Forwarded-For; otherwise that header is anyone's word. */
  readonly behindProxy: boolean;
  readonly now_ms: () => number;
}

export type Env = { Bindings: HttpBindings };

const SAFE = new Set(["GET", "HEAD", "OPTIONS"]);

/** The address that a request came from. */
export function clientOf(c: Context<Env>, behindProxy: boolean): string {
  if (behindProxy) {
    // The last one was written by our own proxy; those before it by whoever sent the request.
    const last = c.req.header("x-forwarded-for")?.split(",").at(-1)?.trim();
    if (last !== undefined && last !== "") return last;
  }
  return c.env.incoming.socket.remoteAddress ?? "unknown";
}

/**
 * Stands before everything. A page of another site that has this machine's address under its own name is stopped by
 * Host; one that posts here from another site by Origin; a client that never rests by its allowance.
 */
export function gate({ names, limiter, behindProxy, now_ms }: GateParts): MiddlewareHandler<Env> {
  return async (c, next) => {
    const host = c.req.header("host")?.toLowerCase() ?? "";
    if (!names.hosts.has(host)) {
      throw new Refusal(
        421,
        "unknown-host",
        `This server does not answer to the name ${host || "(none)"}. Use the address it printed when it started, or set PUBLIC_ORIGIN.`,
      );
    }
    const wait_s = limiter.take(clientOf(c, behindProxy), now_ms());
    if (wait_s > 0) {
      throw new Refusal(429, "too-many-requests", `That was too much at once. Try again in ${wait_s} s.`, {
        retryAfter_s: wait_s,
      });
    }
    if (!SAFE.has(c.req.method)) refuseForeignPage(c, names);
    await next();
  };
}

/** Programs other than browsers send no Origin; browsers send it with everything that changes something. */
function refuseForeignPage(c: Context<Env>, names: Names): void {
  const origin = c.req.header("origin");
  const site = c.req.header("sec-fetch-site");
  const foreign =
    (origin !== undefined && !names.origins.has(origin)) ||
    (site !== undefined && site !== "same-origin" && site !== "none");
  if (foreign) {
    throw new Refusal(
      403,
      "foreign-page",
      `A page of ${origin ?? "another site"} may not change anything here. Open the app from this server's own address.`,
    );
  }
}
