import { type AircraftState, emptyState, type FlightPlan, type PlannedLoad } from "@witnessmark/ledger";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assess } from "../../assess.ts";
import type { Verdict } from "../../assessment.ts";
import { BADNESS } from "../../order.ts";
import { clinicPlan, litresEach, weighed } from "../../testing/clinic-load.ts";
import { demoBook } from "../../testing/demo-book.ts";
import { DEMO_NOW_ms, demoFlight } from "../../testing/demo-flight.ts";
import { plain } from "../../testing/plain.ts";
import { loadFigures } from "./load-figures.ts";

const book = await demoBook();
const nothingWalked: AircraftState = emptyState("ZZ-SKR");

const TOPICS = ["load", "fuel", "oxygen"];
const numbers = (plan: FlightPlan, by = book): readonly Verdict[] =>
  assess(by, nothingWalked, { ...demoFlight, plan }, DEMO_NOW_ms).verdicts.filter(({ topic }) =>
    TOPICS.includes(topic),
  );
const statusOf = (plan: FlightPlan, id: string, by = book) =>
  numbers(plan, by).find((verdict) => verdict.id === id)?.status;
function told(plan: FlightPlan, id: string): Verdict {
  const found = numbers(plan).find((verdict) => verdict.id === id);
  if (found === undefined) throw new Error(`no verdict ${id}`);
  return found;
}
const withLoad = (changed: Partial<PlannedLoad>): FlightPlan => ({
  ...clinicPlan,
  load: { ...clinicPlan.load, ...changed },
});
const moved = (station: string, value: number, ...more: ReturnType<typeof weighed>[]): FlightPlan =>
  withLoad({
    items: [
      ...clinicPlan.load.items.map((item) => (item.station === station ? weighed(station, value) : item)),
      ...more,
    ],
  });
/** Loaded with little, so that nothing is near a limit. */
const light = withLoad({ items: [weighed("seat-1", 80)], fuel: litresEach(200) });

describe("the aft limit, broken on the way", () => {
  // the figures are held by hand in load-figures.test.ts: 3.7 mm behind 4.36 m, 128 kg into the burn
  const stop = told(clinicPlan, "load:envelope");

  it("stops the flight in plain words, with what is left at the worst place", () => {
    expect(stop.status).toBe("stop");
    expect(plain(stop.says)).toBe("4.364 m after 128 kg burnt, gear up, aft of the envelope");
    expect(plain(stop.margin?.text)).toBe("4 mm too far aft");
  });

  it("has ways out in whole kilograms, rounded up", () => {
    // 3.655 mm × 2573.6 kg / (7.45 − 3.62) m = 2.46 kg; 3.655 mm × 2573.6 kg / (7.45 − 4.36) m = 3.04 kg
    expect(stop.status === "stop" ? stop.wayOut.map(plain) : []).toEqual([
      "Move 3 kg forward: tail locker to seat 2, right front",
      "Leave 4 kg of tail locker behind",
    ]);
  });

  it("is inside when one of them is done, and still outside with a kilogram less of it", () => {
    const status = (plan: FlightPlan) => statusOf(plan, "load:envelope");
    expect(status(moved("tail-locker", 42, weighed("seat-2", 3)))).not.toBe("stop");
    expect(status(moved("tail-locker", 43, weighed("seat-2", 2)))).toBe("stop");
    expect(status(moved("tail-locker", 41))).not.toBe("stop");
    expect(status(moved("tail-locker", 42))).toBe("stop");
  });
});

