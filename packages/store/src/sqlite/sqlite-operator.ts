import { createHash } from "node:crypto";
import type { DatabaseSync, StatementSync } from "node:sqlite";
import { decide, type Known, type SetAside } from "../decide.ts";
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
import { inTransaction } from "./in-transaction.ts";
import { asStoreError } from "./sqlite-fault.ts";
import type { SqliteParts } from "./sqlite-parts.ts";

/** One operator's part of the one-file database. */
export class SqliteOperator implements OperatorStore {
  readonly #parts: SqliteParts;
  readonly #operator: string;
  readonly #statements = new Map<string, StatementSync>();
  readonly #onWatch: () => void;
  readonly watchers: HeadWatch;

  /** @param onWatch called when somebody starts or stops watching */
  constructor(parts: SqliteParts, operator: string, onWatch: () => void) {
    this.#parts = parts;
    this.#operator = operator;
    this.#onWatch = onWatch;
    this.watchers = new HeadWatch(() => this.heads());
  }

  async append(aircraft: string, arrivals: readonly Arrival[], receivedAt_ms: number): Promise<Appended> {
    const done = this.#run((db) =>
      inTransaction(db, () => {
        const head = this.#head(aircraft);
        const decided = decide(head, arrivals, this.#known(aircraft, arrivals));
        this.#addEvents(aircraft, decided.numbered, receivedAt_ms);
        this.#setAside(aircraft, decided.setAside, receivedAt_ms);
        if (decided.head !== head) this.#setHead(aircraft, decided.head);
        const commits = this.#countCommit();
        return {
          epoch: this.#epoch(),
          head: decided.head,
          results: decided.results,
          commits,
          moved: decided.head !== head,
        };
      }),
    );
    this.#mark(done.epoch, done.commits);
    if (done.moved) this.watchers.tell({ aircraft, head: done.head });
    return { epoch: done.epoch, head: done.head, results: done.results };
  }

