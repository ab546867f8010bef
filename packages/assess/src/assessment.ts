import type { WalkKind } from "@witnessmark/book";
import type { PlannedFlight, Status } from "@witnessmark/ledger";

export type { PlannedFlight as Flight } from "@witnessmark/ledger";

/** One line of working: what, and the value as a person reads it. */
export interface WorkingLine {
  readonly label: string;
  readonly value: string;
}

/** How an answer was reached, for the panel under a verdict and for the sheet. */
export interface Working {
  readonly lines: readonly WorkingLine[];
  /** The id of the engine's quantity and its formula as text, where one was computed. */
  readonly formula?: { readonly quantity: string; readonly text: string };
}

/** What is left to the nearest limit, rounded to the safe side, with its unit; negative when past it. */
export interface Margin {
  readonly value: number;
  readonly unit: string;
  /** As shown at the right of a row: "0.03 bar", "28 mm over", "8 of 9 off", "not read". */
  readonly text: string;
}

export interface Source {
  readonly title: string;
  readonly locator?: string;
}

export type VerdictTopic =
  | "check"
  | "ground-gear"
  | "discrepancy"
  | "happening"
  | "pace"
  | "disagreement"
  | "record"
  | "load"
  | "fuel"
  | "oxygen"
  | "runway"
  | "wind"
  | "weather"
  | "light"
  | "ice"
  | "timed"
  | "trend";

interface VerdictBase {
  /** Stable for the same subject: `check:oil-level`, `gear:pitot-cover`. */
  readonly id: string;
  readonly topic: VerdictTopic;
  /** What it is about, in the book's words: "Right main tyre". */
  readonly title: string;
  /** One plain line. */
  readonly says: string;
  readonly margin?: Margin;
  readonly working: Working;
  /** Ids of the events it rests on. */
  readonly evidence: readonly string[];
  readonly sources: readonly Source[];
  /** The check, item or discrepancy to go to; of a trend the check whose readings it is made of, or its own id. */
  readonly subject?: {
    readonly kind: "check" | "ground-gear" | "discrepancy" | "walk" | "timed" | "trend";
    readonly id: string;
  };
  /** When it stops holding by age, milliseconds since 1970 UTC. */
  readonly holdsUntil_ms?: number;
  /** Why it stops holding then, where that is not the age of a look: "the report of ZZQN is then too old". */
  readonly holdsBecause?: string;
  /** What would end it sooner. */
  readonly endsWith?: readonly string[];
}

export type Verdict = VerdictBase &
  (
    | { readonly status: "clear" }
    | { readonly status: "caution"; readonly because: readonly [string, ...string[]] }
    | {
        readonly status: "stop";
        readonly because: readonly [string, ...string[]];
        readonly wayOut: readonly [string, ...string[]];
      }
    | { readonly status: "open"; readonly missing: readonly [string, ...string[]] }
  );

/** Every verdict for one aircraft, one flight, one moment, worst first: stop, caution, open, clear. */
export interface Assessment {
  readonly aircraft: string;
  readonly book: { readonly revision: number; readonly sha256: string };
  readonly flight: PlannedFlight | null;
  /** ISO 8601, UTC. */
  readonly at: string;
  readonly walk: {
    readonly id: string;
    readonly kind: WalkKind;
    readonly startedAt: string;
    /** Its day is past, or the aircraft has flown since it was finished: the next flight needs another. */
    readonly isOver: boolean;
  } | null;
  readonly status: Status;
  /** "One thing stops this flight" */
  readonly headline: string;
  /** What stands between the aircraft and flight, in one line, for the Apron. */
  readonly line: string;
  /** The mark beside that line: the worst of what it speaks of. */
  readonly lineStatus: Status;
  readonly counts: Readonly<Record<Status, number>>;
  readonly verdicts: readonly Verdict[];
  readonly restsOn: { readonly checks: number; readonly readings: number };
  /** The first moment at which something it rests on runs out of age, with its reason; absent when nothing does. */
  readonly holdsUntil?: { readonly at_ms: number; readonly because: string };
  readonly heads: Readonly<Record<string, number>>;
}

/** Whether a signed decision still stands. */
export type Standing =
  | { readonly stands: true; readonly until?: { readonly at_ms: number; readonly because: string } }
  | {
      readonly stands: false;
      /** Since when, milliseconds since 1970 UTC. */
      readonly since_ms: number;
      /** "Fuelled at 09:07. Five checks no longer count." */
      readonly because: string;
      /** The verdicts that are worse than when it was signed. */
      readonly worse: readonly { readonly verdict: string; readonly was: Status; readonly now: Status }[];
    };
