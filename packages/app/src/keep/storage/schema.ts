import type { Book, BookDraft, BookFault } from "@witnessmark/book";
import type { AircraftState, Author, DeviceKey, LedgerEvent } from "@witnessmark/ledger";
import type { DBSchema, IDBPDatabase } from "idb";

/** Counts up with each addition below. Additions only: an old page and a new one may run side by side. */
export const DATABASE_VERSION = 2;

/** What this phone knows of one aircraft's ledger besides its events. Written in the same transaction as they are. */
export interface AircraftRow {
  readonly aircraft: string;
  /** This phone's own chain: the device it was written as, and its last event. */
  readonly chain: { readonly device: string; readonly deviceSeq: number; readonly hash: string } | null;
  /** The hybrid logical clock after every event made or merged here. */
  readonly hlc: string | null;
  /** How many events of this aircraft the store holds. */
  readonly eventCount: number;
  /** The server's numbers from 1 to here are on this phone, as counted by the database `epoch`. */
  readonly pulledTo: number;
  /** The id of the event at `pulledTo`, where it is known: another one there means another history. */
  readonly pulledId: string | null;
  readonly epoch: string | null;
  /** The server may lack events that this phone holds: compare, and push them again. */
  readonly refill: boolean;
  /** The server's figures per device when the last refill had sent everything: no more can be done about those. */
  readonly settled: Readonly<Record<string, number>>;
  /** The ledger is new to this phone, and goes to this number of the server's: until that is here, it is half a record. */
  readonly comingTo?: number;
  /** Set where this phone came to a long ledger: what was answered on walks long past is at the server. */
  readonly older?: OlderRow;
}

/** What of a ledger is not on this phone. */
export interface OlderRow {
  /** From this number of the server's on everything is here; of those before it, what verdicts rest on. */
  readonly wholeFrom: number;
  /** The event there: its stamp, and what the clock of its phone showed. `null` until the first taking has ended. */
  readonly since: { readonly hlc: string; readonly recordedAt: string } | null;
  /** Something came in late that may make more of it needed: the server is asked again. */
  readonly askAgain: boolean;
  /** How far the taking of what is needed has come. */
  readonly taking: { readonly epoch: string; readonly upTo: number; readonly to: number } | null;
}

export interface OutboxRow {
  readonly id: string;
  readonly aircraft: string;
  readonly device: string;
  readonly deviceSeq: number;
  readonly state: "waiting" | "quarantined";
  /** Why the server keeps it apart. */
  readonly reason?: string;
}

/** An event that is kept but is no part of the ledger: it came damaged, or the ledger holds another in its place. */
export interface ApartRow {
  readonly id: string;
  readonly aircraft: string;
  readonly reason: string;
  /** As it came. */
  readonly text: string;
  /** The event that carries its contents into the ledger, when it was entered again. */
  readonly enteredAgainAs?: string;
}

/** The bytes themselves, not a Blob: a strict transaction then covers them, and every browser stores them. */
export interface PhotoRow {
  readonly sha256: string;
  readonly mediaType: "image/jpeg" | "image/png" | "image/webp";
  readonly bytes: ArrayBuffer;
}

/** What is known of a photo's way to the server, apart from its bytes, so that looking at it costs nothing. */
export interface UploadRow {
  readonly sha256: string;
  readonly aircraft: string;
  /** The event that it was taken for, when it was taken on this phone; another's can be fetched again. */
  readonly event: string | null;
  /** `refused`: the server will not have it. */
  readonly state: "waiting" | "there" | "refused";
  /** It was there once: the server is asked before the bytes are sent again. */
  readonly wasThere?: boolean;
  readonly refusal?: string;
}

/** Who this phone is. The private key stays inside the browser: it cannot be exported. */
export interface DeviceRow {
  readonly id: string;
  /** Ids it had before, until each turned out to be used elsewhere too. */
  readonly former: readonly string[];
  readonly label: string;
  readonly key: DeviceKey;
}

