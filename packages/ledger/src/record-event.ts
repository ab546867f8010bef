import type { KindOfOperation, TimedItem } from "@witnessmark/book";
import type { Read } from "./event.ts";

/** A local date, `2026-11-12`: the day of the place that the rule means, never a moment in UTC. */
export type LocalDate = string;

/** What counters show, by id of the book's counters, each in its unit. */
export type CounterValues = Readonly<Record<string, number>>;

/** A timed item as a person adds it: without a tolerance, which only a book grants. */
export type AddedItem = Omit<TimedItem, "tolerance" | "warn">;

export type ReliefAction = "removed" | "deactivated" | "none";
export type ReliefRole = "pilot" | "mechanic" | "certifying-staff" | "owner";
export type ReleaseRole = "pilot-owner" | "certifying-staff" | "organisation" | "not-known";
export type ServicingKind = "refilled" | "drained" | "changed" | "adjusted";
export type ServicedThing = "fuel" | "oil" | "hydraulic" | "oxygen" | "tyre" | "strut" | "battery" | "other";

/** One step of the rules that a relief rests on, as it stood when the relief was signed. */
export interface ReliefStep {
  readonly rule: string;
  readonly words: string;
  readonly holds: boolean;
}

/** What the events of the record hold at schema version 1: discrepancies, what runs out, use, and after the flight. */
export interface RecordBodies {
  "discrepancy.placed": {
    readonly discrepancy: string;
    /** In the book's axes: x aft of the datum, y right, z up from the ground. */
    readonly place: { readonly x_m: number; readonly y_m: number; readonly z_m: number };
    readonly point?: string;
    readonly jasc?: string;
  };
  /** Somebody has looked into it, and says what it is. */
  "discrepancy.assessed": {
    readonly discrepancy: string;
    readonly words: string;
    /** The piece of the book's equipment that it is. */
    readonly equipment?: string;
  };
  /** Watched: its size on a day. */
  "discrepancy.measured": { readonly discrepancy: string; readonly measured: Read; readonly words?: string };
  "discrepancy.relieved": {
    readonly discrepancy: string;
    readonly relief: string;
    readonly rulePack: string;
    /** `14 CFR 91.213(d)` */
    readonly basis: string;
    readonly equipment: string;
    readonly steps: readonly ReliefStep[];
    readonly action: ReliefAction;
    readonly placard?: string;
    readonly recordEntry?: string;
    readonly determinedBy: string;
    readonly as: ReliefRole;
    readonly notFor: readonly KindOfOperation[];
    /** The last day on which it holds. */
    readonly until?: LocalDate;
    readonly category?: "A" | "B" | "C" | "D";
  };
  "discrepancy.reliefEnded": { readonly discrepancy: string; readonly relief: string; readonly why: string };
  "discrepancy.reopened": { readonly discrepancy: string; readonly words: string };
  /** Who released it after it was put right, and on which authority, as rules ask that name the persons who may. */
  "discrepancy.released": {
    readonly discrepancy: string;
    readonly rulePack: string;
    readonly as: ReleaseRole;
    readonly by: string;
    /** Number of the licence or of the approval. */
    readonly authority?: string;
    /** What was answered to the rule's questions, by the name of each; what is not there is not known. */
    readonly said: Readonly<Record<string, boolean>>;
  };
  "timedItem.done": {
    readonly item: string;
    readonly on: LocalDate;
    readonly counters: CounterValues;
    readonly by: string;
    readonly reference?: string;
    readonly words?: string;
    /** The id of the author whose item it is, where it is a pilot's own. */
    readonly holder?: string;
    /** The last day on which it is good, where the paper itself says so: a medical, an insurance, a data cycle. */
    readonly until?: LocalDate;
    /** Done to the component of this serial number; the counters are then its own, on whichever aircraft it was. */
    readonly serial?: string;
    /** What was brought in from a file at one time has one id. */
    readonly import?: string;
  };
  "timedItem.added": { readonly item: AddedItem; readonly import?: string };
  "timedItem.dropped": { readonly item: string; readonly why: string };
  "counters.read": { readonly at: string; readonly counters: CounterValues; readonly walk?: string };
  /** A meter was changed: it showed so much, and the new one shows so much. */
  "counter.replaced": {
    readonly counter: string;
    readonly at: string;
    readonly showed: number;
    readonly shows: number;
  };
  "component.fitted": {
    readonly component: string;
    readonly serial: string;
    readonly on: LocalDate;
    /** What it had run when it was fitted. */
    readonly ran: CounterValues;
    /** What the counters of the aircraft showed then. */
    readonly counters?: CounterValues;
  };
  "component.removed": {
    readonly component: string;
    readonly serial: string;
    readonly on: LocalDate;
    /** What it had run when it was removed. */
    readonly ran: CounterValues;
    readonly counters?: CounterValues;
  };
  "flight.made": {
    readonly made: string;
    /** The planned flight that it was. */
    readonly flight?: string;
    readonly from: string;
    readonly to: string;
    readonly takeOff: string;
    readonly landing: string;
    readonly landings: {
      readonly day: number;
      readonly night: number;
      readonly nightFullStop: number;
      /** Of those by day, to a full stop: what a tail-wheel asks for; nobody said when left out. */
      readonly dayFullStop?: number;
    };
    readonly approaches?: number;
    /** The id of the author who flew. */
    readonly pilot?: string;
    readonly words?: string;
  };
  "servicing.recorded": {
    readonly at: string;
    readonly what: ServicingKind;
    readonly of: ServicedThing;
    /** The check whose readings begin anew after it. */
    readonly check?: string;
    readonly point?: string;
    readonly amount?: Read;
    readonly words?: string;
    readonly walk?: string;
  };
  "aircraft.parked": {
    readonly at: string;
    readonly where: string;
    readonly secured: string;
    readonly walk?: string;
  };
  /** What a pilot did elsewhere, that counts for their recency. */
  "experience.recorded": {
    readonly person: string;
    readonly on: LocalDate;
    readonly dayLandings: number;
    readonly nightLandings: number;
    readonly nightFullStop: number;
    /** Of those by day, to a full stop; nobody said when left out. */
    readonly dayFullStop?: number;
    readonly approaches: number;
    readonly tailwheel: boolean;
    /** The class of aircraft, in words. */
    readonly class: string;
    readonly words?: string;
  };
  /** A reading of the past, from a file: it belongs to no walk, and has a moment of its own. */
  "reading.imported": {
    /** What was brought in at one time has one id, so that it can be told together and withdrawn together. */
    readonly import: string;
    readonly check: string;
    readonly gauge: string;
    /** When it was read, as the file says. */
    readonly at: string;
    readonly read: Read;
    readonly temperature?: Read;
    /** Who read it, as the file says. */
    readonly by?: string;
    readonly words?: string;
  };
  /** Why the photo or figure that a walk asked for by chance was not given. */
  "evidence.declined": { readonly walk: string; readonly check: string; readonly why: string };
}
