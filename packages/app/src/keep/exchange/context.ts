import type { LedgerEvent } from "@witnessmark/ledger";
import type { Locks } from "../locks.ts";
import type { Connection } from "../storage/open-database.ts";
import type { AircraftRow, DeviceRow } from "../storage/schema.ts";
import type { Server } from "./server.ts";

/** What an exchange has changed in the storage, told after it has committed. */
export interface ExchangeNews {
  readonly aircraft: string;
  readonly row: AircraftRow;
  /** New events. */
  readonly inserted?: readonly LedgerEvent[];
  /** Events were taken out or replaced: only the storage can tell what is left. */
  readonly lookAgain?: boolean;
}

/** What every part of an exchange works with. */
export interface ExchangeContext {
  readonly connection: Connection;
  readonly locks: Locks;
  readonly server: Server;
  readonly now_ms: () => number;
  /** Who this phone is, and every id it had before. */
  readonly device: () => DeviceRow;
  /** How many more ids this phone may take in this sitting. */
  readonly newIds: { left: number };
  /** This phone has taken another id. */
  readonly deviceChanged: () => Promise<void>;
  /** From so many events on a ledger is long: a phone that is new to it takes what it needs, and no more. */
  readonly longLedger: number;
  /** Highest deviceSeq that this phone holds, per device. */
  readonly heads: (aircraft: string) => ReadonlyMap<string, number>;
  readonly tell: (news: ExchangeNews) => Promise<void>;
}

/** The database at the server is another one than the numbers kept here are of. */
export class EpochMoved extends Error {
  override readonly name = "EpochMoved";
  readonly epoch: string;
  constructor(epoch: string) {
    super(`the server's database is now ${epoch}`);
    this.epoch = epoch;
  }
}

/** The server contradicts itself; a sentence for a person. */
export class ServerInconsistent extends Error {
  override readonly name = "ServerInconsistent";
}
