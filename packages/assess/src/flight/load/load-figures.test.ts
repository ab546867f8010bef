import type { FlightPlan, PlannedLoad } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { clinicPlan, litresEach, weighed } from "../../testing/clinic-load.ts";
import { demoBook } from "../../testing/demo-book.ts";
import { plain } from "../../testing/plain.ts";
import { faultsAt, type LoadMoment } from "./figures.ts";
import { loadFigures } from "./load-figures.ts";

const book = await demoBook();

const withLoad = (changed: Partial<PlannedLoad>): FlightPlan => ({
  ...clinicPlan,
  load: { ...clinicPlan.load, ...changed },
});
const figures = loadFigures(book, clinicPlan);
const stateOf = (at: LoadMoment) => figures.states.find((state) => state.at === at);

/*
 * By hand from the book's printed numbers. Without fuel: 1905 + 84 + 68 + 34 + 91 + 76 + 85 + 45 = 2388 kg;
 * 1905 × 4.055 + 84 × 3.62 + 102 × 4.70 + 167 × 5.74 + 85 × 6.62 + 45 × 7.45 = 10 364.785 kg·m.
 * Fuel: 0.8 kg/L, 4 L of each tank cannot be used and are in the empty mass: 2 × 0.8 × (V − 4) kg and
 * 2 × 0.8 × (V × arm(V) − 4 × 4.798) kg·m. 200 L: arm 4.474; 193.75 L: 4.548 − 0.074 × 33.75 / 40 = 4.4855625;
 * 113.75 L: 4.72 − 0.073 × 33.75 / 40 = 4.65840625.
 */
describe("the loaded turboprop", () => {
  it.each([
    { at: "zero-fuel", mass_kg: 2388, arm_m: 10_364.785 / 2388, left_kg: 102 },
    { at: "ramp", mass_kg: 2701.6, arm_m: (10_364.785 + 1400.9728) / 2701.6, left_kg: 38.4 },
    { at: "take-off", mass_kg: 2691.6, arm_m: (10_364.785 + 1359.817175) / 2691.6, left_kg: 28.4 },
    { at: "landing", mass_kg: 2563.6, arm_m: (10_364.785 + 817.1227375) / 2563.6, left_kg: 21.4 },
  ] as const)("weighs and balances at $at as by hand", ({ at, mass_kg, arm_m, left_kg }) => {
    const state = stateOf(at);
    expect(state?.mass_kg).toBeCloseTo(mass_kg, 9);
    expect(state?.arm_m).toBeCloseTo(arm_m, 9);
    expect(state?.mass?.left).toBeCloseTo(left_kg, 9);
    expect(state?.mac_1).toBeCloseTo((arm_m - 3.8) / 1.6, 9);
  });

  it("is inside at take-off and behind the aft limit of 4.36 m at landing", () => {
    expect(stateOf("take-off")).toMatchObject({ inEnvelope: true });
    expect(stateOf("landing")).toMatchObject({ inEnvelope: false, status: "stop" });
    expect(stateOf("landing")?.nearest).toMatchObject({ edge: "aft" });
    expect(stateOf("landing")?.armRange_m?.[1]).toBeCloseTo(4.36, 9);
  });

  it("is worst where the tanks pass 120 L, with the gear up: a corner of their table, not the landing", () => {
    // 2388 + 2 × 0.8 × 116 = 2573.6 kg; (10 364.785 + 861.5168 + 4) / 2573.6 = 4.363655 m
    const worst = figures.envelope?.worst;
    expect(worst).toMatchObject({ edge: "aft", gearUp: true });
    expect(worst?.burnt_kg).toBeCloseTo(128, 6);
    expect(worst?.left).toBeCloseTo(4.36 - (10_364.785 + 861.5168 + 4) / 2573.6, 9);
  });

  it("lists what it is the sum of, so that it can be added up by hand", () => {
    // 193.75 L: 0.8 × 189.75 kg, and half of the 1359.817175 kg·m above
    expect(stateOf("take-off")?.parts).toEqual([
      { what: "Empty, 2026-03-03", mass_kg: 1905, arm_m: 4.055, moment_kgm: expect.closeTo(7724.775, 9) },
      { what: "Seat 1, left front", mass_kg: 84, arm_m: 3.62, moment_kgm: expect.closeTo(304.08, 9) },
      expect.objectContaining({ what: "Seat 3, left middle", mass_kg: 68, arm_m: 4.7 }),
      expect.objectContaining({ what: "Seat 4, right middle", mass_kg: 34, arm_m: 4.7 }),
      expect.objectContaining({ what: "Seat 5, left rear", mass_kg: 91, arm_m: 5.74 }),
      expect.objectContaining({ what: "Seat 6, right rear", mass_kg: 76, arm_m: 5.74 }),
      { what: "Aft bay", mass_kg: 85, arm_m: 6.62, moment_kgm: expect.closeTo(562.7, 9) },
      { what: "Tail locker", mass_kg: 45, arm_m: 7.45, moment_kgm: expect.closeTo(335.25, 9) },
      ...["Left wing tank, usable", "Right wing tank, usable"].map((what) => ({
        what,
        mass_kg: expect.closeTo(151.8, 9),
        arm_m: expect.closeTo(1359.817175 / 303.6, 9),
        moment_kgm: expect.closeTo(1359.817175 / 2, 9),
      })),
    ]);
    const worst = figures.envelope?.worst;
    for (const { mass_kg, arm_m, parts } of [...figures.states, ...(worst === undefined ? [] : [worst])]) {
      const moment_kgm = parts.reduce((sum, part) => sum + part.moment_kgm, 0);
      expect(parts.reduce((sum, part) => sum + part.mass_kg, 0)).toBeCloseTo(mass_kg, 9);
      expect(moment_kgm / mass_kg).toBeCloseTo(arm_m, 9);
    }
    expect(worst?.parts.at(-1)).toEqual({ what: "Gear up", mass_kg: 0, arm_m: undefined, moment_kgm: 4 });
  });

  it("has what is left in each bay, on its floor, and in both together", () => {
    // aft bay: 90 kg, its floor 0.60 m² × 150 kg/m² = 90 kg; locker 45 kg; both 130 kg
    const bay = figures.stations.find(({ id }) => id === "aft-bay");
    expect([bay?.limit?.left, bay?.floor?.left]).toEqual([5, expect.closeTo(5, 9)]);
    expect(figures.groups[0]?.limit.left).toBe(0);
  });

  it("balances from side to side as by hand: −0.33 × (84 + 68 − 34) − 0.32 × (91 − 76) = −43.74 kg·m", () => {
    expect(figures.lateral?.value).toBeCloseTo(43.74, 9);
    expect(figures.imbalance?.value).toBeCloseTo(0, 9);
  });

  it("lands with 113.75 L in each tank", () => {
    expect(figures.tanks.map(({ atLanding_m3 }) => atLanding_m3)).toEqual([
      expect.closeTo(0.11375, 9),
      expect.closeTo(0.11375, 9),
    ]);
  });
});

