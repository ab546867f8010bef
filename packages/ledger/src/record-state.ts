import type { Read } from "./event.ts";
import type { AddedItem, CounterValues, LocalDate, RecordBodies } from "./record-event.ts";
import type { Origin } from "./state.ts";

/** What was done about a timed item, and when. */
export interface Done extends Origin {
  readonly item: string;
  readonly on: LocalDate;
  readonly counters: CounterValues;
  readonly by: string;
  readonly reference?: string;
  readonly words?: string;
  readonly holder?: string;
  /** The last day on which it is good, as the paper itself says. */
  readonly until?: LocalDate;
  /** Of the component of this serial number; `counters` are then its own. */
  readonly serial?: string;
  readonly import?: string;
}

export type AddedTimedItem = Origin & { readonly item: AddedItem; readonly import?: string };
export type DroppedTimedItem = Origin & { readonly why: string };

/** What a counter showed, and what it has counted in all since the first meter. */
export interface CounterReading extends Origin {
  readonly at: string;
  /** Milliseconds since 1970 UTC. */
  readonly at_ms: number;
  readonly shown: number;
  /** `shown`, and what earlier meters had counted: never runs back when a meter is changed. */
  readonly total: number;
  /** Less than the reading before it, with no meter changed in between: kept as it was said. */
  readonly backwards: boolean;
}

/** The life of one component aboard: each time that it was fitted or removed, in ledger order. */
export interface ComponentMove extends Origin {
  readonly component: string;
  readonly serial: string;
  readonly on: LocalDate;
  readonly ran: CounterValues;
  /** What the counters of the aircraft showed then, where that was said. */
  readonly counters?: CounterValues;
  readonly fitted: boolean;
}

export type FlightMade = Origin & Omit<RecordBodies["flight.made"], "made"> & { readonly id: string };
export type Servicing = Origin & RecordBodies["servicing.recorded"] & { readonly at_ms: number };
export type Parked = Origin & RecordBodies["aircraft.parked"] & { readonly at_ms: number };
export type Experience = Origin & RecordBodies["experience.recorded"];
export type DeclinedEvidence = Origin & RecordBodies["evidence.declined"];

/** A relief as it was signed; `ended` when somebody ended it before its time. */
export type ReliefOnRecord = Origin &
  Omit<RecordBodies["discrepancy.relieved"], "discrepancy" | "relief"> & {
    readonly id: string;
    readonly signed: boolean;
    readonly ended?: Origin & { readonly why: string };
  };

/** What became of a discrepancy after it was raised, in ledger order. */
export interface DiscrepancyLife {
  readonly place?: { readonly x_m: number; readonly y_m: number; readonly z_m: number };
  readonly assessments: readonly (Origin & { readonly words: string; readonly equipment?: string })[];
  /** Its sizes, the one it was raised with first. */
  readonly measurements: readonly (Origin & { readonly measured: Read; readonly words?: string })[];
  readonly reliefs: readonly ReliefOnRecord[];
  readonly reopenings: readonly (Origin & { readonly words: string })[];
  /** Who released it, and on which authority, each time that was said. */
  readonly releases: readonly (Origin & Omit<RecordBodies["discrepancy.released"], "discrepancy">)[];
  /** Whether the last word on it, closing or re-opening, leaves it open. */
  readonly isOpen: boolean;
}
