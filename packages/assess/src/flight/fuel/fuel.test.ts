import type { Book } from "@witnessmark/book";
import { emptyState, type FlightPlan, type PlannedFlight, type RecordedReading } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { assess } from "../../assess.ts";
import { clinicPlan, litresEach } from "../../testing/clinic-load.ts";
import { demoBook } from "../../testing/demo-book.ts";
import { DEMO_NOW_ms, demoFlight } from "../../testing/demo-flight.ts";
import { plain } from "../../testing/plain.ts";
import { loadFigures } from "../load/load-figures.ts";
import { coldFuel } from "./cold-fuel.ts";
import { fuelFigures } from "./fuel-figures.ts";
import { checksOfTank, tankReconciled } from "./tank-readings.ts";

const book = await demoBook();

const flightOf = (plan: FlightPlan, parts: Partial<PlannedFlight> = {}): PlannedFlight => ({
  ...demoFlight,
  plan,
  ...parts,
});
const figuresOf = (plan: FlightPlan, parts: Partial<PlannedFlight> = {}, by: Book = book) =>
  fuelFigures(by, flightOf(plan, parts), plan, loadFigures(by, plan));
const { route } = clinicPlan;
if (route === undefined) throw new Error("expected a route");
const withFuel = (litres: number, changed: Partial<FlightPlan> = {}): FlightPlan => ({
  ...clinicPlan,
  load: { ...clinicPlan.load, fuel: litresEach(litres) },
  ...changed,
});

