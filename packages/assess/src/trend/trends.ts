import type { Book } from "@witnessmark/book";
import type { AircraftState, PlannedFlight, Status } from "@witnessmark/ledger";
import { useOfFlight } from "../timed/use-of-flight.ts";
import { endOfDay_ms, type LocalClock } from "../words/local-time.ts";
import { oilUseOf } from "./oil-use.ts";
import { fitOfSeries, seriesOf } from "./series.ts";
import type { FittedSeries, Forecast, Series, Trend } from "./trend.ts";
import { forecastOf, moreOf, sentenceOf } from "./trend-words.ts";

const DAY_MS = 86_400_000;
/** A limit that may be met within so many days is told before it is. */
const SOON_d = 14;

/** Until when a limit that is met matters today: a fortnight of whole local days, or the end of the planned flight. */
const soon_ms = (flight: PlannedFlight | null, clock: LocalClock): number =>
  Math.max(endOfDay_ms(clock.now_ms, clock) + SOON_d * DAY_MS, useOfFlight(flight)?.ends_ms ?? 0);

/** Caution when a limit may be met soon, or when oil use rises, which has no limit in a book. */
function statusOf(series: FittedSeries, forecast: Forecast | undefined, until_ms: number): Status {
  const { fit } = series;
  if (fit.kind === "too-few") return "open";
  if (fit.kind !== "moving") return "clear";
  if (series.kind === "oil-use" && series.limits.high === undefined)
    return fit.slope_perDay > 0 ? "caution" : "clear";
  return forecast?.earliest_ms !== undefined && forecast.earliest_ms <= until_ms ? "caution" : "clear";
}

export function trendOf(of: Series, flight: PlannedFlight | null, clock: LocalClock): Trend {
  const series: FittedSeries = { ...of, fit: fitOfSeries(of) };
  const forecast = forecastOf(series, clock);
  return {
    ...series,
    sentence: sentenceOf(series, forecast, clock),
    more: moreOf(series, forecast, clock),
    ...(forecast === undefined ? {} : { forecast }),
    status: statusOf(series, forecast, soon_ms(flight, clock)),
  };
}

/** Every series there is, as of now or not yet told of. */
export function* allSeries(book: Book, state: AircraftState): Generator<Series> {
  for (const check of book.checks) {
    const series = seriesOf(book, state, check);
    if (series !== undefined) yield series;
  }
  yield* oilUseOf(book, state);
}

const RANK = { moving: 0, perhaps: 1, steady: 2, "too-few": 2 } as const;

/** Moving ones first, those with a limit near before the others; then the latest read. */
export function compareTrends(a: Trend, b: Trend): number {
  const first = (trend: Trend): number => trend.forecast?.earliest_ms ?? Number.MAX_SAFE_INTEGER;
  const last = (trend: Trend): number => trend.points.at(-1)?.at_ms ?? 0;
  return (
    Number(b.status === "caution") - Number(a.status === "caution") ||
    RANK[a.fit.kind] - RANK[b.fit.kind] ||
    first(a) - first(b) ||
    last(b) - last(a) ||
    (a.id < b.id ? -1 : 1)
  );
}

/**
 * Every reading ever taken as series that can be compared: what each says today, and when a limit is met. Those worth
 * telling first come first.
 */
export const trendsOf = (
  book: Book,
  state: AircraftState,
  flight: PlannedFlight | null,
  clock: LocalClock,
): readonly Trend[] =>
  [...allSeries(book, state)].map((series) => trendOf(series, flight, clock)).sort(compareTrends);
