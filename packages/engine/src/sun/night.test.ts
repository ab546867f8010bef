import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toSI } from "../units/convert.ts";
import {
  arePositionLightsRequired,
  civilNights,
  isCivilNight,
  isPassengerRecencyNight,
  passengerRecencyNightOf,
  passengerRecencyNights,
  positionLightNights,
} from "./night.ts";
import type { EarthPlace } from "./sun-position-model.ts";

// a file of this repository, of which the shape is known
const filed = JSON.parse(
  readFileSync(new URL("../../../../reference/decoded/sun.json", import.meta.url), "utf8"),
) as {
  readonly cases: readonly {
    readonly id: string;
    readonly inputs: Readonly<Record<string, unknown>>;
    readonly expected: Readonly<Record<string, unknown>>;
  }[];
};
const caseOf = (id: string): (typeof filed.cases)[number] => {
  const found = filed.cases.find((one) => one.id === id);
  if (found === undefined) throw new Error(`reference/decoded/sun.json has no case ${id}`);
  return found;
};

const place = (latitude_deg: number, longitude_deg: number): EarthPlace => ({
  latitude_rad: toSI(latitude_deg, "deg"),
  longitude_rad: toSI(longitude_deg, "deg"),
});
const RALEIGH = place(35.78333, -78.65);
const BARROW = place(71.2906, -156.7886);
const HOUR_MS = 3_600_000;
const day = (at_ms: number): { readonly from_ms: number; readonly to_ms: number } => ({
  from_ms: at_ms,
  to_ms: at_ms + 24 * HOUR_MS,
});

describe("the three nights", () => {
  it("differ at the instants of the published case", () => {
    const { inputs, expected } = caseOf("night-three-definitions");
    const times = inputs["timesUtc"];
    if (!Array.isArray(times)) throw new Error("the case has no times");
    const at = times.map((time) => Date.parse(`2015-07-13T${String(time)}:00Z`));
    expect(at.map((one) => arePositionLightsRequired(RALEIGH, one))).toEqual(expected["lights91_209"]);
    expect(at.map((one) => isCivilNight(RALEIGH, one))).toEqual(expected["night1_1"]);
    expect(at.map((one) => isPassengerRecencyNight(RALEIGH, one))).toEqual(expected["recency61_57b"]);
  });

  it("have the spans that the almanac's times make: Raleigh, sunset 00:32, dusk 01:02 UTC", () => {
    const span = day(Date.UTC(2015, 6, 12, 20));
    const minutes = ({ from_ms }: { readonly from_ms: number }): number =>
      (from_ms - Date.UTC(2015, 6, 13)) / 60_000;
    const [lights, civil, recency] = [positionLightNights, civilNights, passengerRecencyNights].map(
      (nights) => nights(RALEIGH, span).map(minutes),
    );
    expect(lights).toHaveLength(1);
    expect(Math.abs((lights?.[0] ?? 0) - 32)).toBeLessThanOrEqual(1);
    expect(Math.abs((civil?.[0] ?? 0) - 62)).toBeLessThanOrEqual(1);
    expect(Math.abs((recency?.[0] ?? 0) - 92)).toBeLessThanOrEqual(1);
  });

  it("have the windows of the published cases, from a known sunset and sunrise", () => {
    const { inputs, expected } = caseOf("night-6157-window");
    const sunset_s = Number(inputs["sunset_minLocal"]) * 60;
    const sunrise_s = (Number(inputs["nextSunrise_minLocal"]) + 1440) * 60;
    expect(passengerRecencyNightOf(sunset_s, sunrise_s)).toEqual([
      Number(expected["from_minLocal"]) * 60,
      (Number(expected["until_minLocal"]) + 1440) * 60,
    ]);
    expect(passengerRecencyNightOf(0, 7200)).toBeUndefined();
  });

  it("light the position lights from sunset to sunrise: San Francisco, 20 June 2012", () => {
    const { expected } = caseOf("night-91209-window");
    const midnight_ms = Date.UTC(2012, 5, 20, 8); // 00:00 at eight hours behind
    const [night] = positionLightNights(place(37.76667, -122.43333), {
      from_ms: midnight_ms + 12 * HOUR_MS,
      to_ms: midnight_ms + 36 * HOUR_MS,
    });
    const minutes = (at_ms: number): number => (at_ms - midnight_ms) / 60_000;
    expect(
      Math.abs(minutes(night?.from_ms ?? 0) - Number(expected["lightsFrom_minLocal"])),
    ).toBeLessThanOrEqual(1);
    expect(
      Math.abs(minutes(night?.to_ms ?? 0) - 1440 - Number(expected["lightsUntil_minLocal"])),
    ).toBeLessThanOrEqual(1);
  });
});

