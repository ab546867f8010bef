import type { Check } from "@witnessmark/book";
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

/** A verdict with what orders it and what caused it. */
export interface Finding {
  readonly verdict: Verdict;
  /** 0 for the worst hazard. */
  readonly severity: 0 | 1 | 2;
  /** Where in the walk. */
  readonly place: number;
  readonly cause?: Cause;
  /** Whether it rests on a look, and on a reading, that still count. */
  readonly restsOn?: { readonly checks: 1; readonly readings: 0 | 1 };
}

const SEVERITY = { high: 0, medium: 1, low: 2 } as const;

export const severityOf = (check: Check | undefined): 0 | 1 | 2 =>
  check === undefined ? 0 : SEVERITY[check.hazard.severity];
