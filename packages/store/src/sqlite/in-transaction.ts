import type { DatabaseSync } from "node:sqlite";

/** Runs `work` under the write lock; nothing of it stays when it throws. */
export function inTransaction<T>(db: DatabaseSync, work: () => T): T {
  db.exec("begin immediate");
  try {
    const result = work();
    db.exec("commit");
    return result;
  } catch (error) {
    // On a full disk SQLite may have rolled back by itself.
    if (db.isTransaction) db.exec("rollback");
    throw error;
  }
}
