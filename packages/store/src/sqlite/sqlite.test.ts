import { spawn } from "node:child_process";
import { once } from "node:events";
import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { describe, expect, it, onTestFinished } from "vitest";
import type { Store } from "../store.ts";
import { run } from "../testing/arrivals.ts";
import { storeContract } from "../testing/contract.ts";
import { createSqlite } from "../testing/sqlite-backend.ts";
import { temporaryFolder } from "../testing/temporary-folder.ts";
import { backUpSqlite } from "./back-up-sqlite.ts";
import { connect } from "./connect.ts";
import { openSqlite } from "./open-sqlite.ts";

storeContract("SQLite", createSqlite);

const SKR = "ZZ-SKR";
const ALL = { after: 0, limit: 100_000, most_B: 1e9 };

function folder(): string {
  const { path, remove } = temporaryFolder();
  onTestFinished(remove);
  return path;
}

/** Opens a database for one test. */
async function open(file: string, options: { readonly most_B?: number } = {}): Promise<Store> {
  const store = await openSqlite({ file, ...options });
  onTestFinished(() => store.close());
  return store;
}

describe("one file", () => {
  it("is written with a write-ahead log, and every commit waits for the disk", async () => {
    const db = await connect(join(folder(), "w.sqlite"));
    expect(db.prepare("pragma journal_mode").get()).toEqual({ journal_mode: "wal" });
    // sqlite.org/pragma.html#pragma_synchronous: 2 is FULL
    expect(db.prepare("pragma synchronous").get()).toEqual({ synchronous: 2 });
    db.close();
  });

  it("holds everything by itself once the program has closed it", async () => {
    const here = folder();
    const store = await open(join(here, "w.sqlite"));
    await store.forOperator("own").append(SKR, run("a", 1, 50), 1);
    await store.close();
    expect(existsSync(join(here, "w.sqlite-wal"))).toBe(false);
    copyFileSync(join(here, "w.sqlite"), join(here, "copy.sqlite"));
    const copy = await open(join(here, "copy.sqlite"));
    expect((await copy.forOperator("own").page(SKR, ALL)).events).toHaveLength(50);
  });

  it("is safe with two processes that write and a third that reads: nothing lost, nothing twice, no hole", async () => {
    const file = join(folder(), "w.sqlite");
    const program = new URL("../testing/child-append.ts", import.meta.url).pathname;
    const writers = ["a", "b"].map((device) =>
      spawn(process.execPath, [program], {
        env: { ...process.env, FILE: file, DEVICE: device, BATCHES: "80", SIZE: "5" },
        stdio: ["ignore", "inherit", "inherit"],
      }),
    );
    const ended = writers.map((writer) => once(writer, "exit"));
    let writing = true;
    const done = Promise.all(ended).then((codes) => {
      writing = false;
      return codes.map(([code]) => code);
    });
    const store = await open(file);
    const own = store.forOperator("own");
    const seen: string[] = [];
    const takeNew = async () => {
      const { events } = await own.page(SKR, { after: seen.length, limit: 100, most_B: 1e6 });
      for (const { ledgerSeq, text } of events) {
        expect(ledgerSeq).toBe(seen.length + 1);
        seen.push(String(JSON.parse(text).id));
      }
      return events.length;
    };
    while (writing) {
      await takeNew();
      await new Promise(setImmediate);
    }
    while ((await takeNew()) > 0);
    expect(await done).toEqual([0, 0]);
    expect(new Set(seen).size).toBe(800);
    expect(Object.fromEntries(await own.devices(SKR))).toEqual({ a: 400, b: 400 });
    expect(await store.check()).toEqual([]);
  });

  it("that another program holds is refused in words after a while, and nothing is kept", async () => {
    const file = join(folder(), "w.sqlite");
    const store = await openSqlite({ file, busyTimeout_ms: 50 });
    onTestFinished(() => store.close());
    const other = new DatabaseSync(file);
    other.exec("begin immediate");
    await expect(store.forOperator("own").append(SKR, run("a", 1, 1), 1)).rejects.toMatchObject({
      name: "StoreError",
      code: "busy",
      message: expect.stringContaining("Send again."),
    });
    other.exec("rollback");
    other.close();
    expect((await store.forOperator("own").append(SKR, run("a", 1, 1), 1)).head).toBe(1);
  });

  it("that is full is refused in words, nothing of the push is kept, and what was there can be read", async () => {
    const file = join(folder(), "w.sqlite");
    const store = await open(file, { most_B: 200_000 });
    const own = store.forOperator("own");
    let kept = 0;
    const fill = async () => {
      for (;;) {
        await own.append(SKR, run("a", kept + 1, kept + 40), 1);
        kept += 40;
      }
    };
    await expect(fill()).rejects.toMatchObject({
      code: "full",
      message: expect.stringContaining("no room left"),
    });
    expect(kept).toBeGreaterThan(0);
    expect((await own.page(SKR, ALL)).events).toHaveLength(kept);
    expect(await store.check()).toEqual([]);
  });

  it("that is something else is refused in words", async () => {
    const here = folder();
    writeFileSync(join(here, "text.sqlite"), "This is a letter to my aunt. ".repeat(100));
    await expect(openSqlite({ file: join(here, "text.sqlite") })).rejects.toMatchObject({ code: "damaged" });
    expect(readFileSync(join(here, "text.sqlite"), "utf8")).toContain("aunt");
    mkdirSync(join(here, "folder.sqlite"));
    await expect(openSqlite({ file: join(here, "folder.sqlite") })).rejects.toMatchObject({
      code: "unreachable",
    });
  });
});

