import type { Book } from "@witnessmark/book";
import { civilNights, type EarthPlace, toSI } from "@witnessmark/engine";
import type { PlannedFlight } from "@witnessmark/ledger";
import { TAXI_S } from "./conditions/times.ts";
import { fieldOf } from "./field-of.ts";

const placeOf = (
  book: Pick<Book, "fields">,
  { plan }: PlannedFlight,
  code: string | undefined,
): EarthPlace | undefined => {
  const field = fieldOf(book, plan, code);
  return field === undefined
    ? undefined
    : { latitude_rad: toSI(field.latitude_deg, "deg"), longitude_rad: toSI(field.longitude_deg, "deg") };
};

/**
 * Whether any of the flight is by night at either of its fields, from off blocks to the landing. Undefined
 * where a field or a time is not known.
 *
 * @param time_s from take-off to landing
 * @param nightsOf which night: civil twilight's, as a fuel rule means it, unless another is named
 */
export function nightOfFlight(
  book: Pick<Book, "fields">,
  flight: PlannedFlight,
  time_s: number | undefined,
  nightsOf: typeof civilNights = civilNights,
): boolean | undefined {
  const from_ms = Date.parse(flight.offBlocks);
  const places = [
    placeOf(book, flight, flight.plan?.departure?.code ?? flight.from),
    placeOf(book, flight, flight.plan?.destination?.code ?? flight.to),
  ];
  if (time_s === undefined || Number.isNaN(from_ms) || time_s > LONGEST_S) return undefined;
  const span = { from_ms, to_ms: from_ms + (TAXI_S + time_s) * 1000 };
  const nights = places.map((place) => (place === undefined ? undefined : nightsOf(place, span).length > 0));
  if (nights.includes(true)) return true;
  return nights.includes(undefined) ? undefined : false;
}

/** Two days: no flight of this sort is longer, and the sun is looked up for all of it. */
const LONGEST_S = 2 * 86_400;
