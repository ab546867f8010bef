import type { DatabaseSync } from "node:sqlite";
import { textOf, wholeOf } from "../row.ts";
import type { OperatorStore, Store } from "../store.ts";
import { asStoreError } from "./sqlite-fault.ts";
import { SqliteOperator } from "./sqlite-operator.ts";
import type { SqliteParts } from "./sqlite-parts.ts";

/** How often another process's commits are looked for while somebody watches. Reads one number; no disk. */
const LOOK_EVERY_MS = 200;

export class SqliteStore implements Store {
  readonly kind = "sqlite";
  readonly #parts: SqliteParts;
  readonly #operators = new Map<string, SqliteOperator>();
  #looking: NodeJS.Timeout | null = null;
  #dataVersion = 0;

  constructor(parts: SqliteParts) {
    this.#parts = parts;
  }

  forOperator(operator: string): OperatorStore {
    let one = this.#operators.get(operator);
    if (one === undefined) {
      one = new SqliteOperator(this.#parts, operator, () => this.#lookOrNot());
      this.#operators.set(operator, one);
    }
    return one;
  }

  async epoch(): Promise<string> {
    return this.#run((db) =>
      textOf(db.prepare("select value from meta where key = 'epoch'").get() ?? {}, "value"),
    );
  }

  async check(): Promise<readonly string[]> {
    return this.#run((db) => {
      const damage = db
        .prepare("pragma integrity_check")
        .all()
        .map((row) => textOf(row, "integrity_check"))
        .filter((line) => line !== "ok");
      const holes = db
        .prepare(
          `select a.operator, a.aircraft, a.head, count(e.ledger_seq) as events, coalesce(max(e.ledger_seq), 0) as highest
           from aircraft a left join event e on e.operator = a.operator and e.aircraft = a.aircraft
           group by a.operator, a.aircraft having events <> a.head or highest <> a.head`,
        )
        .all()
        .map(
          (row) =>
            `${textOf(row, "operator")} ${textOf(row, "aircraft")}: the counter says ${wholeOf(row, "head")} events, but ${wholeOf(row, "events")} are there, the highest numbered ${wholeOf(row, "highest")}.`,
        );
      return [...damage, ...holes];
    });
  }

  /** Writes what is in the log into the file, so that the file alone is a whole copy. */
  async close(): Promise<void> {
    const { db, mark } = this.#parts;
    if (this.#looking !== null) clearInterval(this.#looking);
    if (!db.isOpen) return;
    try {
      // A checkpoint that another process holds up is done by that process when it closes.
      db.prepare("pragma wal_checkpoint(truncate)").get();
    } finally {
      db.close();
      mark.close();
    }
  }

  #run<T>(work: (db: DatabaseSync) => T): T {
    try {
      return work(this.#parts.db);
    } catch (error) {
      throw asStoreError(error, this.#parts.file);
    }
  }

  #lookOrNot(): void {
    const watched = [...this.#operators.values()].some((operator) => operator.watchers.isWatched);
    if (!watched && this.#looking !== null) {
      clearInterval(this.#looking);
      this.#looking = null;
    }
    if (watched && this.#looking === null) {
      this.#dataVersion = this.#readDataVersion();
      this.#looking = setInterval(() => void this.#look(), LOOK_EVERY_MS);
      this.#looking.unref();
    }
  }

  /** Changes only when another connection has committed. */
  #readDataVersion(): number {
    return wholeOf(this.#parts.db.prepare("pragma data_version").get() ?? {}, "data_version");
  }

  async #look(): Promise<void> {
    try {
      const version = this.#readDataVersion();
      if (version === this.#dataVersion) return;
      this.#dataVersion = version;
      for (const operator of this.#operators.values()) await operator.watchers.refresh();
    } catch (error) {
      this.#parts.onProblem(error);
    }
  }
}
