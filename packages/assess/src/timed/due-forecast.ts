import { addDays } from "@witnessmark/engine";
import type { AircraftState, CounterReading, LocalDate } from "@witnessmark/ledger";
import type { LimitLeft } from "./timed-figures.ts";

const DAY_MS = 86_400_000;
/** Use is looked at in spans of this length: a busy week is not taken for a busy year. */
const SPAN_d = 30;
/** A year back: more would tell of another time. */
const SPANS_MOST = 12;
/** Of fewer spans nothing is said. */
const SPANS_LEAST = 3;
/** A date further ahead than this tells nobody anything. */
const AHEAD_d = 3650;

/** When a limit by a counter is met, if the aircraft goes on being used as it was. */
export interface DueForecast {
  readonly expected: LocalDate;
  /** Used as in its busiest tenth of spans. */
  readonly earliest: LocalDate;
  /** Used as in its quietest tenth of spans; undefined where it then stands still, or goes on for ten years. */
  readonly latest: LocalDate | undefined;
  /** So many spans of 30 days were looked at. */
  readonly spans: number;
}

/**
 * The day on which what is left will be used up, from the use of the last year: the mean for what is expected, the
 * busiest and the quietest tenth of its 30-day spans for the range. Common practice of maintenance planning, no rule:
 * the limit itself is what counts.
 *
 * @param readings of the limit's counter, in ledger order
 * @returns undefined where less than three spans are on record, or nothing was used in them
 */
export function dueForecast(
  left: Extract<LimitLeft, { by: "counter" }>,
  readings: NonNullable<ReturnType<AircraftState["counters"]["get"]>>,
  today: LocalDate,
  now_ms: number,
): DueForecast | undefined {
  if (left.left <= 0) return undefined;
  const uses = usesOf(
    readings.toSorted((a, b) => a.at_ms - b.at_ms),
    now_ms,
  );
  const mean = uses.reduce((sum, use) => sum + use, 0) / uses.length;
  if (uses.length < SPANS_LEAST || !(mean > 0)) return undefined;
  const after = (use: number): LocalDate | undefined => {
    const days = Math.floor((left.left / use) * SPAN_d);
    return days > AHEAD_d ? undefined : addDays(today, days); // nothing used: endless days
  };
  const expected = after(mean);
  const earliest = after(Math.max(mean, quantile(uses, 0.9)));
  if (expected === undefined || earliest === undefined) return undefined;
  return { expected, earliest, latest: after(Math.min(mean, quantile(uses, 0.1))), spans: uses.length };
}

/** What was counted in each of the last spans that lie wholly within the readings, the latest first. */
function usesOf(readings: readonly CounterReading[], now_ms: number): readonly number[] {
  const [first, last] = [readings[0], readings.at(-1)];
  if (first === undefined || last === undefined) return [];
  const uses: number[] = [];
  // after the last reading nothing is known to have been used; that it stood still is use too
  for (let end_ms = now_ms; uses.length < SPANS_MOST; end_ms -= SPAN_d * DAY_MS) {
    const begin_ms = end_ms - SPAN_d * DAY_MS;
    if (begin_ms < first.at_ms) break;
    uses.push(Math.max(0, totalAt(readings, end_ms) - totalAt(readings, begin_ms)));
  }
  return uses;
}

/** Straight between two readings; the last one stands until the next is made. */
function totalAt(readings: readonly CounterReading[], at_ms: number): number {
  const next = readings.findIndex((reading) => reading.at_ms > at_ms);
  const before = readings[next < 0 ? readings.length - 1 : Math.max(0, next - 1)];
  const after = readings[next < 0 ? readings.length - 1 : next];
  if (before === undefined || after === undefined) return 0;
  if (after.at_ms <= before.at_ms) return before.total;
  return (
    before.total +
    ((after.total - before.total) * Math.max(0, at_ms - before.at_ms)) / (after.at_ms - before.at_ms)
  );
}

/** Linear between order statistics, as the default of most statistics programs (Hyndman and Fan 1996, type 7). */
function quantile(values: readonly number[], share_1: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (sorted.length - 1) * share_1;
  const [low, high] = [sorted[Math.floor(at)] ?? 0, sorted[Math.ceil(at)] ?? 0];
  return low + (high - low) * (at - Math.floor(at));
}
