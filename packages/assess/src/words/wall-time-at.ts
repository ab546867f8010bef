import { wallTime } from "@witnessmark/ledger";
import { offsetOf_min } from "./local-time.ts";

/** A moment as ISO 8601 text with the offset of another such text. */
export const wallTimeAt = (at_ms: number, like: string): string => wallTime(at_ms, offsetOf_min(like));