describe("the mark beside the file", () => {
  /** A database with three events, closed. */
  async function closed(): Promise<{ readonly file: string; readonly epoch: string }> {
    const file = join(folder(), "w.sqlite");
    const store = await open(file);
    await store.forOperator("own").append(SKR, run("a", 1, 3), 1);
    const epoch = await store.epoch();
    await store.close();
    return { file, epoch };
  }
  const epochOf = async (file: string) => (await open(file)).epoch();

  it("leaves the epoch alone when nothing happened to the file", async () => {
    const { file, epoch } = await closed();
    expect(await epochOf(file)).toBe(epoch);
  });

  it("gives a file that was moved here without it another epoch, once", async () => {
    const { file, epoch } = await closed();
    rmSync(`${file}-mark`);
    const moved = await epochOf(file);
    expect(moved).not.toBe(epoch);
    expect(await epochOf(file)).toBe(moved);
  });

  it("gives another epoch when it does not read", async () => {
    const { file, epoch } = await closed();
    writeFileSync(`${file}-mark`, "\0\0\0");
    expect(await epochOf(file)).not.toBe(epoch);
  });

  it("may lag: a process that was killed before it wrote it loses no epoch", async () => {
    const { file, epoch } = await closed();
    const before = readFileSync(`${file}-mark`);
    const store = await open(file);
    await store.forOperator("own").append(SKR, run("a", 4, 9), 1);
    await store.close();
    writeFileSync(`${file}-mark`, before);
    expect(await epochOf(file)).toBe(epoch);
  });

  it("sees a copy from within the same run of the program", async () => {
    const file = join(folder(), "w.sqlite");
    const store = await open(file);
    const own = store.forOperator("own");
    await own.append(SKR, run("a", 1, 3), 1);
    await backUpSqlite(file, `${file}.copy`);
    await own.append(SKR, run("a", 4, 4), 1);
    const epoch = await store.epoch();
    await store.close();
    copyFileSync(`${file}.copy`, file);
    expect(await epochOf(file)).not.toBe(epoch);
  });
});

describe("backUpSqlite", () => {
  it("copies one whole moment while events come in", async () => {
    const file = join(folder(), "w.sqlite");
    const own = (await open(file)).forOperator("own");
    await own.append(SKR, run("a", 1, 2_000), 1);
    const copying = backUpSqlite(file, `${file}.copy`);
    for (let from = 2_001; from < 2_100; from += 1) await own.append(SKR, run("a", from, from), 1);
    await copying;
    const copy = await open(`${file}.copy`);
    expect(await copy.check()).toEqual([]);
    expect((await copy.forOperator("own").page(SKR, ALL)).head).toBeGreaterThanOrEqual(2_000);
  });

  it("writes over nothing, and says when there is nothing to copy", async () => {
    const here = folder();
    const file = join(here, "w.sqlite");
    await open(file);
    writeFileSync(join(here, "there"), "mine");
    await expect(backUpSqlite(file, join(here, "there"))).rejects.toThrow(
      "Give a new name; nothing was written over.",
    );
    expect(readFileSync(join(here, "there"), "utf8")).toBe("mine");
    await expect(backUpSqlite(join(here, "none"), join(here, "new"))).rejects.toThrow(
      "There is no database at",
    );
    expect(existsSync(join(here, "none"))).toBe(false);
  });
});