describe("what must be aboard", () => {
  it("is 10 kg to taxi, 128 for the trip and 30 min at 155 kg/h by day: 215.5 kg, of 313.6 usable", () => {
    const { required_kg, usable_kg, left_kg, status, night } = figuresOf(clinicPlan);
    expect(night).toBe(false);
    expect(required_kg).toBeCloseTo(10 + 128 + 77.5, 9);
    expect(usable_kg).toBeCloseTo(2 * 0.8 * 196, 9);
    expect(left_kg).toBeCloseTo(313.6 - 215.5, 9);
    expect(status).toBe("clear");
  });

  it("is 45 min by night: 10 + 128 + 116.25 kg", () => {
    // 12 November, 54° to 56° north: the sun is far down at 22:00 UTC
    const { required_kg, night } = figuresOf(clinicPlan, { offBlocks: "2026-11-12T22:00:00.000+00:00" });
    expect(night).toBe(true);
    expect(required_kg).toBeCloseTo(254.25, 9);
  });

  it("is taken as by night where a field is not in the book; too little for that only is open, not clear", () => {
    const elsewhere = { from: "ZZXX", to: "ZZYY" };
    expect(figuresOf(clinicPlan, elsewhere)).toMatchObject({ night: undefined, status: "clear" });
    // between 215.5 and 254.25 kg: (V − 4) × 1.6 with V = 150 is 233.6 kg
    expect(figuresOf(withFuel(150), elsewhere).status).toBe("open");
    expect(figuresOf(withFuel(150)).status).toBe("clear");
    expect(figuresOf(withFuel(130), elsewhere).status).toBe("stop"); // 201.6 kg
  });

  it("lands with 175.6 kg, which lasts 1 h 7 min 58 s at 155 kg/h", () => {
    const { landing_kg, landing_s } = figuresOf(clinicPlan);
    expect(landing_kg).toBeCloseTo(313.6 - 138, 9);
    expect(landing_s).toBeCloseTo((175.6 / 155) * 3600, 6);
  });

  it("is on the limit with exactly that, and short with a gram less", () => {
    const exactly_L = 215.5 / 1.6 + 4;
    expect(figuresOf(withFuel(exactly_L)).status).toBe("clear");
    expect(figuresOf(withFuel(exactly_L - 0.001)).status).toBe("stop");
  });

  it("warns while the trip is the book's, and more of it at climb burn would not do", () => {
    const { tripFuel, ...timed } = route;
    expect(tripFuel).toBeDefined();
    // 10 + 124 + 77.5 = 211.5 kg at cruise burn; 48 min at 190 kg/h is 152: 239.5 kg. 140 L: 217.6 kg; 160 L: 249.6 kg
    expect(figuresOf(withFuel(140, { route: timed })).status).toBe("caution");
    expect(figuresOf(withFuel(160, { route: timed })).status).toBe("clear");
    expect(figuresOf(withFuel(135, { route: timed })).status).toBe("stop"); // 209.6 kg
  });

  it("has a contingency in percent of the planned trip fuel, typed or the book's, and says so", () => {
    // 48 min at 155 kg/h is 124 kg: 5 % is 6.2, 10 % is 12.4, 20 % is 24.8; of 128 kg typed 5 % is 6.4
    const { tripFuel: _typed, ...timed } = route;
    const partOf = (of: typeof route) =>
      figuresOf(withFuel(200, { route: of })).parts.find(({ id }) => id === "contingency")?.fuel_kg;
    for (const [contingency_1, share_kg] of [
      [0.05, 6.2],
      [0.1, 12.4],
      [0.2, 24.8],
    ] as const)
      expect(partOf({ ...timed, contingency_1 })).toBeCloseTo(share_kg, 9);
    expect(partOf({ ...route, contingency_1: 0.05 })).toBeCloseTo(6.4, 9);
    const flight = flightOf(withFuel(200, { route: { ...timed, contingency_1: 0.05 } }));
    const verdict = assess(book, emptyState("ZZ-SKR"), flight, DEMO_NOW_ms).verdicts.find(
      ({ id }) => id === "fuel:required",
    );
    expect(
      verdict?.working.lines.slice(0, 6).map(({ label, value }) => [plain(label), plain(value)]),
    ).toEqual([
      ["Trip, at cruise burn", "124.0 kg, by the rule"],
      ["Final reserve, 30 min", "77.5 kg, by the rule"],
      ["Taxi", "10.0 kg, as planned"],
      ["Contingency, 5 % of the trip fuel", "6.2 kg, as planned"],
      ["Extra", "0.0 kg, as planned"],
      ["Needed at start-up", "217.7 kg"],
    ]);
  });

  it("warns of a contingency that grows with the trip at climb burn", () => {
    const { tripFuel: _typed, ...timed } = route;
    // at cruise burn 10 + 124 + 77.5 + 20 % are 236.3 kg, all at climb burn 10 + 152 + 77.5 + 30.4 = 269.9
    const spare = { ...timed, contingency_1: 0.2 };
    expect(figuresOf(withFuel(170, { route: spare })).status).toBe("caution"); // 265.6 kg
    expect(figuresOf(withFuel(173, { route: spare })).status).toBe("clear"); // 270.4 kg
  });

  describe("with a book that has no burn for the climb", () => {
    const { fuel, ...others } = book;
    if (fuel === undefined) throw new Error("expected a book with fuel");
    const { climb_kgPerS: _, maxContinuous_kgPerS: __, ...burn } = fuel.burn;
    const bare: Book = {
      ...others,
      fuel: { ...fuel, burn: { ...burn, takenAsCruise: ["hold", "descent"] } },
    };
    const { tripFuel: _trip, ...timed } = route;

    it("is open on the book's trip however much there is, and says what to add", () => {
      const figures = figuresOf(withFuel(160, { route: timed }), {}, bare);
      expect(figures).toMatchObject({ status: "open", atMost_kg: undefined });
      expect(figures.missing.map(({ what }) => what)).toEqual([
        "what it burns in the climb or at most power, in the book; or the trip fuel, in the plan",
      ]);
    });

    it("still stops with less than even the cruise would take", () => {
      expect(figuresOf(withFuel(135, { route: timed }), {}, bare).status).toBe("stop"); // 209.6 of 211.5 kg
    });

    it("needs no climb where the trip fuel is planned, and says what is taken as the cruise", () => {
      expect(figuresOf(clinicPlan, {}, bare).status).toBe("clear");
      const assessment = assess(bare, emptyState("ZZ-SKR"), flightOf(clinicPlan), DEMO_NOW_ms);
      const verdict = assessment.verdicts.find(({ id }) => id === "fuel:required");
      expect(verdict?.working.lines).toContainEqual({
        label: "Burn in hold and descent",
        value: "not in the book, taken as the cruise",
      });
    });
  });

  it("waits for the way to an alternate that is named, and for one under instrument rules", () => {
    const alternate = { code: "ZZPK", runway: "33", condition: "dry" } as const;
    expect(figuresOf({ ...clinicPlan, alternate })).toMatchObject({
      status: "open",
      missing: [{ what: "how long it is to the alternate, ZZPK" }],
    });
    expect(figuresOf({ ...clinicPlan, flightRules: "IFR" }).status).toBe("open");
  });

  it.each([
    [
      "a time in kilograms",
      { time: { value: 48, unit: "kg" } },
      "Time of the flight: expected a time, received 48 kg",
    ],
    [
      "a trip in bar",
      { tripFuel: { value: 1, unit: "bar" } },
      "Trip fuel: expected a mass, such as 84 kg, received 1 bar",
    ],
    [
      "a trip below zero",
      { tripFuel: { value: -1, unit: "kg" } },
      "Trip fuel: expected zero or more, received −1 kg",
    ],
    ["a contingency of two", { contingency_1: 2 }, "Contingency: expected a share from 0 to 1, received 2"],
  ] as const)("is open with %s, and says so at its place", (_, changed, says) => {
    const figures = figuresOf({ ...clinicPlan, route: { ...route, ...changed } });
    expect(figures.status).toBe("open");
    expect(figures.faults.map((fault) => plain(fault.says))).toEqual([says]);
  });

  it("stops with ways out in whole litres: 215.5 − 201.6 = 13.9 kg is 17.4 L", () => {
    const assessment = assess(book, emptyState("ZZ-SKR"), flightOf(withFuel(130)), DEMO_NOW_ms);
    const verdict = assessment.verdicts.find(({ id }) => id === "fuel:required");
    expect(plain(verdict?.says)).toBe("201 kg usable, 216 kg needed");
    expect(plain(verdict?.margin?.text)).toBe("14 kg short");
    expect(verdict?.status === "stop" ? plain(verdict.wayOut[0]) : "").toBe("Take 18 L more");
  });
});

