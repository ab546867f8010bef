import { DAY_MS, julianDayOf_d } from "./calendar.ts";
import { type EarthPlace, sunElevationAt_rad, sunInSky } from "./sun-position-model.ts";

const DEG = Math.PI / 180;

/**
 * Elevation of the sun's centre at the events that rules name. Sunrise and sunset: 34′ of refraction and 16′ for the
 * upper edge of the disc.
 *
 * @source US Naval Observatory, definitions of rise, set and twilight
 */
export const SUN_EDGE_ON_HORIZON_rad = -(50 / 60) * DEG;
export const CIVIL_TWILIGHT_rad = -6 * DEG;
export const NAUTICAL_TWILIGHT_rad = -12 * DEG;
export const ASTRONOMICAL_TWILIGHT_rad = -18 * DEG;

/** The sun gains or loses about a turn a day on the place; this is enough to settle on a second's fraction. */
const ROUNDS = 4;

/** The noon (or, with `opposite`, the midnight) of the sun nearest to an instant. */
export function sunNoonNear_ms(place: EarthPlace, near_ms: number, opposite = false): number {
  let at_ms = near_ms;
  for (let round = 0; round < ROUNDS; round += 1) {
    const { hourAngle_rad } = sunInSky(place, julianDayOf_d(at_ms));
    const past_rad = opposite ? (hourAngle_rad + 2 * Math.PI) % (2 * Math.PI) : hourAngle_rad;
    at_ms -= ((opposite ? past_rad - Math.PI : past_rad) / (2 * Math.PI)) * DAY_MS;
  }
  return at_ms;
}

const SETTLED_MS = 20;

/** Between two instants of which one has the sun above and one below an elevation: when it passes. */
export function crossing_ms(
  place: EarthPlace,
  from_ms: number,
  to_ms: number,
  elevation_rad: number,
): number {
  const aboveAtStart = sunElevationAt_rad(place, from_ms) >= elevation_rad;
  let [low, high] = [from_ms, to_ms];
  while (high - low > SETTLED_MS) {
    const middle = (low + high) / 2;
    if (sunElevationAt_rad(place, middle) >= elevation_rad === aboveAtStart) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A span of time, from the first instant up to the second, in milliseconds since 1970. */
export interface Span {
  readonly from_ms: number;
  readonly to_ms: number;
}

const STEP_MS = 3_600_000;

/** Instants between which the sun goes one way only: each hour, and each noon and midnight of the sun. */
function samples(place: EarthPlace, { from_ms, to_ms }: Span): readonly number[] {
  const at: number[] = [from_ms, to_ms];
  for (let hour = from_ms + STEP_MS; hour < to_ms; hour += STEP_MS) at.push(hour);
  for (let day = from_ms - DAY_MS; day <= to_ms + DAY_MS; day += DAY_MS) {
    for (const opposite of [false, true]) at.push(sunNoonNear_ms(place, day, opposite));
  }
  return at.filter((one) => one >= from_ms && one <= to_ms).sort((a, b) => a - b);
}

/**
 * When, within a span, the sun's centre is below an elevation. A span that is dark throughout comes back whole.
 * A sun that shows for less than an hour away from its noon (within half a degree of a pole) may be missed.
 */
export function spansBelow(place: EarthPlace, span: Span, elevation_rad: number): readonly Span[] {
  const dark: Span[] = [];
  const at = samples(place, span);
  let since: number | undefined;
  at.forEach((now_ms, index) => {
    const below = sunElevationAt_rad(place, now_ms) < elevation_rad;
    const before_ms = at[index - 1];
    if (below && since === undefined) {
      since = before_ms === undefined ? now_ms : crossing_ms(place, before_ms, now_ms, elevation_rad);
    } else if (!below && since !== undefined && before_ms !== undefined) {
      dark.push({ from_ms: since, to_ms: crossing_ms(place, before_ms, now_ms, elevation_rad) });
      since = undefined;
    }
  });
  if (since !== undefined) dark.push({ from_ms: since, to_ms: span.to_ms });
  return dark;
}
