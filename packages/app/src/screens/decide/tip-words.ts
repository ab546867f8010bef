import type { Steady, TippingPoint } from "@witnessmark/assess";
import { UNITS, withSymbol } from "@witnessmark/engine";
import { clockTime } from "../../words/dates.ts";
import { figure } from "../../words/figures.ts";

/** One tipping point in words: the value first, then what it is of and what happens there. */
export interface TipWords {
  readonly value: string;
  readonly what: string;
  readonly now: string;
}

/**
 * The value is rounded towards now: what is written still holds, or only just does not.
 *
 * @param offBlocks_ms when the flight is planned to leave, for a delay
 */
export function tipWords(point: TippingPoint, offBlocks_ms: number): TipWords {
  const { variable, title, unit, now, changes, verdictTitle, becomes, better } = point;
  const happens = better ? `${verdictTitle}: ${becomes} again` : `${verdictTitle}: ${becomes}`;
  if (variable === "delay") {
    return {
      value: clockTime(offBlocks_ms + Math.floor(changes) * 60_000),
      what: `off blocks then. ${happens}`,
      now: `${clockTime(offBlocks_ms)} planned`,
    };
  }
  // so near to now that whole figures would be the same
  const decimals = Math.abs(changes - now) < 1 ? 1 : 0;
  const step = 10 ** decimals;
  const towardsNow = (changes > now ? Math.floor(changes * step) : Math.ceil(changes * step)) / step;
  if (variable.startsWith("along:") && changes < 0) {
    return {
      value: withSymbol(figure(Math.abs(towardsNow), 0), unit),
      what: `${title.replace(/^headwind/, "tailwind")}. ${happens}`,
      now:
        now < 0
          ? `${figure(Math.abs(now), 0)} ${UNITS[unit].symbol} tailwind now`
          : `${figure(now, 0)} ${UNITS[unit].symbol} headwind now`,
    };
  }
  return {
    value: withSymbol(figure(towardsNow, decimals), unit),
    what: `${title}. ${happens}`,
    now: `${withSymbol(figure(now, decimals), unit)} now`,
  };
}

/** How far a value was looked at, rounded towards now: `temperature at ZZTW, −36 to 44 °C`. */
export function steadyWords({ title, unit, low, high }: Steady): string {
  const to = withSymbol(figure(Math.floor(high), 0), unit);
  return `${title}, ${figure(Math.ceil(low), 0)} to ${to}`;
}
