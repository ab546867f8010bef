// The server with another build of the app than `npm start` serves: an update is one build after another on one port.
import { join, resolve } from "node:path";
import { startServer } from "@witnessmark/server";
import { openStore } from "@witnessmark/store";

const setting = (name: string): string => {
  const value = process.env[name];
  if (value === undefined || value === "") throw new Error(`serve: expected ${name} in the environment`);
  return value;
};

const store = await openStore({ file: join(setting("DATA_DIR"), "witnessmark.sqlite") });
const server = await startServer({
  store,
  operator: "own",
  port: Number(setting("PORT")),
  appDirectory: resolve(setting("APP_DIRECTORY")),
});
process.once("SIGTERM", () => {
  void server
    .close()
    .then(() => store.close())
    .then(() => process.exit(0));
});
console.log(server.url);
