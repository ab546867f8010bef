import { DatabaseSync } from "node:sqlite";
import { isBusy } from "./sqlite-fault.ts";

/**
 * Opens a file with the settings that the promises rest on: a write-ahead log, so that readers and one writer do not
 * stop each other; every commit waits for the disk; nothing in the file can run functions.
 *
 * @param patience_ms how long one process waits for another's transaction before it gives up
 */
export async function connect(file: string, patience_ms = 5_000): Promise<DatabaseSync> {
  const db = new DatabaseSync(file, { timeout: patience_ms });
  try {
    await useWriteAheadLog(db, patience_ms);
    db.exec("pragma synchronous = full; pragma trusted_schema = off;");
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}

/**
 * The switch to write-ahead logging needs the file alone for a moment, and SQLite does not wait for it: two processes
 * that start at once must try again by themselves.
 */
async function useWriteAheadLog(db: DatabaseSync, patience_ms: number): Promise<void> {
  const until_ms = performance.now() + patience_ms;
  for (;;) {
    try {
      db.prepare("pragma journal_mode = wal").get();
      return;
    } catch (error) {
      if (!isBusy(error) || performance.now() > until_ms) throw error;
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
  }
}
