import type { Trend, TrendPoint } from "@witnessmark/assess";
import { predictionInterval } from "@witnessmark/engine";
import { multiples, tickIntervals } from "../../instruments/scale.ts";

const DAY_MS = 86_400_000;

/** Where everything of a chart stands, in CSS pixels. */
export interface TrendLayout {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly points: readonly (TrendPoint & {
    readonly x: number;
    readonly y: number;
    /** Half of its doubt of 95 %. */
    readonly doubt: number;
    readonly is: "fitted" | "odd" | "earlier";
  })[];
  /** The line and its band, from where it is fitted to where it is forecast. */
  readonly line?: readonly {
    readonly x: number;
    readonly y: number;
    readonly low: number;
    readonly high: number;
  }[];
  readonly limits: readonly { readonly end: "low" | "high"; readonly y: number; readonly isAway: boolean }[];
  readonly restarts: readonly {
    readonly x: number;
    readonly what: string;
    /** Whether its word has room beside that of the next one; the newest always has. */
    readonly isNamed: boolean;
    readonly at_ms: number;
  }[];
  readonly now: number;
  readonly dates: readonly { readonly x: number; readonly at_ms: number }[];
  readonly values: readonly { readonly y: number; readonly value: number }[];
}

const SIDES = { left: 46, right: 12, top: 24, bottom: 24 } as const;
/** The future takes this much of the chart at most. */
const AHEAD_1 = 0.35;
const SAMPLES = 24;
const OF_95 = 1.96;
/** A limit that would press the readings into less than this share of the height stands at the edge instead. */
const LEAST_SHARE_1 = 0.2;

interface Span {
  readonly from: number;
  readonly to: number;
}

function timesOf({ points, forecast }: Trend, now_ms: number): Span {
  const first = points[0]?.at_ms ?? now_ms;
  const last = Math.max(points.at(-1)?.at_ms ?? now_ms, now_ms);
  const past = Math.max(last - first, DAY_MS);
  const met = forecast?.latest_ms ?? forecast?.expected_ms ?? last;
  const ahead = Math.min(Math.max(met - last, past * 0.04), (past * AHEAD_1) / (1 - AHEAD_1));
  return { from: first - past * 0.03, to: last + ahead };
}

/** The values that are shown: all readings, and each limit that leaves them room. */
function heightsOf({ points, limits, unit, forecast }: Trend): Span {
  const values = points.map(({ shown }) => shown);
  const least = Math.min(...values);
  const most = Math.max(...values);
  const own = Math.max(most - least, 4 * unit.step);
  const shown = (["low", "high"] as const).flatMap((end) => {
    const limitSI = limits[end];
    if (limitSI === undefined) return [];
    const value = limitSI * unit.perSI + unit.offset;
    const span = Math.max(most, value) - Math.min(least, value);
    return own / span >= LEAST_SHARE_1 || forecast?.limit === end ? [value] : [];
  });
  const from = Math.min(least, ...shown);
  const to = Math.max(most, ...shown);
  const beside = Math.max((to - from) * 0.14, 2 * unit.step);
  return { from: from - beside, to: to + beside };
}

/** Numbers are not nearer to each other than this. */
const DATE_APART_px = 62;
const VALUE_APART_px = 34;

const DAY_STEPS = [1, 2, 7, 14] as const;
const MONTH_STEPS = [1, 2, 3, 6, 12, 24] as const;

/** Midnights, or the firsts of months, so far apart that their names do not touch. */
function datesOf({ from, to }: Span, width: number): readonly number[] {
  const apart_d = ((to - from) / DAY_MS) * (DATE_APART_px / Math.max(DATE_APART_px, width));
  const start = new Date(from);
  const days = DAY_STEPS.find((step) => step >= apart_d);
  const months = MONTH_STEPS.find((step) => step * 28 >= apart_d) ?? Math.ceil(apart_d / 365) * 12;
  const found: number[] = [];
  for (let count = 0; found.length < 40; count += 1) {
    const at =
      days === undefined
        ? new Date(
            start.getFullYear(),
            start.getMonth() - (start.getMonth() % Math.min(12, months)) + count * months,
            1,
          )
        : new Date(start.getFullYear(), start.getMonth(), start.getDate() + 1 + count * days);
    const at_ms = at.getTime();
    if (at_ms > to) break;
    if (at_ms >= from) found.push(at_ms);
  }
  return found;
}

