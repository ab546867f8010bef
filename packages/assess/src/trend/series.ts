import type { Book, Check, Gauge, Reading } from "@witnessmark/book";
import { decimalsOf } from "@witnessmark/engine";
import { type AircraftState, compareOrder, type RecordedReading, type Servicing } from "@witnessmark/ledger";
import { pointName } from "../book-index.ts";
import { asWritten } from "../reading/limit-now.ts";
import { indexDiscrepancies } from "../verdicts/discrepancy-index.ts";
import { MINUTE_MS, recorded_ms } from "../walk/moments.ts";
import { fitOf } from "./fit.ts";
import { asRead, limitsOf, refer, type Shown, shownOf } from "./refer.ts";
import type { Restart, Series, TrendFit, TrendPoint } from "./trend.ts";

/** The latest of a long past: a year and more of daily walks, and what a person waits for. */
export const MOST_POINTS = 120;

/** What the flight itself changes, or what is counted, has no trend: fuel, load, pieces. */
export const isFollowed = (check: Check): check is Check & { readonly reading: Reading } =>
  check.reading !== undefined &&
  check.reading.dimension !== "count" &&
  !check.holds.until.includes("fuelled") &&
  !check.holds.until.includes("loaded");

/** A value as it is shown, to the step. */
export const shownValue = (valueSI: number, { perSI, offset, step }: Shown): number =>
  Number((Math.round((valueSI * perSI + offset) / step) * step).toFixed(decimalsOf(step)));

/** Servicings by the check whose readings begin anew; gone through once for each list. */
const byCheck = new WeakMap<readonly Servicing[], ReadonlyMap<string, readonly Servicing[]>>();

function servicingsOf(servicings: readonly Servicing[], check: string): readonly Servicing[] {
  let found = byCheck.get(servicings);
  if (found === undefined) {
    const made = new Map<string, Servicing[]>();
    for (const servicing of servicings) {
      if (servicing.check === undefined) continue;
      const list = made.get(servicing.check);
      if (list === undefined) made.set(servicing.check, [servicing]);
      else list.push(servicing);
    }
    byCheck.set(servicings, made);
    found = made;
  }
  return found.get(check) ?? [];
}

type Begins = Restart & { readonly of: Parameters<typeof compareOrder>[0] };

/** What began the readings of a check anew, oldest first. */
function beginnings(state: AircraftState, check: string): readonly Begins[] {
  const serviced = servicingsOf(state.servicings, check).map(
    (servicing): Begins => ({
      at_ms: servicing.at_ms,
      what: servicing.what,
      event: servicing.event,
      of: servicing,
    }),
  );
  const closing = indexDiscrepancies(state.discrepancies).closedOfCheck.get(check);
  const mended: readonly Begins[] =
    closing?.how === "put-right"
      ? [{ at_ms: recorded_ms(closing), what: "put right", event: closing.event, of: closing }]
      : [];
  return [...serviced, ...mended].sort((a, b) => a.at_ms - b.at_ms || compareOrder(a.of, b.of));
}

/** People say minutes: in the minute of the servicing itself the order of the ledger decides. */
function isAfter(point: RecordedReading, { at_ms, of }: Begins): boolean {
  const minute_ms = Math.floor(at_ms / MINUTE_MS) * MINUTE_MS;
  const read_ms = recorded_ms(point);
  if (read_ms >= minute_ms + MINUTE_MS) return true;
  return read_ms >= minute_ms && compareOrder(point, of) > 0;
}

/** The last reading of each walk, in the order of time, without two at one time. */
function lastOfEachWalk(readings: readonly RecordedReading[]): readonly RecordedReading[] {
  const latest = new Map(readings.map((reading) => [reading.walk, reading]));
  const byTime = new Map([...latest.values()].map((reading) => [recorded_ms(reading), reading]));
  return [...byTime.values()].sort((a, b) => recorded_ms(a) - recorded_ms(b));
}

interface Held {
  readonly check: Check;
  readonly first: RecordedReading | undefined;
  readonly count: number;
  readonly began: string;
  readonly series: Series;
}

