import { startTestPostgres, type TestPostgres } from "@witnessmark/store/testing/postgres";
import { createPostgres } from "@witnessmark/store/testing/postgres-backend";
import { afterAll, beforeAll } from "vitest";
import { killContract } from "./testing/kill-contract.ts";
import { serverContract } from "./testing/server-contract.ts";

let postgres: TestPostgres;
beforeAll(async () => {
  postgres = await startTestPostgres();
}, 60_000);
afterAll(() => postgres?.stop());

serverContract("PostgreSQL", () => createPostgres(postgres));
killContract("PostgreSQL", async () => {
  const database = await createPostgres(postgres);
  return { ...database, environment: { DATABASE_URL: database.databaseUrl } };
});
