import { type Aspect, joinAspects } from "./aspect.ts";
import type { Ceiling } from "./ceiling.ts";
import type { Elements } from "./elements.ts";
import { type CategoryAnswer, flightCategory } from "./flight-category.ts";
import type { CloudLayer } from "./groups/clouds.ts";
import type { ShearLayer } from "./groups/forecast-extras.ts";
import type { Visibility } from "./groups/visibility.ts";
import type { WeatherCode } from "./groups/weather-code.ts";
import type { Wind } from "./groups/wind.ts";
import { type FreezingGround, type Hazard, hazardsOf } from "./hazards.ts";
import type { PeriodKind } from "./report.ts";

/** Which words of which report something comes from. */
export interface Source {
  readonly role: "observed" | "remark" | "trend" | "prevailing" | "becoming" | "temporary" | "unclear";
  readonly text: string;
  readonly kind?: PeriodKind;
  readonly probability_percent?: 30 | 40;
  readonly from_ms?: number;
  readonly to_ms?: number;
}

export interface From<T> {
  readonly value: T;
  readonly source: Source;
}

/** What may be the case at one time. What is absent is not known. */
export interface State {
  readonly source: Source;
  readonly wind?: From<Wind>;
  readonly visibility?: From<Visibility>;
  readonly ceiling?: From<Ceiling>;
  readonly clouds: From<readonly CloudLayer[]>;
  readonly weather: From<readonly WeatherCode[]>;
  readonly shear?: From<ShearLayer>;
  readonly other: readonly From<Hazard>[];
  readonly open: readonly Aspect[];
  readonly category: CategoryAnswer;
}

const UNKNOWN: Ceiling = { kind: "unknown" };

export const withCategory = (state: Omit<State, "category">): State => {
  const { open, ceiling, visibility } = state;
  const answer = flightCategory(ceiling?.value ?? UNKNOWN, visibility?.value);
  const known = !open.includes("ceiling") && !open.includes("visibility");
  return { ...state, category: known ? answer : { atWorst: "LIFR" } };
};

const skyHazards = (said: Elements, source: Source): readonly From<Hazard>[] => [
  ...(said.windShear.length > 0 ? [{ value: "low-level wind shear" as const, source }] : []),
  ...(said.icing.length > 0 ? [{ value: "icing forecast" as const, source }] : []),
  ...(said.turbulence.some(({ code }) => code !== "0")
    ? [{ value: "turbulence forecast" as const, source }]
    : []),
];

/** The state of a report or a period that stands by itself. */
export function stateOf(said: Elements, source: Source, open: readonly Aspect[]): State {
  const { wind, visibility, ceiling, clouds, weather, shearLayer } = said;
  return withCategory({
    source,
    ...(wind === undefined ? {} : { wind: { value: wind, source } }),
    ...(visibility === undefined ? {} : { visibility: { value: visibility, source } }),
    ...(ceiling === undefined ? {} : { ceiling: { value: ceiling, source } }),
    clouds: { value: clouds, source },
    weather: { value: weather, source },
    ...(shearLayer === undefined ? {} : { shear: { value: shearLayer, source } }),
    other: skyHazards(said, source),
    open,
  });
}

/**
 * A state with a change laid over it. A group replaces each element that it names, clouds and weather as a whole; the
 * rest carries on. What the change leaves open is open, and what it settles no longer is.
 */
export function overlay(state: State, said: Elements, source: Source, open: readonly Aspect[]): State {
  const { wind, visibility, ceiling, clouds, weather, shearLayer } = said;
  const settlesWeather = weather.length > 0 || said.noSignificantWeather || said.cavok;
  const settled = new Set<Aspect>([
    ...(wind === undefined ? [] : (["wind", "gust"] as const)),
    ...(visibility === undefined ? [] : (["visibility"] as const)),
    ...(ceiling === undefined ? [] : (["ceiling"] as const)),
    ...(settlesWeather ? (["weather"] as const) : []),
  ]);
  return withCategory({
    ...state,
    source,
    ...(wind === undefined ? {} : { wind: { value: wind, source } }),
    ...(visibility === undefined ? {} : { visibility: { value: visibility, source } }),
    ...(ceiling === undefined
      ? {}
      : { ceiling: { value: ceiling, source }, clouds: { value: clouds, source } }),
    ...(settlesWeather ? { weather: { value: weather, source } } : {}),
    ...(shearLayer === undefined ? {} : { shear: { value: shearLayer, source } }),
    other: [...state.other, ...skyHazards(said, source)],
    open: joinAspects([...state.open.filter((aspect) => !settled.has(aspect)), ...open]),
  });
}

/** The worst of several states, element by element, each with where it comes from. */
export interface WorstCase {
  /** Every wind that may blow. A variable one may come from anywhere, or from anywhere in its sector. */
  readonly winds: readonly From<Wind>[];
  /** The strongest speed, gusts counted. */
  readonly strongest?: From<{ readonly speed_mPerS: number }>;
  readonly visibility?: From<Visibility>;
  /** The lowest; "unknown" where one state does not settle it, with the lowest that is known. */
  readonly ceiling?: From<Ceiling>;
  readonly weather: readonly From<WeatherCode>[];
  readonly hazards: readonly From<Hazard>[];
  readonly category: CategoryAnswer;
  /** What is not settled: an answer that rests on it is open, unless what is known already stops it. */
  readonly open: readonly Aspect[];
}

