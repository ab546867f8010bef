import {
  changePoint,
  FEWEST_READINGS,
  leastSquares,
  modifiedZ,
  ODD_FROM,
  scatterOf,
  slowLeak,
  theilSen,
} from "@witnessmark/engine";
import type { TrendFit, TrendPoint } from "./trend.ts";

const DAY_MS = 86_400_000;
const CONFIDENCE_1 = 0.95;
/** How often a change may be told of a series without one; it is looked for again with every reading. */
const CHANGE_RISK_1 = 0.01;
/** A series is parted at no more changes than this. */
const MOST_CHANGES = 4;
/** From so many readings on, they themselves say how much they scatter. */
const SCATTER_FROM = 12;

const tooFew = (n: number): TrendFit => ({ kind: "too-few", n, needed: FEWEST_READINGS });

interface Values {
  readonly t_d: readonly number[];
  readonly y: readonly number[];
}

/** The readings after the last change, when there are enough of them to say something. */
function sinceChange(values: Values): {
  readonly from: number;
  /** From where on no step in level is in it. */
  readonly levelFrom: number;
  readonly change?: { readonly between: readonly [number, number]; readonly isFitted: boolean };
} {
  let from = 0;
  let levelFrom = 0;
  let told: { between: readonly [number, number]; isFitted: boolean } | undefined;
  for (let step = 0; step < MOST_CHANGES; step += 1) {
    const y = values.y.slice(from);
    const change = changePoint(values.t_d.slice(from), y, undefined, CHANGE_RISK_1);
    if (change === undefined || change.kind === "too-few") break;
    const between = [from + change.between[0], from + change.between[1]] as const;
    const isFitted = values.y.length - between[1] >= FEWEST_READINGS;
    told = { between, isFitted };
    if (!isFitted) break;
    from = between[1];
    if (change.kind === "level") levelFrom = from;
  }
  return { from, levelFrom, ...(told === undefined ? {} : { change: told }) };
}

/** Standard deviation of one reading: by its gauge while there are few, by the readings themselves later. */
function sdOf({ t_d, y }: Values, points: readonly TrendPoint[], scatterSI: number): number {
  const byGauge = Math.max(...points.map(({ uncertaintySI }) => uncertaintySI), scatterSI);
  const seen = scatterOf(t_d, y);
  if (seen === undefined) return byGauge;
  if (y.length < SCATTER_FROM) return Math.max(byGauge, seen);
  // an estimate from few is itself in doubt by one part in √(2n)
  return Math.max(scatterSI, seen * (1 + 2 / Math.sqrt(2 * y.length)));
}

/** Whether the watch on slow leaks has given alarm: looked at each day, so many false alarms are one too many. */
function isAlarmed(values: Values, sd: number, falls: boolean): boolean {
  if (!(sd > 0)) return false;
  const watch = slowLeak(values.t_d, values.y, sd, { direction: falls ? "falling" : "rising" });
  return watch.kind === "watch" && watch.alarmAt !== undefined;
}

/** How many of the latest are looked at for a slope: a leak that began lately is not in all of them. */
const LOOKED_AT = [60, 12, 6] as const;

/**
 * Whether there may be a slope at all, by the cheapest test: an assessment asks this of every series, and works out the
 * rest only where it is so.
 */
export function maySlope(all: readonly TrendPoint[], began: number): boolean {
  const points = all.slice(began);
  return LOOKED_AT.some((count) => {
    const latest = points.slice(-count);
    const first = latest[0];
    if (first === undefined || latest.length < FEWEST_READINGS) return false;
    const robust = theilSen(
      latest.map(({ at_ms }) => (at_ms - first.at_ms) / DAY_MS),
      latest.map(({ valueSI }) => valueSI),
      CONFIDENCE_1,
      Math.max(...latest.map(({ scatterSI }) => scatterSI)) * Math.sqrt(12),
    );
    return robust.kind === "robust-line" && (robust.low > 0 || robust.high < 0);
  });
}

/** Older ones say nothing of today that these do not. */
const MOST_FITTED = 60;

/** What the points say that lie after the last restart. @param began where they begin */
export function fitOf(all: readonly TrendPoint[], began: number): TrendFit {
  const from = Math.max(began, all.length - MOST_FITTED);
  const points = all.slice(from);
  const first = points[0];
  if (first === undefined || points.length < FEWEST_READINGS) return tooFew(points.length);
  const whole: Values = {
    t_d: points.map(({ at_ms }) => (at_ms - first.at_ms) / DAY_MS),
    y: points.map(({ valueSI }) => valueSI),
  };
  const since = sinceChange(whole);
  const part: Values = { t_d: whole.t_d.slice(since.from), y: whole.y.slice(since.from) };
  const scatterSI = Math.max(...points.map((point) => point.scatterSI));
  const step = scatterSI * Math.sqrt(12); // a step that scatters so much: no line is surer than that
  const robust = theilSen(part.t_d, part.y, CONFIDENCE_1, step);
  if (robust.kind === "too-few") return tooFew(part.y.length);
  const away = part.y.map(
    (value, at) => value - robust.intercept - robust.slope_perDay * (part.t_d[at] ?? 0),
  );
  const odd = modifiedZ(away).flatMap((z, at) =>
    Math.abs(z) > ODD_FROM && Math.abs(away[at] ?? 0) > ODD_FROM * scatterSI ? [at] : [],
  );
  const kept = part.y.flatMap((_value, at) => (odd.includes(at) ? [] : [at]));
  const line = leastSquares(
    kept.map((at) => part.t_d[at] ?? 0),
    kept.map((at) => part.y[at] ?? 0),
    step,
  );
  if (line.kind === "too-few") return tooFew(kept.length);
  const isSloping = robust.low > 0 || robust.high < 0;
  const watched: Values = {
    t_d: whole.t_d.slice(since.levelFrom),
    y: whole.y.slice(since.levelFrom),
  };
  const isMoving =
    isSloping &&
    maySlope(all, began) &&
    isAlarmed(watched, sdOf(watched, points, scatterSI), robust.slope_perDay < 0);
  const between = since.change?.between;
  return {
    kind: isMoving ? "moving" : isSloping ? "perhaps" : "steady",
    slope_perDay: robust.slope_perDay,
    low_perDay: robust.low,
    high_perDay: robust.high,
    line,
    origin_ms: first.at_ms,
    from: from + since.from,
    odd: odd.map((at) => from + since.from + at),
    ...(since.change === undefined || between === undefined
      ? {}
      : {
          change: {
            between_ms: [points[between[0]]?.at_ms ?? 0, points[between[1]]?.at_ms ?? 0],
            isFitted: since.change.isFitted,
          },
        }),
  };
}
