import { readFile } from "node:fs/promises";
import { type Book, readBook } from "@witnessmark/book";
import { emptyState, type FlightPlan, type LoadedItem, type PlannedLoad } from "@witnessmark/ledger";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import type { Flight, Verdict } from "../assessment.ts";
import { BADNESS } from "../order.ts";
import { DEMO_NOW_ms, demoFlight } from "../testing/demo-flight.ts";
import { plain } from "../testing/plain.ts";
import { loadFigures } from "./load/load-figures.ts";

let book: Book;

beforeAll(async () => {
  const file = new URL("../../../../books/zz-skr.yaml", import.meta.url);
  const read = await readBook(await readFile(file, "utf8"), "zz-skr.yaml");
  if (!read.ok) throw new Error("expected the turboprop's book to read");
  book = read.book;
});

const { plan } = demoFlight;
if (plan?.load === undefined || plan.route === undefined) throw new Error("expected a whole plan");
const base: FlightPlan & { readonly load: PlannedLoad } = { ...plan, load: plan.load };

const flightWith = (changed: Partial<FlightPlan>): Flight => ({
  ...demoFlight,
  plan: { ...base, ...changed },
});
const loaded = (changed: Partial<PlannedLoad>): Flight => flightWith({ load: { ...base.load, ...changed } });
const verdicts = (flight: Flight, by = book): readonly Verdict[] =>
  assess(by, emptyState("ZZ-SKR"), flight, DEMO_NOW_ms).verdicts;
function verdict(flight: Flight, id: string, by = book): Verdict {
  const found = verdicts(flight, by).find((one) => one.id === id);
  if (found === undefined) throw new Error(`expected the verdict ${id}`);
  return found;
}

const item = (station: string, value: number): LoadedItem => ({
  id: station,
  station,
  what: station,
  mass: { value, unit: "kg" },
  known: "weighed",
});

/**
 * Four people and all the bags of a clinic, 320 kg of fuel. By hand, from the book's arms: empty 1905 kg at 4.055 m,
 * what cannot be used of the fuel in it; the moments of the load and of the tanks along the table give 4.0 mm inside the
 * aft limit of 4.36 m at take-off, and 1.8 mm behind it at landing, with every mass inside its limit.
 */
const clinic = loaded({
  items: [
    item("seat-1", 84),
    item("seat-3", 68),
    item("seat-4", 34),
    item("seat-5", 91),
    item("seat-6", 76),
    item("aft-bay", 85),
    item("tail-locker", 45),
  ],
  fuel: ["left-tank", "right-tank"].map((tank) => ({ tank, volume: { value: 200, unit: "L" as const } })),
});
const withTrip = (flight: Flight): Flight => ({
  ...flight,
  plan: {
    ...base,
    ...flight.plan,
    route: {
      ...base.route,
      distance: { value: 152, unit: "NM" },
      time: { value: 48, unit: "min" },
      level: { value: 15_000, unit: "ft" },
      tripFuel: { value: 128, unit: "kg" },
      taxiFuel: { value: 10, unit: "kg" },
    },
  },
});

describe("a load whose aft limit is broken at landing", () => {
  it("is inside at take-off, behind the limit at landing, and within every mass limit", () => {
    const flight = withTrip(clinic);
    if (flight.plan === undefined) throw new Error("expected a plan");
    const { states } = loadFigures(book, flight.plan);
    const at = (moment: string) => states.find((state) => state.at === moment);
    expect((at("take-off")?.nearest?.left_m ?? 0) * 1000).toBeCloseTo(4.0, 1);
    expect((at("landing")?.nearest?.left_m ?? 0) * 1000).toBeCloseTo(-1.8, 1);
    expect(verdict(flight, "load:envelope")).toMatchObject({ status: "stop", topic: "load" });
    for (const id of ["load:zero-fuel", "load:ramp", "load:take-off", "load:landing"]) {
      expect(verdict(flight, id).status).not.toBe("stop");
    }
  });

  it("has ways out that are named", () => {
    const stopped = verdict(withTrip(clinic), "load:envelope");
    expect(stopped.status === "stop" && stopped.wayOut.length).toBeGreaterThan(0);
  });
});

describe("fuel", () => {
  it("is what the rule asks, added up: 10 to taxi, 48 min at 155 kg/h, 22 min to the alternate, 30 min holding at 110 kg/h", () => {
    const by_hand_kg = 10 + (48 / 60) * 155 + (22 / 60) * 155 + 0.5 * 110;
    expect(plain(verdict(demoFlight, "fuel:required").says)).toContain(`${Math.ceil(by_hand_kg)} kg needed`);
  });

  it("stops the flight when it is a litre short of that, and does not when it is there", () => {
    const needed_kg = 10 + (48 / 60) * 155 + (22 / 60) * 155 + 0.5 * 110;
    // 4 L of each tank cannot be used; jet fuel at 15 °C by the book is 0.8 kg/L
    const each_L = needed_kg / 0.8 / 2 + 4;
    const tanks = (volume_L: number) =>
      loaded({
        fuel: ["left-tank", "right-tank"].map((tank) => ({
          tank,
          volume: { value: volume_L, unit: "L" as const },
        })),
      });
    expect(verdict(tanks(each_L + 0.5), "fuel:required").status).not.toBe("stop");
    expect(verdict(tanks(each_L - 0.5), "fuel:required").status).toBe("stop");
  });
});