export const strength_mPerS = ({ speed_mPerS, gust_mPerS }: Wind): number =>
  Math.max(speed_mPerS, gust_mPerS ?? 0);

const lowerVisibility = (one: From<Visibility>, other: From<Visibility>): From<Visibility> => {
  const [a, b] = [one.value, other.value];
  if (a.visibility_m !== b.visibility_m) return a.visibility_m < b.visibility_m ? one : other;
  return b.bound === "less than" ? other : one;
};

const heightOf = (ceiling: Ceiling): number =>
  ceiling.kind === "height"
    ? ceiling.height_m
    : ceiling.kind === "unknown"
      ? (ceiling.lowest_m ?? Infinity)
      : Infinity;

function lowestCeiling(all: readonly From<Ceiling>[]): From<Ceiling> | undefined {
  const [first] = all;
  if (first === undefined) return undefined;
  const lowest = all.reduce((best, one) => (heightOf(one.value) < heightOf(best.value) ? one : best), first);
  const unsettled = all.find(({ value }) => value.kind === "unknown");
  if (unsettled !== undefined) {
    const { value } = lowest;
    const known =
      value.kind === "height"
        ? { lowest_m: value.height_m, lowest_ft: value.height_ft }
        : value.kind === "unknown" && value.lowest_m !== undefined && value.lowest_ft !== undefined
          ? { lowest_m: value.lowest_m, lowest_ft: value.lowest_ft }
          : {};
    return { value: { kind: "unknown", ...known }, source: unsettled.source };
  }
  if (lowest.value.kind === "height") return lowest;
  const reach = (ceiling: Ceiling): number =>
    ceiling.kind === "none" ? (ceiling.reach_m ?? Infinity) : Infinity;
  return all.reduce((best, one) => (reach(one.value) < reach(best.value) ? one : best), first);
}

/** Each once: the same words of the same group say the same thing however often they are met. */
const once = <T>(all: readonly From<T>[], key: (value: T) => string): readonly From<T>[] => {
  const met = new Map<string, From<T>>();
  for (const one of all) {
    const name = `${key(one.value)} ${one.source.role} ${one.source.text} ${one.source.from_ms ?? ""}`;
    if (!met.has(name)) met.set(name, one);
  }
  return [...met.values()];
};

/** What is known of the air, for the question whether rain freezes. A forecast knows nothing of it. */
export type Air = Omit<FreezingGround, "weather">;

/** Without a temperature, rain is not taken for freezing; only what the forecast itself calls so. */
const WARM: Air = { oat_K: 288.15 };

export function worstOf(states: readonly State[], air: Air = WARM): WorstCase {
  const winds = once(
    states.flatMap(({ wind }) => (wind === undefined ? [] : [wind])),
    (wind) => JSON.stringify(wind),
  );
  const [firstWind] = winds;
  const strongest = winds.reduce(
    (best, one) =>
      best === undefined || strength_mPerS(one.value) > strength_mPerS(best.value) ? one : best,
    firstWind,
  );
  const seen = states.flatMap(({ visibility }) => (visibility === undefined ? [] : [visibility]));
  const [firstSeen] = seen;
  const visibility = firstSeen === undefined ? undefined : seen.reduce(lowerVisibility, firstSeen);
  const ceiling = lowestCeiling(
    states.flatMap((state) => (state.ceiling === undefined ? [] : [state.ceiling])),
  );
  const weather = once(
    states.flatMap(({ weather: here }) => here.value.map((value) => ({ value, source: here.source }))),
    ({ code }) => code,
  );
  const hazards = once(
    states.flatMap((state): readonly From<Hazard>[] => [
      ...hazardsOf({ weather: state.weather.value, clouds: [], ...air }).map((value) => ({
        value,
        source: state.weather.source,
      })),
      ...hazardsOf({ weather: [], clouds: state.clouds.value }).map((value) => ({
        value,
        source: state.clouds.source,
      })),
      ...(state.shear === undefined
        ? []
        : [{ value: "low-level wind shear" as const, source: state.shear.source }]),
      ...state.other,
    ]),
    (hazard) => hazard,
  );
  const open = joinAspects([
    ...states.flatMap((state) => state.open),
    ...(states.length === 0 || states.some(({ wind }) => wind === undefined)
      ? (["wind", "gust"] as const)
      : []),
    ...(states.length === 0 || states.some((state) => state.visibility === undefined)
      ? (["visibility"] as const)
      : []),
    ...(ceiling === undefined ||
    ceiling.value.kind === "unknown" ||
    states.some((state) => state.ceiling === undefined)
      ? (["ceiling"] as const)
      : []),
    ...(states.length === 0 ? (["weather"] as const) : []),
  ]);
  const known = !open.includes("ceiling") && !open.includes("visibility");
  const category = flightCategory(ceiling?.value ?? UNKNOWN, visibility?.value);
  return {
    winds,
    ...(strongest === undefined
      ? {}
      : { strongest: { value: { speed_mPerS: strength_mPerS(strongest.value) }, source: strongest.source } }),
    ...(visibility === undefined ? {} : { visibility }),
    ...(ceiling === undefined ? {} : { ceiling }),
    weather,
    hazards,
    category: known ? category : { atWorst: "LIFR" },
    open,
  };
}
