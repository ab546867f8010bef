import type { Counter, TimedLimit } from "@witnessmark/book";
import { readDay } from "./dates.ts";
import { readNumber } from "./numbers.ts";

const HOURS = /^(h|hr|hrs|hour|hours)$/;
const DAYS = /^(d|day|days)$/;
const MONTHS = /^(m|mo|mth|mths|month|months)$/;
const CALENDAR_MONTHS = /^(calendar[- ]months?|cal[. -]*months?)$/;
const YEARS = /^(y|yr|yrs|year|years)$/;
const COUNTS = /^(landing|landings|ldg|ldgs|cycle|cycles|start|starts)$/;
const MONTHS_IN_YEAR = 12;

/** `100 h or 12 months`, taken apart; the text of a part that is none comes back. */
export type ReadInterval =
  | { readonly ok: true; readonly limits: readonly TimedLimit[]; readonly combine: "first" | "later" }
  | { readonly ok: false; readonly found: string };

/** The limit that so much of something is; `undefined` for no such thing. */
function limitOf(
  value: number,
  unit: string,
  counterFor: (unit: "h" | "1", word: string) => string | undefined,
): TimedLimit | undefined {
  const isWhole = Number.isInteger(value) && value >= 1 && value <= 10_000;
  if (DAYS.test(unit)) return isWhole ? { by: "days", days: value } : undefined;
  if (MONTHS.test(unit)) return isWhole ? { by: "months", months: value } : undefined;
  if (CALENDAR_MONTHS.test(unit)) return isWhole ? { by: "calendar-months", months: value } : undefined;
  if (YEARS.test(unit)) return isWhole ? { by: "months", months: value * MONTHS_IN_YEAR } : undefined;
  if (value <= 0 || value > 1_000_000) return undefined;
  const [word = "", ...named] = unit.split(" ");
  const kind = HOURS.test(word) ? "h" : COUNTS.test(word) ? "1" : undefined;
  if (kind === undefined) return undefined;
  const counter = counterFor(kind, named.join(" ") || word);
  return counter === undefined ? undefined : { by: "counter", counter, every: value };
}

/** How often something is due: `100 h`, `12 calendar months`, `50 h or 6 months`, `until 2028-02-29`, `28-day data cycle`, `as printed on it`. */
export function readInterval(
  text: string,
  counterFor: (unit: "h" | "1", word: string) => string | undefined,
): ReadInterval {
  const tidy = text.trim().toLowerCase().replace(/\s+/g, " ");
  const isLater = / and /.test(tidy);
  const limits: TimedLimit[] = [];
  for (const part of tidy.split(/ (?:or|and) |[/;+]/)) {
    const each = part.trim();
    const until = /^until (.+)$/.exec(each)?.[1];
    const on = until === undefined ? undefined : readDay(until, "day-first");
    const [, figures = "", unit = ""] = /^([\d.,]+) ?([a-z][a-z0-9 .-]*)$/.exec(each) ?? [];
    const value = readNumber(figures, "point");
    const limit: TimedLimit | undefined =
      on !== undefined
        ? { by: "date", on }
        : each === "28-day data cycle"
          ? { by: "data-cycle" }
          : each === "as printed on it"
            ? { by: "printed" }
            : value === undefined
              ? undefined
              : limitOf(value, unit, counterFor);
    if (limit === undefined) return { ok: false, found: each };
    limits.push(limit);
  }
  return { ok: true, limits, combine: isLater ? "later" : "first" };
}

function limitText(limit: TimedLimit, counters: readonly Counter[]): string {
  switch (limit.by) {
    case "calendar-months":
      return `${limit.months} calendar months`;
    case "months":
      return `${limit.months} months`;
    case "days":
      return `${limit.days} days`;
    case "date":
      return `until ${limit.on}`;
    case "data-cycle":
      return "28-day data cycle";
    case "printed":
      return "as printed on it";
    case "counter": {
      const unit = counters.find(({ id }) => id === limit.counter)?.unit;
      return `${limit.every} ${unit === "1" ? "cycles" : "h"} ${limit.counter}`;
    }
    default:
      return limit satisfies never;
  }
}

/** The interval as it is written to a file, and read from it again. */
export const intervalText = (
  { limits, combine }: { readonly limits: readonly TimedLimit[]; readonly combine: "first" | "later" },
  counters: readonly Counter[],
): string => limits.map((limit) => limitText(limit, counters)).join(combine === "later" ? " and " : " or ");
