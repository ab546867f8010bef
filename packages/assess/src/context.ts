import type { Book } from "@witnessmark/book";
import type { AircraftState, Origin, Walk } from "@witnessmark/ledger";
import type { BookIndex } from "./book-index.ts";
import type { DiscrepancyIndex } from "./verdicts/discrepancy-index.ts";
import type { Happenings } from "./walk/happenings.ts";
import type { Heads, Look, WalkAnswers } from "./walk/looks.ts";
import type { LocalClock } from "./words/local-time.ts";

/** Everything that the verdicts of one assessment are made from. */
export interface Context {
  readonly book: Book;
  readonly index: BookIndex;
  readonly state: AircraftState;
  readonly walk: Walk | null;
  readonly clock: LocalClock;
  /** When given, only looks up to these heads count; everything else is as it is now. */
  readonly heads: Heads | undefined;
  readonly inWalk: WalkAnswers;
  readonly looks: ReadonlyMap<string, Look>;
  readonly happenings: Happenings;
  readonly discrepancies: DiscrepancyIndex;
  /** The latest photo of each check. */
  readonly photos: ReadonlyMap<string, Origin>;
}