describe("what cannot be, or is not known", () => {
  const bad: readonly (readonly [string, () => Flight])[] = [
    ["a negative mass", () => loaded({ items: [item("seat-1", -84)] })],
    ["a mass that is no number", () => loaded({ items: [item("seat-1", Number.NaN)] })],
    [
      "a mass in litres",
      () => loaded({ items: [{ ...item("seat-1", 84), mass: { value: 84, unit: "L" } }] }),
    ],
    ["a seat that the book does not have", () => loaded({ items: [item("seat-9", 84)] })],
    ["a seat over its limit", () => loaded({ items: [item("seat-1", 121)] })],
    [
      "more fuel than a tank holds",
      () => loaded({ fuel: [{ tank: "left-tank", volume: { value: 321, unit: "L" } }] }),
    ],
    [
      "a tank that the book does not have",
      () => loaded({ fuel: [{ tank: "belly", volume: { value: 10, unit: "L" } }] }),
    ],
    ["nothing said of a tank", () => loaded({ fuel: [] })],
    ["an envelope that the book does not have", () => loaded({ envelope: "aerobatic" })],
    ["nobody aboard", () => loaded({ items: [] })],
  ];

  it.each(bad)("%s leaves the load open or stops it, never clear", (_, flight) => {
    const load = verdicts(flight()).filter(({ topic }) => topic === "load");
    expect(load.some(({ status }) => status === "open" || status === "stop")).toBe(true);
  });

  it("a flight without a route has no fuel verdict that is clear", () => {
    const { route, ...rest } = base;
    expect(route).toBeDefined();
    const fuel = verdicts({ ...demoFlight, plan: rest }).filter(({ topic }) => topic === "fuel");
    expect(fuel.map(({ status }) => status)).not.toContain("clear");
    expect(fuel.length).toBeGreaterThan(0);
  });

  it("a book without loading leaves it open", () => {
    const { loading, ...without } = book;
    expect(loading).toBeDefined();
    const load = verdicts(demoFlight, without).filter(({ topic }) => topic === "load");
    expect(load.map(({ status }) => status)).toEqual(load.map(() => "open"));
    expect(load.length).toBeGreaterThan(0);
  });
});

describe("the verdicts of a load", () => {
  const masses = fc.array(fc.integer({ min: 0, max: 130 }), { minLength: 6, maxLength: 6 });
  const stations = ["seat-1", "seat-2", "seat-3", "seat-4", "aft-bay", "tail-locker"];
  const itemsOf = (values: readonly number[]) =>
    values.map((value, at) => item(stations[at] ?? "seat-1", value));

  it("are the same in whatever order things are put in", () => {
    fc.assert(
      fc.property(masses, fc.integer({ min: 1, max: 5 }), (values, turn) => {
        const items = itemsOf(values);
        const turned = [...items.slice(turn), ...items.slice(0, turn)];
        const told = (flight: Flight) =>
          verdicts(flight)
            .filter(({ topic }) => topic === "load")
            .map(({ id, status, says }) => `${id} ${status} ${says}`)
            .sort();
        expect(told(loaded({ items: turned }))).toEqual(told(loaded({ items })));
      }),
      { numRuns: 30 },
    );
  });

  it("do not get milder when a limit is tightened", () => {
    fc.assert(
      fc.property(
        masses,
        fc.constantFrom("ramp_kg", "takeOff_kg", "zeroFuel_kg", "landing_kg"),
        fc.integer({ min: 1, max: 300 }),
        (values, limit, less_kg) => {
          const { loading } = book;
          if (loading === undefined) throw new Error("expected the loading of the book");
          const tighter = {
            ...book,
            loading: {
              ...loading,
              limits: { ...loading.limits, [limit]: (loading.limits[limit] ?? 0) - less_kg },
            },
          };
          const flight = loaded({ items: itemsOf(values) });
          const was = new Map(verdicts(flight).map(({ id, status }) => [id, status]));
          for (const { id, status, topic } of verdicts(flight, tighter)) {
            const before = was.get(id);
            if (topic !== "load" || before === undefined) continue;
            expect(BADNESS[status], id).toBeLessThanOrEqual(BADNESS[before]);
          }
        },
      ),
      { numRuns: 30 },
    );
  });
});
