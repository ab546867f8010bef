import { compareOrder, type Happening, hlcTime_ms, type Origin } from "@witnessmark/ledger";

/** Two clocks may honestly differ by this much. */
export const HONEST_SKEW_MS = 2 * 60_000;

const MINUTE_MS = 60_000;

/** When a fact was recorded, by the clock of its device; by its stamp when that does not read. */
export function recorded_ms(origin: Pick<Origin, "recordedAt" | "hlc">): number {
  const at_ms = Date.parse(origin.recordedAt);
  return Number.isNaN(at_ms) ? hlcTime_ms(origin.hlc) : at_ms;
}

/** How far a device's clock stood behind what it had already seen; 0 when it did not. */
const behind_ms = (origin: Origin): number => Math.max(0, hlcTime_ms(origin.hlc) - recorded_ms(origin));

/**
 * Whether a happening came after a look, so that the look no longer counts. Where the clocks leave it in doubt, it did:
 * a happening that was told after the look counts when it was in the look's own minute (people say minutes), or when
 * the teller's clock stood behind and would place it after.
 */
export function isAfter(happening: Happening, look: Origin): boolean {
  const look_ms = recorded_ms(look);
  if (happening.at_ms > look_ms) return true;
  if (compareOrder(happening, look) <= 0) return false;
  if (happening.at_ms >= Math.floor(look_ms / MINUTE_MS) * MINUTE_MS) return true;
  const skew_ms = behind_ms(happening);
  return skew_ms > HONEST_SKEW_MS && happening.at_ms + skew_ms > look_ms;
}

/** The same for a happening that nobody has recorded yet, and that would be told after everything else. */
export const wouldBeAfter = (at_ms: number, look: Origin): boolean =>
  at_ms >= Math.floor(recorded_ms(look) / MINUTE_MS) * MINUTE_MS;

/** Whether it can be after any look from `earliest_ms` on: a quick sieve, never too fine. */
export const mayBeAfter = (happening: Happening, earliest_ms: number): boolean =>
  happening.at_ms >= earliest_ms - MINUTE_MS || happening.at_ms + behind_ms(happening) > earliest_ms;
