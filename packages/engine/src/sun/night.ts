import { CIVIL_TWILIGHT_rad, type Span, SUN_EDGE_ON_HORIZON_rad, spansBelow } from "./sun-crossings.ts";
import { type EarthPlace, sunElevationAt_rad } from "./sun-position-model.ts";

/**
 * Three nights, by three rules. They differ by up to an hour at each end, so none of them is called just "night".
 */

const HOUR_MS = 3_600_000;

/**
 * The nights between the end of evening and the beginning of morning civil twilight, within a span: what is logged and
 * what a night rule of flight speaks of.
 *
 * @source 14 CFR 1.1 "night"; ICAO Annex 2 and SERA, where the State prescribes nothing else
 */
export const civilNights = (place: EarthPlace, span: Span): readonly Span[] =>
  spansBelow(place, span, CIVIL_TWILIGHT_rad);

/** @source 14 CFR 1.1 "night" */
export const isCivilNight = (place: EarthPlace, at_ms: number): boolean =>
  sunElevationAt_rad(place, at_ms) < CIVIL_TWILIGHT_rad;

/**
 * From sunset to sunrise, within a span: when position lights must be lit.
 *
 * @source 14 CFR 91.209(a); Alaska has a wording of its own
 */
export const positionLightNights = (place: EarthPlace, span: Span): readonly Span[] =>
  spansBelow(place, span, SUN_EDGE_ON_HORIZON_rad);

/** @source 14 CFR 91.209(a) */
export const arePositionLightsRequired = (place: EarthPlace, at_ms: number): boolean =>
  sunElevationAt_rad(place, at_ms) < SUN_EDGE_ON_HORIZON_rad;

/**
 * From one hour after sunset to one hour before sunrise, within a span: when carrying passengers asks for recent night
 * landings.
 *
 * @source 14 CFR 61.57(b)
 */
export function passengerRecencyNights(place: EarthPlace, span: Span): readonly Span[] {
  const around = { from_ms: span.from_ms - HOUR_MS, to_ms: span.to_ms + HOUR_MS };
  return positionLightNights(place, around)
    .map(({ from_ms, to_ms }) => ({
      // A night that goes on beyond the widened span has its true end further out.
      from_ms: from_ms === around.from_ms ? span.from_ms : from_ms + HOUR_MS,
      to_ms: to_ms === around.to_ms ? span.to_ms : to_ms - HOUR_MS,
    }))
    .filter(({ from_ms, to_ms }) => to_ms > from_ms);
}

/** @source 14 CFR 61.57(b) */
export const isPassengerRecencyNight = (place: EarthPlace, at_ms: number): boolean =>
  passengerRecencyNights(place, { from_ms: at_ms, to_ms: at_ms + 1 }).length > 0;

/** The span of 61.57(b) from a known sunset and the sunrise that follows it, in any one scale of time; none when short. */
export const passengerRecencyNightOf = (
  sunset_s: number,
  sunrise_s: number,
): readonly [number, number] | undefined =>
  sunrise_s - sunset_s > 7200 ? [sunset_s + 3600, sunrise_s - 3600] : undefined;
