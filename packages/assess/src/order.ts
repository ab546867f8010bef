import type { Status } from "@witnessmark/ledger";
import { type Finding, worthOf } from "./finding.ts";

/** The order in which verdicts are told: worst first. */
export const BADNESS: Readonly<Record<Status, number>> = { stop: 0, caution: 1, open: 2, clear: 3 };

/** Worst first; among equals by what a miss would do, then as they come in the walk, then by id. */
export function compareFindings(a: Finding, b: Finding): number {
  const [one, other] = [worthOf(a), worthOf(b)];
  return (
    BADNESS[one.status] - BADNESS[other.status] ||
    a.severity - b.severity ||
    a.place - b.place ||
    (one.id < other.id ? -1 : one.id > other.id ? 1 : 0)
  );
}
