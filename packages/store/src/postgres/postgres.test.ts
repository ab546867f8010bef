import { Client } from "pg";
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from "vitest";
import { run } from "../testing/arrivals.ts";
import { storeContract } from "../testing/contract.ts";
import { startTestPostgres, type TestPostgres } from "../testing/postgres.ts";
import { createPostgres, type PostgresTestDatabase } from "../testing/postgres-backend.ts";
import { SOON } from "../testing/soon.ts";
import { openPostgres } from "./open-postgres.ts";

let postgres: TestPostgres;
beforeAll(async () => {
  postgres = await startTestPostgres();
  console.log(`PostgreSQL for the tests: ${postgres.says}`);
}, 60_000);
afterAll(() => postgres?.stop());

storeContract("PostgreSQL", () => createPostgres(postgres));

const SKR = "ZZ-SKR";
const ALL = { after: 0, limit: 100_000, most_B: 1e9 };

async function create(): Promise<PostgresTestDatabase> {
  const database = await createPostgres(postgres);
  onTestFinished(database.remove);
  return database;
}

/** A connection beside the store, as somebody with a database tool has one. */
async function beside({ databaseUrl }: PostgresTestDatabase): Promise<Client> {
  const client = new Client({ connectionString: databaseUrl });
  await client.connect();
  onTestFinished(() => client.end());
  return client;
}

/** Breaks every connection of the store whose last statement fits. @returns how many there were */
async function breakConnections(client: Client, statement = "%"): Promise<number> {
  const { rowCount } = await client.query(
    `select pg_terminate_backend(pid) from pg_stat_activity
     where datname = current_database() and application_name = 'witnessmark' and query like $1`,
    [statement],
  );
  return rowCount ?? 0;
}

describe("a lost connection", () => {
  it("in mid-push refuses the push in words, keeps nothing of it, and the next push goes through", async () => {
    const database = await create();
    const store = await openPostgres({ databaseUrl: database.databaseUrl, onProblem: () => undefined });
    const own = store.forOperator("own");
    await own.append(SKR, run("a", 1, 2), 1);
    const holder = await beside(database);
    await holder.query("begin");
    await holder.query("select * from aircraft for update");
    // Another one looks for the push: within a transaction PostgreSQL shows the activity of one moment only.
    const client = await beside(database);
    const pushing = own.append(SKR, run("a", 3, 4), 1);
    const refused = expect(pushing).rejects.toMatchObject({ name: "StoreError", code: "unreachable" });
    await expect.poll(() => breakConnections(client, "%with counter as%"), SOON).toBe(1);
    await holder.query("rollback");
    await refused;
    expect((await own.page(SKR, ALL)).head).toBe(2);
    expect((await own.append(SKR, run("a", 3, 4), 1)).head).toBe(4);
    expect(await store.check()).toEqual([]);
    await store.close();
  });

  it("that listened is taken up again, and what was missed is told", async () => {
    const database = await create();
    const store = await openPostgres({ databaseUrl: database.databaseUrl, onProblem: () => undefined });
    const own = store.forOperator("own");
    const told: string[] = [];
    own.watch(({ aircraft, head }) => told.push(`${aircraft} ${head}`));
    await own.append(SKR, run("a", 1, 1), 1);
    await expect.poll(() => told, SOON).toContain(`${SKR} 1`);
    const client = await beside(database);
    expect(await breakConnections(client, "listen%")).toBe(1);
    await (await database.open()).forOperator("own").append(SKR, run("a", 2, 5), 1);
    await expect.poll(() => told, SOON).toContain(`${SKR} 5`);
    await store.close();
  });

  it("that nobody uses goes unnoticed but for a word", async () => {
    const database = await create();
    const problems: unknown[] = [];
    const store = await openPostgres({
      databaseUrl: database.databaseUrl,
      onProblem: (problem) => problems.push(problem),
    });
    await store.epoch();
    await breakConnections(await beside(database));
    await expect.poll(() => problems, SOON).toEqual([expect.objectContaining({ code: "unreachable" })]);
    expect(await store.epoch()).not.toBe("");
    await store.close();
  });
});

describe("announcements", () => {
  it("of others on the same channel that make no sense are passed over", async () => {
    const database = await create();
    const own = (await database.open()).forOperator("own");
    const told: string[] = [];
    own.watch(({ aircraft, head }) => told.push(`${aircraft} ${head}`));
    await own.append(SKR, run("a", 1, 1), 1);
    await expect.poll(() => told, SOON).toContain(`${SKR} 1`);
    const client = await beside(database);
    for (const payload of ["", "{", "[1]", '["own","ZZ-SKR","9"]', '["other","ZZ-SKR",8]']) {
      await client.query("select pg_notify('witnessmark_head', $1)", [payload]);
    }
    await own.append(SKR, run("a", 2, 2), 1);
    await expect.poll(() => told, SOON).toContain(`${SKR} 2`);
    expect(told).toEqual([`${SKR} 1`, `${SKR} 2`]);
  });
});

describe("openPostgres", () => {
  it("says in words that nobody answers", async () => {
    await expect(openPostgres({ databaseUrl: "postgres://nobody@127.0.0.1:1/none" })).rejects.toMatchObject({
      name: "StoreError",
      code: "unreachable",
      message: expect.stringContaining("Check that it runs and that DATABASE_URL is right"),
    });
  });

  it("keys every table by operator first, so that it can be spread by operator", async () => {
    const database = await create();
    await database.open();
    const { rows } = await (await beside(database)).query(
      `select c.relname as name, (select string_agg(a.attname, ',' order by k.place)
         from unnest(i.indkey) with ordinality as k (attnum, place)
         join pg_attribute a on a.attrelid = c.oid and a.attnum = k.attnum) as columns
       from pg_index i join pg_class c on c.oid = i.indrelid join pg_namespace n on n.oid = c.relnamespace
       where n.nspname = 'public' and c.relname not in ('meta', 'migration')`,
    );
    expect(rows.length).toBeGreaterThanOrEqual(6);
    for (const { name, columns } of rows)
      expect([name, columns]).toEqual([name, expect.stringMatching(/^operator,/)]);
  });
});