describe("a load of which nobody has said what it burns to taxi", () => {
  const { fuel, ...rest } = book;
  if (fuel?.burn === undefined) throw new Error("expected a burn in the book");
  const { taxi_kg: _unsaid, ...burn } = fuel.burn;
  const untold = { ...rest, fuel: { ...fuel, burn } } as typeof book; // as a book that does not say it
  const withoutRoute = (plan: FlightPlan): FlightPlan => {
    const { route: _none, ...left } = plan;
    return left;
  };

  it("is stopped where it is outside whatever has burnt", () => {
    // 130 kg in each bay: the aft limit is passed full and dry, as the rows of the ramp and of no fuel show
    const tail = withoutRoute(moved("tail-locker", 45, weighed("aft-bay", 90)));
    const { states } = loadFigures(untold, tail);
    expect(states.map(({ at, inEnvelope }) => [at, inEnvelope])).toEqual([
      ["zero-fuel", false],
      ["ramp", false],
    ]);
    expect(statusOf(tail, "load:envelope", untold)).toBe("stop");
  });

  it("is open where it is inside at some moment of the burn", () => {
    expect(statusOf(withoutRoute(clinicPlan), "load:envelope", untold)).not.toBe("clear");
    expect(statusOf(withoutRoute(light), "load:envelope", untold)).not.toBe("stop");
    expect(statusOf(withoutRoute(light), "load:envelope", untold)).not.toBe("clear");
  });
});

describe("a mass over its limit", () => {
  // 2388 kg without fuel and 2 × 0.8 × (240 − 4) = 377.6 kg: 2765.6 on the ramp, 2755.6 at take-off, 2627.6 at landing
  const heavy = withLoad({ fuel: litresEach(240) });

  it.each([
    ["load:ramp", "2,766 of 2,740 kg", "26 kg over"],
    ["load:take-off", "2,756 of 2,720 kg", "36 kg over"],
    ["load:landing", "2,628 of 2,585 kg", "43 kg over"],
  ])("%s stops, rounded against the flight", (id, says, margin) => {
    const verdict = told(heavy, id);
    expect([verdict.status, plain(verdict.says), plain(verdict.margin?.text)]).toEqual([
      "stop",
      says,
      margin,
    ]);
  });

  it("takes less fuel, in whole litres: 35.6 kg at 0.8 kg/L is 44.5 L", () => {
    const verdict = told(heavy, "load:take-off");
    expect(verdict.status === "stop" ? verdict.wayOut.map(plain) : []).toEqual([
      "Take 45 L less",
      "Leave 36 kg behind",
    ]);
  });

  it("a seat over its limit says how much comes out", () => {
    const verdict = told(moved("seat-3", 131), "load:station:seat-3");
    expect(plain(verdict.margin?.text)).toBe("11 kg over");
    expect(verdict.status === "stop" ? verdict.wayOut.map(plain) : []).toEqual(["Take 11 kg out of it"]);
  });
});

describe("weights that are not known well", () => {
  const inSeat2 = (known: "weighed" | "stated" | "standard"): FlightPlan =>
    withLoad({ items: [weighed("seat-1", 80), { ...weighed("seat-2", 116), known }] });

  it("give caution inside a limit, with the chance", () => {
    // stated 116 kg: true mass 117.5 ± 4.3 kg; (120 − 117.5) / 4.3 = 0.58; Φ(0.58) = 0.719 in any normal table
    const verdict = told(inSeat2("stated"), "load:station:seat-2");
    expect(verdict.status).toBe("caution");
    expect(verdict.status === "caution" ? verdict.because.map(plain) : []).toEqual([
      "Within the limit, but the weights are not known well enough: the chance is 71 %, 95 are needed",
    ]);
  });

  it("are clear on scales, and less sure by a standard mass", () => {
    expect(told(inSeat2("weighed"), "load:station:seat-2").status).toBe("clear");
    // standard: ± 47 lb = 21.3 kg; (120 − 116) / 21.3 = 0.19; Φ(0.19) = 0.575
    const verdict = told(inSeat2("standard"), "load:station:seat-2");
    expect(verdict.status === "caution" ? plain(verdict.because[0]) : "").toContain("the chance is 57 %");
  });
});

