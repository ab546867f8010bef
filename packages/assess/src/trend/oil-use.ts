import type { Book } from "@witnessmark/book";
import { differenceFromSI, toSI, UNITS } from "@witnessmark/engine";
import type { AircraftState, CounterReading, Servicing } from "@witnessmark/ledger";
import { pointName } from "../book-index.ts";
import { MINUTE_MS } from "../walk/moments.ts";
import { asRead, type Shown } from "./refer.ts";
import { MOST_POINTS, shownValue } from "./series.ts";
import type { Restart, Series, TrendPoint } from "./trend.ts";

const HOUR_S = 3600;
const OF_A_STEP_1 = 1 / Math.sqrt(12);
/** Between two refills so near to each other the meter's step is most of what is seen. */
const LEAST_H = 0.5;
/** A meter is read to a tenth of an hour. */
const METER_STEP_H = 0.1;
/** Ten hours make a figure that can be grasped. */
const TOLD_H = 10;

/** Airframe hours at a moment: the last reading up to then, those of the same minute included. */
function hoursAt(readings: readonly CounterReading[], at_ms: number): number | undefined {
  return readings.findLast((reading) => reading.at_ms < at_ms + MINUTE_MS)?.total;
}

interface Use {
  readonly points: readonly TrendPoint[];
  readonly restarts: readonly Restart[];
  readonly from: number;
  readonly unit: Shown;
  readonly total: number;
}

/**
 * Oil used between one refill and the next, for each hour flown. Each refill is taken to fill up to the same mark; a
 * change or a drain begins a new mark, an adjustment begins a new series.
 */
function useOf(servicings: readonly Servicing[], hours: readonly CounterReading[]): Use | undefined {
  const measured = servicings.flatMap(({ amount }) =>
    amount !== undefined && UNITS[amount.unit].dimension === "volume" ? [amount] : [],
  );
  const latest = measured.at(-1);
  if (latest === undefined) return undefined;
  const stepOf = ({ value, unit }: typeof latest): number =>
    toSI(10 ** -(String(value).split(".")[1]?.length ?? 0), unit);
  const unit: Shown = {
    perSI: differenceFromSI(TOLD_H * HOUR_S, latest.unit),
    offset: 0,
    step: 0.01,
    symbol: `${UNITS[latest.unit].symbol} in ${TOLD_H} h`,
  };
  const points: TrendPoint[] = [];
  const restarts: Restart[] = [];
  let from = 0;
  let mark_h: number | undefined;
  let carried_m3 = 0;
  for (const servicing of servicings) {
    const { amount, what, at_ms, event } = servicing;
    const now_h = hoursAt(hours, at_ms);
    if (what !== "refilled") {
      mark_h = now_h;
      carried_m3 = 0;
      if (what === "adjusted") {
        restarts.push({ at_ms, what, event });
        from = points.length;
      }
      continue;
    }
    if (amount === undefined || UNITS[amount.unit].dimension !== "volume" || now_h === undefined) continue;
    const used_m3 = toSI(amount.value, amount.unit) + carried_m3;
    if (mark_h === undefined) {
      mark_h = now_h;
      continue;
    }
    const flown_h = now_h - mark_h;
    const isTogether = flown_h < LEAST_H;
    carried_m3 = isTogether ? used_m3 : 0; // two cans at one stop are one refill
    if (isTogether) continue;
    mark_h = now_h;
    const valueSI = used_m3 / (flown_h * HOUR_S);
    const doubt = Math.hypot(
      (stepOf(amount) * OF_A_STEP_1) / (flown_h * HOUR_S),
      (valueSI * METER_STEP_H * OF_A_STEP_1) / flown_h,
    );
    points.push({
      event,
      at_ms,
      valueSI,
      uncertaintySI: doubt,
      scatterSI: doubt,
      shown: shownValue(valueSI, unit),
      asRead: `${asRead({ read: amount })} after ${flown_h.toFixed(1)} h`,
      by: servicing.author.name,
      ...(servicing.walk === undefined ? {} : { walk: servicing.walk }),
    });
  }
  return points.length === 0 ? undefined : { points, restarts, from, unit, total: points.length };
}

interface Held {
  readonly hours: readonly CounterReading[];
  readonly book: Book;
  readonly series: readonly Series[];
}

const held = new WeakMap<readonly Servicing[], Held>();

const NONE: readonly CounterReading[] = [];

/** One series for each place where oil is added; made once for each list of servicings and hours. */
export function oilUseOf(book: Book, state: AircraftState): readonly Series[] {
  const { servicings } = state;
  const counter = book.counters.find(({ of, unit }) => of === "airframe" && unit === "h");
  const hours = (counter === undefined ? undefined : state.counters.get(counter.id)) ?? NONE;
  const known = held.get(servicings);
  if (known !== undefined && known.hours === hours && known.book === book) return known.series;
  const byPlace = new Map<string, Servicing[]>();
  for (const servicing of servicings) {
    if (servicing.of !== "oil") continue;
    const place = servicing.point ?? servicing.check ?? "engine";
    const list = byPlace.get(place);
    if (list === undefined) byPlace.set(place, [servicing]);
    else list.push(servicing);
  }
  const series = [...byPlace].flatMap(([place, list]): readonly Series[] => {
    const use = useOf(
      list.toSorted((a, b) => a.at_ms - b.at_ms),
      hours,
    );
    if (use === undefined) return [];
    const cut = Math.max(0, use.points.length - MOST_POINTS);
    const points = use.points.slice(cut);
    const from = Math.max(0, use.from - cut);
    const check = book.checksById.get(place);
    const name = book.points.has(place)
      ? pointName(book, place)
      : check === undefined
        ? undefined
        : pointName(book, check.point);
    return [
      {
        id: `oil-use:${place}`,
        kind: "oil-use",
        title: byPlace.size > 1 && name !== undefined ? `${name}, oil used` : "Engine oil used",
        quantity: "oil used",
        unit: use.unit,
        points,
        total: use.total,
        notReferred: 0,
        restarts: use.restarts,
        limits: {},
        from,
      },
    ];
  });
  held.set(servicings, { hours, book, series });
  return series;
}
