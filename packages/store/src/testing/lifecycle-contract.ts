import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { OperatorStore, Store } from "../store.ts";
import { run, unsound } from "./arrivals.ts";
import type { TestDatabase } from "./backend.ts";

const NOW_MS = Date.UTC(2031, 4, 6, 7, 8, 9);
const ALL = { after: 0, limit: 10_000, most_B: 100_000_000 };
const SKR = "ZZ-SKR";

/** What every store promises of its database: opened, updated, put back, looked through. */
export function lifecycleContract(name: string, create: () => Promise<TestDatabase>): void {
  describe(`the database of the store on ${name}`, () => {
    let database: TestDatabase;
    let store: Store;
    let own: OperatorStore;

    beforeEach(async () => {
      database = await create();
      store = await database.open();
      own = store.forOperator("own");
    });
    afterEach(() => database.remove());

    const idsOf = async (from: OperatorStore) =>
      (await from.page(SKR, ALL)).events.map(({ text }) => String(JSON.parse(text).id));

    describe("opening", () => {
      it("finds everything again, with the same epoch", async () => {
        const epoch = await store.epoch();
        await own.append(SKR, run("a", 1, 3), NOW_MS);
        await store.close();
        const again = await database.open();
        expect(await again.epoch()).toBe(epoch);
        expect(await idsOf(again.forOperator("own"))).toEqual(["a-1", "a-2", "a-3"]);
        expect((await again.forOperator("own").append(SKR, run("a", 4, 4), NOW_MS)).head).toBe(4);
      });

      it("may be closed twice", async () => {
        await store.close();
        await expect(store.close()).resolves.toBeUndefined();
      });

      it("refuses a database of a newer program, in words, and leaves it alone", async () => {
        await store.close();
        await database.run(
          "insert into migration (number, name, sha256, applied_at_ms) values (99, 'later', 'x', 1)",
        );
        await expect(database.open()).rejects.toMatchObject({
          name: "StoreError",
          code: "newer",
          message: expect.stringContaining(
            "made ready by a newer Witnessmark (schema 99; this one knows up to 1)",
          ),
        });
      });

      it("refuses a database whose schema was made by other means", async () => {
        await store.close();
        await database.run("update migration set sha256 = 'x' where number = 1");
        await expect(database.open()).rejects.toMatchObject({ code: "altered" });
      });

      it("applies the migrations that are new, once, and nothing of one that fails", async () => {
        const epoch = await store.epoch();
        await own.append(SKR, run("a", 1, 3), NOW_MS);
        await store.close();
        const [first] = database.migrations;
        const later = { number: 2, name: "later", sha256: "2", sql: "create table later (x integer)" };
        const broken = {
          number: 3,
          name: "broken",
          sha256: "3",
          sql: "create table half (x integer); create tabel x",
        };
        if (first === undefined) throw new Error("Expected a first migration.");
        await expect(database.open({ migrations: [first, later, broken] })).rejects.toThrow(/syntax/);
        // Neither the failed one nor the one before it in the same start has left anything.
        const mended = { ...broken, sql: "create table half (x integer)" };
        const again = await database.open({ migrations: [first, later, mended] });
        expect(await again.epoch()).toBe(epoch);
        expect(await idsOf(again.forOperator("own"))).toEqual(["a-1", "a-2", "a-3"]);
        await again.close();
        await (await database.open({ migrations: [first, later, mended] })).close();
        await expect(database.open({ migrations: [first] })).rejects.toMatchObject({ code: "newer" });
      });

      it("by two programs at once makes one database", async () => {
        const empty = await create();
        try {
          const stores = await Promise.all([empty.open(), empty.open(), empty.open()]);
          const epochs = await Promise.all(stores.map((one) => one.epoch()));
          expect(new Set(epochs).size).toBe(1);
        } finally {
          await empty.remove();
        }
      });
    });

    describe("an older copy put back", () => {
      it("has another epoch, and less in it", async () => {
        await own.append(SKR, run("a", 1, 3), NOW_MS);
        const epoch = await store.epoch();
        await store.close();
        const putBack = await database.copy();
        const between = await database.open();
        expect(await between.epoch()).toBe(epoch);
        await between.forOperator("own").append(SKR, run("a", 4, 9), NOW_MS);
        await between.close();
        await putBack();
        const after = await database.open();
        expect(await after.epoch()).not.toBe(epoch);
        expect((await after.forOperator("own").page(SKR, ALL)).head).toBe(3);
        const settled = await after.epoch();
        await after.close();
        expect(await (await database.open()).epoch()).toBe(settled);
      });
    });

    describe("check", () => {
      it("finds nothing in a sound database", async () => {
        await own.append(SKR, [...run("a", 1, 20), unsound("{}")], NOW_MS);
        expect(await store.check()).toEqual([]);
      });

      it("finds a lost event", async () => {
        await own.append(SKR, run("a", 1, 5), NOW_MS);
        await database.run("delete from event where ledger_seq = 3");
        expect(await store.check()).toEqual([
          "own ZZ-SKR: the counter says 5 events, but 4 are there, the highest numbered 5.",
        ]);
      });
    });
  });
}
