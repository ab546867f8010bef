import { InputError } from "../input-error.ts";
import { type CalendarDate, DAY_MS, type LocalClock, localInstant_ms, utcOffsetAt_s } from "./calendar.ts";
import { CIVIL_TWILIGHT_rad, crossing_ms, SUN_EDGE_ON_HORIZON_rad, sunNoonNear_ms } from "./sun-crossings.ts";
import { type EarthPlace, sunElevationAt_rad } from "./sun-position-model.ts";

/** When the sun passes an elevation on its way up or down, or why it does not. */
export type SunPassage =
  | {
      readonly kind: "at";
      readonly at_ms: number;
      /** On the clock of the place, after the midnight with which the date begins; may be below 0 or past 24 h. */
      readonly afterMidnight_s: number;
    }
  | { readonly kind: "stays above" }
  | { readonly kind: "stays below" };

/** One day of the sun: from its midnight, over the noon that falls on the date, to its next midnight. */
export interface SunDay {
  readonly noon_ms: number;
  readonly civilDawn: SunPassage;
  readonly sunrise: SunPassage;
  readonly sunset: SunPassage;
  readonly civilDusk: SunPassage;
  /** `other`: the sun rises and does not set before its midnight, or sets without having risen since. */
  readonly day: "rises and sets" | "up all day" | "down all day" | "other";
}

/** @throws {InputError} `out-of-range`, `not-a-number` */
function requirePlace({ latitude_rad, longitude_rad }: EarthPlace): void {
  for (const [name, value, most] of [
    ["latitude_rad", latitude_rad, Math.PI / 2],
    ["longitude_rad", longitude_rad, Math.PI],
  ] as const) {
    if (Math.abs(value) <= most) continue;
    throw new InputError(Number.isFinite(value) ? "out-of-range" : "not-a-number", name, {
      expected: name === "latitude_rad" ? "−90° to 90°" : "−180° to 180°",
      received: `${(value * 180) / Math.PI}°`,
      remedy: "give degrees as radians, north and east above zero",
    });
  }
}

/** The sun's passage of an elevation between its midnight and its noon (`up`), or its noon and its midnight. */
export function passageOf(
  place: EarthPlace,
  noon_ms: number,
  way: "up" | "down",
  elevation_rad: number,
): number | "stays above" | "stays below" {
  const midnight_ms = sunNoonNear_ms(place, noon_ms + (way === "up" ? -DAY_MS / 2 : DAY_MS / 2), true);
  const aboveAtNoon = sunElevationAt_rad(place, noon_ms) >= elevation_rad;
  const aboveAtMidnight = sunElevationAt_rad(place, midnight_ms) >= elevation_rad;
  if (aboveAtNoon === aboveAtMidnight) return aboveAtNoon ? "stays above" : "stays below";
  return way === "up"
    ? crossing_ms(place, midnight_ms, noon_ms, elevation_rad)
    : crossing_ms(place, noon_ms, midnight_ms, elevation_rad);
}

/** The sun's noon nearest to the middle of a date on the clock of the place. */
export const noonOf_ms = (place: EarthPlace, date: CalendarDate, clock: LocalClock): number =>
  sunNoonNear_ms(place, localInstant_ms(date, DAY_MS / 2000, clock));

/**
 * Sunrise, sunset and civil twilight of a date at a place, on the clock that is kept there.
 *
 * The horizon of the sea; the height of place and observer is left out, as in almanacs. Within a minute of the
 * US Naval Observatory's tables. Never NaN: where there is no passage, it says why.
 *
 * @throws {InputError} `out-of-range` for a date, zone, offset or place that is none
 * @source Meeus, Astronomical Algorithms, chapter 25; zenith distances of the US Naval Observatory
 */
export function sunDay(place: EarthPlace, date: CalendarDate, clock: LocalClock): SunDay {
  requirePlace(place);
  const noon_ms = noonOf_ms(place, date, clock);
  const midnight_ms = localInstant_ms(date, 0, clock);
  const midnightOffset_s = utcOffsetAt_s(clock, midnight_ms);
  const passage = (way: "up" | "down", elevation_rad: number): SunPassage => {
    const at = passageOf(place, noon_ms, way, elevation_rad);
    if (typeof at !== "number") return { kind: at };
    // What the clock shows, so that a change of the clock during the day counts.
    const shown_s = utcOffsetAt_s(clock, at) - midnightOffset_s;
    return { kind: "at", at_ms: at, afterMidnight_s: (at - midnight_ms) / 1000 + shown_s };
  };
  const sunrise = passage("up", SUN_EDGE_ON_HORIZON_rad);
  const sunset = passage("down", SUN_EDGE_ON_HORIZON_rad);
  return {
    noon_ms,
    civilDawn: passage("up", CIVIL_TWILIGHT_rad),
    sunrise,
    sunset,
    civilDusk: passage("down", CIVIL_TWILIGHT_rad),
    day: dayOf(sunrise, sunset),
  };
}

function dayOf(sunrise: SunPassage, sunset: SunPassage): SunDay["day"] {
  if (sunrise.kind === "at" && sunset.kind === "at") return "rises and sets";
  if (sunrise.kind !== sunset.kind || sunrise.kind === "at") return "other";
  return sunrise.kind === "stays above" ? "up all day" : "down all day";
}
