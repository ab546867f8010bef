import {
  type Aspect,
  type CloudLayer,
  type Conditions,
  conditionsAt,
  type ObservedConditions,
  observedConditions,
  type PlacedForecast,
  type PlacedObservation,
  type Source,
  type WorstCase,
} from "@witnessmark/weather";
import { remembered } from "../remembered.ts";
import { type Figure, lacking, type Missing, type Origin, onceMissing, restOf } from "./figure.ts";
import type { ReportFigures } from "./report-figures.ts";
import type { FieldTime } from "./times.ts";
import type { TypedFigures } from "./typed-conditions.ts";

const HOUR_MS = 3_600_000;

/**
 * How long after it an observation speaks of what is to come: of wind and sky for three hours, beside a forecast where
 * there is one, so that a forecast never makes an answer better; of temperature and pressure, which no forecast has,
 * for six. Witnessmark's own rule.
 */
export const OBSERVATION_REACHES_MS = { sky: 3 * HOUR_MS, air: 6 * HOUR_MS } as const;

/** One report's part in the answer. */
export interface Said {
  readonly origin: Origin;
  readonly worst: WorstCase;
  readonly open: readonly Aspect[];
  readonly clouds: readonly CloudLayer[];
  readonly tooOld: readonly Missing[];
  readonly holdsUntil_ms?: number;
}

export interface Sources {
  readonly code: string;
  readonly observation?: ReportFigures<PlacedObservation> | undefined;
  readonly forecast?: ReportFigures<PlacedForecast> | undefined;
  readonly typed?: TypedFigures | undefined;
  readonly time: Figure<FieldTime>;
}

const cloudsOf = (conditions: Conditions): readonly CloudLayer[] =>
  conditions.slices.flatMap(({ prevailing, becoming, temporary }) =>
    [prevailing, ...becoming, ...temporary].flatMap(({ clouds }) => clouds.value),
  );

const FORECAST = (code: string): Missing => ({
  what: `a forecast for ${code} that covers the time`,
  root: "forecast",
});
export const REPORT = (code: string): Missing => ({ what: `a report of ${code}`, root: "report" });
export const NEWER = (code: string): Missing => ({ what: `a newer report of ${code}`, root: "report" });

const rememberedConditions = remembered<ReturnType<typeof conditionsAt>>();

/** The forecast for the span of time; a span that begins before the validity begins with it, when the time is in it. */
function forecastSaid({ forecast, time }: Sources): Said | undefined {
  const placed = forecast?.placed;
  if (forecast === undefined || placed === undefined || forecast.tooOld || time.value === undefined)
    return undefined;
  const { planned_ms, from_ms, to_ms } = time.value;
  const begins_ms = planned_ms >= placed.from_ms ? Math.max(from_ms, placed.from_ms) : from_ms;
  const conditions = rememberedConditions(placed, [begins_ms, to_ms], () =>
    conditionsAt(placed, begins_ms, to_ms),
  );
  if (conditions.covered === "none") return undefined;
  return {
    origin: { kind: "TAF", at_ms: placed.issued_ms },
    worst: conditions.worst,
    open: conditions.open,
    clouds: cloudsOf(conditions),
    tooOld: [],
    ...(forecast.countsUntil_ms === undefined ? {} : { holdsUntil_ms: forecast.countsUntil_ms }),
  };
}

export interface ObservationSaid extends Said {
  readonly observed: ObservedConditions;
  readonly observed_ms: number;
}

/** Of each report once; it changes no answer. */
const observations = new WeakMap<PlacedObservation, ObservedConditions>();

function observedOnce(placed: PlacedObservation): ObservedConditions {
  const known = observations.get(placed);
  if (known !== undefined) return known;
  const made = observedConditions(placed.report);
  observations.set(placed, made);
  return made;
}

