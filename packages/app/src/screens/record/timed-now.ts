import {
  clockOf,
  localDayOf,
  pilotOf,
  type TimedFigure,
  timedFigures,
  walkInHand,
} from "@witnessmark/assess";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { useMinute } from "../../preferences/clock.ts";

/** What runs out as it stands at a minute, on the local day that the verdicts go by. */
export interface TimedNow {
  readonly figures: readonly TimedFigure[];
  readonly today: string;
  readonly now_ms: number;
  /** Whose own items are meant. */
  readonly pilot: string | undefined;
}

interface Kept extends Pick<OpenAircraft, "book" | "flight"> {
  readonly minute: number;
  readonly now: TimedNow;
}

const kept = new WeakMap<OpenAircraft["state"], Kept>();

/** The same for every part of a screen that asks: worked out once for one state, flight and minute. */
export function timedNow({ book, state, flight }: OpenAircraft, minute: number): TimedNow {
  const before = kept.get(state);
  if (before?.minute === minute && before.book === book && before.flight === flight) return before.now;
  const now_ms = minute * 60_000;
  const clock = clockOf(book, state, now_ms);
  const pilot = pilotOf(walkInHand(state), state);
  const now = {
    figures: timedFigures({ book, state, flight, clock, pilot }),
    today: localDayOf(now_ms, clock.offset_min),
    now_ms,
    pilot,
  };
  kept.set(state, { book, flight, minute, now });
  return now;
}

/** Everything that runs out, nearest its end first. */
export const useTimed = (open: OpenAircraft): TimedNow => timedNow(open, useMinute());
