import { openSqlite } from "./sqlite/open-sqlite.ts";
import type { Store } from "./store.ts";

export interface StoreOptions {
  /** A PostgreSQL database; without it, `file` is used. */
  readonly databaseUrl?: string | undefined;
  /** The one-file database. */
  readonly file: string;
  /** Told of faults that no call can answer for. By default they go to standard error. */
  readonly onProblem?: (problem: unknown) => void;
}

/**
 * Opens the database that the settings name, and makes it ready.
 *
 * @throws {StoreError} when it cannot be reached or used
 */
export async function openStore({
  databaseUrl,
  file,
  onProblem = console.error,
}: StoreOptions): Promise<Store> {
  if (databaseUrl === undefined || databaseUrl === "") return openSqlite({ file, onProblem });
  // Loaded only when it is needed: the driver is half of what a start would load.
  const { openPostgres } = await import("./postgres/open-postgres.ts");
  return openPostgres({ databaseUrl, onProblem });
}