  async page(aircraft: string, { after, limit, most_B }: PageAsked): Promise<Page> {
    return this.#run(() => {
      const head = this.#head(aircraft);
      const rows = this.#prepare(
        `select ledger_seq, received_at_ms, text from event
         where operator = ? and aircraft = ? and ledger_seq > ? and ledger_seq <= ? order by ledger_seq`,
      ).iterate(this.#operator, aircraft, after, Math.min(head, after + limit));
      const events = upToBytes(
        rows,
        most_B,
        (row): KeptEvent => ({
          ledgerSeq: wholeOf(row, "ledger_seq"),
          receivedAt_ms: wholeOf(row, "received_at_ms"),
          text: textOf(row, "text"),
        }),
      );
      return { epoch: this.#epoch(), head, events };
    });
  }

  async idAt(aircraft: string, ledgerSeq: number): Promise<string | null> {
    return this.#run(() => {
      const row = this.#prepare(
        "select id from event where operator = ? and aircraft = ? and ledger_seq = ?",
      ).get(this.#operator, aircraft, ledgerSeq);
      return row === undefined ? null : textOf(row, "id");
    });
  }

  async heads(): Promise<readonly AircraftHead[]> {
    return this.#run(() =>
      this.#prepare("select aircraft, head from aircraft where operator = ? and head > 0 order by aircraft")
        .all(this.#operator)
        .map((row) => ({ aircraft: textOf(row, "aircraft"), head: wholeOf(row, "head") })),
    );
  }

  async devices(aircraft: string): Promise<ReadonlyMap<string, number>> {
    return this.#run(() => {
      const rows = this.#prepare(
        `select device, max(device_seq) as highest from (
           select device, device_seq, row_number() over (partition by device order by device_seq) as place
           from event where operator = ? and aircraft = ?)
         where device_seq = place group by device order by device`,
      ).all(this.#operator, aircraft);
      return new Map(rows.map((row) => [textOf(row, "device"), wholeOf(row, "highest")]));
    });
  }

  async quarantine(aircraft: string, limit: number, most_B: number): Promise<readonly QuarantinedEvent[]> {
    return this.#run(() => {
      const rows = this.#prepare(
        `select received_at_ms, reason, text from quarantine where operator = ? and aircraft = ?
         order by received_at_ms desc, text_sha256 limit ?`,
      ).iterate(this.#operator, aircraft, limit);
      return upToBytes(
        rows,
        most_B,
        (row): QuarantinedEvent => ({
          receivedAt_ms: wholeOf(row, "received_at_ms"),
          reason: textOf(row, "reason"),
          text: textOf(row, "text"),
        }),
      );
    });
  }

  async putPhoto(sha256: string, photo: Photo, receivedAt_ms: number): Promise<"stored" | "present"> {
    return this.#run(() => {
      const { changes } = this.#prepare(
        `insert into photo (operator, sha256, media_type, received_at_ms, bytes) values (?, ?, ?, ?, ?)
         on conflict do nothing`,
      ).run(this.#operator, sha256, photo.mediaType, receivedAt_ms, photo.bytes);
      return Number(changes) === 0 ? "present" : "stored";
    });
  }

  async getPhoto(sha256: string): Promise<Photo | null> {
    return this.#run(() => {
      const row = this.#prepare("select media_type, bytes from photo where operator = ? and sha256 = ?").get(
        this.#operator,
        sha256,
      );
      return row === undefined
        ? null
        : { mediaType: textOf(row, "media_type"), bytes: bytesOf(row, "bytes") };
    });
  }

  async hasPhoto(sha256: string): Promise<boolean> {
    return this.#run(
      () =>
        this.#prepare("select 1 from photo where operator = ? and sha256 = ?").get(this.#operator, sha256) !==
        undefined,
    );
  }

  watch(listener: (change: AircraftHead) => void): () => void {
    const stop = this.watchers.add(listener);
    this.#onWatch();
    return () => {
      stop();
      this.#onWatch();
    };
  }

  #run<T>(work: (db: DatabaseSync) => T): T {
    try {
      return work(this.#parts.db);
    } catch (error) {
      throw asStoreError(error, this.#parts.file);
    }
  }

  #prepare(sql: string): StatementSync {
    let statement = this.#statements.get(sql);
    if (statement === undefined) {
      statement = this.#parts.db.prepare(sql);
      this.#statements.set(sql, statement);
    }
    return statement;
  }

  #epoch(): string {
    return textOf(this.#prepare("select value from meta where key = 'epoch'").get() ?? {}, "value");
  }

  #head(aircraft: string): number {
    const row = this.#prepare("select head from aircraft where operator = ? and aircraft = ?").get(
      this.#operator,
      aircraft,
    );
    return row === undefined ? 0 : wholeOf(row, "head");
  }

  /** The events of this aircraft that share an id, or a device and deviceSeq, with an arrival. */
  #known(aircraft: string, arrivals: readonly Arrival[]): readonly Known[] {
    const columns =
      "select id, device, device_seq, ledger_seq, text from event where operator = ? and aircraft = ?";
    const byId = this.#prepare(`${columns} and id = ?`);
    const byPlace = this.#prepare(`${columns} and device = ? and device_seq = ?`);
    return arrivals.flatMap((arrival) => {
      if (arrival.kind === "unsound") return [];
      const rows: readonly (Row | undefined)[] = [
        byId.get(this.#operator, aircraft, arrival.id),
        byPlace.get(this.#operator, aircraft, arrival.device, arrival.deviceSeq),
      ];
      return rows.filter((row) => row !== undefined).map(knownOf);
    });
  }

  #addEvents(aircraft: string, events: readonly Known[], receivedAt_ms: number): void {
    const add = this.#prepare(
      `insert into event (operator, aircraft, ledger_seq, id, device, device_seq, received_at_ms, text)
       values (?, ?, ?, ?, ?, ?, ?, ?)`,
    );
    for (const { ledgerSeq, id, device, deviceSeq, text } of events) {
      add.run(this.#operator, aircraft, ledgerSeq, id, device, deviceSeq, receivedAt_ms, text);
    }
  }

  #setAside(aircraft: string, events: readonly SetAside[], receivedAt_ms: number): void {
    const add = this.#prepare(
      `insert into quarantine (operator, aircraft, text_sha256, received_at_ms, reason, text)
       values (?, ?, ?, ?, ?, ?) on conflict do nothing`,
    );
    for (const { reason, text } of events) {
      const sha256 = createHash("sha256").update(text).digest("hex");
      add.run(this.#operator, aircraft, sha256, receivedAt_ms, reason, text);
    }
  }

  #setHead(aircraft: string, head: number): void {
    this.#prepare(
      `insert into aircraft (operator, aircraft, head) values (?, ?, ?)
       on conflict (operator, aircraft) do update set head = excluded.head`,
    ).run(this.#operator, aircraft, head);
  }

  #countCommit(): number {
    const row = this.#prepare(
      "update meta set value = cast(value as integer) + 1 where key = 'commits' returning cast(value as integer) as commits",
    ).get();
    return wholeOf(row ?? {}, "commits");
  }

  /** After the commit. When it cannot be written it lags, which it may; what was committed stays acknowledged. */
  #mark(epoch: string, commits: number): void {
    try {
      this.#parts.mark.write({ epoch, commits });
    } catch (error) {
      this.#parts.onProblem(error);
    }
  }
}

function knownOf(row: Row): Known {
  return {
    id: textOf(row, "id"),
    device: textOf(row, "device"),
    deviceSeq: wholeOf(row, "device_seq"),
    ledgerSeq: wholeOf(row, "ledger_seq"),
    text: textOf(row, "text"),
  };
}

/** Reads rows until they hold `most_B` bytes of text, but at least one. */
function upToBytes<T extends { readonly text: string }>(
  rows: Iterable<Row>,
  most_B: number,
  read: (row: Row) => T,
): readonly T[] {
  const taken: T[] = [];
  let size_B = 0;
  for (const row of rows) {
    const one = read(row);
    size_B += Buffer.byteLength(one.text);
    if (taken.length > 0 && size_B > most_B) break;
    taken.push(one);
  }
  return taken;
}
