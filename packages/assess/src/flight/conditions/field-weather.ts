import { toSI, type Wind } from "@witnessmark/engine";
import {
  type Aspect,
  type CategoryAnswer,
  type Ceiling,
  type CloudLayer,
  type From,
  type Hazard,
  type Wind as ReportedWind,
  type Visibility,
  type WeatherCode,
  type WorstCase,
  worseCategory,
} from "@witnessmark/weather";
import { remembered } from "../remembered.ts";
import { type Figure, lacking, type Origin } from "./figure.ts";
import {
  isTypedOnly,
  NEWER,
  OBSERVATION_REACHES_MS,
  type ObservationSaid,
  observationSaid,
  REPORT,
  type Sources,
  saidIn,
  skySaid,
  worstOf,
} from "./report-said.ts";
import type { TypedFigures, TypedPart } from "./typed-conditions.ts";
import { windText } from "./wind-text.ts";

/** A wind that may blow at the time, with where it is said. */
export interface FieldWind {
  readonly wind: Wind;
  /** As it is spoken of: `240° 14 G 22 kt`. */
  readonly text: string;
  readonly origin: Origin;
}

export interface AirTemperature {
  /** Between these the report leaves it: icing asks the colder, distances the hotter. */
  readonly coldest_K: number;
  readonly hottest_K: number;
}

/** The weather that counts at a field at its time, worst of everything that may be the case. */
export interface FieldWeather {
  readonly winds: Figure<readonly FieldWind[]>;
  readonly visibility_m: Figure<number>;
  /** Lowest broken or overcast layer above the field. */
  readonly ceiling_m: Figure<number | "none">;
  readonly weather: Figure<readonly WeatherCode[]>;
  readonly hazards: Figure<readonly Hazard[]>;
  /** What the station cannot tell, though its report looks whole. */
  readonly blindTo: readonly string[];
  readonly clouds: Figure<readonly CloudLayer[]>;
  readonly oat: Figure<AirTemperature>;
  readonly dewPoint_K: Figure<number>;
  readonly qnh_Pa: Figure<number>;
  /** For planning only; of the report, not of what was typed. */
  readonly category?: CategoryAnswer;
}

/** A typed value takes the place of a report's, unless it is too old and a report counts. */
function orTyped<T>(
  typed: TypedFigures,
  part: TypedPart<T> | undefined,
  code: string,
  reported: Figure<T>,
): Figure<T> {
  if (part === undefined) return reported;
  const settled = reported.value !== undefined && reported.missing.length === 0;
  if (typed.tooOld && settled) return reported;
  if ("says" in part) return { from: [typed.origin], missing: [{ what: part.says }] };
  return {
    value: part.value,
    from: [typed.origin],
    missing: typed.tooOld ? [NEWER(code)] : [],
    holdsUntil_ms: typed.countsUntil_ms,
  };
}

/** The wind of a report as the engine takes it; undefined when its direction is not there. */
export function windOf(reported: ReportedWind): Wind | undefined {
  const { kind, from_degTrue, sector_degTrue, speed_mPerS, gust_mPerS } = reported;
  const speeds = { speed_mPerS, ...(gust_mPerS === undefined ? {} : { gust_mPerS }) };
  if (kind === "calm") return { direction: { kind: "from", from_rad: 0 }, speed_mPerS: 0 };
  if (kind === "variable") return { direction: { kind: "variable" }, ...speeds };
  if (from_degTrue === undefined) return undefined;
  const from_rad = toSI(from_degTrue % 360, "deg");
  if (sector_degTrue === undefined) return { direction: { kind: "from", from_rad }, ...speeds };
  const [a, b] = sector_degTrue;
  const sector = { from_rad: toSI(a % 360, "deg"), to_rad: toSI(b % 360, "deg") };
  return { direction: { kind: "sector", sector, from_rad }, ...speeds };
}

function windsOf({ winds }: WorstCase, origin: Origin): readonly FieldWind[] | undefined {
  const all = winds.flatMap(({ value, source }): readonly FieldWind[] => {
    const wind = windOf(value);
    return wind === undefined ? [] : [{ wind, text: windText(wind), origin: saidIn(origin, source) }];
  });
  // a wind that could not be taken over, or of which only a floor is known, leaves the whole open
  const whole = winds.every(({ value }) => !value.speedAtLeast && !value.gustAtLeast);
  return all.length > 0 && all.length === winds.length && whole ? all : undefined;
}

/** "Less than 1/4 mile" reaches no limit of a quarter. */
const visibilityOf = (seen: From<Visibility> | undefined): number | undefined =>
  seen === undefined
    ? undefined
    : seen.value.bound === "less than"
      ? Math.max(0, seen.value.visibility_m - 1)
      : seen.value.visibility_m;

const heightOf = (ceiling: Ceiling | undefined): number | "none" | undefined =>
  ceiling === undefined
    ? undefined
    : ceiling.kind === "height"
      ? ceiling.height_m
      : ceiling.kind === "none"
        ? "none"
        : ceiling.lowest_m;

const lowerCeiling = (one: number | "none", other: number | "none"): number | "none" =>
  one === "none" ? other : other === "none" ? one : Math.min(one, other);

const joined = <T>(one: readonly T[], other: readonly T[]): readonly T[] => [...new Set([...one, ...other])];

