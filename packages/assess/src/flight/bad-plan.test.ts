import type { Book, PerformanceTable } from "@witnessmark/book";
import { emptyState, type FlightPlan, type PlannedField, type Report } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import type { Flight, Verdict, VerdictTopic } from "../assessment.ts";
import { demoBook } from "../testing/demo-book.ts";
import { DEMO_NOW_ms, demoFlight } from "../testing/demo-flight.ts";
import { plain } from "../testing/plain.ts";

/*
 * Whatever is wrong in a plan or a book, by the whole assessment: the part of the answer that is the flight's is open or
 * stop, never clear, and the words are at the verdict that the pilot sees.
 */

const book = await demoBook();
const { plan } = demoFlight;
if (plan?.load === undefined || plan.destination === undefined)
  throw new Error("expected a whole plan of the demo's flight");
const { load, destination } = plan;

/** Without oxygen, of which the walk tells what there is. */
const OF_FLIGHT: readonly VerdictTopic[] = ["load", "fuel", "runway", "wind", "weather", "light", "ice"];

const ofFlight = (changed: Partial<FlightPlan>, by: Book = book): readonly Verdict[] => {
  const flight: Flight = { ...demoFlight, plan: { ...plan, ...changed } };
  return assess(by, emptyState("ZZ-SKR"), flight, DEMO_NOW_ms).verdicts.filter(({ topic }) =>
    OF_FLIGHT.includes(topic),
  );
};

const saysAll = (one: Verdict): string => {
  const more = one.status === "open" ? one.missing : one.status === "clear" ? [] : one.because;
  return plain([one.id, one.says, ...more].join("; "));
};
const standing = (all: readonly Verdict[]): readonly Verdict[] =>
  all.filter(({ status }) => status === "open" || status === "stop");
const said = (all: readonly Verdict[]): string =>
  all
    .filter(({ status }) => status !== "clear")
    .map(saysAll)
    .join("\n");

const report = (text: string, receivedAt = "2026-11-12T08:05:00.000Z"): Report => ({ text, receivedAt });
const landingIn = (change: Partial<PlannedField>): Partial<FlightPlan> => ({
  destination: { ...destination, ...change },
});
const person = (station: string, value: number): Partial<FlightPlan> => ({
  load: {
    ...load,
    items: [
      ...load.items.filter((item) => item.station !== station),
      { id: "somebody", station, what: "", mass: { value, unit: "kg" }, known: "weighed" },
    ],
  },
});
const fuel = (left_L: number): Partial<FlightPlan> => ({
  load: {
    ...load,
    fuel: load.fuel.map((one) =>
      one.tank === "left-tank" ? { ...one, volume: { value: left_L, unit: "L" } } : one,
    ),
  },
});
const typed = (part: Partial<NonNullable<PlannedField["typed"]>>): Partial<FlightPlan> =>
  landingIn({ typed: { observedAt: "2026-11-12T08:10:00.000Z", ...part } });

it("the plan itself has nothing of the flight that is open or stops it", () => {
  expect(standing(ofFlight({})).map(saysAll)).toEqual([]);
});

describe("never clear, and said at its place", () => {
  it.each<[string, Partial<FlightPlan>, RegExp]>([
    [
      "a negative weight",
      person("seat-3", -68),
      /Seat 3, left middle: expected zero or more, received −68 kg/,
    ],
    ["a seat over its limit", person("seat-3", 121), /^load:station:seat-3.*/m],
    ["a bay over its limit", person("aft-bay", 91), /^load:station:aft-bay.*/m],
    [
      "a seat that there is not",
      person("seat-9", 70),
      /expected a seat or bay of the book, received "seat-9"/,
    ],
    ["fuel over the capacity", fuel(400), /expected at most 320 L, which is all it holds, received 400 L/],
    ["fuel below nothing", fuel(-5), /Left wing tank: expected zero or more, received −5 L/],
    ["an unknown runway", landingIn({ runway: "12" }), /runway 12: expected a runway of ZZQN \(11, 29\)/],
    ["an unknown field", landingIn({ code: "ZZXX" }), /ZZXX: expected a field of the book/],
    [
      "a METAR of another place",
      landingIn({ metar: report("METAR ZZPK 120750Z 30012KT 9999 SCT035 03/M01 Q1009") }),
      /no METAR or SPECI of ZZQN in the text/,
    ],
    [
      "a METAR of another day",
      landingIn({ metar: report("METAR ZZQN 110750Z 24014KT 9999 BKN022 05/03 Q1008") }),
      /Report of Wednesday 07:50/,
    ],
    [
      "a METAR of a day that has not come",
      landingIn({ metar: report("METAR ZZQN 140750Z 24014KT 9999 BKN022 05/03 Q1008") }),
      /after it was received/,
    ],
    [
      "a TAF that has expired",
      landingIn({
        taf: report("TAF ZZQN 110500Z 1106/1206 24014G22KT 9999 BKN022", "2026-11-11T06:00:00.000Z"),
      }),
      /It ended 06:00/,
    ],
    [
      "an altimeter setting in the wrong unit, in a report",
      landingIn({ metar: report("METAR ZZQN 120750Z 24014G22KT 9999 BKN022 05/03 Q2992") }),
      /2992 hPa is impossible; probably A2992/,
    ],
    [
      "an altimeter setting in the wrong unit, typed",
      typed({ qnh: { value: 29.92, unit: "hPa" } }),
      /received 29\.92 hPa; was that 29\.92 inHg/,
    ],
    [
      "a wind without its speed",
      typed({ windFrom: { value: 240, unit: "deg" } }),
      /a direction or a gust without the speed of the wind/,
    ],
  ])("%s", (_, changed, words) => {
    const all = ofFlight(changed);
    expect(standing(all)).not.toEqual([]);
    expect(said(all)).toMatch(words);
  });

  const withTables = (change: (table: PerformanceTable) => PerformanceTable): Book => {
    const { performance } = book;
    if (performance === undefined) throw new Error("expected tables in the book");
    return { ...book, performance: { ...performance, tables: performance.tables.map(change) } };
  };

  it("a table without a figure anywhere near", () => {
    const holed = withTables((table) =>
      table.quantity === "landing-over-50ft" ? { ...table, cells: table.cells.map(() => null) } : table,
    );
    const all = ofFlight({}, holed);
    expect(all.find(({ id }) => id === "runway:destination:landing")?.status).toBe("open");
    expect(said(all)).toContain("is where the table has no figure");
  });

  it("an envelope that crosses itself", () => {
    const { loading } = book;
    if (loading === undefined) throw new Error("expected loading in the book");
    const points = [
      { arm_m: 4, mass_kg: 1850 },
      { arm_m: 4.4, mass_kg: 2720 },
      { arm_m: 4.4, mass_kg: 1850 },
      { arm_m: 4, mass_kg: 2720 },
    ];
    const crossed: Book = {
      ...book,
      loading: { ...loading, envelopes: [{ id: "normal", name: "Normal", points }] },
    };
    const all = ofFlight({}, crossed);
    expect(standing(all)).not.toEqual([]);
    expect(said(all)).toMatch(/Envelope "Normal" of the book: the edges .* cross or touch/);
  });

  it("a wind that is variable is a caution at the least: no direction is left out", () => {
    const all = ofFlight(typed({ windVariable: true, windSpeed: { value: 6, unit: "kt" } }));
    const crosswind = all.find(({ id }) => id === "wind:destination:crosswind");
    expect(crosswind?.status).toBe("caution");
    expect(plain(crosswind?.says)).toContain("6 kt from either side, of 20 kt demonstrated. Variable");
  });
});
