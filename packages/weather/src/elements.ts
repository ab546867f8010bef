import type { Measure } from "@witnessmark/engine";
import { type Ceiling, ceilingOf, type Sky } from "./ceiling.ts";
import type { Group } from "./group.ts";
import type { IcingLayer, ShearLayer, TurbulenceLayer } from "./groups/forecast-extras.ts";
import type { Part } from "./groups/part.ts";
import type { RunwayState } from "./groups/runway-state.ts";
import type { RunwayVisualRange } from "./groups/runway-visual-range.ts";
import type { WholeDegrees } from "./groups/temperature.ts";
import type { SectorVisibility, Visibility } from "./groups/visibility.ts";
import type { WeatherCode } from "./groups/weather-code.ts";
import type { Wind } from "./groups/wind.ts";

/** What the groups of a report, a trend or a forecast period say together. What is absent was not said. */
export interface Elements extends Sky {
  readonly wind?: Wind;
  readonly visibility?: Visibility;
  readonly minimumVisibility?: SectorVisibility;
  readonly runwayVisualRanges: readonly RunwayVisualRange[];
  readonly weather: readonly WeatherCode[];
  readonly noSignificantWeather?: true;
  readonly weatherNotObserved?: true;
  readonly recentWeather: readonly WeatherCode[];
  readonly temperature?: WholeDegrees;
  readonly dewPoint?: WholeDegrees;
  /** The altimeter setting (QNH): `valueSI` in Pa, `value` and `unit` as coded. */
  readonly pressure?: Measure;
  readonly lowestPressure?: Measure;
  /** Runways on which wind shear was met; "all". */
  readonly windShear: readonly string[];
  readonly runwayStates: readonly RunwayState[];
  readonly shearLayer?: ShearLayer;
  readonly icing: readonly IcingLayer[];
  readonly turbulence: readonly TurbulenceLayer[];
  readonly sea?: { readonly temperature_degC: number | null; readonly state: string };
  readonly colourState?: string;
  /** Absent when nothing is said of the sky. */
  readonly ceiling?: Ceiling;
}

const partsOf = <Is extends Part["is"]>(groups: readonly Group[], is: Is): Extract<Part, { is: Is }>[] =>
  groups.flatMap(({ part }) => (part?.is === is ? [part as Extract<Part, { is: Is }>] : [])); // narrowed by `is`

const lower = (one: Visibility, other: Visibility): Visibility => {
  if (one.visibility_m !== other.visibility_m) return one.visibility_m < other.visibility_m ? one : other;
  return one.bound === "less than" ? one : other;
};

/** The strongest of several winds that contradict one another; the report then says so. */
const stronger = (one: Wind, other: Wind): Wind =>
  (other.gust_mPerS ?? other.speed_mPerS) > (one.gust_mPerS ?? one.speed_mPerS) ? other : one;

function windOf(groups: readonly Group[]): Pick<Elements, "wind"> {
  const winds = partsOf(groups, "wind").map(({ wind }) => wind);
  const [first] = winds;
  if (first === undefined) return {};
  const wind = winds.reduce(stronger, first);
  const sector = partsOf(groups, "sector")[0];
  return sector === undefined
    ? { wind }
    : { wind: { ...wind, sector_degTrue: [sector.from_degTrue, sector.to_degTrue] } };
}

const KM_10: Visibility = {
  visibility_m: 10_000,
  bound: "at least",
  coded: { value: 10_000, unit: "m", valueSI: 10_000 },
};

function visibilityOf(
  groups: readonly Group[],
): Pick<Elements, "visibility" | "minimumVisibility" | "cavok"> {
  const cavok = partsOf(groups, "cavok").length > 0;
  const all = [
    ...partsOf(groups, "visibility").map(({ visibility }) => visibility),
    ...(cavok ? [KM_10] : []),
  ];
  const [first] = all;
  const minima = partsOf(groups, "minimum visibility").map(({ minimum }) => minimum);
  const [lowest] = minima.toSorted((one, other) => one.visibility_m - other.visibility_m);
  return {
    ...(first === undefined ? {} : { visibility: all.reduce(lower, first) }),
    ...(lowest === undefined ? {} : { minimumVisibility: lowest }),
    ...(cavok ? { cavok: true } : {}),
  };
}

