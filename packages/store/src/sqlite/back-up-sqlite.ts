import { existsSync } from "node:fs";
import { backup, DatabaseSync } from "node:sqlite";
import { StoreError } from "../store-error.ts";
import { asStoreError } from "./sqlite-fault.ts";

/**
 * Copies a database into another file while programs use it. The copy is one moment of it, whole. A plain copy of the
 * file is not: what was committed last may still be in the log beside it.
 *
 * @throws {StoreError} `unreachable` when there is no such database, or the copy's file is there already
 */
export async function backUpSqlite(file: string, copy: string): Promise<void> {
  if (!existsSync(file)) {
    throw new StoreError(
      "unreachable",
      `There is no database at ${file}. Give the path of the file to copy.`,
    );
  }
  if (existsSync(copy)) {
    throw new StoreError(
      "unreachable",
      `${copy} is there already. Give a new name; nothing was written over.`,
    );
  }
  let db: DatabaseSync | null = null;
  try {
    db = new DatabaseSync(file, { readOnly: true, timeout: 5_000 });
    await backup(db, copy);
  } catch (error) {
    throw asStoreError(error, file);
  } finally {
    db?.close();
  }
}
