import type { DatabaseSync } from "node:sqlite";
import type { HighWaterMark } from "./high-water-mark.ts";

/** What the pieces of the SQLite store share. */
export interface SqliteParts {
  readonly db: DatabaseSync;
  readonly file: string;
  readonly mark: HighWaterMark;
  /** Told of faults that no call can answer for. */
  readonly onProblem: (problem: unknown) => void;
}