function skyOf(groups: readonly Group[]): Sky {
  const upward = partsOf(groups, "vertical visibility").map(({ height_ft }) => height_ft);
  const hidden =
    upward.length === 0 ? undefined : upward.includes(null) ? null : Math.min(...upward.map(Number));
  const sky = partsOf(groups, "sky")[0]?.statement;
  return {
    clouds: partsOf(groups, "cloud").map(({ layer }) => layer),
    ...(hidden === undefined ? {} : { verticalVisibility_ft: hidden }),
    ...(sky === undefined ? {} : { sky }),
    ...(partsOf(groups, "cloud not observed").length > 0 ? { cloudsNotObserved: true } : {}),
  };
}

/** The value that all give; `undefined` where they differ, since nobody knows which is right. */
const agreed = <T>(all: readonly T[], key: (value: T) => string): T | undefined =>
  new Set(all.map(key)).size > 1 ? undefined : all[0];

/** Two settings in two units say the same within their rounding: 1 hPa down, 0.005 inHg. */
const SAME_SETTING_PA = 120;
export const settingsDisagree = (settings: readonly Measure[]): boolean => {
  const values = settings.map(({ valueSI }) => valueSI);
  return values.length > 1 && Math.max(...values) - Math.min(...values) > SAME_SETTING_PA;
};

/** Puts the parts of groups together. `crossChecks` tells where they contradict one another. */
export function foldElements(groups: readonly Group[]): Elements {
  const air = agreed(
    partsOf(groups, "temperature").map((part) => part.air),
    (one) => JSON.stringify(one),
  );
  const settings = partsOf(groups, "pressure").map(({ setting }) => setting);
  const pressure = settingsDisagree(settings) ? undefined : settings[0];
  const lowestPressure = partsOf(groups, "lowest pressure")[0]?.setting;
  const shearLayer = partsOf(groups, "shear layer")[0]?.shear;
  const sea = partsOf(groups, "sea")[0];
  const colourState = partsOf(groups, "colour state")
    .map(({ code }) => code)
    .join(" ");
  const sky = { ...skyOf(groups), ...visibilityOf(groups) };
  const ceiling = ceilingOf(sky);
  return {
    ...windOf(groups),
    ...sky,
    ...(ceiling === undefined ? {} : { ceiling }),
    runwayVisualRanges: partsOf(groups, "runway visual range").map(({ range }) => range),
    weather: partsOf(groups, "weather").map(({ weather }) => weather),
    ...(partsOf(groups, "no significant weather").length > 0 ? { noSignificantWeather: true } : {}),
    ...(partsOf(groups, "weather not observed").length > 0 ? { weatherNotObserved: true } : {}),
    recentWeather: partsOf(groups, "recent weather").map(({ weather }) => weather),
    ...(air?.temperature == null ? {} : { temperature: air.temperature }),
    ...(air?.dewPoint == null ? {} : { dewPoint: air.dewPoint }),
    ...(pressure === undefined ? {} : { pressure }),
    ...(lowestPressure === undefined ? {} : { lowestPressure }),
    windShear: partsOf(groups, "wind shear").map(({ runway }) => runway),
    runwayStates: partsOf(groups, "runway state").map(({ state }) => state),
    ...(shearLayer === undefined ? {} : { shearLayer }),
    icing: partsOf(groups, "icing").map(({ layer }) => layer),
    turbulence: partsOf(groups, "turbulence").map(({ layer }) => layer),
    ...(sea === undefined ? {} : { sea: { temperature_degC: sea.temperature_degC, state: sea.state } }),
    ...(colourState === "" ? {} : { colourState }),
  };
}
