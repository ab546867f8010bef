import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { expect, it } from "vitest";
import { ROOT } from "./harness/server.ts";

const INITIAL_JS_MOST_B = 200_000;

it("brings at most 200 kB of JavaScript before the first page is there, compressed", () => {
  const dist = join(ROOT, "packages/app/dist");
  const page = readFileSync(join(dist, "index.html"), "utf8");
  const scripts = [...page.matchAll(/(?:src|href)="\/?(assets\/[^"]+\.js)"/g)].map(([, file]) => file ?? "");
  expect(scripts.length).toBeGreaterThan(0);
  const total_B = scripts.reduce((sum, file) => sum + gzipSync(readFileSync(join(dist, file))).length, 0);
  console.log(`initial JavaScript: ${(total_B / 1000).toFixed(0)} kB compressed`);
  expect(total_B).toBeLessThanOrEqual(INITIAL_JS_MOST_B);
});
