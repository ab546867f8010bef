import { copyFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { readMigrations } from "../migration.ts";
import { backUpSqlite } from "../sqlite/back-up-sqlite.ts";
import { openSqlite } from "../sqlite/open-sqlite.ts";
import type { Store } from "../store.ts";
import type { TestDatabase } from "./backend.ts";
import { temporaryFolder } from "./temporary-folder.ts";

export interface SqliteTestDatabase extends TestDatabase {
  readonly file: string;
}

/** An empty one-file database. */
export async function createSqlite(): Promise<SqliteTestDatabase> {
  const folder = temporaryFolder();
  const file = join(folder.path, "data", "witnessmark.sqlite");
  const opened: Store[] = [];
  let copies = 0;
  return {
    migrations: readMigrations(new URL("../sqlite/migrations/", import.meta.url)),
    file,
    open: async (options = {}) => {
      const store = await openSqlite({ file, ...options });
      opened.push(store);
      return store;
    },
    run: async (sql) => {
      const db = new DatabaseSync(file);
      db.exec(sql);
      db.close();
    },
    copy: async () => {
      const copy = join(folder.path, `copy-${++copies}.sqlite`);
      await backUpSqlite(file, copy);
      return async () => {
        // What an owner does: the program is stopped, and the copy takes the place of the file and its log.
        for (const end of ["-wal", "-shm"]) rmSync(file + end, { force: true });
        copyFileSync(copy, file);
      };
    },
    remove: async () => {
      for (const store of opened) await store.close();
      folder.remove();
    },
  };
}
