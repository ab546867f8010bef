import { crossing, decimalsOf, FEWEST_READINGS, roundToSafeSide } from "@witnessmark/engine";
import { inWords, sentence } from "../words/count-words.ts";
import { dayText, type LocalClock } from "../words/local-time.ts";
import type { Shown } from "./refer.ts";
import type { FittedSeries, Forecast, Series, TrendFit } from "./trend.ts";

const DAY_MS = 86_400_000;

type Fitted = Extract<TrendFit, { kind: "steady" | "perhaps" | "moving" }>;

/** In how many days a slope is told, the shortest in which it is one step of the gauge. */
const PERIODS = [
  { days: 1, name: "a day" },
  { days: 7, name: "a week" },
  { days: 30.44, name: "a month" },
  { days: 365.25, name: "a year" },
] as const;

const plain = (value: number, step: number): string => value.toFixed(decimalsOf(step)).replace("-", "−");

/** `5.20 bar`, without the reference. */
export const valueText = (value: number, { step, symbol }: Shown): string =>
  `${plain(value, step)} ${symbol.replace(/ at .*$/, "")}`.trim();

/** `0.02 bar a day`: rounded away from zero, so that nothing is told slower than it is. */
export function slopeText(slope_perDay: number, { perSI, step, symbol }: Shown): string {
  const size = Math.abs(slope_perDay * perSI);
  const period = PERIODS.find(({ days }) => size * days >= step * 0.999) ?? PERIODS[3];
  const value = roundToSafeSide(size * period.days, step, "up");
  return `${valueText(value, { perSI, offset: 0, step, symbol })} ${period.name}`;
}

/** `between 0.04 and 0.05 bar a week`, the ends taken outwards. */
function intervalText(low_perDay: number, high_perDay: number, unit: Shown): string {
  const ends = [low_perDay, high_perDay].map((end) => Math.abs(end * unit.perSI)).sort((a, b) => a - b);
  const [least = 0, most = 0] = ends;
  const { days, name } = PERIODS.find((period) => most * period.days >= unit.step * 0.999) ?? PERIODS[3];
  const from = roundToSafeSide(least * days, unit.step, "down");
  const to = roundToSafeSide(most * days, unit.step, "up");
  return `between ${plain(from, unit.step)} and ${valueText(to, unit)} ${name}`;
}

/** A limit as it is shown, rounded to the side that does not flatter. */
export const limitText = (limitSI: number, end: "low" | "high", { perSI, offset, step }: Shown): string =>
  plain(roundToSafeSide(limitSI * perSI + offset, step, end === "low" ? "up" : "down"), step);

/** Nobody plans by what is further away, and a line says nothing of it. */
const FARTHEST_d = 365;

/** When the limit is met that the series goes towards; undefined where it goes towards none, or not within a year. */
export function forecastOf(series: FittedSeries, clock: LocalClock): Forecast | undefined {
  const { fit, limits } = series;
  if (fit.kind !== "moving") return undefined;
  const limit = fit.slope_perDay < 0 ? "low" : "high";
  const limitSI = limits[limit];
  if (limitSI === undefined) return undefined;
  const found = crossing(fit.line, limitSI);
  const at = (days: number | undefined): number | undefined =>
    days === undefined ? undefined : fit.origin_ms + days * DAY_MS;
  const earliest_ms = at(found.earliest_d);
  const expected_ms = at(found.expected_d);
  const latest_ms = at(found.latest_d);
  if (earliest_ms === undefined || earliest_ms > clock.now_ms + FARTHEST_d * DAY_MS) return undefined;
  return {
    limit,
    limitSI,
    earliest_ms,
    ...(expected_ms === undefined ? {} : { expected_ms }),
    ...(latest_ms === undefined ? {} : { latest_ms }),
  };
}

const daysFrom = (at_ms: number, { now_ms }: LocalClock): number => Math.floor((at_ms - now_ms) / DAY_MS);

/** `in two days`, `tomorrow`, `today`, `in about 5 weeks` */
function inDays(days: number): string {
  if (days <= 0) return "today";
  if (days === 1) return "tomorrow";
  return `in ${inWords(days)} days`;
}

const NEAR_d = 31;

/** `today`, `in two days`; a date when it is far. */
const whenMet = (at_ms: number, clock: LocalClock): string => {
  const days = daysFrom(at_ms, clock);
  return days < NEAR_d ? inDays(days) : `about ${dayText(at_ms, clock)}`;
};

/** `Below 5.20 in two days, tomorrow at the earliest.` */
function metText(series: Series, forecast: Forecast, clock: LocalClock): string {
  const past = forecast.limit === "low" ? "Below" : "Above";
  const limit = limitText(forecast.limitSI, forecast.limit, series.unit);
  const last = series.points.at(-1)?.valueSI;
  const isPast =
    last !== undefined && (forecast.limit === "low" ? last < forecast.limitSI : last > forecast.limitSI);
  if (isPast) return `${past} ${limit} now.`;
  const { earliest_ms = clock.now_ms, expected_ms } = forecast;
  if (expected_ms === undefined) return `${past} ${limit} ${whenMet(earliest_ms, clock)} at the earliest.`;
  const early = whenMet(earliest_ms, clock);
  const likely = whenMet(expected_ms, clock);
  return early === likely
    ? `${past} ${limit} ${likely}.`
    : `${past} ${limit} ${likely}, ${early} at the earliest.`;
}

