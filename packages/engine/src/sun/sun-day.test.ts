import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromSI, toSI } from "../units/convert.ts";
import { type CalendarDate, localInstant_ms, utcOffsetAt_s } from "./calendar.ts";
import {
  ASTRONOMICAL_TWILIGHT_rad,
  CIVIL_TWILIGHT_rad,
  NAUTICAL_TWILIGHT_rad,
  SUN_EDGE_ON_HORIZON_rad,
} from "./sun-crossings.ts";
import { type SunPassage, sunDay } from "./sun-day.ts";
import { type EarthPlace, sunElevationAt_rad } from "./sun-position-model.ts";
import { sunset as sunsetQuantity } from "./sun-times.ts";

const EVENTS = ["civilDawn", "sunrise", "sunset", "civilDusk"] as const;
type Event = (typeof EVENTS)[number];

interface LibraryCase {
  readonly id: string;
  readonly inputs: {
    readonly latitude_deg: number;
    readonly longitude_deg: number;
    readonly date_iso: string;
    readonly utcOffset_s: number;
  };
  readonly expected: { readonly noon_s: number } & Readonly<Record<`${Event}_s`, number | null>>;
}
const readJson = (name: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../../../reference/decoded/${name}`, import.meta.url), "utf8"));
// files of this repository, of which the shape is known
const library = readJson("sun-second-library.json") as { readonly cases: readonly LibraryCase[] };
const filed = readJson("sun.json") as {
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
const dateOf = (iso: string): CalendarDate => {
  const [year = 0, month = 0, day = 0] = iso.split("-").map(Number);
  return { year, month, day };
};
const seconds = (passage: SunPassage): number | null =>
  passage.kind === "at" ? passage.afterMidnight_s : null;

const anywhere = fc.record({
  latitude_rad: fc.double({ min: toSI(-89, "deg"), max: toSI(89, "deg"), noNaN: true }),
  longitude_rad: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
});
const anyDate = fc.record({
  year: fc.integer({ min: 1950, max: 2080 }),
  month: fc.integer({ min: 1, max: 12 }),
  day: fc.integer({ min: 1, max: 28 }),
});

describe("a day of the sun, beside a second library", () => {
  it("has days of every kind to be compared", () => {
    expect(library.cases.length).toBeGreaterThanOrEqual(60);
    expect(library.cases.filter(({ expected }) => expected.sunrise_s === null).length).toBeGreaterThanOrEqual(
      8,
    );
  });

  // astronomy-engine 2.1.19; a minute is what almanac tables promise
  it.each(library.cases)("$id agrees within a minute", ({ inputs, expected }) => {
    const at = place(inputs.latitude_deg, inputs.longitude_deg);
    const day = sunDay(at, dateOf(inputs.date_iso), { utcOffset_s: inputs.utcOffset_s });
    for (const event of EVENTS) {
      const want = expected[`${event}_s`];
      const got = seconds(day[event]);
      expect(got === null, `${event}: ${got} beside ${want}`).toBe(want === null);
      if (want !== null && got !== null) expect(Math.abs(got - want), event).toBeLessThanOrEqual(60);
    }
  });

  it("has its noon within three seconds of the library's", () => {
    for (const { inputs, expected } of library.cases) {
      const at = place(inputs.latitude_deg, inputs.longitude_deg);
      const midnight_ms = localInstant_ms(dateOf(inputs.date_iso), 0, inputs);
      const { noon_ms } = sunDay(at, dateOf(inputs.date_iso), inputs);
      expect(Math.abs((noon_ms - midnight_ms) / 1000 - expected.noon_s)).toBeLessThanOrEqual(3);
    }
  });
});

describe("days without a rise or a set", () => {
  it("say that the sun is up all day, as a state and not as a time", () => {
    const { inputs, expected } = caseOf("sun-polar-summer");
    const at = place(Number(inputs["latitude_deg"]), Number(inputs["longitude_deg"]));
    const day = sunDay(at, dateOf(String(inputs["date_iso"])), { zone: "America/Anchorage" });
    expect(day.day === "up all day").toBe(expected["sunAlwaysUp"]);
    expect(day.sunrise.kind === "at").toBe(expected["sunRises"]);
    expect(day.sunset.kind === "at").toBe(expected["sunSets"]);
    expect(day.civilDusk.kind === "at").toBe(expected["civilTwilightEnds"]);
    expect(day.civilDusk).toEqual({ kind: "stays above" });
  });

  it("say that the sun is down all day", () => {
    const day = sunDay(place(71.2906, -156.7886), dateOf("2023-12-21"), { utcOffset_s: -32_400 });
    expect([day.day, day.sunrise]).toEqual(["down all day", { kind: "stays below" }]);
    expect(day.civilDawn.kind).toBe("at"); // a few hours of twilight about noon
  });

  it("can have a sunset and no end of civil twilight", () => {
    const { inputs, expected } = caseOf("sun-anchorage-no-civil-night");
    const at = place(Number(inputs["latitude_deg"]), Number(inputs["longitude_deg"]));
    const day = sunDay(at, dateOf(String(inputs["date_iso"])), { utcOffset_s: -28_800 });
    expect(
      Math.abs((seconds(day.sunset) ?? 0) / 60 - Number(expected["sunset_minLocal"])),
    ).toBeLessThanOrEqual(1.5);
    expect(day.civilDusk.kind === "at").toBe(expected["civilTwilightEnds"]);
  });

  it("are refused by the plain quantity, with what the sun does", () => {
    expect(() =>
      sunsetQuantity.compute({
        ...place(71.2906, -156.7886),
        year_count: 2023,
        month_count: 6,
        day_count: 21,
        utcOffset_s: 0,
      }),
    ).toThrow(
      "sunset, date: expected a date on which the sun passes this height, received a sun that stays above it from noon to midnight",
    );
  });
});

describe("a day of the sun, anywhere", () => {
  it("has the sun on the horizon at each passage, and no passage where it is never there", () => {
    const heights = {
      civilDawn: CIVIL_TWILIGHT_rad,
      sunrise: SUN_EDGE_ON_HORIZON_rad,
      sunset: SUN_EDGE_ON_HORIZON_rad,
      civilDusk: CIVIL_TWILIGHT_rad,
    };
    fc.assert(
      fc.property(anywhere, anyDate, (at, date) => {
        const day = sunDay(at, date, { utcOffset_s: 0 });
        for (const event of EVENTS) {
          const passage = day[event];
          if (passage.kind === "at") {
            expect(Number.isFinite(passage.at_ms)).toBe(true);
            expect(Math.abs(sunElevationAt_rad(at, passage.at_ms) - heights[event])).toBeLessThan(1e-5);
          } else {
            const above = sunElevationAt_rad(at, day.noon_ms) >= heights[event];
            expect(passage.kind).toBe(above ? "stays above" : "stays below");
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it("goes dawn, sunrise, noon, sunset, dusk", () => {
    fc.assert(
      fc.property(anywhere, anyDate, (at, date) => {
        const day = sunDay(at, date, { utcOffset_s: 0 });
        const instants = [
          day.civilDawn,
          day.sunrise,
          { kind: "at", at_ms: day.noon_ms } as const,
          day.sunset,
          day.civilDusk,
        ].flatMap((one) => (one.kind === "at" ? [one.at_ms] : []));
        expect(instants).toEqual(instants.toSorted((a, b) => a - b));
      }),
      { numRuns: 60 },
    );
  });

  it("has the same instants whatever clock is kept there", () => {
    const [date, at] = [dateOf("2026-11-25"), place(58.2, -6.4)];
    const zoned = sunDay(at, date, { zone: "Europe/London" });
    const fixed = sunDay(at, date, { utcOffset_s: 3600 });
    expect(zoned.noon_ms).toBeCloseTo(fixed.noon_ms, -1);
    expect((seconds(fixed.sunset) ?? 0) - (seconds(zoned.sunset) ?? 0)).toBeCloseTo(3600, 0);
  });
});

describe("the clock of a place", () => {
  it("shows summer time where the zone keeps it", () => {
    const [summer, winter] = [Date.UTC(2026, 6, 1), Date.UTC(2026, 0, 1)];
    expect([
      utcOffsetAt_s({ zone: "Europe/London" }, summer),
      utcOffsetAt_s({ zone: "Europe/London" }, winter),
    ]).toEqual([3600, 0]);
    expect(utcOffsetAt_s({ zone: "Asia/Kathmandu" }, winter)).toBe(20_700);
    expect(utcOffsetAt_s({ zone: "America/St_Johns" }, winter)).toBe(-12_600);
  });

  it("begins the date at its own midnight, on days when the clocks change too", () => {
    // 29 March 2026: 01:00 UTC is when Europe/London goes from 01:00 to 02:00
    expect(localInstant_ms(dateOf("2026-03-29"), 0, { zone: "Europe/London" })).toBe(Date.UTC(2026, 2, 29));
    expect(localInstant_ms(dateOf("2026-03-29"), 43_200, { zone: "Europe/London" })).toBe(
      Date.UTC(2026, 2, 29, 11),
    );
  });

  // Changes of 2026 by the rules of the zones: New York 8 March 07:00 UTC and 1 November 06:00 UTC, London 25 October 01:00 UTC
  it.each([
    ["after it went forward", "America/New_York", "2026-03-08", 3, Date.UTC(2026, 2, 8, 7)],
    ["before it goes forward", "America/New_York", "2026-03-08", 1.5, Date.UTC(2026, 2, 8, 6, 30)],
    ["that is skipped", "America/New_York", "2026-03-08", 2.5, Date.UTC(2026, 2, 8, 7, 30)],
    ["that is shown twice", "America/New_York", "2026-11-01", 1.5, Date.UTC(2026, 10, 1, 5, 30)],
    ["that is shown twice, in the east", "Europe/London", "2026-10-25", 1.5, Date.UTC(2026, 9, 25, 0, 30)],
  ])("finds a time of day %s", (_what, zone, date, hour, at_ms) => {
    expect(localInstant_ms(dateOf(date), hour * 3600, { zone })).toBe(at_ms);
  });

  it("counts the hours that it shows across a change", () => {
    const day = sunDay(place(51.5, 0), dateOf("2026-03-29"), { zone: "Europe/London" });
    // Greenwich: the sun's noon is at 12:04:50 UTC in late March, which the clock shows as 13:04:50
    const shown_s = (seconds(day.sunset) ?? 0) + (seconds(day.sunrise) ?? 0);
    expect(Math.abs(shown_s / 2 - (13 * 3600 + 4 * 60 + 50))).toBeLessThan(30);
  });

  it.each([
    [
      "a zone that is not known",
      () => sunDay(place(0, 0), dateOf("2026-01-01"), { zone: "Nowhere/At_All" }),
      'zone: expected a time zone of the IANA list, such as Europe/London, or a fixed offset, received "Nowhere/At_All"',
    ],
    [
      "a day that no calendar has",
      () => sunDay(place(0, 0), dateOf("2026-02-30"), { utcOffset_s: 0 }),
      "date: expected a day of the calendar from 1901 to 2099, received year 2026, month 2, day 30",
    ],
    [
      "an offset that no clock has",
      () => sunDay(place(0, 0), dateOf("2026-01-01"), { utcOffset_s: 90_000 }),
      "utcOffset_s: expected an offset from universal time of −18 h to 18 h, received 90000 s",
    ],
    [
      "degrees in place of radians",
      () => sunDay({ latitude_rad: 58, longitude_rad: 0 }, dateOf("2026-01-01"), { utcOffset_s: 0 }),
      "latitude_rad: expected −90° to 90°",
    ],
    [
      "a place that is no number",
      () => sunDay({ latitude_rad: Number.NaN, longitude_rad: 0 }, dateOf("2026-01-01"), { utcOffset_s: 0 }),
      "latitude_rad: expected −90° to 90°, received NaN°",
    ],
  ])("refuses %s", (_what, call, message) => {
    expect(call).toThrow(message);
  });
});

describe("the heights that rules name", () => {
  it("are those of the almanac", () => {
    const { expected } = caseOf("sun-definition-depression");
    const zenith_deg = [
      SUN_EDGE_ON_HORIZON_rad,
      CIVIL_TWILIGHT_rad,
      NAUTICAL_TWILIGHT_rad,
      ASTRONOMICAL_TWILIGHT_rad,
    ].map((elevation) => 90 - fromSI(elevation, "deg"));
    const printed = expected["zenithDistance_deg"];
    expect(Array.isArray(printed) ? printed.length : 0).toBe(4);
    zenith_deg.forEach((angle, index) => {
      expect(
        Math.abs(angle - (Array.isArray(printed) ? Number(printed[index]) : Number.NaN)),
      ).toBeLessThanOrEqual(0.0005);
    });
  });
});
