import type { Reading } from "@witnessmark/book";
import type { Judgement } from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";
import type { Figures } from "./figures.ts";
import type { LimitNow } from "./limit-now.ts";
import type { ReadingVerdict } from "./reading-verdict.ts";

/** A reading that has been turned into SI, and everything it is held against. */
export interface Judged {
  readonly reading: Reading;
  readonly figures: Figures;
  readonly valueSI: number;
  readonly read: Read;
  readonly temperature: Read | undefined;
  readonly limit: Extract<LimitNow, { known: true }>;
  readonly judgement: Judgement;
}

/** What every verdict on a reading says, whatever its status. */
export type Told = Pick<ReadingVerdict, "says" | "margin" | "working" | "sources">;
