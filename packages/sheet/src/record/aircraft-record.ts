import type { Answer, LocalDate, Status } from "@witnessmark/ledger";
import type { RecordPeriod } from "./period.ts";

/** Who wrote a thing down, when, and which line of the ledger it is. */
export interface RecordEntry {
  /** ISO 8601 with offset, as the device wrote it. */
  readonly at: string;
  /** `Ada Example, pilot` */
  readonly by: string;
  /** The id of its event in the ledger. */
  readonly entry: string;
}

/** Whether a key signed it; absent for what needs no signature. */
export interface SignedEntry extends RecordEntry {
  readonly signed?: boolean;
}

export interface RecordStep extends SignedEntry {
  readonly title: string;
  /** What was said, a line for each thing. */
  readonly says: readonly string[];
}

export interface RecordDiscrepancy {
  readonly id: string;
  readonly disposition: string;
  readonly isOpen: boolean;
  readonly words: string;
  /** `Nose gear, Nose tyre: look for cuts; 3240 tires/tubes`; empty when nobody said. */
  readonly where: string;
  /** Raised before the period began. */
  readonly isCarriedIn: boolean;
  /** Its whole life up to the end of the period, oldest first. */
  readonly steps: readonly RecordStep[];
}

export interface RecordTimed {
  readonly item: string;
  readonly rule?: string;
  readonly state: string;
  /** `12 Nov 2026, Example Works, 4711`; `not on record`. */
  readonly lastDone: string;
  /** What each of its limits says of the next time. */
  readonly nextDue: readonly string[];
  /** `6 days`, `12.4 h`, `2 days over`, `not known`. */
  readonly left: string;
}

export interface RecordDone extends SignedEntry {
  readonly on: LocalDate;
  readonly item: string;
  readonly says: readonly string[];
}

export interface RecordDecision extends SignedEntry {
  readonly id: string;
  readonly title: string;
  /** The worst of what it rests on. */
  readonly status: Status;
  readonly flight: string;
  readonly counts: Readonly<Record<Status, number>>;
  readonly reasons: readonly string[];
  readonly hash: string;
}

export interface RecordWalk extends RecordEntry {
  readonly id: string;
  readonly kind: string;
  readonly ended: string;
  readonly answers: Readonly<Record<Answer, number>>;
  readonly readings: number;
  /** What was not right or could not be checked, and what interrupted it. */
  readonly exceptions: readonly string[];
}

export interface RecordCorrection extends RecordEntry {
  readonly what: string;
  /** The id of the event that was taken back. */
  readonly taken: string;
  readonly why: string;
}

/** A person and the device they wrote with. */
export interface RecordWriter {
  readonly name: string;
  readonly device: string;
  readonly key: string;
  readonly entries: number;
}

/** The ledger that the record is drawn from, as it is attached. */
export interface RecordLedger {
  readonly file: string;
  /** SHA-256 of the attached file, hexadecimal. */
  readonly sha256: string;
  readonly events: number;
  readonly devices: number;
  /** Whether every hash, chain and signature in it holds. */
  readonly isSound: boolean;
  readonly says: string;
}

/** Everything that the aircraft's record says of a period, in its own order; nothing of how it is drawn. */
export interface AircraftRecord {
  readonly registration: string;
  readonly type: string;
  readonly period: RecordPeriod;
  /** The day at whose end things stood as told: the last of the period, or today when that comes first. */
  readonly standsOn: LocalDate;
  /** When it was made, ISO 8601 with offset. */
  readonly madeAt: string;
  readonly book: string;
  readonly counters: readonly { readonly name: string; readonly says: string }[];
  readonly ledger: RecordLedger;
  readonly discrepancies: readonly RecordDiscrepancy[];
  readonly timed: readonly RecordTimed[];
  readonly timedDone: readonly RecordDone[];
  readonly decisions: readonly RecordDecision[];
  readonly walks: readonly RecordWalk[];
  readonly corrections: readonly RecordCorrection[];
  readonly writers: readonly RecordWriter[];
  readonly caution: string;
  readonly notice: string;
}
