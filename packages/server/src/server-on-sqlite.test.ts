import { createSqlite } from "@witnessmark/store/testing/sqlite-backend";
import { killContract } from "./testing/kill-contract.ts";
import { serverContract } from "./testing/server-contract.ts";

serverContract("SQLite", createSqlite);
killContract("SQLite", async () => {
  const database = await createSqlite();
  return { ...database, environment: { FILE: database.file } };
});
