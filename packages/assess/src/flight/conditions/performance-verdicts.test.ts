import type { Book, PerformanceTable } from "@witnessmark/book";
import type { FlightPlan, PlannedField, Status } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { flightWith, line, one, QUERN, reported, TARN, turboprop, verdictsOf } from "./testing/island.ts";

const CLIMB = "runway:departure:climb";
const OWN = { ceiling: { value: 1000, unit: "ft" }, landingFactor_1: 1.15 } as const;

const asking = (gradient_ftPerNM: number): Partial<FlightPlan> => ({
  own: { ...OWN, climbGradient: { value: gradient_ftPerNM, unit: "ftPerNM" } },
});

function withTables(change: (table: PerformanceTable) => PerformanceTable): Book {
  const { performance } = turboprop;
  if (performance === undefined) throw new Error("the demo book has tables");
  return { ...turboprop, performance: { ...performance, tables: performance.tables.map(change) } };
}

/** The climb of the book, each figure times a share. */
const climbTimes = (share_1: number): Book =>
  withTables((table) =>
    table.quantity === "climb-gradient"
      ? { ...table, cells: table.cells.map((cell) => (cell === null ? null : cell * share_1)) }
      : table,
  );

const climbOf = (plan: Partial<FlightPlan>, book = turboprop) =>
  one(verdictsOf(flightWith(plan), { book }), CLIMB);
const from = (metar: string): PlannedField => ({ ...TARN, metar: reported(`METAR ZZTW 120750Z ${metar}`) });

describe("the climb after a landing that is not made", () => {
  const goAround = (plan: Partial<FlightPlan>, book = turboprop) =>
    one(verdictsOf(flightWith(plan), { book }), "runway:destination:go-around");
  const times = (share_1: number): Book =>
    withTables((table) =>
      table.quantity === "go-around-gradient"
        ? { ...table, cells: table.cells.map((cell) => (cell === null ? null : cell * share_1)) }
        : table,
    );

  it("stands beside the climb, at the mass of the landing, with the rule that a type had to reach", () => {
    const verdict = goAround({});
    expect(verdict.status).toBe("clear");
    expect(verdict.title).toBe("Go-around at ZZQN");
    expect(verdict.sources.map(({ title }) => title)).toContain("14 CFR 23.77, balked landing");
    const has = (book: Book) =>
      verdictsOf(flightWith({}), { book }).some(({ id }) => id.endsWith(":go-around"));
    // many manuals have no such table: then nothing is said
    expect(
      has(
        withTables((table) =>
          table.quantity === "go-around-gradient" ? { ...table, quantity: "stall-speed" } : table,
        ),
      ),
    ).toBe(false);
  });

  it("by instruments stops below the 200 ft/NM of missed approaches, by sight it is a caution; sinking it stops", () => {
    // AIM 5-4-21; the demo's own is some 12 %, 730 ft/NM
    expect(goAround({ flightRules: "IFR" }, times(0.2)).status).toBe("stop");
    expect(goAround({ flightRules: "VFR" }, times(0.2)).status).toBe("caution");
    expect(goAround({ flightRules: "VFR" }, times(-0.1)).status).toBe("stop");
  });

  it("is open off the table, never clear", () => {
    const holes = withTables((table) =>
      table.quantity === "go-around-gradient" ? { ...table, cells: table.cells.map(() => null) } : table,
    );
    expect(goAround({}, holes).status).toBe("open");
  });
});

