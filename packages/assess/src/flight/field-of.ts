import type { Book, Field } from "@witnessmark/book";
import { toSI, UNITS } from "@witnessmark/engine";
import type { FlightPlan, PlannedPlace } from "@witnessmark/ledger";

/** What the numbers of a flight need of a field: all that a book says of one but the variation, which none asks. */
export type FlightField = Omit<Field, "magneticVariation_deg">;

/** A place is said once and looked up many times: the same one is the same field. */
const made = new WeakMap<PlannedPlace, FlightField>();

/**
 * The field of a code: the book's, or else what was said of it for this flight.
 *
 * @returns undefined where neither has it, or where a length of it is no length
 */
export function fieldOf(
  { fields }: Pick<Book, "fields">,
  plan: Pick<FlightPlan, "places"> | undefined,
  code: string | undefined,
): FlightField | undefined {
  const inBook = fields?.find((one) => one.code === code);
  if (inBook !== undefined) return inBook;
  const said = plan?.places?.find((one) => one.code === code);
  if (said === undefined) return undefined;
  const known = made.get(said);
  if (known !== undefined) return known;
  const lengths = [said.elevation, ...said.runways.map(({ length }) => length)];
  if (lengths.some(({ unit }) => UNITS[unit].dimension !== "length")) return undefined;
  const field = fieldFrom(said);
  made.set(said, field);
  return field;
}

/** One length is said for a direction: there is as much to take off on as to stop on and to land on. */
const fieldFrom = (said: PlannedPlace): FlightField => ({
  code: said.code,
  name: said.name,
  latitude_deg: said.latitude_deg,
  longitude_deg: said.longitude_deg,
  elevation_m: toSI(said.elevation.value, said.elevation.unit),
  lights: said.lights,
  approach: false,
  approaches: [],
  zone: said.zone,
  runways: said.runways.map(({ name, trueHeading_deg, length, slope_1, surface }) => {
    const length_m = toSI(length.value, length.unit);
    return {
      name,
      trueHeading_deg,
      tora_m: length_m,
      toda_m: length_m,
      asda_m: length_m,
      lda_m: length_m,
      slope_1,
      surface,
    };
  }),
});