/** Air temperature, dew point and pressure come from the observation alone: no forecast has them for the time. */
function airOf<T>(
  sources: Sources,
  observed: ObservationSaid | undefined,
  aspect: Aspect,
  what: string,
  take: (observed: ObservationSaid) => T | undefined,
): Figure<T> {
  const { time, code } = sources;
  if (observed === undefined) return lacking(isTypedOnly(sources) ? { what } : REPORT(code));
  if (time.value === undefined) return lacking(...time.missing);
  if (time.value.planned_ms - observed.observed_ms > OBSERVATION_REACHES_MS.air)
    return lacking({ what: `${what}: the report is too long before the time`, root: "report" });
  return worstOf(
    [observed],
    [aspect],
    what,
    () => take(observed),
    (one) => one,
  );
}

/** What the reports say, whatever was typed beside them. */
function reportedWeather(sources: Sources): FieldWeather {
  const { code } = sources;
  const observed = observationSaid(sources);
  const said = skySaid(sources, observed);
  const at = `at ${code}`;
  // whoever typed the conditions of a field without reports was asked for no rain and no cloud but the ceiling
  const falling = isTypedOnly(sources) ? { what: `whether it rains or snows ${at}` } : said;
  const category = "what" in said ? undefined : said.map(({ worst }) => worst.category);
  return {
    winds: worstOf(
      said,
      ["wind", "gust"],
      `the wind ${at}`,
      ({ worst, origin }) => windsOf(worst, origin),
      joined,
    ),
    visibility_m: worstOf(
      said,
      ["visibility"],
      `the visibility ${at}`,
      ({ worst }) => visibilityOf(worst.visibility),
      Math.min,
      ({ worst }) => worst.visibility?.source,
    ),
    ceiling_m: worstOf<number | "none">(
      said,
      ["ceiling"],
      `the ceiling ${at}`,
      ({ worst }) => heightOf(worst.ceiling?.value),
      lowerCeiling,
      ({ worst }) => worst.ceiling?.source,
    ),
    weather: worstOf(
      falling,
      ["weather"],
      `the weather ${at}`,
      ({ worst }): readonly WeatherCode[] => worst.weather.map(({ value }) => value),
      joined,
    ),
    hazards: worstOf(
      falling,
      ["weather"],
      `the weather ${at}`,
      ({ worst }): readonly Hazard[] => worst.hazards.map(({ value }) => value),
      joined,
    ),
    blindTo:
      "what" in said || observed === undefined || !said.includes(observed) ? [] : observed.observed.blindTo,
    clouds: worstOf(falling, ["ceiling"], `the cloud ${at}`, ({ clouds }) => clouds, joined),
    oat: airOf(sources, observed, "temperature", `the temperature ${at}`, (one) => one.observed.oat),
    dewPoint_K: airOf(
      sources,
      observed,
      "dew point",
      `the dew point ${at}`,
      (one) => one.observed.dewPoint_K,
    ),
    qnh_Pa: airOf(
      sources,
      observed,
      "pressure",
      `the altimeter setting ${at}`,
      () => sources.observation?.placed?.report.elements.pressure?.valueSI,
    ),
    ...(category === undefined ? {} : { category: category.reduce((sofar, next) => worseOf(sofar, next)) }),
  };
}

const rememberedReported = remembered<FieldWeather>();

/** A search types one value after another beside the same reports; what they say for a time is worked out once. */
function reportedOnce(sources: Sources): FieldWeather {
  const { code, observation, forecast, time } = sources;
  const report = observation ?? forecast;
  if (report === undefined) return reportedWeather(sources);
  const { value, missing } = time;
  const times = [value?.planned_ms, value?.from_ms, value?.to_ms, JSON.stringify(missing)];
  return rememberedReported(report, [code, observation, forecast, ...times], () => reportedWeather(sources));
}

/** The weather at a field at its time, element by element, with where each comes from and what is not known of it. */
export function fieldWeather(sources: Sources): FieldWeather {
  const { code, typed } = sources;
  const reported = reportedOnce(sources);
  if (typed === undefined) return reported;
  const typedAir = typed.oat_K;
  const oat: TypedPart<AirTemperature> | undefined =
    typedAir === undefined || "says" in typedAir
      ? typedAir
      : { value: { coldest_K: typedAir.value, hottest_K: typedAir.value } };
  const typedWind = typed.wind;
  const wind: TypedPart<readonly FieldWind[]> | undefined =
    typedWind === undefined || "says" in typedWind
      ? typedWind
      : { value: [{ wind: typedWind.value, text: windText(typedWind.value), origin: typed.origin }] };
  return {
    ...reported,
    winds: orTyped(typed, wind, code, reported.winds),
    visibility_m: orTyped(typed, typed.visibility_m, code, reported.visibility_m),
    ceiling_m: orTyped<number | "none">(typed, typed.ceiling_m, code, reported.ceiling_m),
    oat: orTyped(typed, oat, code, reported.oat),
    dewPoint_K: orTyped(typed, typed.dewPoint_K, code, reported.dewPoint_K),
    qnh_Pa: orTyped(typed, typed.qnh_Pa, code, reported.qnh_Pa),
  };
}

const worseOf = (one: CategoryAnswer, other: CategoryAnswer): CategoryAnswer => {
  const atWorst = worseCategory(one.atWorst, other.atWorst);
  return one.category === undefined || other.category === undefined
    ? { atWorst }
    : { category: worseCategory(one.category, other.category), atWorst };
};