describe("the climb after the take-off", () => {
  it("is the table's at the mass and the air, over the ground at the speed of the table", () => {
    // 2500 kg, 127 ft, 4 °C: between 19.6 and 16.7 % at 0 ft, 13.9 and 11.6 % at 4000 ft: 18.84 %
    // density ratio 0.9954 / 0.9618: 110 kt calibrated are 108.1 kt; half of 8 kt from 13° off: 3.9 kt; 104.2 kt
    // 0.1884 × 108.1 kt is 2063 ft/min, and that over 104.2 kt is 1187 ft/NM
    expect(line(climbOf({}))).toBe(
      "clear: 1,187 ft/NM, 2,060 ft/min at 105 kt over the ground (1,187 ft/NM)",
    );
  });

  it("stops below what the pilot asks for, and on it is enough", () => {
    expect(climbOf(asking(1187)).status).toBe("clear");
    const short = climbOf(asking(1190));
    expect(line(short)).toBe(
      "stop: 1,187 ft/NM, 2,060 ft/min at 105 kt over the ground, you asked for 1,190 ft/NM (3 ft/NM short)",
    );
  });

  it("by instruments stops below 200 ft/NM, by sight it is a caution; without any climb it stops", () => {
    // AIM 5-2-9: 200 ft/NM where the departure asks for nothing else
    const weak = climbTimes(0.15); // 178 ft/NM
    expect(climbOf({ flightRules: "IFR" }, weak).status).toBe("stop");
    expect(climbOf({ flightRules: "VFR" }, weak).status).toBe("caution");
    expect(climbOf({ flightRules: "IFR" }, climbTimes(0.2)).status).toBe("clear");
    expect(climbOf({}, climbTimes(-0.1)).status).toBe("stop");
  });

  it("gets worse with a tailwind, counted one and a half times", () => {
    const calm = climbOf({ departure: from("00000KT 9999 SCT030 04/01 Q1010") });
    const down = climbOf({ departure: from("06008KT 9999 SCT030 04/01 Q1010") });
    expect(calm.margin?.value).toBeGreaterThan(down.margin?.value ?? Number.POSITIVE_INFINITY);
    // 8 kt from behind and half as much again are 12
    expect(down.working.lines.find(({ label }) => label === "Wind that is counted")?.value).toBe(
      "150\u00A0% of it, tailwind 12.0\u00A0kt",
    );
  });

  it("never gets milder when more is asked", () => {
    const order: readonly Status[] = ["clear", "open", "caution", "stop"];
    const found = [0, 200, 600, 1100, 1187, 1188, 1500].map((each) =>
      order.indexOf(climbOf(asking(each)).status),
    );
    expect(found).toEqual(found.toSorted((a, b) => a - b));
    expect(new Set(found).size).toBeGreaterThan(1);
  });

  it("is open where its table has a hole, or does not say its speed, and what was asked is mistyped", () => {
    const holed = withTables((table) =>
      table.quantity === "climb-gradient" ? { ...table, cells: table.cells.map(() => null) } : table,
    );
    expect(line(climbOf({}, holed))).toContain("where the table has no figure");
    const speedless = withTables(({ speed_mPerS: _, ...table }) => table);
    expect(line(climbOf({}, speedless))).toBe(
      "open: Not known: the airspeed of “Climb gradient, clean, 110 kt”, in the book (not known)",
    );
    expect(climbOf(asking(-5)).status).toBe("open");
  });

  it("is not told where the book has no table and nobody asks; asked for, it is open", () => {
    const { performance } = turboprop;
    if (performance === undefined) throw new Error("the demo book has tables");
    const tables = performance.tables.filter(({ quantity }) => quantity !== "climb-gradient");
    const book = { ...turboprop, performance: { ...performance, tables } };
    expect(verdictsOf(flightWith(), { book }).some(({ id }) => id === CLIMB)).toBe(false);
    expect(climbOf({ flightRules: "IFR" }, book).status).toBe("open");
  });
});

describe("the speeds", () => {
  const landing = (metar: string) =>
    one(
      verdictsOf(flightWith({ destination: { ...QUERN, metar: reported(`METAR ZZQN 120750Z ${metar}`) } })),
      "runway:destination:speeds",
    );

  it("are the stall with the flap of the landing, and 1.3 times it with half of the gust", () => {
    // 58 kt in the table; 1.3 × 58 = 75.4; (22 − 14) / 2 = 4; 759 m × (1 + 2 × 4 / 75.4) = 840 m of 870 m
    expect(line(landing("24014G22KT 9999 BKN022 05/03 Q1008"))).toBe(
      "clear: Stalls at 58 kt, flaps 35°; approach 76 kt, 80 kt with half of the gust",
    );
    // 9 kt: 759 m × (1 + 18 / 75.4) = 940 m
    const gusty = landing("24014G32KT 9999 BKN022 05/03 Q1008");
    expect(gusty.status).toBe("caution");
    expect(gusty.status === "caution" ? gusty.because[0] : "").toMatch(
      /^With what is added for the gust the landing needs 94\d\u00A0m of 870/,
    );
  });

  it("at the take-off are with its flap", () => {
    expect(line(one(verdictsOf(flightWith()), "runway:departure:speeds"))).toBe(
      "clear: Stalls at 62 kt, flaps 15°",
    );
  });

  it("are open beyond the table, and told once where the distance is beyond it too", () => {
    const all = verdictsOf(flightWith(), { masses: { takeOff_kg: 2900, landing_kg: 2900 } });
    expect(one(all, "runway:destination:landing").status).toBe("open");
    expect(one(all, "runway:destination:speeds").status).toBe("open");
    expect(all.filter(({ topic, status }) => topic === "runway" && status === "clear")).toEqual([]);
  });
});

describe("the point at which to stop", () => {
  const ID = "runway:departure:abort";

  it("is 70 % of the lift-off speed by the middle, and says after how far it stands", () => {
    // 0.7 × 1.1 × 62 kt = 47.7 kt = 24.56 m/s; 342 m × (47.7 / (1.15 × 58))² = 175 m; 480 + 3 × 24.56 + 175 = 729 m
    expect(line(one(verdictsOf(flightWith()), ID))).toBe(
      "clear: Below 48 kt at 480 m, half-way: stop. It then stands after 729 m (231 m)",
    );
  });

  it("is a caution where what is left of the runway is not enough", () => {
    const fields = turboprop.fields?.map((field) => ({
      ...field,
      runways: field.runways.map((runway) => ({ ...runway, asda_m: 450 })),
    }));
    const book = { ...turboprop, ...(fields === undefined ? {} : { fields }) };
    expect(one(verdictsOf(flightWith(), { book }), ID).status).toBe("caution");
  });

  it("is not told by a book that has no speeds for it", () => {
    const { performance } = turboprop;
    if (performance === undefined) throw new Error("the demo book has tables");
    const { liftOffFactor_1: _, ...without } = performance;
    const all = verdictsOf(flightWith(), { book: { ...turboprop, performance: without } });
    expect(all.some(({ id }) => id === ID)).toBe(false);
  });
});