describe("every verdict of the load, fuel and oxygen", () => {
  it("has working and sources, a stop has ways out, and ids are given once", () => {
    for (const plan of [clinicPlan, light, withLoad({ fuel: litresEach(240) })]) {
      const all = numbers(plan);
      expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
      for (const verdict of all) {
        expect(verdict.sources.length, verdict.id).toBeGreaterThan(0);
        expect(verdict.working.lines.length, verdict.id).toBeGreaterThan(0);
        if (verdict.status === "stop") expect(verdict.wayOut[0].length, verdict.id).toBeGreaterThan(0);
      }
    }
  });

  it("speaks of the flight in the headline when it is open", () => {
    const { headline } = assess(
      book,
      nothingWalked,
      { ...demoFlight, plan: { rulePack: "us-part-91", flightRules: "VFR" } },
      DEMO_NOW_ms,
    );
    expect(headline).toMatch(/ of the flight and \d+ other things open$/);
  });

  it("is one open verdict for each part that is missing", () => {
    const ids = (plan: FlightPlan) => numbers(plan).map(({ id, status }) => `${status} ${id}`);
    expect(ids({ rulePack: "us-part-91", flightRules: "VFR" })).toEqual([
      "open fuel:route",
      "open load:aboard",
    ]);
    expect(ids(withLoad({ items: [], fuel: [] }))).toContain("open load:aboard");
    expect(ids(withLoad({ items: [weighed("seat-3", 80)] }))).toContain("open load:crew");
    expect(ids(withLoad({ fuel: litresEach(200).slice(0, 1) }))).toContain("open load:fuel");
  });

  it("is not there at all for a flight that is only named", () => {
    const { plan, ...named } = demoFlight;
    expect(plan).toBeDefined();
    const all = assess(book, nothingWalked, named, DEMO_NOW_ms).verdicts;
    expect(all.filter(({ topic }) => TOPICS.includes(topic))).toEqual([]);
  });
});

describe("a part that is missing", () => {
  const { load, route, ...bare } = clinicPlan;
  const without = (part: "loading" | "fuel" | "oxygen" | "cabin") => {
    const { [part]: gone, ...rest } = book;
    expect(gone).toBeDefined();
    return rest;
  };
  const WHOLE = ["load:take-off", "load:landing", "load:envelope", "fuel:required"];

  it.each([
    ["nobody aboard", withLoad({ items: [] }), book, ["load:take-off", "load:landing", "load:envelope"]],
    [
      "nobody who flies it",
      withLoad({ items: [weighed("seat-3", 80)] }),
      book,
      ["load:take-off", "load:envelope"],
    ],
    ["no fuel said", withLoad({ fuel: [] }), book, WHOLE],
    ["one tank not said", withLoad({ fuel: litresEach(200).slice(0, 1) }), book, WHOLE],
    ["no load", { ...bare, ...(route === undefined ? {} : { route }) }, book, WHOLE],
    ["no route", { ...bare, load }, book, ["load:landing", "fuel:required", "oxygen:need"]],
    ["a book without loading", clinicPlan, without("loading"), WHOLE],
    ["a book without fuel", clinicPlan, without("fuel"), WHOLE],
    ["a book without oxygen", clinicPlan, without("oxygen"), ["oxygen:need"]],
    ["a book without a cabin", clinicPlan, without("cabin"), ["oxygen:need"]],
    [
      "rules that there are not",
      { ...clinicPlan, rulePack: "zz-part-0" },
      book,
      ["fuel:required", "oxygen:need"],
    ],
  ] as const)("%s clears nothing that rests on it", (_, plan, by, ids) => {
    for (const id of ids) expect(["open", "stop", undefined], id).toContain(statusOf(plan, id, by));
    expect(numbers(plan, by).map(({ status }) => status)).toContain("open");
  });
});

