import type { Book } from "@witnessmark/book";
import type { PlannedField, Report } from "@witnessmark/ledger";
import fc from "fast-check";
import type { Flight } from "../assessment.ts";

const report = (text: string): Report => ({ text, receivedAt: "2026-11-12T08:05:00.000Z" });

const two = (value: number): string => String(value).padStart(2, "0");

/** Reports of half past seven and five o'clock on the morning of the demo, of fair and of foul weather. */
const weather = (code: string): fc.Arbitrary<Pick<PlannedField, "metar" | "taf">> =>
  fc
    .record({
      from: fc.integer({ min: 1, max: 36 }),
      kt: fc.integer({ min: 4, max: 26 }),
      gust: fc.option(fc.integer({ min: 5, max: 15 })),
      sky: fc.constantFrom("9999 SCT030", "9999 -RA BKN022", "4000 RA OVC008", "0800 FG VV002", "CAVOK"),
      oat: fc.integer({ min: -9, max: 35 }),
      qnh: fc.integer({ min: 985, max: 1035 }),
      hasTaf: fc.boolean(),
    })
    .map(({ from, kt, gust, sky, oat, qnh, hasTaf }) => {
      const wind = `${two(from)}0${two(kt)}${gust === null ? "" : `G${two(kt + gust)}`}KT`;
      const air = `${oat < 0 ? "M" : ""}${two(Math.abs(oat))}/M12`;
      return {
        metar: report(`METAR ${code} 120750Z ${wind} ${sky} ${air} Q${String(qnh).padStart(4, "0")}`),
        ...(hasTaf ? { taf: report(`TAF ${code} 120500Z 1206/1306 ${wind} ${sky}`) } : {}),
      };
    });

const fieldOf = ({ fields = [] }: Book): fc.Arbitrary<PlannedField> =>
  fc.constantFrom(...fields).chain((field) =>
    fc
      .record({
        runway: fc.constantFrom(...field.runways.map(({ name }) => name)),
        condition: fc.constantFrom("dry" as const, "wet" as const),
        reports: weather(field.code),
      })
      .map(({ runway, condition, reports }) => ({ code: field.code, runway, condition, ...reports })),
  );

/** Flights of a demo book on the demo's morning: light and overloaded, well and badly fuelled, in any weather. */
export const anyFlight = (book: Book): fc.Arbitrary<Flight> => {
  const { stations = [], tanks = [] } = book.loading ?? {};
  return fc
    .record({
      shares: fc.array(fc.double({ min: 0, max: 1.1, noNaN: true }), {
        minLength: stations.length,
        maxLength: stations.length,
      }),
      known: fc.constantFrom("weighed" as const, "stated" as const, "standard" as const),
      full_1: fc.double({ min: 0.1, max: 1, noNaN: true }),
      minutes: fc.integer({ min: 15, max: 240 }),
      level_ft: fc.integer({ min: 30, max: 240 }),
      rulePack: fc.constantFrom("eu-part-nco", "us-part-91"),
      flightRules: fc.constantFrom("VFR" as const, "IFR" as const),
      departure: fieldOf(book),
      destination: fieldOf(book),
      alternate: fc.option(fieldOf(book), { nil: undefined }),
      delay_min: fc.integer({ min: 0, max: 600 }),
    })
    .map(({ shares, known, full_1, minutes, level_ft, rulePack, flightRules, alternate, ...at }) => ({
      from: at.departure.code,
      to: at.destination.code,
      offBlocks: new Date(Date.UTC(2026, 10, 12, 8, 30 + at.delay_min)).toISOString().replace("Z", "+00:00"),
      plan: {
        rulePack,
        flightRules,
        load: {
          items: stations
            .map(({ id, max_kg }, index) => {
              const value = Math.round((max_kg ?? 100) * (shares[index] ?? 0));
              return { id, station: id, what: id, mass: { value, unit: "kg" as const }, known };
            })
            .filter(({ mass }) => mass.value > 10),
          fuel: tanks.map(({ id, capacity_m3 }) => ({
            tank: id,
            volume: { value: Math.floor(capacity_m3 * 1000 * full_1), unit: "L" as const },
          })),
        },
        route: {
          distance: { value: minutes * 2, unit: "NM" },
          time: { value: minutes, unit: "min" },
          level: { value: level_ft * 100, unit: "ft" },
          ...(alternate === undefined ? {} : { alternateTime: { value: 20, unit: "min" as const } }),
        },
        departure: at.departure,
        destination: at.destination,
        ...(alternate === undefined ? {} : { alternate }),
      },
    }));
};