const UNDONE: Readonly<Record<string, string>> = {
  refilled: "it was refilled",
  drained: "it was drained",
  changed: "it was changed",
  adjusted: "it was adjusted",
  "put right": "it was put right",
};

/** ` since it was changed on 4 Oct`, ` since 4 Oct` */
function sinceText(series: Series, fit: Fitted, clock: LocalClock): string {
  const restart = series.restarts.at(-1);
  const first = series.points[fit.from];
  if (restart !== undefined && fit.from === series.from) {
    return ` since ${UNDONE[restart.what] ?? restart.what} on ${dayText(restart.at_ms, clock)}`;
  }
  return first === undefined ? "" : ` since ${dayText(first.at_ms, clock)}`;
}

function movingText(series: Series, slope_perDay: number): string {
  const slope = slopeText(slope_perDay, series.unit);
  const falls = slope_perDay < 0;
  if (series.kind === "oil-use") {
    return `Oil use ${falls ? "falls" : "rises"} by ${slope.replace(/ a (\w+)$/, " each $1")}`;
  }
  if (series.quantity.includes("pressure") && falls) return `A slow leak: ${slope}`;
  return `${falls ? "Going down" : "Going up"}: ${slope}`;
}

function changeText(fit: Fitted, clock: LocalClock): string {
  if (fit.change === undefined) return "";
  const [from_ms, to_ms] = fit.change.between_ms;
  return ` Changed between ${dayText(from_ms, clock)} and ${dayText(to_ms, clock)}.`;
}

/** What the readings say, in one or two short sentences. */
export function sentenceOf(series: FittedSeries, forecast: Forecast | undefined, clock: LocalClock): string {
  const { fit } = series;
  switch (fit.kind) {
    case "too-few":
      if (series.points.length === 0 && series.notReferred > 0) {
        return "Nothing to compare: it moves with temperature, and none of the latest readings has one.";
      }
      return fit.n < fit.needed
        ? `Too few readings to say: ${fit.n} of ${fit.needed}.`
        : "Too few different readings to say.";
    case "steady":
      return `Steady within what the gauge can tell${sinceText(series, fit, clock)}.${changeText(fit, clock)}`;
    case "perhaps":
      return `Perhaps ${fit.slope_perDay < 0 ? "falling" : "rising"}, ${slopeText(fit.slope_perDay, series.unit)}; too early to be sure.${changeText(fit, clock)}`;
    case "moving": {
      const met = forecast === undefined ? "" : ` ${metText(series, forecast, clock)}`;
      return `${movingText(series, fit.slope_perDay)}.${met}${changeText(fit, clock)}`;
    }
    default:
      return fit satisfies never;
  }
}

/** Below so many readings the words say what could hide in them. */
const FEW = 10;

/** What stands behind the sentence. */
export function moreOf(
  series: FittedSeries,
  forecast: Forecast | undefined,
  clock: LocalClock,
): readonly string[] {
  const { fit, unit, notReferred } = series;
  const left =
    notReferred === 0
      ? []
      : [
          `${sentence(inWords(notReferred))} of the latest ${notReferred === 1 ? "has" : "have"} no temperature that it could be referred by, and ${notReferred === 1 ? "is" : "are"} left out.`,
        ];
  if (fit.kind === "too-few") {
    return [`Nothing is claimed from fewer than ${inWords(FEWEST_READINGS)} readings.`, ...left];
  }
  const n = fit.line.n + fit.odd.length;
  const few = n < FEW ? "; few readings, a wide interval" : "";
  const most = Math.max(Math.abs(fit.low_perDay), Math.abs(fit.high_perDay));
  const interval =
    fit.kind === "steady"
      ? `${sentence(inWords(n))} readings: up to ${slopeText(most, unit)} could hide in them${n < FEW ? ", as few as they are" : ""}.`
      : `${sentence(inWords(n))} readings: ${intervalText(fit.low_perDay, fit.high_perDay, unit)}${few}.`;
  const odd =
    fit.odd.length === 0
      ? []
      : [
          `${sentence(inWords(fit.odd.length))} odd ${fit.odd.length === 1 ? "reading is" : "readings are"} left out of the line.`,
        ];
  const range =
    forecast?.earliest_ms === undefined
      ? []
      : [
          `If it goes on so, the limit is met on ${dayText(forecast.earliest_ms, clock)} at the earliest${forecast.latest_ms === undefined ? "; how late cannot be said" : ` and on ${dayText(forecast.latest_ms, clock)} at the latest`}.`,
        ];
  return [interval, ...range, ...odd, ...left];
}
