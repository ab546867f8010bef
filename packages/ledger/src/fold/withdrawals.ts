import type { KnownEvent, LedgerEvent } from "../event.ts";
import { isKnownEvent } from "../known.ts";

export type Withdrawal = Extract<KnownEvent, { type: "event.withdrawn" }>;

export const isWithdrawal = (event: LedgerEvent): event is Withdrawal =>
  event.type === "event.withdrawn" && isKnownEvent(event);

/** The id that everything brought in from one file at one time has in common. */
export function importOf(event: LedgerEvent): string | undefined {
  if (!isKnownEvent(event)) return undefined;
  switch (event.type) {
    case "reading.imported":
    case "timedItem.done":
    case "timedItem.added":
      return event.body.import;
    default:
      return undefined;
  }
}

/** Whether nothing has taken it back: neither it alone, nor all that came from a file with it. */
export function isCounted(event: LedgerEvent, withdrawn: ReadonlySet<string>): boolean {
  if (withdrawn.size === 0) return true;
  const bundle = importOf(event);
  return !withdrawn.has(event.id) && (bundle === undefined || !withdrawn.has(bundle));
}

/**
 * Ids of the events that do not count, and of what was brought in from files and does not count as a whole. A withdrawal that is itself withdrawn has no effect, so its target counts
 * again; order plays no part, since a wrong clock may sort a withdrawal before what it names.
 *
 * A withdrawal has effect when everything that withdraws it is itself withdrawn. Withdrawals that name each other in
 * a circle, which no honest program makes, have no effect. One pass, whatever names what.
 */
export function withdrawnIds(withdrawals: readonly Withdrawal[]): Set<string> {
  const targets = new Map(withdrawals.map((withdrawal) => [withdrawal.id, withdrawal.body.event]));
  /** How many withdrawals of a withdrawal may still have effect. */
  const standing = new Map<string, number>();
  for (const target of targets.values()) {
    if (targets.has(target)) standing.set(target, (standing.get(target) ?? 0) + 1);
  }
  const withdrawn = new Set<string>();
  const withEffect = [...targets.keys()].filter((id) => !standing.has(id));
  for (let id = withEffect.pop(); id !== undefined; id = withEffect.pop()) {
    const target = targets.get(id);
    if (target === undefined || withdrawn.has(target)) continue;
    withdrawn.add(target);
    const freed = targets.get(target);
    if (freed === undefined || !targets.has(freed)) continue;
    const left = (standing.get(freed) ?? 0) - 1;
    standing.set(freed, left);
    if (left === 0 && !withdrawn.has(freed)) withEffect.push(freed);
  }
  return withdrawn;
}
