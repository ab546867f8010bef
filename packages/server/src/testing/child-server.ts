// A server in a process of its own, for tests that kill it. It loads everything, waits for a line, then opens the
// database and serves: so the next one can stand ready while the one before still runs.
import { once } from "node:events";
import { flushCompileCache } from "node:module";
import { openStore } from "@witnessmark/store";
import { startServer } from "../start-server.ts";

const { FILE = "", DATABASE_URL } = process.env;

// A killed process leaves no cache behind, so it is written before.
flushCompileCache();
console.log("loaded");
await once(process.stdin, "data");
const store = await openStore({ databaseUrl: DATABASE_URL, file: FILE });
const server = await startServer({ store, operator: "own", port: 0 });
console.log(server.url);
process.on("SIGTERM", async () => {
  await server.close();
  await store.close();
  process.exit(0);
});