describe("where the sun does not set or rise", () => {
  it("there is no night at all in the polar day", () => {
    const span = day(Date.UTC(2023, 5, 21));
    for (const nights of [civilNights, positionLightNights, passengerRecencyNights])
      expect(nights(BARROW, span)).toEqual([]);
  });

  it("the whole of the polar night is sunset to sunrise, and all of it counts for recency", () => {
    const span = day(Date.UTC(2023, 11, 21));
    expect(positionLightNights(BARROW, span)).toEqual([span]);
    expect(passengerRecencyNights(BARROW, span)).toEqual([span]);
    const civil = civilNights(BARROW, span).reduce((sum, { from_ms, to_ms }) => sum + to_ms - from_ms, 0);
    expect(civil).toBeGreaterThan(15 * HOUR_MS); // twilight for some hours about noon
    expect(civil).toBeLessThan(24 * HOUR_MS);
  });

  it("a sunset without a civil night still lights the lights", () => {
    const anchorage = place(61.2, -149.9);
    const span = day(Date.UTC(2023, 5, 21, 20));
    expect(civilNights(anchorage, span)).toEqual([]);
    expect(positionLightNights(anchorage, span)).toHaveLength(1);
  });
});

describe("nights, anywhere", () => {
  const anywhere = fc.record({
    latitude_rad: fc.double({ min: toSI(-85, "deg"), max: toSI(85, "deg"), noNaN: true }),
    longitude_rad: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
  });
  const instant = fc.integer({ min: Date.UTC(1990, 0, 1), max: Date.UTC(2060, 0, 1) });
  const within = (
    spans: readonly { readonly from_ms: number; readonly to_ms: number }[],
    at_ms: number,
  ): boolean => spans.some(({ from_ms, to_ms }) => at_ms >= from_ms && at_ms < to_ms);
  /** Bisection settles within 20 ms; so near an edge the two may differ. */
  const nearEdge = (
    spans: readonly { readonly from_ms: number; readonly to_ms: number }[],
    at_ms: number,
  ): boolean =>
    spans.some(({ from_ms, to_ms }) => Math.abs(at_ms - from_ms) < 50 || Math.abs(at_ms - to_ms) < 50);

  it("are the same asked as spans and asked at an instant", () => {
    fc.assert(
      fc.property(anywhere, instant, fc.double({ min: 0, max: 1, noNaN: true }), (at, from_ms, share) => {
        const span = { from_ms, to_ms: from_ms + 12 * HOUR_MS };
        const now_ms = Math.floor(from_ms + share * 12 * HOUR_MS * 0.999);
        for (const [nights, isNight] of [
          [civilNights, isCivilNight],
          [positionLightNights, arePositionLightsRequired],
          [passengerRecencyNights, isPassengerRecencyNight],
        ] as const) {
          const spans = nights(at, span);
          if (!nearEdge(spans, now_ms)) expect(within(spans, now_ms)).toBe(isNight(at, now_ms));
        }
      }),
      { numRuns: 60 },
    );
  });

  it("nest: a civil night and a night of recency lie within sunset to sunrise", () => {
    fc.assert(
      fc.property(anywhere, instant, (at, now_ms) => {
        const lights = arePositionLightsRequired(at, now_ms);
        if (isCivilNight(at, now_ms)) expect(lights).toBe(true);
        if (isPassengerRecencyNight(at, now_ms)) expect(lights).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});
