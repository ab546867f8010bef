import { BADNESS } from "@witnessmark/assess";
import type { Status } from "@witnessmark/ledger";

/** The worse of two: stop, caution, open, clear. */
export const worse = (one: Status, other: Status): Status => (BADNESS[one] <= BADNESS[other] ? one : other);
