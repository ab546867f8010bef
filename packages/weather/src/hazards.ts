import type { CloudLayer } from "./groups/clouds.ts";
import { PRECIPITATION, precipitates, type WeatherCode } from "./groups/weather-code.ts";

/** What no flight category knows of. */
export type Hazard =
  | "thunderstorm"
  | "thunderstorm in the vicinity"
  | "cumulonimbus"
  | "towering cumulus"
  | "freezing precipitation"
  | "possible freezing precipitation"
  | "freezing fog"
  | "hail"
  | "low-level wind shear"
  | "tornado or funnel cloud"
  | "squall"
  | "volcanic ash"
  | "dust storm or sandstorm"
  | "icing forecast"
  | "turbulence forecast"
  | "cloud type not known"
  | "lightning";

/** The air near 0 °C in which precipitation of unknown kind may freeze. Common practice. */
const MAY_FREEZE_TO_K = 273.15 + 3;
const FREEZING_K = 273.15;

export type FreezingPrecipitation = "present" | "possible" | "not reported";

export interface FreezingGround {
  readonly weather: readonly WeatherCode[];
  /** Absent: unknown, and precipitation of unknown kind may then freeze. */
  readonly oat_K?: number;
  /** The report gives a temperature below zero; M00 is one. */
  readonly belowZero?: boolean;
  /** FZRANO: the station cannot tell rain that freezes from rain that does not. */
  readonly freezingRainSensorOut?: boolean;
}

/**
 * Whether precipitation freezes on what it meets: by its code; possibly, by rain or drizzle in air below 0 °C, by
 * precipitation of unknown kind near 0 °C, by any rain near 0 °C where the station cannot tell. Ice pellets are rain
 * that froze higher up, and possible too.
 */
export function freezingPrecipitation(ground: FreezingGround): FreezingPrecipitation {
  const { weather, oat_K, belowZero, freezingRainSensorOut } = ground;
  const below = belowZero === true || (oat_K !== undefined && oat_K < FREEZING_K);
  const near = below || oat_K === undefined || oat_K <= MAY_FREEZE_TO_K;
  const falling = weather.filter(precipitates);
  if (falling.some(({ descriptor }) => descriptor === "FZ")) return "present";
  const possible = falling.some(({ phenomena }) => {
    const liquid = phenomena.includes("RA") || phenomena.includes("DZ");
    if (phenomena.includes("PL")) return true;
    if (phenomena.includes("UP")) return near;
    return liquid && (below || (near && freezingRainSensorOut === true));
  });
  return possible ? "possible" : "not reported";
}

function weatherHazards(code: WeatherCode): readonly Hazard[] {
  const { descriptor, phenomena, vicinity } = code;
  const hazards: Hazard[] = [];
  if (descriptor === "TS") hazards.push(vicinity ? "thunderstorm in the vicinity" : "thunderstorm");
  if (phenomena.includes("GR") || phenomena.includes("GS")) hazards.push("hail");
  if (phenomena.includes("FC")) hazards.push("tornado or funnel cloud");
  if (phenomena.includes("SQ")) hazards.push("squall");
  if (phenomena.includes("VA")) hazards.push("volcanic ash");
  if (phenomena.includes("DS") || phenomena.includes("SS")) hazards.push("dust storm or sandstorm");
  const obscured = phenomena.includes("FG") || phenomena.includes("BR");
  if (descriptor === "FZ" && obscured) hazards.push("freezing fog");
  return hazards;
}

export interface HazardGround extends FreezingGround {
  readonly clouds: readonly CloudLayer[];
}

/** The hazards that weather and cloud groups name, each once. */
export function hazardsOf(ground: HazardGround): readonly Hazard[] {
  const { weather, clouds } = ground;
  const found = new Set<Hazard>(weather.flatMap(weatherHazards));
  const freezing = freezingPrecipitation(ground);
  if (freezing === "present") found.add("freezing precipitation");
  if (freezing === "possible") found.add("possible freezing precipitation");
  for (const { type } of clouds) {
    if (type === "CB") found.add("cumulonimbus");
    if (type === "TCU") found.add("towering cumulus");
    if (type === null) found.add("cloud type not known");
  }
  return [...found];
}

export const isPrecipitation = (code: WeatherCode): boolean =>
  precipitates(code) && code.phenomena.some((one) => Object.hasOwn(PRECIPITATION, one));