describe("what cannot be is told at its place, and no total is clear", () => {
  const mass = (value: number, unit: "kg" | "L" = "kg") => ({
    ...weighed("seat-3", 1),
    mass: { value, unit },
  });
  const rest = clinicPlan.load.items.filter(({ station }) => station !== "seat-3");
  it.each([
    [
      "a negative weight",
      withLoad({ items: [...rest, mass(-68)] }),
      "item",
      "seat-3",
      "Mass in Seat 3, left middle: expected zero or more, received −68 kg",
    ],
    [
      "a weight in litres",
      withLoad({ items: [...rest, mass(68, "L")] }),
      "item",
      "seat-3",
      "Mass in Seat 3, left middle: expected a mass, such as 84 kg, received 68 L",
    ],
    [
      "a weight that is no number",
      withLoad({ items: [...rest, mass(Number.NaN)] }),
      "item",
      "seat-3",
      "Mass in Seat 3, left middle: expected a number, received NaN",
    ],
    [
      "a weight beyond any aircraft",
      withLoad({ items: [...rest, mass(1e300)] }),
      "item",
      "seat-3",
      "Mass in Seat 3, left middle: expected a figure of a flight, received 1e+300 kg",
    ],
    [
      "a seat that there is not",
      withLoad({ items: [...rest, weighed("seat-9", 68)] }),
      "item",
      "seat-9",
      'Mass in seat-9: expected a seat or bay of the book, received "seat-9"',
    ],
    [
      "more fuel than a tank holds",
      withLoad({ fuel: litresEach(321) }),
      "tank",
      "left-tank",
      "Left wing tank: expected at most 320 L, which is all it holds, received 321 L",
    ],
    [
      "a tank that there is not",
      withLoad({ fuel: [...litresEach(200), { tank: "belly", volume: { value: 9, unit: "L" } }] }),
      "tank",
      "belly",
      'Fuel: expected a tank of the book, received "belly"',
    ],
    [
      "a tank twice",
      withLoad({ fuel: [...litresEach(200), ...litresEach(10)] }),
      "tank",
      "left-tank",
      "Left wing tank: expected what is in it once, received it twice",
    ],
    [
      "an envelope that there is not",
      withLoad({ envelope: "aerobatic" }),
      "envelope",
      "aerobatic",
      'Envelope: expected one of the book (normal, ice), received "aerobatic"',
    ],
    [
      "a fuel temperature in bar",
      withLoad({ fuelTemperature: { value: 5, unit: "bar" } }),
      "fuel-temperature",
      "fuel",
      "Temperature of the fuel: expected a temperature, such as 5 °C, received 5 bar",
    ],
  ] as const)("%s", (_, plan, kind, id, says) => {
    const made = loadFigures(book, plan);
    expect(faultsAt(made, kind, id).map((fault) => plain(fault.says))).toEqual([says]);
    expect(made.status).not.toBe("clear");
    const totals = made.states.filter(({ at }) => at !== "zero-fuel" && at !== "ramp");
    expect(totals.filter(({ status }) => status === "clear" || status === "caution")).toEqual([]);
    expect(["open", "stop", undefined]).toContain(made.envelope?.status);
  });

  it("an envelope of the book that crosses itself gives no state and no clear", () => {
    const { loading } = book;
    if (loading === undefined) throw new Error("expected loading in the book");
    const points = [
      { arm_m: 4, mass_kg: 1850 },
      { arm_m: 4.4, mass_kg: 2720 },
      { arm_m: 4.4, mass_kg: 1850 },
      { arm_m: 4, mass_kg: 2720 },
    ];
    const crossed = {
      ...book,
      loading: { ...loading, envelopes: [{ id: "normal", name: "Normal", points }] },
    };
    const made = loadFigures(crossed, clinicPlan);
    expect(made.states).toEqual([]);
    expect(made.status).not.toBe("clear");
    expect(made.envelope).toBeUndefined();
    expect(made.faults[0]?.says).toMatch(/^Envelope "Normal" of the book: the edges .* cross or touch/);
  });

  it("on the limit is within it, a gram over it is not", () => {
    const seat = (value: number) =>
      loadFigures(book, withLoad({ items: [...rest, weighed("seat-3", value)] })).stations.find(
        ({ id }) => id === "seat-3",
      );
    expect(seat(120)?.limit).toMatchObject({ left: 0, status: "caution" }); // the scale may be off by more
    expect(seat(120.001)?.limit?.status).toBe("stop");
  });
});
