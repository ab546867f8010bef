import type { AircraftState, PlannedPlace } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { NOTHING_TYPED, type PlaceTyped, placesSaid, readPlace, typedOf } from "./said-place.ts";

const STRIP: PlaceTyped = {
  code: "zzst",
  name: " Strand ",
  latitude: "57 12.6 N",
  longitude: "6 21 W",
  elevation: "40",
  runway: "9",
  direction: "87,5",
  length: "620",
  slope: "1,5",
  surface: "grass",
  lights: false,
};
const read = (changed: Partial<PlaceTyped> = {}) => readPlace({ ...STRIP, ...changed }, "Etc/UTC");
const faultOf = (changed: Partial<PlaceTyped>) => {
  const found = read(changed);
  return found.ok ? undefined : found.faults;
};

describe("a field that is typed for a flight", () => {
  it("has both ways of its runway, the other one turned, as long, and down where this goes up", () => {
    expect(read()).toEqual({
      ok: true,
      place: {
        code: "ZZST",
        name: "Strand",
        latitude_deg: 57.21,
        longitude_deg: -6.35,
        elevation: { value: 40, unit: "ft" },
        lights: false,
        zone: "Etc/UTC",
        runways: [
          {
            name: "09",
            trueHeading_deg: 87.5,
            length: { value: 620, unit: "m" },
            slope_1: 0.015,
            surface: "grass",
          },
          {
            name: "27",
            trueHeading_deg: 267.5,
            length: { value: 620, unit: "m" },
            slope_1: -0.015,
            surface: "grass",
          },
        ],
      },
    });
  });

  it.each([
    ["01R", "12", "19L"],
    ["9L", "92", "27R"],
    ["36", "2", "18"],
    ["18C", "180", "36C"],
    ["18", "182", "36"],
  ])("knows runway %s by its other end", (runway, direction, other) => {
    const found = read({ runway, direction });
    expect(found.ok && found.place.runways[1]?.name).toBe(other);
  });

  it.each([
    ["57.21", 57.21],
    ["57.21 s", -57.21],
    ["−57.21", -57.21],
    ["57°12.6′N", 57.21],
    ["-57 12.6", -57.21],
  ])("reads the latitude %j", (latitude, expected_deg) => {
    const found = read({ latitude });
    expect(found.ok ? found.place.latitude_deg : Number.NaN).toBeCloseTo(expected_deg, 9);
  });

  it.each([
    [{ code: "STRAND" }, "code"],
    [{ latitude: "91" }, "latitude"],
    [{ latitude: "57.5 12" }, "latitude"],
    [{ latitude: "57 61" }, "latitude"],
    [{ latitude: "-57 S" }, "latitude"],
    [{ longitude: "6 21 N" }, "longitude"],
    [{ elevation: "40 kg" }, "elevation"],
    [{ elevation: "40000" }, "elevation"],
    [{ runway: "37" }, "runway"],
    [{ direction: "361" }, "direction"],
    [{ direction: "274" }, "direction"],
    [{ length: "0" }, "length"],
    [{ length: "2,500" }, "length"],
    [{ slope: "" }, "slope"],
    [{ slope: "30" }, "slope"],
  ] satisfies readonly (readonly [Partial<PlaceTyped>, keyof PlaceTyped])[])(
    "refuses %j at its place, and that alone",
    (changed, at) => {
      const faults = faultOf(changed);
      expect(Object.keys(faults ?? {})).toEqual([at]);
      expect(faults?.[at]?.length).toBeGreaterThan(10);
    },
  );

  it("is typed again as it was said", () => {
    const found = read();
    if (!found.ok) throw new Error("expected a field");
    expect(readPlace(typedOf(found.place), "Etc/UTC")).toEqual(found);
  });

  it("asks for everything that it needs, at once", () => {
    const found = readPlace(NOTHING_TYPED, "Etc/UTC");
    expect(found.ok ? [] : Object.keys(found.faults)).toEqual([
      "code",
      "latitude",
      "longitude",
      "elevation",
      "runway",
      "direction",
      "length",
      "slope",
      "surface",
    ]);
  });
});

describe("fields that were said", () => {
  const place = (code: string, name: string): PlannedPlace => {
    const found = read({ code, name });
    if (!found.ok) throw new Error("expected a field");
    return found.place;
  };
  const planned = (id: string, places: readonly PlannedPlace[]) =>
    [id, { id, planned: { plan: { places } } }] as const;
  const state = {
    flights: new Map([
      planned("first", [place("ZZST", "as it was"), place("ZZQN", "in the book")]),
      planned("second", [place("ZZST", "as it was last")]),
    ]),
  } as unknown as AircraftState; // nothing else of a state is asked

  it("are offered again, the latest word of each, without those that the book has", () => {
    const plan = { rulePack: "us-part-91", flightRules: "VFR", places: [place("ZZNW", "now")] } as const;
    expect(placesSaid(state, plan, [{ code: "ZZQN" }]).map(({ code, name }) => `${code} ${name}`)).toEqual([
      "ZZNW now",
      "ZZST as it was last",
    ]);
  });
});