/** One value each, by name. */
export interface Settings {
  readonly device: DeviceRow;
  readonly person: string;
  readonly operator: string;
  readonly lastReachedAt_ms: number;
  readonly clockOffset_ms: number;
}

/** A book as read, so that the reader is loaded only for a book that is new to this phone. */
export interface BookRow {
  readonly sha256: string;
  /** The stamp of the code that read it. */
  readonly shape: string;
  readonly book: Book | null;
  readonly faults: readonly BookFault[];
}

/** The state of an aircraft up to some event: a copy to start from, thrown away at any doubt. */
export interface ProjectionRow {
  readonly aircraft: string;
  readonly shape: string;
  readonly state: AircraftState;
}

/** A book in the making, by the registration that it is for. */
export interface BookDraftRow {
  readonly registration: string;
  readonly draft: BookDraft;
  /** Counts up each time it is kept: two windows do not overwrite each other. */
  readonly timesKept: number;
  readonly changedAt_ms: number;
}

export interface KeepSchema extends DBSchema {
  events: {
    key: string;
    value: LedgerEvent;
    indexes: {
      byChain: [string, string, number];
      byOrder: [string, string, string, number];
      /** Withdrawals only: no other event has `body.event`. */
      byTarget: [string, string];
    };
  };
  aircraft: { key: string; value: AircraftRow };
  outbox: { key: string; value: OutboxRow; indexes: { byAircraft: [string, string, string, number] } };
  apart: { key: string; value: ApartRow; indexes: { byAircraft: string } };
  photos: { key: string; value: PhotoRow };
  uploads: { key: string; value: UploadRow; indexes: { byState: UploadRow["state"] } };
  people: { key: string; value: Author };
  settings: { key: keyof Settings; value: Settings[keyof Settings] };
  books: { key: string; value: BookRow };
  projections: { key: string; value: ProjectionRow };
  drafts: { key: string; value: BookDraftRow };
}

export type KeepDatabase = IDBPDatabase<KeepSchema>;

/** Brings a database of an older version up to this one, by additions only. */
export function upgrade(database: KeepDatabase, oldVersion: number): void {
  if (oldVersion < 1) {
    const events = database.createObjectStore("events", { keyPath: "id" });
    events.createIndex("byChain", ["aircraft", "device", "deviceSeq"]);
    events.createIndex("byOrder", ["aircraft", "hlc", "device", "deviceSeq"]);
    events.createIndex("byTarget", ["aircraft", "body.event"]);
    database.createObjectStore("aircraft", { keyPath: "aircraft" });
    database
      .createObjectStore("outbox", { keyPath: "id" })
      .createIndex("byAircraft", ["aircraft", "state", "device", "deviceSeq"]);
    database.createObjectStore("apart", { keyPath: "id" }).createIndex("byAircraft", "aircraft");
    database.createObjectStore("photos", { keyPath: "sha256" });
    database.createObjectStore("uploads", { keyPath: "sha256" }).createIndex("byState", "state");
    database.createObjectStore("people", { keyPath: "id" });
    database.createObjectStore("settings");
    database.createObjectStore("books", { keyPath: "sha256" });
    database.createObjectStore("projections", { keyPath: "aircraft" });
  }
  if (oldVersion < 2) database.createObjectStore("drafts", { keyPath: "registration" });
}

/** It is new to this phone and not all here, and nothing of it is this phone's own: half a record must judge nothing. */
export const isComing = ({ comingTo, chain }: AircraftRow): boolean =>
  chain === null && comingTo !== undefined;

/** What is known of an aircraft of which nothing is known. */
export const newAircraftRow = (aircraft: string): AircraftRow => ({
  aircraft,
  chain: null,
  hlc: null,
  eventCount: 0,
  pulledTo: 0,
  pulledId: null,
  epoch: null,
  refill: false,
  settled: {},
});
