import type { Book, Cabin, Oxygen } from "@witnessmark/book";
import { toSI } from "@witnessmark/engine";
import { emptyState, type FlightPlan, type RecordedReading } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { assess } from "../../assess.ts";
import { demoBook } from "../../testing/demo-book.ts";
import { DEMO_NOW_ms, demoFlight } from "../../testing/demo-flight.ts";
import { plain } from "../../testing/plain.ts";
import { cabinAltitude_m } from "./cabin-of-flight.ts";
import { oxygenFigures } from "./oxygen-figures.ts";

const book = await demoBook();
const base = demoFlight.plan;
if (base?.route === undefined) throw new Error("expected a route");
const { route } = base;
/** Five seats in use in the demo's flight: 1 and 2 with the crew's masks, 3, 4 and 6 with the cabin's. */
const at = (level_ft: number, rulePack = "eu-part-nco"): FlightPlan => ({
  ...base,
  rulePack,
  route: { ...route, level: { value: level_ft, unit: "ft" } },
});
const reading = (value: number, temperature = true): RecordedReading => ({
  event: "event-1",
  device: "d",
  deviceSeq: 1,
  author: { id: "a", name: "Ada", role: "pilot" },
  hlc: "h",
  recordedAt: "2026-11-12T07:40:00.000+00:00",
  walk: "w",
  gauge: "oxygen-gauge",
  read: { value, unit: "bar" },
  ...(temperature ? { temperature: { value: 21, unit: "degC" } } : {}),
});
const litres = (volume_m3: number | undefined): number => (volume_m3 ?? Number.NaN) * 1000;
const without = (part: "oxygen" | "cabin"): Book => {
  const { [part]: gone, ...rest } = book;
  expect(gone).toBeDefined();
  return rest;
};

describe("what the flight needs of oxygen", () => {
  it("is at 15,000 ft what five people breathe on the way down, as by hand", () => {
    // 17 s at 15,000 ft, then 5000 ft at 3500 ft/min: 1.4286 min. Crew 2.6 L/min there, 1.6714 at 10,000 ft, mean of
    // every thousand 2.1357: 0.7367 + 3.0510 = 3.7877 L. Cabin 2.4 and 1.4, mean 1.9: 0.68 + 2.7143 = 3.3943 L.
    const { descent_m3, need_m3, byRule_m3 } = oxygenFigures(book, at(15_000));
    expect(litres(descent_m3)).toBeCloseTo(2 * 3.7877 + 3 * 3.3943, 2);
    expect(need_m3).toBe(descent_m3);
    expect(litres(byRule_m3)).toBeLessThan(litres(descent_m3));
  });

  it("is ten minutes for everybody above FL250 by Part 91", () => {
    // 26,000 ft: crew 5.4 + 0.6 / 3 = 5.6 L/min, cabin 4.4 + 0.5 / 3 = 4.5667; 10 × (2 × 5.6 + 3 × 4.5667) = 249 L
    const { byRule_m3, need_m3 } = oxygenFigures(book, at(26_000, "us-part-91"));
    expect(litres(byRule_m3)).toBeCloseTo(249, 6);
    expect(need_m3).toBe(byRule_m3);
    expect(litres(oxygenFigures(book, at(25_000, "us-part-91")).byRule_m3)).toBe(0);
  });

  it("is none at 9000 ft", () => {
    expect(oxygenFigures(book, at(9000))).toMatchObject({ need_m3: 0, status: "clear" });
  });

  it("is open above the tables, with the nearest covered altitude named", () => {
    // the cabin's altitudes end at 28,000 ft, and so do the masks' flows
    const figures = oxygenFigures(book, at(29_000, "us-part-91"));
    expect(figures.status).toBe("open");
    expect(figures.missing.map(({ what }) => plain(what))).toContain(
      "the flow of mask-1 at 29,000 ft; the nearest in the book is 28,000 ft",
    );
  });

  it.each([
    ["without a cabin in the book", without("cabin")],
    ["without oxygen in the book", without("oxygen")],
  ])("is never clear %s at 15,000 ft", (_, by) => {
    expect(oxygenFigures(by, at(15_000), reading(120)).status).toBe("open");
  });

  it("is open where a level is no height", () => {
    const figures = oxygenFigures(book, { ...base, route: { ...route, level: { value: 150, unit: "bar" } } });
    expect(figures.status).toBe("open");
    expect(plain(figures.faults[0]?.says)).toBe("Level: expected a length, received 150 bar");
  });

  it("is open where a seat in use has no outlet", () => {
    const { oxygen } = book;
    if (oxygen === undefined) throw new Error("expected oxygen");
    const fewer: Oxygen = { ...oxygen, outlets: oxygen.outlets.filter(({ seat }) => seat !== "seat-6") };
    const figures = oxygenFigures({ ...book, oxygen: fewer }, at(15_000), reading(120));
    expect(figures.status).toBe("open");
    expect(figures.missing.map(({ what }) => what)).toEqual(["an outlet at Seat 6, right rear"]);
  });
});

