import type { LedgerEvent } from "@witnessmark/ledger";

/** Raised when an old phone and a new server, or the other way round, can no longer understand each other. */
export const PROTOCOL_VERSION = 1;

/** Most events in one push or one page of a pull; a body is at most 2 MB. */
export const PAGE_EVENTS = 500;

/** GET /api/about */
export interface About {
  readonly program: "witnessmark";
  readonly version: string;
  readonly protocolVersion: number;
  readonly operator: string;
  /** Made when the database is created; another one means another database, or an older copy put back. */
  readonly epoch: string;
  /** The server's clock, ISO 8601 UTC. */
  readonly now: string;
}

/** GET /api/weather?codes=… */
export interface WeatherAnswer {
  /** Host of the service that was asked. */
  readonly from: string;
  /** The server's clock when it had asked, ISO 8601 UTC. */
  readonly at: string;
  readonly reports: readonly { readonly code: string; readonly metar?: string; readonly taf?: string }[];
}

/** GET /api/aircraft */
export interface AircraftList {
  readonly epoch: string;
  readonly aircraft: readonly { readonly aircraft: string; readonly head: number }[];
}

/** POST /api/aircraft/:aircraft/events */
export interface PushRequest {
  readonly protocolVersion: number;
  readonly events: readonly LedgerEvent[];
}

/** What became of one pushed event. Everything but `conflict` is committed when the answer is sent. */
export type PushResult =
  | { readonly id: string; readonly outcome: "accepted"; readonly ledgerSeq: number }
  | { readonly id: string; readonly outcome: "duplicate"; readonly ledgerSeq: number }
  /** The same id, or the same device and deviceSeq, with other contents: kept as quarantined, and loud. */
  | { readonly id: string; readonly outcome: "conflict"; readonly reason: string }
  /** Kept and shown, not numbered: its hash or its shape is wrong. */
  | { readonly id: string; readonly outcome: "quarantined"; readonly reason: string };

export interface PushAnswer {
  readonly epoch: string;
  readonly head: number;
  readonly results: readonly PushResult[];
}

/**
 * GET /api/aircraft/:aircraft/events?after=N&limit=500&afterId=…
 *
 * A page can hold fewer events than asked for when they are large: go on until `head`. With `afterId`, the id of the
 * event at `after` as the reader knows it, the answer is 409 `another-history` when another event stands there. Then,
 * as with another epoch or with `after` beyond `head`: start again from zero, and send what `devices` lacks.
 */
export interface PullAnswer {
  readonly epoch: string;
  readonly head: number;
  readonly events: readonly {
    readonly ledgerSeq: number;
    /** ISO 8601 UTC. */
    readonly receivedAt: string;
    readonly event: LedgerEvent;
  }[];
}

/**
 * GET /api/aircraft/:aircraft/needed?after=N&upTo=M
 *
 * For a phone that has nothing yet of a long ledger: the events after `after`, up to number `upTo` (the head when it is
 * left out), that it needs to come to the same verdicts as one that has them all. Left out is only what was answered
 * on walks long past (`LongPast` of the ledger), and nothing from number `wholeFrom` on. Ask again with `after` = `to`
 * and the same `upTo` until the two are one. What was left out is had by pulls, whenever somebody asks for it.
 */
export interface NeededAnswer extends PullAnswer {
  readonly upTo: number;
  /** Everything up to this number was looked through. */
  readonly to: number;
  readonly wholeFrom: number;
}

/** GET /api/aircraft/:aircraft/devices: the highest deviceSeq without a hole before it, per device. */
export interface DevicesAnswer {
  readonly epoch: string;
  readonly devices: Readonly<Record<string, number>>;
}

/** GET /api/aircraft/:aircraft/quarantine?limit=500, newest first */
export interface QuarantineAnswer {
  readonly events: readonly { readonly receivedAt: string; readonly reason: string; readonly text: string }[];
}

/**
 * One message of GET /api/live (server-sent events, event name `head`): first how every aircraft stands, then each time
 * an aircraft has new events. A hint: what is missed is found by the next pull.
 */
export interface LiveMessage {
  readonly aircraft: string;
  readonly head: number;
  readonly epoch: string;
}

/**
 * Every refusal. 400, 404, 409, 413, 415, 422: this request is wrong, and stays wrong. 426 `protocol-version`: the app
 * or the server is too old. 403 `foreign-page`, 421 `unknown-host`: not asked for at this server's own address. 429 and
 * 503, with Retry-After: later. 507 `disk-full`: later, once somebody has made room; nothing of it was kept.
 */
export interface ErrorAnswer {
  readonly error: { readonly code: string; readonly message: string; readonly field?: string };
}

/*
 * PUT  /api/photos/:sha256   body: the picture; answers 201, or 204 when it is already there; 415, 413, 422 (another hash)
 * HEAD /api/photos/:sha256, GET /api/photos/:sha256
 * GET  /api/aircraft/:aircraft/decisions/:decision/sheet.pdf
 * GET  /api/aircraft/:aircraft/ledger.jsonl
 */
