import { randomUUID } from "node:crypto";
import { mkdirSync } from "node:fs";
import { dirname } from "node:path";
import type { DatabaseSync } from "node:sqlite";
import { type Applied, type Migration, pendingMigrations, readMigrations } from "../migration.ts";
import { textOf, wholeOf } from "../row.ts";
import type { Store } from "../store.ts";
import { connect } from "./connect.ts";
import { HighWaterMark, type Mark, wasPutBack } from "./high-water-mark.ts";
import { inTransaction } from "./in-transaction.ts";
import { asStoreError } from "./sqlite-fault.ts";
import { SqliteStore } from "./sqlite-store.ts";

export interface SqliteOptions {
  /** The database file; made, with its folder, when it is not there. On a local disk: not on a network share. */
  readonly file: string;
  /** Told of faults that no call can answer for. By default they go to standard error. */
  readonly onProblem?: (problem: unknown) => void;
  /** Most bytes the database may take; then pushes are refused as on a full disk. */
  readonly most_B?: number;
  /** How long one process waits for another's transaction before it gives up. */
  readonly busyTimeout_ms?: number;
  /** For tests of migrations. */
  readonly migrations?: readonly Migration[];
}

/**
 * Opens the one-file database. Several processes may have it open at once.
 *
 * @throws {StoreError} `newer`, `altered`, `busy`, `unreachable`, `damaged`
 */
export async function openSqlite(options: SqliteOptions): Promise<Store> {
  const { file } = options;
  const onProblem = options.onProblem ?? console.error;
  let db: DatabaseSync | null = null;
  try {
    mkdirSync(dirname(file), { recursive: true });
    db = await connect(file, options.busyTimeout_ms);
    if (options.most_B !== undefined) limitSize(db, options.most_B);
    migrate(db, options.migrations ?? readMigrations(new URL("./migrations/", import.meta.url)), file);
    const mark = new HighWaterMark(file);
    settleEpoch(db, mark);
    return new SqliteStore({ db, file, mark, onProblem });
  } catch (error) {
    db?.close();
    throw asStoreError(error, file);
  }
}

function limitSize(db: DatabaseSync, most_B: number): void {
  const page_B = wholeOf(db.prepare("pragma page_size").get() ?? {}, "page_size");
  db.exec(`pragma max_page_count = ${Math.max(1, Math.floor(most_B / page_B))}`);
}

function migrate(db: DatabaseSync, known: readonly Migration[], file: string): void {
  // The write lock comes first: a second process waits here, and then finds the work done.
  inTransaction(db, () => {
    db.exec(
      `create table if not exists migration (
         number integer primary key, name text not null, sha256 text not null, applied_at_ms integer not null
       ) strict`,
    );
    const applied = db
      .prepare("select number, name, sha256 from migration order by number")
      .all()
      .map(
        (row): Applied => ({
          number: wholeOf(row, "number"),
          name: textOf(row, "name"),
          sha256: textOf(row, "sha256"),
        }),
      );
    const note = db.prepare(
      "insert into migration (number, name, sha256, applied_at_ms) values (?, ?, ?, ?)",
    );
    for (const migration of pendingMigrations(known, applied, file)) {
      db.exec(migration.sql);
      note.run(migration.number, migration.name, migration.sha256, Date.now());
    }
  });
}

/** Gives a new database its epoch, and a database that was put back another one. */
function settleEpoch(db: DatabaseSync, mark: HighWaterMark): void {
  // Read before the database: a commit between the two can only make the database look further, never behind.
  const marked = mark.read();
  const now = inTransaction(db, (): Mark => {
    const kept = db.prepare("select value from meta where key = 'epoch'").get();
    const counted = db
      .prepare("select cast(value as integer) as commits from meta where key = 'commits'")
      .get();
    const commits = counted === undefined ? 0 : wholeOf(counted, "commits");
    if (kept !== undefined && !wasPutBack(marked, { epoch: textOf(kept, "value"), commits })) {
      return { epoch: textOf(kept, "value"), commits };
    }
    const epoch = randomUUID();
    const put = db.prepare(
      "insert into meta (key, value) values (?, ?) on conflict (key) do update set value = excluded.value",
    );
    put.run("epoch", epoch);
    put.run("commits", String(commits));
    return { epoch, commits };
  });
  mark.write(now);
}
