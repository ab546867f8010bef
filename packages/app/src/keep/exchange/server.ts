import type { LedgerEvent } from "@witnessmark/ledger";
import type {
  About,
  AircraftList,
  DevicesAnswer,
  NeededPlace,
  PullPlace,
  PushAnswer,
} from "@witnessmark/server/client";
import type { CheckedNeeded, CheckedPage } from "./check-page.ts";

export type { About, NeededPlace, PullPlace, PushAnswer };

/** The rules of the wire that this app speaks; the server's protocol.ts says the same, and a test compares them. */
export const PROTOCOL_VERSION = 1;
export const PAGE_EVENTS = 500;

/** No answer, or none from a Witnessmark server, or one that asks to come back later. */
export class OutOfReach extends Error {
  override readonly name = "OutOfReach";
}

/** The server answered, and said no. */
export class Refused extends Error {
  override readonly name = "Refused";
  readonly status: number;
  readonly code: string;
  constructor(status: number, code: string, message: string, options?: ErrorOptions) {
    super(message, options);
    this.status = status;
    this.code = code;
  }
}

/** The server, as the exchange speaks to it. Every call throws {OutOfReach} or {Refused} when it does not succeed. */
export interface Server {
  about(): Promise<About>;
  aircraft(): Promise<AircraftList>;
  push(aircraft: string, events: readonly LedgerEvent[]): Promise<PushAnswer>;
  /** @throws {Refused} `another-history` when another event than `afterId` stands at `after` */
  pull(aircraft: string, place: PullPlace): Promise<CheckedPage>;
  /** What of a long ledger a new phone needs; `null` from a server that cannot tell. */
  needed(aircraft: string, place: NeededPlace): Promise<CheckedNeeded | null>;
  devices(aircraft: string): Promise<DevicesAnswer>;
  hasPhoto(sha256: string): Promise<boolean>;
  putPhoto(sha256: string, bytes: ArrayBuffer): Promise<void>;
  /** `null` when the server does not have it. */
  getPhoto(sha256: string): Promise<Blob | null>;
}
