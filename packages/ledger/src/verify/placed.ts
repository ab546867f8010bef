import type { LedgerEvent } from "../event.ts";

/** An event and the line of the file it came from, where it came from one. */
export interface Placed {
  readonly event: LedgerEvent;
  readonly line: number | undefined;
}
