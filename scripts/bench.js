// `npm run bench [name …]`: every benchmark of bench/, each a ratio against a peer or a limit in the same run.
import { spawnSync } from "node:child_process";
import { globSync } from "node:fs";
import { basename } from "node:path";
import { ensureInstalled, onWantedNode, ROOT } from "./runtime.js";

await onWantedNode(import.meta.url);
ensureInstalled();
const { ensureAppBuilt } = await import("./build-app.js");
const { findBrowser } = await import("./find-browser.js");
const wanted = process.argv.slice(2);
const all = globSync("bench/*.ts", { cwd: ROOT })
  .sort()
  .filter((file) => wanted.length === 0 || wanted.includes(basename(file, ".ts")));
if (all.length === 0) {
  console.error(`No benchmark is called ${wanted.join(" or ")}.`);
  process.exit(1);
}
ensureAppBuilt();
const env = { ...process.env, WITNESSMARK_BROWSER: await findBrowser() };
let over = 0;
for (const file of all) {
  console.log(`\n== ${basename(file, ".ts")}`);
  const done = spawnSync(process.execPath, ["--expose-gc", file], { cwd: ROOT, stdio: "inherit", env });
  if (done.status !== 0) over += 1;
}
console.log(`\n${all.length - over} of ${all.length} within their limit`);
process.exit(over === 0 ? 0 : 1);