describe("the limits of the envelope and of the places", () => {
  const loads = fc.record({
    seats: fc.array(fc.integer({ min: 0, max: 118 }), { minLength: 6, maxLength: 6 }),
    aft: fc.integer({ min: 0, max: 88 }),
    locker: fc.integer({ min: 0, max: 44 }),
    litres: fc.integer({ min: 120, max: 320 }),
  });
  const planOf = ({ seats, aft, locker, litres }: typeof loads extends fc.Arbitrary<infer T> ? T : never) =>
    withLoad({
      items: [
        ...seats.map((mass, at) => weighed(`seat-${at + 1}`, mass)),
        weighed("aft-bay", aft),
        weighed("tail-locker", locker),
      ],
      fuel: litresEach(litres),
    });
  const { loading } = book;
  if (loading === undefined) throw new Error("expected loading in the book");

  it("never make a verdict milder when the aft edge goes forward", () => {
    fc.assert(
      fc.property(loads, fc.double({ min: 0.001, max: 0.2, noNaN: true }), (load, by_m) => {
        const tighter = {
          ...book,
          loading: {
            ...loading,
            envelopes: loading.envelopes.map((one) => ({
              ...one,
              points: one.points.map(({ arm_m, mass_kg }) => ({
                arm_m: arm_m === 4.36 ? arm_m - by_m : arm_m,
                mass_kg,
              })),
            })),
          },
        };
        const plan = planOf(load);
        const before = statusOf(plan, "load:envelope") ?? "clear";
        const after = statusOf(plan, "load:envelope", tighter) ?? "clear";
        expect(BADNESS[after]).toBeLessThanOrEqual(BADNESS[before]);
      }),
      { numRuns: 40 },
    );
  });

  it("never make a verdict milder when a seat, a bay or both bays may take less", () => {
    fc.assert(
      fc.property(loads, fc.integer({ min: 1, max: 80 }), (load, by_kg) => {
        const tighter = {
          ...book,
          loading: {
            ...loading,
            stations: loading.stations.map((one) => ({ ...one, max_kg: (one.max_kg ?? 0) - by_kg })),
            groups: loading.groups.map((one) => ({ ...one, max_kg: one.max_kg - by_kg })),
          },
        };
        const plan = planOf(load);
        const before = new Map(numbers(plan).map(({ id, status }) => [id, status]));
        for (const { id, status } of numbers(plan, tighter)) {
          expect(BADNESS[status], id).toBeLessThanOrEqual(BADNESS[before.get(id) ?? "clear"]);
        }
      }),
      { numRuns: 40 },
    );
  });

  it("give the same answers, to the last figure, in whatever order people board and tanks are told", () => {
    fc.assert(
      fc.property(loads, fc.integer({ min: 1, max: 7 }), (load, turn) => {
        const plan = planOf(load);
        const { items, fuel } = plan.load ?? { items: [], fuel: [] };
        const turned = withLoad({
          items: [...items.slice(turn), ...items.slice(0, turn)],
          fuel: fuel.toReversed(),
        });
        expect(numbers(turned)).toEqual(numbers(plan));
      }),
      { numRuns: 40 },
    );
  });
});

describe("a seat of which the manual gives no limit", () => {
  const { loading } = book;
  if (loading === undefined) throw new Error("expected a book with loading");
  const without = {
    ...book,
    loading: {
      ...loading,
      stations: loading.stations.map((one) => {
        const { max_kg: _, ...rest } = one;
        return one.id === "seat-3" ? rest : one;
      }),
    },
  };
  const heavy = moved("seat-3", 400);

  it("has no verdict of its own, and is said in the working of the whole mass", () => {
    expect(statusOf(heavy, "load:station:seat-3")).toBe("stop");
    expect(statusOf(heavy, "load:station:seat-3", without)).toBeUndefined();
    const whole = numbers(heavy, without).find(({ id }) => id === "load:take-off");
    expect(whole?.working.lines.map(({ value }) => plain(value))).toContain(
      "400 kg, the manual gives no limit",
    );
  });

  it("counts in every other limit as it did", () => {
    const others = (by: typeof book) =>
      numbers(heavy, by)
        .filter(({ id }) => id !== "load:station:seat-3")
        .map(({ id, status, says }) => ({ id, status, says }));
    expect(others(without)).toEqual(others(book));
  });

  it("is still held by what its floor bears", () => {
    const floored = {
      ...without,
      loading: {
        ...without.loading,
        stations: without.loading.stations.map((one) =>
          one.id === "seat-3" ? { ...one, floor: { area_m2: 0.5, max_kgPerM2: 300 } } : one,
        ),
      },
    };
    expect(statusOf(moved("seat-3", 151), "load:station:seat-3", floored)).toBe("stop");
    expect(statusOf(moved("seat-3", 100), "load:station:seat-3", floored)).toBe("clear");
  });
});