/** By the last reading: it stays the same object while others are added elsewhere. */
const held = new WeakMap<RecordedReading, Held>();

/** The series of one check; undefined when it is not followed or was never read. Made once for each new reading. */
export function seriesOf(book: Book, state: AircraftState, check: Check): Series | undefined {
  const readings = state.checks.get(check.id)?.readings;
  const last = readings?.at(-1);
  if (readings === undefined || last === undefined || !isFollowed(check)) return undefined;
  const begins = beginnings(state, check.id);
  const began = begins.map(({ event }) => event).join(" ");
  const known = held.get(last);
  if (
    known !== undefined &&
    known.check === check &&
    known.first === readings[0] &&
    known.count === readings.length &&
    known.began === began
  ) {
    return known.series;
  }
  const series = makeSeries(book, check, readings, begins);
  if (series === undefined) return undefined;
  held.set(last, { check, first: readings[0], count: readings.length, began, series });
  return series;
}

function makeSeries(
  book: Book,
  check: Check & { readonly reading: Reading },
  readings: readonly RecordedReading[],
  begins: readonly Begins[],
): Series | undefined {
  const gauge = book.gauges.get(check.reading.gauge);
  if (gauge === undefined) return undefined;
  const unit = shownOf(check.reading, gauge);
  const latest = lastOfEachWalk(readings.slice(-MOST_POINTS));
  const last = begins.at(-1);
  let fresh = 0;
  const points = latest.flatMap((reading): readonly TrendPoint[] => {
    const referred = refer(check.reading, book.gauges, reading);
    if (referred === undefined) return [];
    if (last === undefined || isAfter(reading, last)) fresh += 1;
    return [pointOf(reading, referred, unit, gauge)];
  });
  const from = points.length - fresh;
  return {
    id: `reading:${check.id}`,
    kind: "reading",
    check: check.id,
    title: pointName(book, check.point) ?? check.title,
    quantity: quantityOf(check.reading),
    unit,
    points,
    total: readings.length,
    notReferred: latest.length - points.length,
    restarts: begins.map(({ at_ms, what, event }) => ({ at_ms, what, event })),
    limits: limitsOf(check.reading),
    from,
  };
}

/** Where a gas moves the limit, all readings are told as they would be at the book's temperature. */
const quantityOf = ({ quantity, limit }: Reading): string =>
  limit.by === "fixed" || limit.by === "table" ? quantity : `${quantity} at ${asWritten(limit.at)}`;

const fits = new WeakMap<Series, TrendFit>();

/** What all points of a series say; worked out once. */
export function fitOfSeries(series: Series): TrendFit {
  const known = fits.get(series);
  if (known !== undefined) return known;
  const made = fitOf(series.points, series.from);
  fits.set(series, made);
  return made;
}

const befores = new WeakMap<Series, TrendFit>();

/** What the points before the last say: what the last is held against. */
export function fitBefore(series: Series): TrendFit {
  const known = befores.get(series);
  if (known !== undefined) return known;
  const made = fitOf(
    series.points.slice(0, -1),
    Math.min(series.from, Math.max(0, series.points.length - 1)),
  );
  befores.set(series, made);
  return made;
}

const pointOf = (
  reading: RecordedReading,
  referred: NonNullable<ReturnType<typeof refer>>,
  unit: Shown,
  gauge: Gauge,
): TrendPoint => ({
  ...referred,
  event: reading.event,
  at_ms: recorded_ms(reading),
  shown: shownValue(referred.valueSI, unit),
  asRead: asRead(reading, gauge),
  by: reading.imported?.by ?? reading.author.name,
  walk: reading.walk,
});

/** One reading of a long past, for the table behind the chart; undefined where it cannot be referred. */
export function referredPoint(book: Book, check: Check, reading: RecordedReading): TrendPoint | undefined {
  const gauge = check.reading === undefined ? undefined : book.gauges.get(check.reading.gauge);
  if (check.reading === undefined || gauge === undefined) return undefined;
  const referred = refer(check.reading, book.gauges, reading);
  return referred === undefined
    ? undefined
    : pointOf(reading, referred, shownOf(check.reading, gauge), gauge);
}
