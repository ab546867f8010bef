import { afterAll, beforeAll } from "vitest";
import { storeContract } from "../testing/contract.ts";
import { startTestPostgres, type TestPostgres } from "../testing/postgres.ts";
import { createPostgres } from "../testing/postgres-backend.ts";

let postgres: TestPostgres;
beforeAll(async () => {
  postgres = await startTestPostgres();
}, 60_000);
afterAll(() => postgres?.stop());

storeContract("PostgreSQL", () => createPostgres(postgres));
