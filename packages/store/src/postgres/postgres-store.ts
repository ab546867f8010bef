import type { ClientConfig, Pool } from "pg";
import { type Row, textOf, wholeOf } from "../row.ts";
import type { AircraftHead, OperatorStore, Store } from "../store.ts";
import { Announcements, announceStatement } from "./announcements.ts";
import { asStoreError } from "./postgres-fault.ts";
import { PostgresOperator } from "./postgres-operator.ts";

/** How often the heads are looked up while somebody watches: heals an announcement that was lost with its process. */
const LOOK_EVERY_MS = 15_000;

export class PostgresStore implements Store {
  readonly kind = "postgresql";
  readonly #pool: Pool;
  readonly #onProblem: (problem: unknown) => void;
  readonly #operators = new Map<string, PostgresOperator>();
  readonly #announcements: Announcements;
  readonly #announcing = new Set<Promise<unknown>>();
  #looking: NodeJS.Timeout | null = null;
  #closed = false;

  constructor(pool: Pool, config: ClientConfig, onProblem: (problem: unknown) => void) {
    this.#pool = pool;
    this.#onProblem = onProblem;
    this.#announcements = new Announcements(
      config,
      ({ operator, aircraft, head }) => this.#operators.get(operator)?.watchers.tell({ aircraft, head }),
      () => void this.#look(),
      onProblem,
    );
  }

  forOperator(operator: string): OperatorStore {
    let one = this.#operators.get(operator);
    if (one === undefined) {
      one = new PostgresOperator(
        this.#pool,
        operator,
        () => this.#lookOrNot(),
        (name, change) => this.#announce(name, change),
      );
      this.#operators.set(operator, one);
    }
    return one;
  }

  async epoch(): Promise<string> {
    const [row = {}] = await this.#rows("select value from meta where key = 'epoch'");
    return textOf(row, "value");
  }

  /** PostgreSQL looks after its own pages; this looks at what the ledger promises. */
  async check(): Promise<readonly string[]> {
    const holes = await this.#rows(
      `select a.operator, a.aircraft, a.head, count(e.ledger_seq) as events, coalesce(max(e.ledger_seq), 0) as highest
       from aircraft a left join event e on e.operator = a.operator and e.aircraft = a.aircraft
       group by a.operator, a.aircraft
       having count(e.ledger_seq) <> a.head or coalesce(max(e.ledger_seq), 0) <> a.head`,
    );
    return holes.map(
      (row) =>
        `${textOf(row, "operator")} ${textOf(row, "aircraft")}: the counter says ${wholeOf(row, "head")} events, but ${wholeOf(row, "events")} are there, the highest numbered ${wholeOf(row, "highest")}.`,
    );
  }

  async close(): Promise<void> {
    if (this.#closed) return;
    this.#closed = true;
    if (this.#looking !== null) clearInterval(this.#looking);
    await this.#announcements.setWanted(false);
    await Promise.all(this.#announcing);
    await this.#pool.end();
  }

  async #rows(sql: string): Promise<readonly Row[]> {
    try {
      const { rows } = await this.#pool.query(sql);
      return rows;
    } catch (error) {
      throw asStoreError(error);
    }
  }

  /** After the commit, so the push is answered without waiting for it. */
  #announce(operator: string, change: AircraftHead): void {
    const announcing = this.#pool
      .query(announceStatement({ operator, ...change }))
      .catch(this.#onProblem)
      .finally(() => this.#announcing.delete(announcing));
    this.#announcing.add(announcing);
  }

  #lookOrNot(): void {
    const watched = [...this.#operators.values()].some((operator) => operator.watchers.isWatched);
    this.#announcements.setWanted(watched && !this.#closed).catch(this.#onProblem);
    if (!watched && this.#looking !== null) {
      clearInterval(this.#looking);
      this.#looking = null;
    }
    if (watched && this.#looking === null) {
      this.#looking = setInterval(() => void this.#look(), LOOK_EVERY_MS);
      this.#looking.unref();
    }
  }

  async #look(): Promise<void> {
    try {
      for (const operator of this.#operators.values()) await operator.watchers.refresh();
    } catch (error) {
      this.#onProblem(error);
    }
  }
}
