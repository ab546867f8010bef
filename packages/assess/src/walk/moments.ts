import { compareOrder, type Happening, hlcTime_ms, type Origin } from "@witnessmark/ledger";

/** Two clocks may honestly differ by this much. */
export const HONEST_SKEW_MS = 2 * 60_000;

export const MINUTE_MS = 60_000;

/** A fact is told of in many places and its time never changes, so its text is read once. */
const times_ms = new WeakMap<object, number>();

/** When a fact was recorded, by the clock of its device; by its stamp when that does not read. */
export function recorded_ms(origin: Pick<Origin, "recordedAt" | "hlc">): number {
  const known_ms = times_ms.get(origin);
  if (known_ms !== undefined) return known_ms;
  const read_ms = Date.parse(origin.recordedAt);
  const at_ms = Number.isNaN(read_ms) ? hlcTime_ms(origin.hlc) : read_ms;
  times_ms.set(origin, at_ms);
  return at_ms;
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
  return skew_ms > HONEST_SKEW_MS && happening.at_ms + skew_ms >= look_ms; // a stamp that stands still is told after
}

/** The same for a happening that nobody has recorded yet, and that would be told after everything else. */
export const wouldBeAfter = (at_ms: number, look: Origin): boolean =>
  at_ms >= Math.floor(recorded_ms(look) / MINUTE_MS) * MINUTE_MS;

/** The earliest of some looks, by their clocks and by their stamps: what `happeningsSince` sieves with. */
export interface Earliest {
  readonly at_ms: number;
  readonly hlc: string;
}

/** Later than anything. */
export const NOTHING: Earliest = { at_ms: Number.POSITIVE_INFINITY, hlc: "~" };

/** The earlier of what is known and one more look. */
export function earlier(known: Earliest, look: Origin): Earliest {
  const at_ms = recorded_ms(look);
  const stamped = look.hlc < known.hlc ? look : known;
  return at_ms >= known.at_ms && stamped === known
    ? known
    : { at_ms: Math.min(at_ms, known.at_ms), hlc: stamped.hlc };
}
