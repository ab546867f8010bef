import type { Context, MiddlewareHandler } from "hono";
import type { AppFile, Encoding } from "./app-files.ts";

const INDEX = "/index.html";
const YEAR = "public, max-age=31536000, immutable";
/** Kept, but asked after each time: a new version of the app is seen at the next visit. */
const ASK = "no-cache";

/**
 * Serves the app. An address without a dot in its last part is a place within the app, and gets its page; every other
 * unknown address is passed on.
 */
export function serveApp(files: ReadonlyMap<string, AppFile>): MiddlewareHandler {
  return async (c, next) => {
    if (c.req.method !== "GET" && c.req.method !== "HEAD") return next();
    // The address as it came, never decoded: it is looked up, not opened.
    const { pathname } = new URL(c.req.url);
    const file = files.get(pathname === "/" ? INDEX : pathname) ?? placeInApp(files, pathname, c);
    return file === undefined ? next() : answer(file, c);
  };
}

function placeInApp(files: ReadonlyMap<string, AppFile>, pathname: string, c: Context): AppFile | undefined {
  const wantsPage = c.req.header("accept")?.includes("text/html") ?? false;
  const isPlace = !pathname.startsWith("/api/") && /^(\/[\w-]+)+\/?$/.test(pathname);
  return wantsPage && isPlace ? files.get(INDEX) : undefined;
}

async function answer(file: AppFile, c: Context): Promise<Response> {
  const encoding = chooseEncoding(file, c.req.header("accept-encoding") ?? "");
  const headers: Record<string, string> = {
    "Content-Type": file.type,
    "Cache-Control": file.isImmutable ? YEAR : ASK,
    ETag: file.etag,
    ...(file.encodings.length > 1 ? { Vary: "Accept-Encoding" } : {}),
  };
  if (isSame(c.req.header("if-none-match"), file.etag)) return c.body(null, 304, headers);
  if (encoding !== "identity") headers["Content-Encoding"] = encoding;
  const bytes = await file.bytes(encoding);
  headers["Content-Length"] = String(bytes.byteLength);
  return c.body(bytes, 200, headers);
}

function chooseEncoding(file: AppFile, accepted: string): Encoding {
  const refused = /;\s*q=0(\.0*)?$/;
  const names = accepted
    .split(",")
    .map((part) => part.trim())
    .filter((part) => !refused.test(part))
    .map((part) => part.split(";")[0]?.trim());
  return file.encodings.find((encoding) => encoding === "identity" || names.includes(encoding)) ?? "identity";
}

function isSame(asked: string | undefined, etag: string): boolean {
  const opaque = etag.replace(/^W\//, "");
  return asked?.split(",").some((one) => one.trim().replace(/^W\//, "") === opaque) ?? false;
}