export function observationSaid({ observation, code }: Sources): ObservationSaid | undefined {
  const placed = observation?.placed;
  if (observation === undefined || placed === undefined) return undefined;
  const observed = observedOnce(placed);
  return {
    origin: { kind: "METAR", at_ms: placed.observed_ms },
    observed,
    observed_ms: placed.observed_ms,
    worst: observed,
    open: [...observed.open, ...observation.open],
    clouds: placed.report.elements.clouds,
    tooOld: observation.tooOld ? [NEWER(code)] : [],
    ...(observation.countsUntil_ms === undefined ? {} : { holdsUntil_ms: observation.countsUntil_ms }),
  };
}

/** Nobody has a report of the field, and somebody typed what he saw. */
export const isTypedOnly = ({ observation, forecast, typed }: Sources): boolean =>
  typed !== undefined && observation === undefined && forecast === undefined;

/** The reports that speak of the sky and the wind at the time. */
export function skySaid(sources: Sources, observed: ObservationSaid | undefined): readonly Said[] | Missing {
  const forecast = forecastSaid(sources);
  const { time, code } = sources;
  if (time.value === undefined) return time.missing[0] ?? { what: "the time", root: "time" };
  if (observed === undefined) {
    if (forecast !== undefined) return [forecast];
    return isTypedOnly(sources) ? { what: "" } : REPORT(code);
  }
  const reaches = time.value.planned_ms - observed.observed_ms <= OBSERVATION_REACHES_MS.sky;
  if (forecast === undefined) return reaches ? [observed] : (observed.tooOld[0] ?? FORECAST(code));
  return reaches && observed.tooOld.length === 0 ? [observed, forecast] : [forecast];
}

const end = (said: { readonly holdsUntil_ms?: number }): Pick<Figure<never>, "holdsUntil_ms"> =>
  said.holdsUntil_ms === undefined ? {} : { holdsUntil_ms: said.holdsUntil_ms };

/** A group of its own in a forecast, or at the end of an observation. */
const GROUP = /^(?:FM\d{4,6}|(?:(?:PROB\d{2}|TEMPO|INTER|BECMG)(?: |$))+(?:\d{4}\/\d{4})?)/u;

/** Where in a report something is said: its words, and the group that they stand in. */
export function saidIn(origin: Origin, { text }: Source): Origin {
  const group = GROUP.exec(text)?.[0].trim();
  return { ...origin, words: text, ...(group === undefined ? {} : { group }) };
}

/**
 * One element from each report that speaks, folded to its worst.
 *
 * @param sourceOf where in a report its element is said; then the figure knows whose words made it
 */
export function worstOf<T>(
  said: readonly Said[] | Missing,
  aspects: readonly Aspect[],
  what: string,
  take: (said: Said) => T | undefined,
  worse: (one: T, other: T) => T,
  sourceOf?: (said: Said) => Source | undefined,
): Figure<T> {
  // what only was typed in part is asked for by its own name
  if ("what" in said) return lacking(said.what === "" ? { what } : said);
  const originOf = (one: Said): Origin => {
    const source = sourceOf?.(one);
    return source === undefined ? one.origin : saidIn(one.origin, source);
  };
  const rest = restOf(said.map((one) => ({ from: [originOf(one)], missing: one.tooOld, ...end(one) })));
  // not flatMap: a value may be a list itself
  const values = said.map(take).filter((value) => value !== undefined);
  const isOpen = said.some(
    (one) => take(one) === undefined || one.open.some((aspect) => aspects.includes(aspect)),
  );
  const [first, ...more] = values;
  const value = first === undefined ? undefined : more.reduce<T>((sofar, next) => worse(sofar, next), first);
  const by = sourceOf === undefined ? undefined : said.find((one) => take(one) === value);
  return {
    ...rest,
    ...(value === undefined ? {} : { value }),
    ...(by === undefined ? {} : { saidBy: originOf(by) }),
    missing: onceMissing([...rest.missing, ...(isOpen ? [{ what }] : [])]),
  };
}
