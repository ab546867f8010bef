import type { HappeningKind, WalkKind } from "@witnessmark/book";
import type { Answer, Author, Bodies, CouldNotReason, KnownEvent, Read, Status, Subject } from "./event.ts";
import type { PlannedFlight } from "./flight.ts";
import type {
  AddedTimedItem,
  ComponentMove,
  CounterReading,
  DeclinedEvidence,
  DiscrepancyLife,
  Done,
  DroppedTimedItem,
  Experience,
  FlightMade,
  Parked,
  Servicing,
} from "./record-state.ts";

/** Where a fact came from: enough to show it, order it and point to it. */
export interface Origin {
  readonly event: string;
  readonly device: string;
  /** With `Decision.heads` it says whether a decision had seen this. */
  readonly deviceSeq: number;
  readonly author: Author;
  readonly hlc: string;
  /** Device wall time, ISO 8601 with offset. */
  readonly recordedAt: string;
}

export interface CheckAnswer extends Origin {
  readonly check: string;
  readonly walk: string;
  readonly answer: Answer;
  readonly reason?: CouldNotReason;
  /**
   * Set while an interruption asks for this look again: the id of the `walk.interrupted` event. A later answer to
   * the same check in the same walk clears it.
   */
  readonly askedAgainBy?: string;
}

/**
 * A reading as it was taken on a walk, or as a file told of it. Of one from a file `recordedAt` is the moment that the
 * file gives, and `walk` is the id of its own event: it belongs to no walk.
 */
export interface RecordedReading extends Origin {
  readonly walk: string;
  readonly gauge: string;
  readonly read: Read;
  readonly temperature?: Read;
  /** Set when it came from a file: who read it as the file says, and when it was brought in. */
  readonly imported?: {
    readonly import: string;
    readonly broughtInAt: string;
    readonly by?: string;
    readonly words?: string;
  };
}

/**
 * Everything ever said of one check, oldest first; withdrawn entries are not in it. Readings from a file stand where
 * their own moment puts them, so that an old one is never the last.
 */
export interface CheckHistory {
  readonly answers: readonly CheckAnswer[];
  readonly readings: readonly RecordedReading[];
}

export interface Interruption extends Origin {
  readonly cause: "away" | "said";
  readonly left: string;
  readonly back: string;
  /**
   * The last three checks answered before it in this walk, oldest first, which must be looked at again: those of
   * the phone that was interrupted, or of any phone when that one had answered none.
   */
  readonly asksAgain: readonly string[];
}

/**
 * A walk that was typed in from paper is dated by its paper: its `recordedAt`, and that of every look, reading and piece
 * of ground gear in it, is the moment at which the paper was begun, so that no look counts for longer than it may.
 */
export interface Walk extends Origin {
  readonly id: string;
  readonly kind: WalkKind;
  readonly bookSha256: string;
  readonly interruptions: readonly Interruption[];
  /** Checks that an interruption asked for again and that were not answered since, oldest first. */
  readonly askedAgain: readonly string[];
  readonly onPaper?: { readonly begun: string; readonly ended: string; readonly typedInAt: string };
  readonly finished?: Origin;
  readonly abandoned?: Origin & { readonly why: string };
}

export interface Happening extends Origin {
  readonly kind: HappeningKind;
  /** When it happened, milliseconds since 1970 UTC. */
  readonly at_ms: number;
  readonly at: string;
  readonly words?: string;
}

export interface GearState {
  readonly fitted: number;
  /** Where the pieces are that were taken off and not fitted since, latest last; the earliest are fitted first. */
  readonly removals: readonly (Origin & {
    readonly count: number;
    readonly stowedIn: string;
    readonly walk?: string;
  })[];
  readonly last: Origin;
}

export interface Discrepancy extends DiscrepancyLife {
  readonly id: string;
  readonly raised: Origin;
  readonly words: string;
  readonly walk?: string;
  readonly check?: string;
  readonly point?: string;
  readonly fault?: string;
  readonly measured?: Read;
  readonly jasc?: string;
  /** Every closing said of it; two phones may have closed it differently, and both stay. */
  readonly closings: readonly (Origin & {
    readonly how: "put-right" | "no-fault-found";
    readonly words: string;
    readonly releasedBy: string;
  })[];
}

export interface FlightOnRecord extends Origin {
  readonly id: string;
  readonly planned: PlannedFlight;
}

