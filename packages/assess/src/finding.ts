import type { Check } from "@witnessmark/book";
import type { Status } from "@witnessmark/ledger";
import type { Verdict } from "./assessment.ts";

/** What made a verdict what it is, and when: told when a decision lapses by it. */
export interface Cause {
  /** The same for all verdicts that one thing changed: `happening:<event>`. */
  readonly key: string;
  readonly at_ms: number;
  /** `Fuelled at 09:07` */
  readonly words: string;
  /** Whether it makes looks no longer count, so that they are counted in the sentence that follows. */
  readonly reopens: boolean;
}

/** Which verdict it is and what it is worth, without its words. */
export interface Worth {
  readonly id: string;
  readonly status: Status;
}

/** A verdict with what orders it and what caused it. */
export interface Finding {
  /** Told at the latest when it is read. */
  readonly verdict: Verdict;
  /** Known before the verdict is told, where that is left until somebody reads it. */
  readonly worth?: Worth;
  /** 0 for the worst hazard. */
  readonly severity: 0 | 1 | 2;
  /** Where in the walk. */
  readonly place: number;
  readonly cause?: Cause;
  /** Whether it rests on a look, and on a reading, that still count. */
  readonly restsOn?: { readonly checks: 1; readonly readings: 0 | 1 };
}

/** Of a question about another flight or another hour, most answers are read no further than this. */
export const worthOf = (finding: Pick<Finding, "worth" | "verdict">): Worth =>
  finding.worth ?? finding.verdict;

type Place = Omit<Finding, "verdict" | "worth">;

/**
 * A finding whose verdict is told when somebody first reads it, and kept: words and working cost more than what they
 * are about, and for most findings of a search nobody asks.
 *
 * @param tell gives the verdict of that worth, always the same one
 */
export class LaterFinding implements Finding {
  readonly worth: Worth;
  readonly severity: Place["severity"];
  readonly place: number;
  declare readonly cause?: Cause;
  declare readonly restsOn?: NonNullable<Finding["restsOn"]>;
  #tell: () => Verdict;
  #told: Verdict | undefined;

  constructor(worth: Worth, { severity, place, cause, restsOn }: Place, tell: () => Verdict) {
    this.worth = worth;
    this.severity = severity;
    this.place = place;
    if (cause !== undefined) this.cause = cause;
    if (restsOn !== undefined) this.restsOn = restsOn;
    this.#tell = tell;
  }

  get verdict(): Verdict {
    this.#told ??= this.#tell();
    return this.#told;
  }
}

const SEVERITY = { high: 0, medium: 1, low: 2 } as const;

export const severityOf = (check: Check | undefined): 0 | 1 | 2 =>
  check === undefined ? 0 : SEVERITY[check.hazard.severity];
