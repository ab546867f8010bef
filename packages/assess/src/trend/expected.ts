import type { Book, Check } from "@witnessmark/book";
import { predictionInterval } from "@witnessmark/engine";
import type { AircraftState, Read } from "@witnessmark/ledger";
import { dayText, type LocalClock } from "../words/local-time.ts";
import { type Referred, refer } from "./refer.ts";
import { fitBefore, fitOfSeries, seriesOf, shownValue } from "./series.ts";
import type { Series, TrendFit } from "./trend.ts";
import { valueText } from "./trend-words.ts";

const DAY_MS = 86_400_000;
/** While a reading is typed: what one in twenty sound readings is as well. */
const ODD_WHILE_TYPED_1 = 0.95;
/** In an assessment: dozens of readings in each walk, so that one in a thousand walks is disturbed at the most. */
export const ODD_IN_ASSESSMENT_1 = 0.9999;

/** Within what the next reading is to be expected, SI, under the conditions of the series. */
export interface Expected {
  readonly expectedSI: number;
  readonly lowSI: number;
  readonly highSI: number;
  /** When the last reading before it was taken. */
  readonly since_ms: number;
}

/**
 * Within what a reading taken now is to be expected.
 *
 * @param fit what the readings before it say
 * @returns undefined where they are too few to say
 */
export function expectedAt(
  fit: TrendFit,
  since_ms: number,
  now_ms: number,
  confidence_1 = ODD_WHILE_TYPED_1,
): Expected | undefined {
  if (fit.kind === "too-few") return undefined;
  const { expected, low, high } = predictionInterval(
    fit.line,
    (now_ms - fit.origin_ms) / DAY_MS,
    confidence_1,
  );
  return { expectedSI: expected, lowSI: low, highSI: high, since_ms };
}

/** Within what today's reading of a series is to be expected; undefined where too few readings say. */
export const expectedNow = (series: Series, { now_ms }: LocalClock): Expected | undefined =>
  expectedAt(fitOfSeries(series), series.points.at(-1)?.at_ms ?? now_ms, now_ms);

/**
 * `0.06 bar less than expected since 9 Nov`; undefined for what is within the interval, or within what one gauge can
 * tell from another.
 */
export function oddWords(
  { valueSI, uncertaintySI }: Referred,
  expected: Expected,
  { unit }: Pick<Series, "unit">,
  clock: LocalClock,
): string | undefined {
  if (valueSI >= expected.lowSI && valueSI <= expected.highSI) return undefined;
  const away = valueSI - expected.expectedSI;
  if (Math.abs(away) <= uncertaintySI) return undefined;
  const size = Math.abs(shownValue(away, { ...unit, offset: 0 }));
  return `${valueText(size, unit)} ${away < 0 ? "less" : "more"} than expected since ${dayText(expected.since_ms, clock)}`;
}

/** What is being typed, before it is kept. */
export interface Typed {
  readonly walk: string;
  readonly read: Read;
  readonly temperature?: Read;
}

/** The words beside a reading while it is typed; undefined when there is nothing to say of it. */
export function oddWhileTyped(
  book: Book,
  state: AircraftState,
  check: Check,
  { walk, read, temperature }: Typed,
  clock: LocalClock,
): string | undefined {
  const series = seriesOf(book, state, check);
  const last = series?.points.at(-1);
  if (series === undefined || last === undefined || check.reading === undefined) return undefined;
  const isOwn = last.walk === walk; // kept already: it is held against those before it
  const before = isOwn ? series.points.at(-2) : last;
  if (before === undefined) return undefined;
  const expected = expectedAt(isOwn ? fitBefore(series) : fitOfSeries(series), before.at_ms, clock.now_ms);
  const referred = refer(check.reading, book.gauges, {
    gauge: check.reading.gauge,
    read,
    ...(temperature === undefined ? {} : { temperature }),
  });
  return expected === undefined || referred === undefined
    ? undefined
    : oddWords(referred, expected, series, clock);
}