export interface Decision extends Origin {
  readonly id: string;
  readonly walk: string;
  readonly answer: "go" | "not-going";
  readonly flight: PlannedFlight | null;
  readonly at: string;
  readonly bookSha256: string;
  readonly assessmentSha256: string;
  readonly counts: Readonly<Record<Status, number>>;
  readonly restsOn: readonly { readonly verdict: string; readonly status: Status }[];
  readonly heads: Readonly<Record<string, number>>;
  readonly reasons: readonly { readonly verdict: string; readonly words: string; readonly basis?: string }[];
  /** Why, of the decision as a whole. */
  readonly words?: string;
  readonly hash: string;
  readonly signed: boolean;
}

export interface AdoptedBook extends Origin {
  readonly sha256: string;
  readonly revision: number;
  readonly registration: string;
  readonly type: string;
  readonly text: string;
}

/** A phone, tablet or program, as it introduced itself. */
export interface Device extends Origin {
  readonly label: string;
  readonly key: Bodies["device.introduced"]["key"];
}

/** Two events with one id: the one with the lower hash counts, on every phone alike. */
export interface Conflict {
  readonly event: string;
  readonly keptHash: string;
  readonly droppedHash: string;
}

/**
 * The state of one aircraft: a pure fold over its events in (hlc, device, deviceSeq) order.
 * Maps are keyed by id and keep the order in which the fold met them.
 */
export interface AircraftState {
  readonly aircraft: string;
  /** The order key of the last event folded in. */
  readonly upTo: { readonly hlc: string; readonly device: string; readonly deviceSeq: number } | null;
  /** Distinct events folded in; withdrawn and unknown ones are among them. */
  readonly eventCount: number;
  readonly archived: boolean;
  /** Every book adopted, in order; the last is in force. */
  readonly books: readonly AdoptedBook[];
  /** Highest deviceSeq folded in, per device. */
  readonly heads: ReadonlyMap<string, number>;
  readonly devices: ReadonlyMap<string, Device>;
  readonly walks: ReadonlyMap<string, Walk>;
  readonly checks: ReadonlyMap<string, CheckHistory>;
  /** The answers of `checks` once more, by walk, oldest first; also of a walk whose start is not here. */
  readonly answersByWalk: ReadonlyMap<string, readonly CheckAnswer[]>;
  readonly happenings: readonly Happening[];
  readonly groundGear: ReadonlyMap<string, GearState>;
  readonly discrepancies: ReadonlyMap<string, Discrepancy>;
  /** Flights that are planned or were made, each as it was planned last; the one planned last stands last. */
  readonly flights: ReadonlyMap<string, FlightOnRecord>;
  readonly decisions: readonly Decision[];
  /** What was done about timed items, by item, in ledger order. */
  readonly timedDone: ReadonlyMap<string, readonly Done[]>;
  /** Timed items that are in no book; a book's item with the same id comes first. */
  readonly timedAdded: ReadonlyMap<string, AddedTimedItem>;
  /** Items that are followed no more, added ones and those of a book. */
  readonly timedDropped: ReadonlyMap<string, DroppedTimedItem>;
  /** By id of the book's counters, in ledger order. */
  readonly counters: ReadonlyMap<string, readonly CounterReading[]>;
  readonly componentMoves: readonly ComponentMove[];
  readonly flightsMade: readonly FlightMade[];
  readonly servicings: readonly Servicing[];
  readonly parkings: readonly Parked[];
  readonly experiences: readonly Experience[];
  readonly evidenceDeclined: readonly DeclinedEvidence[];
  readonly photos: readonly (Origin & {
    readonly subject: Subject;
    readonly sha256: string;
    readonly mediaType: string;
  })[];
  readonly notes: readonly (Origin & { readonly subject: Subject; readonly text: string })[];
  /** Events of a type or version not known here. */
  readonly unknown: readonly (Origin & { readonly type: string; readonly schemaVersion: number })[];
  /** Ids of events that another event withdrew, whether they are here or not, and of what came from a file and was taken back whole. */
  readonly withdrawn: ReadonlySet<string>;
  /**
   * Events that could not be placed, by the walk or discrepancy they name: it has not begun (its beginning is
   * missing, or made by a clock far ahead), or they begin it a second time. Placed as soon as it begins.
   */
  readonly unplaced: ReadonlyMap<string, readonly KnownEvent[]>;
  readonly conflicts: readonly Conflict[];
}
