import type { Pool } from "pg";
import { HeadWatch } from "../head-watch.ts";
import { bytesOf, type Row, textOf, wholeOf } from "../row.ts";
import type {
  AircraftHead,
  Appended,
  Arrival,
  KeptEvent,
  OperatorStore,
  Page,
  PageAsked,
  Photo,
  QuarantinedEvent,
} from "../store.ts";
import { appendAny, appendNew } from "./append-events.ts";
import { inTransaction } from "./in-transaction.ts";
import { asStoreError } from "./postgres-fault.ts";

const PLACE = `
  select value as epoch,
    coalesce((select head from aircraft where operator = $1 and aircraft = $2), 0) as head
  from meta where key = 'epoch'`;

/** Numbers have no holes, so the end of the page is known beforehand. The first event always fits. */
const PAGE = `
  select ledger_seq, received_at_ms, text from (
    select ledger_seq, received_at_ms, text,
      sum(octet_length(text)) over (order by ledger_seq) as size, row_number() over (order by ledger_seq) as place
    from event where operator = $1 and aircraft = $2 and ledger_seq > $3 and ledger_seq <= $4) as asked
  where size <= $5 or place = 1 order by ledger_seq`;

const DEVICES = `
  select device, max(device_seq) as highest from (
    select device, device_seq, row_number() over (partition by device order by device_seq) as place
    from event where operator = $1 and aircraft = $2) as numbered
  where device_seq = place group by device order by device`;

const QUARANTINE = `
  select received_at_ms, reason, text from (
    select received_at_ms, reason, text, text_sha256,
      sum(octet_length(text)) over newest as size, row_number() over newest as place
    from (
      select * from quarantine where operator = $1 and aircraft = $2
      order by received_at_ms desc, text_sha256 limit $3) as latest
    window newest as (order by received_at_ms desc, text_sha256)) as asked
  where size <= $4 or place = 1 order by received_at_ms desc, text_sha256`;

/** One operator's part of a PostgreSQL database. */
export class PostgresOperator implements OperatorStore {
  readonly #pool: Pool;
  readonly #operator: string;
  readonly #onWatch: () => void;
  readonly #announce: (operator: string, change: AircraftHead) => void;
  readonly watchers: HeadWatch;

  /**
   * @param onWatch called when somebody starts or stops watching
   * @param announce called after a commit, to tell every process
   */
  constructor(
    pool: Pool,
    operator: string,
    onWatch: () => void,
    announce: (operator: string, change: AircraftHead) => void,
  ) {
    this.#pool = pool;
    this.#operator = operator;
    this.#onWatch = onWatch;
    this.#announce = announce;
    this.watchers = new HeadWatch(() => this.heads());
  }

  async append(aircraft: string, arrivals: readonly Arrival[], receivedAt_ms: number): Promise<Appended> {
    const push = { operator: this.#operator, aircraft, arrivals, receivedAt_ms };
    const appended = await this.#run(
      async () =>
        (await inTransaction(this.#pool, (client) => appendNew(client, push))) ??
        (await inTransaction(this.#pool, (client) => appendAny(client, push))),
    );
    if (appended.results.some(({ outcome }) => outcome === "accepted")) {
      this.#announce(this.#operator, { aircraft, head: appended.head });
    }
    return appended;
  }

  async page(aircraft: string, { after, limit, most_B }: PageAsked): Promise<Page> {
    const [place = {}] = await this.#rows(PLACE, [this.#operator, aircraft]);
    const head = wholeOf(place, "head");
    const rows = await this.#rows(PAGE, [
      this.#operator,
      aircraft,
      after,
      Math.min(head, after + limit),
      most_B,
    ]);
    return { epoch: textOf(place, "epoch"), head, events: rows.map(keptOf) };
  }

  async idAt(aircraft: string, ledgerSeq: number): Promise<string | null> {
    const [row] = await this.#rows(
      "select id from event where operator = $1 and aircraft = $2 and ledger_seq = $3",
      [this.#operator, aircraft, ledgerSeq],
    );
    return row === undefined ? null : textOf(row, "id");
  }

  async heads(): Promise<readonly AircraftHead[]> {
    const rows = await this.#rows(
      "select aircraft, head from aircraft where operator = $1 and head > 0 order by aircraft",
      [this.#operator],
    );
    return rows.map((row) => ({ aircraft: textOf(row, "aircraft"), head: wholeOf(row, "head") }));
  }

  async devices(aircraft: string): Promise<ReadonlyMap<string, number>> {
    const rows = await this.#rows(DEVICES, [this.#operator, aircraft]);
    return new Map(rows.map((row) => [textOf(row, "device"), wholeOf(row, "highest")]));
  }

  async quarantine(aircraft: string, limit: number, most_B: number): Promise<readonly QuarantinedEvent[]> {
    const rows = await this.#rows(QUARANTINE, [this.#operator, aircraft, limit, most_B]);
    return rows.map((row) => ({
      receivedAt_ms: wholeOf(row, "received_at_ms"),
      reason: textOf(row, "reason"),
      text: textOf(row, "text"),
    }));
  }

  async putPhoto(sha256: string, photo: Photo, receivedAt_ms: number): Promise<"stored" | "present"> {
    const bytes = Buffer.from(photo.bytes.buffer, photo.bytes.byteOffset, photo.bytes.byteLength);
    const added = await this.#rows(
      `insert into photo (operator, sha256, media_type, received_at_ms, bytes) values ($1, $2, $3, $4, $5)
       on conflict do nothing returning sha256`,
      [this.#operator, sha256, photo.mediaType, receivedAt_ms, bytes],
    );
    return added.length === 0 ? "present" : "stored";
  }

  async getPhoto(sha256: string): Promise<Photo | null> {
    const [row] = await this.#rows(
      "select media_type, bytes from photo where operator = $1 and sha256 = $2",
      [this.#operator, sha256],
    );
    return row === undefined ? null : { mediaType: textOf(row, "media_type"), bytes: bytesOf(row, "bytes") };
  }

  async hasPhoto(sha256: string): Promise<boolean> {
    const rows = await this.#rows("select 1 as there from photo where operator = $1 and sha256 = $2", [
      this.#operator,
      sha256,
    ]);
    return rows.length > 0;
  }

  watch(listener: (change: AircraftHead) => void): () => void {
    const stop = this.watchers.add(listener);
    this.#onWatch();
    return () => {
      stop();
      this.#onWatch();
    };
  }

  async #rows(sql: string, values: readonly unknown[]): Promise<readonly Row[]> {
    return this.#run(async () => {
      const { rows } = await this.#pool.query(sql, [...values]);
      return rows;
    });
  }

  async #run<T>(work: () => Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (error) {
      throw asStoreError(error);
    }
  }
}

function keptOf(row: Row): KeptEvent {
  return {
    ledgerSeq: wholeOf(row, "ledger_seq"),
    receivedAt_ms: wholeOf(row, "received_at_ms"),
    text: textOf(row, "text"),
  };
}
