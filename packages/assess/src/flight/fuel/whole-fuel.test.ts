import type { FlightPlan, Read, RecordedReading } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { clinicPlan } from "../../testing/clinic-load.ts";
import { demoBook } from "../../testing/demo-book.ts";
import { demoFlight } from "../../testing/demo-flight.ts";
import { loadFigures } from "../load/load-figures.ts";
import { fuelFigures } from "./fuel-figures.ts";
import { type TankReconciled, tankReconciled } from "./tank-readings.ts";

const book = await demoBook();

/** 200 L in each tank, 4 of each unusable, 0.8 kg/L: 313.6 kg that can be used. */
const showing = (totaliser: Read | undefined, plan: FlightPlan = clinicPlan): FlightPlan => ({
  ...plan,
  load: { items: [], fuel: [], ...plan.load, ...(totaliser === undefined ? {} : { totaliser }) },
});

const reading = (gauge: string, value: number, tank: string): RecordedReading => ({
  event: `${gauge} ${tank}`,
  device: "d",
  deviceSeq: 1,
  author: { id: "a", name: "Ada", role: "pilot" },
  hlc: "h",
  recordedAt: "2026-11-12T07:40:00.000+00:00",
  walk: "w",
  gauge,
  read: { value, unit: "L" },
});

/** Both tanks by gauge (± 8 L) and stick (± 4 L), the same in each. */
const tanks = (gauge_L: number | undefined, stick_L: number | undefined): readonly TankReconciled[] =>
  (book.loading?.tanks ?? []).flatMap(
    (tank) =>
      tankReconciled(book, tank, 0.2, 800, ({ reading: asked }) => {
        const value = asked?.gauge === "fuel-gauge" ? gauge_L : stick_L;
        return value === undefined ? undefined : reading(asked?.gauge ?? "", value, tank.id);
      }) ?? [],
  );

const figures = (totaliser: Read | undefined, read: readonly TankReconciled[] = [], plan?: FlightPlan) => {
  const made = showing(totaliser, plan);
  return fuelFigures(book, { ...demoFlight, plan: made }, made, loadFigures(book, made), read);
};
const kilograms = (value: number): Read => ({ value, unit: "kg" });

describe("gauges, sticks and the totaliser", () => {
  it("that agree are clear, and count with what is planned", () => {
    const { whole, usable_kg } = figures(kilograms(312), tanks(201, 199));
    expect(whole?.sources.map(({ name }) => name)).toEqual([
      "Totaliser",
      "Panel fuel gauge",
      "Fuel dipstick S4",
    ]);
    expect(whole).toMatchObject({ status: "clear", fits: true });
    expect(usable_kg).toBeCloseTo(313.6, 9);
  });

  it("name the one that does not fit, and believe the others", () => {
    // the totaliser was not set after fuelling: 60 kg short, by ± 2 % of all that can be used about 5 kg; 200 L each are
    // 400 − 8 L, at 0.8 kg/L 313.6 kg
    const { whole, usable_kg } = figures(kilograms(250), tanks(200, 200));
    expect(whole?.odd?.id).toBe("totaliser");
    expect(whole?.believed_kg).toBeCloseTo(313.6, 6);
    expect(whole?.status).toBe("caution");
    expect(usable_kg).toBeCloseTo(313.6, 6);
  });

  it("of which two differ count the least, and say which to look at again", () => {
    const { whole, usable_kg, status } = figures(kilograms(180), tanks(undefined, 200));
    expect(whole).toMatchObject({ status: "caution", together: { consistent: false }, believed_kg: 180 });
    expect(whole?.odd).toBeUndefined();
    expect(whole?.finer?.name).toBe("Fuel dipstick S4");
    expect(usable_kg).toBe(180);
    expect(status).toBe("stop"); // 215.5 kg must be aboard
  });

  it("never count more than is planned", () => {
    expect(figures(kilograms(400)).usable_kg).toBeCloseTo(313.6, 9);
    expect(figures(kilograms(400)).whole?.status).toBe("caution");
  });

  it("take litres as those of the fuel that is in the tanks", () => {
    // 392 L of 0.8 kg/L
    expect(figures({ value: 392, unit: "L" }).whole?.sources[0].fuel_kg).toBeCloseTo(313.6, 9);
  });

  it.each([
    ["a negative figure", kilograms(-5), /^Fuel totaliser: expected zero or more, received −5/],
    [
      "more than can be aboard",
      { value: 2000, unit: "L" },
      /^Fuel totaliser: expected at most \d+\u00A0L, which is all/,
    ],
    [
      "a figure in another unit",
      { value: 300, unit: "kt" },
      /^Fuel totaliser: expected a mass|^Fuel totaliser: expected a volume/,
    ],
  ] as const)("%s is told at its place, leaves the load open and counts nothing", (_, read, says) => {
    const made = showing(read);
    const load = loadFigures(book, made);
    expect(load.faults.map(({ where, says: words }) => [where.kind, words])).toEqual([
      ["totaliser", expect.stringMatching(says)],
    ]);
    expect(load.status).not.toBe("clear");
    expect(figures(read).whole).toBeUndefined();
  });

  it("are told apart from a book that says nothing of a totaliser", () => {
    const { totaliser: _, ...fuel } = book.fuel ?? expect.fail("the demo book has fuel");
    const load = loadFigures({ ...book, fuel }, showing(kilograms(300)));
    expect(load.faults[0]?.says).toContain("its accuracy in the book");
  });
});

describe("a flight that stays in sight of its field", () => {
  const { route } = clinicPlan;
  if (route === undefined) throw new Error("expected a route");
  const local = (more: Partial<FlightPlan>, to = "ZZTW") => {
    const plan: FlightPlan = { ...clinicPlan, route: { ...route, inSightOfField: true }, ...more };
    return fuelFigures(book, { ...demoFlight, from: "ZZTW", to, plan }, plan, loadFigures(book, plan))
      .reserve;
  };

  it("needs 10 min at maximum continuous power by the European rules: NCO.OP.125, AMC1", () => {
    // 180 kg/h in the book: 30 kg
    expect(local({ rulePack: "eu-part-nco" })).toMatchObject({ time_s: 600 });
    expect(local({ rulePack: "eu-part-nco" })?.fuel_kg).toBeCloseTo(30, 9);
  });

  it("needs the full reserve where it lands elsewhere, and by the American rules anyway", () => {
    expect(local({ rulePack: "eu-part-nco" }, "ZZQN")?.time_s).toBe(1800);
    expect(local({ rulePack: "us-part-91" })?.time_s).toBe(1800);
  });
});
