import { allSeries, compareTrends, type Series, type Trend, trendOf } from "@witnessmark/assess";
import { useEffect, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { useMinute } from "../../preferences/clock.ts";

/** So long a piece of the work may keep a finger waiting. */
const SLICE_ms = 8;

interface Held {
  readonly minute: number;
  readonly flight: OpenAircraft["flight"];
  readonly trends: readonly Trend[];
}

/** What was worked out for a state; another screen of the same minute asks again for nothing. */
const held = new WeakMap<OpenAircraft["state"], Held>();

/** Nobody can see a trend turn within ten minutes, and each minute would be work. */
const EVERY_min = 10;

/**
 * Every trend, worked out after the first paint and in pieces.
 *
 * @returns `null` until it is known
 */
export function useTrends({ book, state, flight }: OpenAircraft): readonly Trend[] | null {
  const minute = Math.floor(useMinute() / EVERY_min) * EVERY_min;
  const found = held.get(state);
  const known =
    found !== undefined && found.minute === minute && found.flight === flight ? found.trends : null;
  const [worked, setWorked] = useState<Held | null>(null);
  useEffect(() => {
    if (known !== null) return;
    const now_ms = Date.now();
    const clock = { now_ms, offset_min: -new Date(now_ms).getTimezoneOffset() };
    const each = allSeries(book, state);
    const all: Trend[] = [];
    let timer = 0;
    const slice = () => {
      const end_ms = performance.now() + SLICE_ms;
      while (performance.now() < end_ms) {
        const next = each.next();
        if (next.done === true) {
          const done: Held = { minute, flight, trends: all.sort(compareTrends) };
          held.set(state, done);
          setWorked(done);
          return;
        }
        all.push(trendOf(next.value, flight, clock));
      }
      timer = window.setTimeout(slice);
    };
    timer = window.setTimeout(slice);
    return () => window.clearTimeout(timer);
  }, [known, book, state, flight, minute]);
  return known ?? worked?.trends ?? null; // the trends of a moment ago, until those of now are known
}

/** The part of an address that names a series: its check, or its own id where it has none. */
export const addressOf = ({ check, id }: Pick<Series, "check" | "id">): string => check ?? id;
