import type { HappeningKind, WalkKind } from "@witnessmark/book";
import type { UnitId } from "@witnessmark/engine";
import type { PlannedFlight } from "./flight.ts";
import type { RecordBodies } from "./record-event.ts";

/** Who made an event. Kept whole in each event, so that a ledger can be read with nothing but itself. */
export interface Author {
  /** UUIDv7, made once for a person on a phone. */
  readonly id: string;
  /** Name or initials, as the person gave them. */
  readonly name: string;
  readonly role: "pilot" | "mechanic" | "owner" | "instructor" | "ground-crew";
}

/** A value as it was read: never converted before it is kept. */
export interface Read {
  readonly value: number;
  readonly unit: UnitId;
}

export type Answer = "as-it-should-be" | "not-right" | "could-not-check";
export type CouldNotReason =
  | "too-dark"
  | "out-of-reach"
  | "too-hot"
  | "no-tool"
  | "weather"
  | "something-else";

/** What a photo or a note belongs to. */
export interface Subject {
  readonly kind: "check" | "discrepancy" | "happening" | "walk";
  /** A check's id, or the UUID of the others. */
  readonly id: string;
}

export type Status = "clear" | "caution" | "stop" | "open";

/** Each type of event, and what its body holds at schema version 1. */
export interface Bodies extends RecordBodies {
  /** Which key this device signs with; its first event on an aircraft. */
  "device.introduced": {
    readonly label: string;
    readonly key:
      | { readonly kind: "ecdsa-p256"; readonly publicKey: { readonly x: string; readonly y: string } }
      | { readonly kind: "none"; readonly why: string };
  };
  /** The book in force from here on. The text is in the event, so that a ledger can be assessed by itself. */
  "book.adopted": {
    readonly sha256: string;
    readonly revision: number;
    readonly registration: string;
    readonly type: string;
    readonly text: string;
  };
  "aircraft.archived": { readonly why: string };
  "aircraft.restored": Record<string, never>;
  "walk.started": {
    readonly walk: string;
    readonly kind: WalkKind;
    readonly bookSha256: string;
    /** It was walked on paper between these moments, ISO 8601 with offset, and is typed in afterwards. */
    readonly onPaper?: { readonly begun: string; readonly ended: string };
  };
  "walk.interrupted": {
    readonly walk: string;
    /** Away: the app was left. Said: the pilot said so. */
    readonly cause: "away" | "said";
    readonly left: string;
    readonly back: string;
  };
  "walk.finished": { readonly walk: string };
  "walk.abandoned": { readonly walk: string; readonly why: string };
  "check.answered": {
    readonly walk: string;
    readonly check: string;
    readonly answer: Answer;
    readonly reason?: CouldNotReason;
  };
  "reading.recorded": {
    readonly walk: string;
    readonly check: string;
    readonly gauge: string;
    readonly read: Read;
    readonly temperature?: Read;
  };
  "note.written": { readonly subject: Subject; readonly text: string };
  "photo.attached": {
    readonly subject: Subject;
    readonly sha256: string;
    readonly mediaType: "image/jpeg" | "image/png" | "image/webp";
    readonly size_B: number;
    readonly width_px: number;
    readonly height_px: number;
  };
  "happening.recorded": {
    readonly happening: HappeningKind;
    /** When it happened, as the person says; ISO 8601 with offset. */
    readonly at: string;
    readonly words?: string;
  };
  "groundGear.removed": {
    readonly item: string;
    readonly count: number;
    readonly stowedIn: string;
    readonly walk?: string;
  };
  "groundGear.fitted": { readonly item: string; readonly count: number; readonly walk?: string };
  "discrepancy.raised": {
    readonly discrepancy: string;
    readonly words: string;
    readonly walk?: string;
    readonly check?: string;
    readonly point?: string;
    readonly fault?: string;
    readonly measured?: Read;
    readonly jasc?: string;
  };
  "discrepancy.closed": {
    readonly discrepancy: string;
    readonly how: "put-right" | "no-fault-found";
    readonly words: string;
    /** Who released it, as written on the work order. */
    readonly releasedBy: string;
  };
  /** A flight as it is planned from here on; said again with the same id, it is planned anew. */
  "flight.planned": { readonly flight: string; readonly planned: PlannedFlight };
  /** It will not be made, or was. */
  "flight.dropped": { readonly flight: string; readonly why: string };
  "decision.signed": {
    readonly decision: string;
    readonly walk: string;
    readonly answer: "go" | "not-going";
    readonly flight: PlannedFlight | null;
    /** The moment the assessment was made for, ISO 8601 with offset. */
    readonly at: string;
    readonly bookSha256: string;
    /** SHA-256 over RFC 8785 canonical JSON of the assessment. */
    readonly assessmentSha256: string;
    readonly counts: Readonly<Record<Status, number>>;
    /** What it rests on: every verdict by id, with its status then. */
    readonly restsOn: readonly { readonly verdict: string; readonly status: Status }[];
    /** The highest deviceSeq of each device that the assessment had seen. */
    readonly heads: Readonly<Record<string, number>>;
    /** Why the pilot goes with a caution, an open item or a stop; a stop needs a lawful basis by name. */
    readonly reasons: readonly {
      readonly verdict: string;
      readonly words: string;
      readonly basis?: string;
    }[];
    /** Why, of the decision as a whole: where the pilot is not going and says what for. */
    readonly words?: string;
  };
  /**
   * A correction: the named event no longer counts (it stays in the ledger). Where `event` is the id of what was brought
   * in from a file at one time (`import`), all of that no longer counts.
   */
  "event.withdrawn": { readonly event: string; readonly why: string };
}

export type EventType = keyof Bodies;

/** What every event carries. `hash` is over canonical JSON of all of it but `hash` and `signature`. */
interface Envelope<T extends string, B> {
  /** UUIDv7. */
  readonly id: string;
  readonly operator: string;
  /** The aircraft's registration. */
  readonly aircraft: string;
  /** UUIDv7 of the phone, tablet or program. */
  readonly device: string;
  /** 1, 2, 3 … gapless per device and aircraft. */
  readonly deviceSeq: number;
  readonly author: Author;
  /** Hybrid logical clock as sortable text: milliseconds (15 figures), counter (5 figures). */
  readonly hlc: string;
  /** The device's wall time, ISO 8601 with offset. */
  readonly recordedAt: string;
  /** Device clock minus server clock at the last exchange; absent when never measured. */
  readonly clockOffset_ms?: number;
  readonly type: T;
  readonly schemaVersion: number;
  readonly body: B;
  /** Hash of the device's previous event on this aircraft; `null` for its first. */
  readonly previousHash: string | null;
  readonly hash: string;
  /** ECDSA P-256 with SHA-256 over `hash`, base64url of r‖s; on decisions and sign-offs. */
  readonly signature?: string;
}

/** Every event that this version knows. */
export type KnownEvent = { [T in EventType]: Envelope<T, Bodies[T]> }[EventType];

/** An event of a type or schema version that this version does not know: kept, passed on, reported, never dropped. */
export type UnknownEvent = Envelope<string, unknown>;

export type LedgerEvent = KnownEvent | UnknownEvent;
