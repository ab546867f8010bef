// Builds the web app when something that goes into it has changed since the last build.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, globSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { CACHE, giveUp, ROOT, stampIs, writeStamp } from "./runtime.js";

const SOURCES = [
  "package-lock.json",
  "packages/{engine,weather,book,ledger,assess,planner,sheet,fit,record,chart,pack}/src/**/*.{ts,json}",
  "packages/server/src/{client,protocol}.ts",
  "packages/app/{package.json,index.html,vite.config.ts}",
  "packages/app/{src,public}/**/*.*",
];

/** One hash over every source of the app. Fails when it finds none: a stamp over nothing would never change. */
function sourceHash() {
  const files = SOURCES.flatMap((pattern) => globSync(pattern, { cwd: ROOT })).sort();
  if (files.length < 10)
    giveUp("The app's sources were not found. Run this from a whole clone of the project.");
  const hash = createHash("sha256");
  for (const file of files) hash.update(file).update(readFileSync(join(ROOT, file)));
  return hash.digest("hex");
}

export function ensureAppBuilt() {
  const wanted = sourceHash();
  const stamp = join(CACHE, "app-built");
  if (stampIs(stamp, wanted) && existsSync(join(ROOT, "packages/app/dist/index.html"))) return;
  console.log("Building the app.");
  const done = spawnSync(
    process.execPath,
    [join(ROOT, "node_modules/vite/bin/vite.js"), "build", "--logLevel", "warn"],
    {
      cwd: join(ROOT, "packages/app"),
      stdio: "inherit",
    },
  );
  if (done.status !== 0) giveUp("The app could not be built (see above).");
  writeStamp(stamp, wanted);
}
