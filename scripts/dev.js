// `npm run dev`: the server, and the app rebuilt as its sources change.
import { spawn } from "node:child_process";
import { join } from "node:path";
import { ensureInstalled, onWantedNode, ROOT } from "./runtime.js";

await onWantedNode(import.meta.url);
ensureInstalled();
const children = [
  spawn(process.execPath, ["--watch", "packages/server/src/main.ts"], { cwd: ROOT, stdio: "inherit" }),
  spawn(process.execPath, [join(ROOT, "node_modules/vite/bin/vite.js")], {
    cwd: join(ROOT, "packages/app"),
    stdio: "inherit",
  }),
];
for (const signal of ["SIGINT", "SIGTERM"])
  process.on(signal, () => {
    for (const child of children) child.kill(signal);
  });
