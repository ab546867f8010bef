import type { Read } from "@witnessmark/ledger";
import type { Margin, Source, Working } from "../assessment.ts";

/** What came in: a value in any unit of its dimension, and the temperature that moves the limit, where one does. */
export interface Given {
  readonly read: Read;
  readonly temperature?: Read;
  /** The gauge it was read on; the check's own when absent. */
  readonly gauge?: string;
}

/** What a reading is worth by itself: a verdict that does not yet say of what look, when, and by whom. */
export type ReadingVerdict = {
  readonly says: string;
  readonly margin?: Margin;
  readonly working: Working;
  readonly sources: readonly Source[];
  /** Probability that the true value is inside, where it could be computed; for the screen only. */
  readonly probability_1?: number;
} & (
  | { readonly status: "clear" }
  | { readonly status: "caution"; readonly because: readonly [string, ...string[]] }
  | {
      readonly status: "stop";
      readonly because: readonly [string, ...string[]];
      readonly wayOut: readonly [string, ...string[]];
    }
  | { readonly status: "open"; readonly missing: readonly [string, ...string[]] }
);