describe("what was read in a tank", () => {
  const tank = book.loading?.tanks[0];
  if (tank === undefined) throw new Error("expected a tank");
  const checks = checksOfTank(book, tank);
  const reading = (gauge: string, value: number): RecordedReading => ({
    event: `event-${gauge}`,
    device: "d",
    deviceSeq: 1,
    author: { id: "a", name: "Ada", role: "pilot" },
    hlc: "h",
    recordedAt: "2026-11-12T07:40:00.000+00:00",
    walk: "w",
    gauge,
    read: { value, unit: "L" },
  });
  /** Gauge ±8 L, stick ±4 L: standard uncertainties of about 4.6 and 2.4 L. */
  const read = (gauge_L: number | undefined, stick_L: number | undefined, planned_L: number) =>
    tankReconciled(book, tank, planned_L / 1000, 800, (check) => {
      const value = check.reading?.gauge === "fuel-gauge" ? gauge_L : stick_L;
      return value === undefined ? undefined : reading(check.reading?.gauge ?? "", value);
    });

  it("comes from the gauge inside and the stick at the cap", () => {
    expect(checks.map((check) => check.reading?.gauge).toSorted()).toEqual(["fuel-gauge", "fuel-stick"]);
  });

  it("is nothing when nothing was read", () => {
    expect(read(undefined, undefined, 170)).toBeUndefined();
  });

  it("is clear where both agree with each other and with the plan", () => {
    expect(read(172, 169, 170)).toMatchObject({ status: "clear", fits: true });
  });

  it("warns where they are 30 L apart, more than five times their doubt of 5.2 L together", () => {
    expect(read(150, 180, 170)).toMatchObject({ status: "caution", together: { consistent: false } });
  });

  it("warns where less was read than planned, and the fuel is reckoned with what was read", () => {
    const short = read(100, undefined, 200);
    expect(short).toMatchObject({ status: "caution", fits: false });
    if (short === undefined) throw new Error("expected a reading");
    const figures = fuelFigures(book, flightOf(clinicPlan), clinicPlan, loadFigures(book, clinicPlan), [
      short,
    ]);
    expect(figures.usable_kg).toBeCloseTo(313.6 - 80, 9); // 100 L less at 0.8 kg/L
    const bothShort = fuelFigures(book, flightOf(clinicPlan), clinicPlan, loadFigures(book, clinicPlan), [
      short,
      short,
    ]);
    expect(bothShort).toMatchObject({ status: "stop" }); // 153.6 kg of 215.5
  });

  it("never adds fuel that was not planned", () => {
    const more = read(250, undefined, 200);
    if (more === undefined) throw new Error("expected a reading");
    const figures = fuelFigures(book, flightOf(clinicPlan), clinicPlan, loadFigures(book, clinicPlan), [
      more,
    ]);
    expect(figures.usable_kg).toBeCloseTo(313.6, 9);
  });
});

describe("cold fuel, least −44 °C by the book", () => {
  const at = (level_ft: number, fuel_degC?: number): FlightPlan => ({
    ...clinicPlan,
    load: {
      ...clinicPlan.load,
      ...(fuel_degC === undefined ? {} : { fuelTemperature: { value: fuel_degC, unit: "degC" } }),
    },
    route: { ...route, level: { value: level_ft, unit: "ft" } },
  });

  // standard air: 15 − 1.9812 K for each 1000 ft; 15,000 ft −14.7 °C, 25,000 ft −34.5 °C; 20 K colder is reckoned with
  it.each([
    ["15,000 ft, 5 °C in the tanks", at(15_000, 5), "clear"],
    ["25,000 ft, 5 °C in the tanks", at(25_000, 5), "caution"],
    ["25,000 ft, not said", at(25_000), "open"],
    ["15,000 ft, not said", at(15_000), undefined],
    ["on the ground at −45 °C", at(15_000, -45), "stop"],
  ] as const)("%s", (_, plan, status) => {
    expect(coldFuel(book, plan)?.status).toBe(status);
  });
});
