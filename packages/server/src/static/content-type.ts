import { extname } from "node:path";

const TYPES: ReadonlyMap<string, string> = new Map([
  [".html", "text/html; charset=utf-8"],
  [".js", "text/javascript; charset=utf-8"],
  [".css", "text/css; charset=utf-8"],
  [".json", "application/json; charset=utf-8"],
  [".webmanifest", "application/manifest+json; charset=utf-8"],
  [".svg", "image/svg+xml"],
  [".png", "image/png"],
  [".jpg", "image/jpeg"],
  [".webp", "image/webp"],
  [".ico", "image/x-icon"],
  [".woff2", "font/woff2"],
  [".wasm", "application/wasm"],
  [".txt", "text/plain; charset=utf-8"],
  [".map", "application/json; charset=utf-8"],
]);

export function contentType(path: string): string {
  return TYPES.get(extname(path)) ?? "application/octet-stream";
}

/** Pictures and fonts are compressed already. */
export function isCompressible(type: string): boolean {
  return /^text\/|javascript|json|svg|wasm/.test(type);
}