/** A word over the chart is about so wide for each of its letters. */
const LETTER_px = 8;

type Restart = Omit<TrendLayout["restarts"][number], "isNamed">;

/** Words that would lie over each other cannot be read: from the newest back, each that has room has its word. */
function named(restarts: readonly Restart[]): TrendLayout["restarts"] {
  let free = Number.POSITIVE_INFINITY;
  return restarts
    .toReversed()
    .map((restart) => {
      const half = (restart.what.length * LETTER_px) / 2;
      const isNamed = restart.x + half <= free;
      if (isNamed) free = restart.x - half;
      return { ...restart, isNamed };
    })
    .toReversed();
}

const within = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** Where everything of a series stands in a chart of this size. */
export function trendLayout(trend: Trend, now_ms: number, width: number, height: number): TrendLayout {
  const { fit, unit, limits } = trend;
  const times = timesOf(trend, now_ms);
  const heights = heightsOf(trend);
  const [left, right] = [SIDES.left, width - SIDES.right];
  const [top, bottom] = [SIDES.top, height - SIDES.bottom];
  const x = (at_ms: number) => left + ((at_ms - times.from) / (times.to - times.from)) * (right - left);
  const y = (value: number) =>
    bottom - ((value - heights.from) / (heights.to - heights.from)) * (bottom - top);
  const ofSI = (valueSI: number) => y(valueSI * unit.perSI + unit.offset);
  const per_px = ((bottom - top) / (heights.to - heights.from)) * unit.perSI;
  const isFitted = fit.kind !== "too-few";
  const first = isFitted ? fit.from : trend.from;
  const begins_ms = trend.points[first]?.at_ms;
  const samples =
    isFitted && begins_ms !== undefined
      ? Array.from({ length: SAMPLES + 1 }, (_, at) => {
          const at_ms = begins_ms + ((times.to - begins_ms) * at) / SAMPLES;
          const next = predictionInterval(fit.line, (at_ms - fit.origin_ms) / DAY_MS, 0.95);
          return {
            x: x(at_ms),
            y: ofSI(next.expected),
            low: within(ofSI(next.low), top, bottom),
            high: within(ofSI(next.high), top, bottom),
          };
        })
      : undefined;
  return {
    left,
    right,
    top,
    bottom,
    points: trend.points.map((point, at) => ({
      ...point,
      x: x(point.at_ms),
      y: ofSI(point.valueSI),
      doubt: OF_95 * point.uncertaintySI * per_px,
      is: at < first ? "earlier" : isFitted && fit.odd.includes(at) ? "odd" : "fitted",
    })),
    ...(samples === undefined ? {} : { line: samples }),
    limits: (["low", "high"] as const).flatMap((end) => {
      const limitSI = limits[end];
      if (limitSI === undefined) return [];
      const at = ofSI(limitSI);
      return [{ end, y: within(at, top, bottom), isAway: at < top || at > bottom }];
    }),
    restarts: named(
      trend.restarts.flatMap(({ at_ms, what }) =>
        at_ms < times.from || at_ms > times.to ? [] : [{ x: x(at_ms), what, at_ms }],
      ),
    ),
    now: x(now_ms),
    dates: datesOf(times, right - left).map((at_ms) => ({ x: x(at_ms), at_ms })),
    values: multiples(
      heights.from,
      heights.to,
      tickIntervals(heights.to - heights.from, bottom - top, VALUE_APART_px).major,
    ).map((value) => ({ y: y(value), value })),
  };
}
