import type { Book, Field } from "@witnessmark/book";
import type { PlannedPlace } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { flightWith, turboprop, verdictsOf } from "./conditions/testing/island.ts";
import { fieldOf } from "./field-of.ts";
import { nightOfFlight } from "./night-of-flight.ts";

const inBook = (code: string): Field => {
  const found = turboprop.fields?.find((field) => field.code === code);
  if (found === undefined) throw new Error(`expected the field ${code}`);
  return found;
};

/** A field of the book with one length for all, without approaches: as much as is said of one for a flight. */
const plain = (field: Field): Field => {
  const { airspace: _unsaid, ...rest } = field;
  return {
    ...rest,
    approach: false,
    approaches: [],
    runways: field.runways.map((runway) => ({
      ...runway,
      toda_m: runway.tora_m,
      asda_m: runway.tora_m,
      lda_m: runway.tora_m,
    })),
  };
};

const saidOf = ({ code, name, latitude_deg, longitude_deg, elevation_m, lights, zone, runways }: Field) =>
  ({
    code,
    name,
    latitude_deg,
    longitude_deg,
    elevation: { value: elevation_m, unit: "m" },
    lights,
    zone,
    runways: runways.map((runway) => ({
      name: runway.name,
      trueHeading_deg: runway.trueHeading_deg,
      length: { value: runway.tora_m, unit: "m" },
      slope_1: runway.slope_1,
      surface: runway.surface,
    })),
  }) satisfies PlannedPlace;

const QUERN = plain(inBook("ZZQN"));
const others = (turboprop.fields ?? []).filter(({ code }) => code !== "ZZQN");
const withQuern: Book = { ...turboprop, fields: [...others, QUERN] };
const without: Book = { ...turboprop, fields: others };
const places = [saidOf(QUERN)];

describe("a field that is said for a flight", () => {
  it("gives every number and every answer that the same field in the book gives", () => {
    const known = verdictsOf(flightWith(), { book: withQuern });
    expect(known.filter(({ id }) => id.includes("destination")).length).toBeGreaterThan(5);
    expect(verdictsOf(flightWith({ places }), { book: without })).toEqual(known);
  });

  it("leaves open what its runway is asked for while nobody has said it, and never clears it", () => {
    const ids = (flight: ReturnType<typeof flightWith>) =>
      verdictsOf(flight, { book: without }).filter(({ id }) => id.startsWith("runway:destination"));
    expect(ids(flightWith()).map(({ status }) => status)).toEqual(["open"]);
    expect(ids(flightWith({ places: [] })).map(({ status }) => status)).toEqual(["open"]);
  });

  it("is passed over where the book has one of its code", () => {
    const shorter = places.map((place) => ({
      ...place,
      runways: place.runways.map((runway) => ({ ...runway, length: { value: 10, unit: "m" as const } })),
    }));
    expect(fieldOf(withQuern, { places: shorter }, "ZZQN")).toBe(QUERN);
  });

  it("is the same one whenever it is asked for, and none where a length is no length", () => {
    expect(fieldOf(without, { places }, "ZZQN")).toBe(fieldOf(without, { places }, "ZZQN"));
    const wrong = places.map((place) => ({ ...place, elevation: { value: 3, unit: "kg" as const } }));
    expect(fieldOf(without, { places: wrong }, "ZZQN")).toBeUndefined();
  });

  it("tells by its place whether the flight is by night", () => {
    const night = flightWith({ places }, "23:00");
    expect(nightOfFlight(without, night, 2280)).toBe(true);
    expect(nightOfFlight({ ...without, fields: [] }, flightWith(), 2280)).toBeUndefined();
  });
});