describe("what the cylinder has", () => {
  const high = at(26_000, "us-part-91"); // needs 249 L
  // 22 ft³ = 623 L at 128 bar; as an ideal gas (129 bar absolute) 4.8 L for each bar, in truth 4.6 to 5.2
  it.each([
    [120, "clear"], // 110 bar above the residual: 506 L at least
    [40, "stop"], // 30 bar: 156 L at most
  ] as const)("%d bar at 21 °C is %s for 249 L", (pressure, status) => {
    expect(oxygenFigures(book, high, reading(pressure)).status).toBe(status);
  });

  it("is a caution so near to the need that the gauge, ±2 bar, cannot tell", () => {
    const need_Pa = oxygenFigures(book, high, reading(120)).needPressure_Pa ?? Number.NaN;
    const just = need_Pa / 1e5 + 0.5;
    expect(oxygenFigures(book, high, reading(just)).status).toBe("caution");
    expect(oxygenFigures(book, high, reading(just - 1)).status).toBe("stop");
    expect(oxygenFigures(book, high, reading(just + 5)).status).toBe("clear");
  });

  it("is not known without its temperature", () => {
    expect(oxygenFigures(book, high, reading(120, false)).status).toBe("open");
  });
});

describe("the verdicts", () => {
  const verdicts = (plan: FlightPlan) =>
    assess(book, emptyState("ZZ-SKR"), { ...demoFlight, plan }, DEMO_NOW_ms).verdicts.filter(
      ({ topic }) => topic === "oxygen",
    );

  it("lead to the check that reads the cylinder while nobody has", () => {
    const [need] = verdicts(at(15_000));
    expect(need).toMatchObject({
      id: "oxygen:need",
      status: "open",
      subject: { kind: "check", id: "oxygen-pressure" },
    });
    expect(plain(need?.margin?.text)).toBe("not read");
    // 17.8 L above 10 bar, 4.5 to 4.8 L for each: not quite 4 bar
    expect(plain(need?.says)).toBe("Five aboard need 14 bar");
  });

  it("say how long one is useful without it at 22,000 ft: 5 min after a sudden loss, by the table", () => {
    const useful = verdicts(at(22_000)).find(({ id }) => id === "oxygen:consciousness");
    expect(useful?.status).toBe("caution");
    expect(plain(useful?.says)).toBe("5 min at 22,000 ft, should the cabin let go");
    expect(useful?.sources[0]?.title).toContain("Time of useful consciousness");
    expect(verdicts(at(15_000)).map(({ id }) => id)).toEqual(["oxygen:need"]);
  });
});

describe("the masks of the crew", () => {
  const { oxygen } = book;
  if (oxygen === undefined) throw new Error("expected oxygen");
  const flowing: Book = {
    ...book,
    oxygen: {
      ...oxygen,
      outlets: oxygen.outlets.map((outlet) => ({ ...outlet, mask: "constant-flow" as const })),
    },
  };
  const masks = (by: Book, level_ft: number) =>
    assess(
      by,
      emptyState("ZZ-SKR"),
      { ...demoFlight, plan: at(level_ft, "us-part-91") },
      DEMO_NOW_ms,
    ).verdicts.find(({ id }) => id === "oxygen:crew-masks");

  // 14 CFR 23.1441 (d), Amdt 23-43: demand equipment for the crew above 25,000 ft
  it("that only flow are a caution above 25,000 ft, and those that give what is breathed in are not", () => {
    expect(masks(flowing, 25_000)).toBeUndefined();
    expect(masks(flowing, 25_001)).toMatchObject({ status: "caution" });
    expect(plain(masks(flowing, 26_000)?.says)).toBe(
      "At 26,000 ft the crew should have demand masks; not so at seat 1, left front",
    );
    expect(masks(book, 26_000)).toBeUndefined();
  });
});

describe("the cabin of the book", () => {
  const cabin: Cabin | undefined = book.cabin;
  it("is straight between two rows and nothing beyond the last", () => {
    if (cabin === undefined) throw new Error("expected a cabin");
    const feet = (level_ft: number) =>
      (cabinAltitude_m(cabin, toSI(level_ft, "ft")) ?? Number.NaN) / toSI(1, "ft");
    expect(feet(16_000)).toBeCloseTo(2700, 6);
    expect(feet(18_000)).toBeCloseTo(3850, 6); // half way from 2700 to 5000
    expect(cabinAltitude_m(cabin, toSI(28_001, "ft"))).toBeUndefined();
  });
});
