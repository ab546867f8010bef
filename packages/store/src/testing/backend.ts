import type { Migration } from "../migration.ts";
import type { Store } from "../store.ts";

/** One empty database for one test. */
export interface TestDatabase {
  /** The migrations that `open` applies when it is given none. */
  readonly migrations: readonly Migration[];
  /** Opens it as a program would; twice for two programs. */
  open(options?: { readonly migrations?: readonly Migration[] }): Promise<Store>;
  /** Runs a statement beside the store, as somebody with a database tool would. */
  run(sql: string): Promise<void>;
  /** Takes a copy of it as it is now; every store of it is closed. @returns puts the copy in its place */
  copy(): Promise<() => Promise<void>>;
  /** Closes what is still open and takes the database away. */
  remove(): Promise<void>;
}
