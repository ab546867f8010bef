import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Book } from "./book.ts";
import { faultSentence } from "./faults/fault-sentence.ts";
import { readBook } from "./read-book.ts";
import { flightBookText } from "./testing/flight-book.ts";
import { smallBookText } from "./testing/small-book.ts";

async function good(text: string): Promise<Book> {
  const result = await readBook(text, "flight.yaml");
  if (!result.ok) throw new Error(result.faults.map(faultSentence).join("\n"));
  return result.book;
}

async function faults(text: string): Promise<readonly string[]> {
  const result = await readBook(text, "flight.yaml");
  return result.ok ? [] : result.faults.map(faultSentence);
}

/** Of a section that the flight book has. */
function had<T>(value: T | undefined): T {
  if (value === undefined) throw new Error("the flight book lacks it");
  return value;
}

describe("what a flight needs of a book", () => {
  it("is absent where the book says nothing of it: nothing is made up", async () => {
    const book = await good(smallBookText);
    const sections = ["loading", "fuel", "oxygen", "cabin", "performance", "iceProtection", "fields"];
    expect(sections.filter((section) => section in book)).toEqual([]);
  });

  it("has masses and arms in SI, whatever they were written in", async () => {
    const text = flightBookText
      .replace("mass: 804 kg, arm: 2.805 m", "mass: 1772 lb, arm: 110.4 in")
      .replace("max: 111 kg", "max: 240 lb");
    const { empty, stations } = had((await good(text)).loading);
    // NIST SP 811: 1 lb = 0.45359237 kg, 1 in = 0.0254 m, both exact
    expect(empty.revisions.at(-1)).toMatchObject({
      mass_kg: expect.closeTo(1772 * 0.453_592_37, 9),
      arm_m: expect.closeTo(110.4 * 0.0254, 12),
    });
    expect(stations[1]?.max_kg).toBeCloseTo(240 * 0.453_592_37, 9);
  });

  it("has the lateral arm of a station where it is drawn, unless the book gives one", async () => {
    const { stations } = had((await good(flightBookText)).loading);
    expect(stations.map(({ id, lateralArm_m }) => [id, lateralArm_m])).toEqual([
      ["pilot", -0.25],
      ["front", 0.25],
      ["rear-left", -0.25],
      ["rear-right", 0.24],
      ["bags", 0],
      ["shelf", 0],
    ]);
  });

  it("has tanks in cubic metres, with the arm of all that is in them", async () => {
    const { tanks } = had((await good(flightBookText)).loading);
    expect(tanks[0]).toMatchObject({
      capacity_m3: expect.closeTo(0.1, 12),
      unusable_m3: expect.closeTo(0.002, 12),
      gauge: "dipstick",
      readAt: ["oil"],
      arms: [
        { volume_m3: 0, arm_m: 3.1 },
        { volume_m3: expect.closeTo(0.06, 12), arm_m: 3 },
        { volume_m3: expect.closeTo(0.1, 12), arm_m: 2.95 },
      ],
    });
  });

  it("has fuel flows in kilograms a second and the density in kilograms a cubic metre", async () => {
    const fuel = had((await good(flightBookText)).fuel);
    expect(fuel.density15_kgPerM3).toBeCloseTo(720, 9);
    expect(fuel.burn.cruise_kgPerS).toBeCloseTo(25 / 3600, 12);
    expect(fuel.freezingPoint_K).toBeCloseTo(215.15, 9);
    expect(fuel.order).toEqual([["left-tank", "right-tank"]]);
    expect(fuel.burn.takenAsCruise).toEqual([]);
  });

  it("has what is burnt by volume in kilograms, by the density that the book has", async () => {
    const text = flightBookText.replace(
      "{ taxi: 3 kg, climb: 32 kg/h, cruise: 25 kg/h, hold: 20 kg/h, descent: 18 kg/h }",
      "{ taxi: 4 L, climb: 10 gal/h, cruise: 32 L/h }",
    );
    const { burn } = had((await good(text)).fuel);
    expect(burn.taxi_kg).toBeCloseTo(2.88, 12); // 4 L at 0.72 kg/L
    expect(burn.cruise_kgPerS * 3600).toBeCloseTo(23.04, 9); // 32 L at 0.72 kg/L
    // 1 US gal is 3.785411784 L (NIST SP 811, B.8)
    expect((burn.climb_kgPerS ?? 0) * 3600).toBeCloseTo(37.85411784 * 0.72, 9);
  });

  it("takes hold and descent as the cruise where the book has none, and the climb as the most power", async () => {
    const bare = flightBookText.replace(
      "climb: 32 kg/h, cruise: 25 kg/h, hold: 20 kg/h, descent: 18 kg/h",
      "cruise: 25 kg/h",
    );
    const { burn } = had((await good(bare)).fuel);
    expect(burn.hold_kgPerS).toBe(burn.cruise_kgPerS);
    expect(burn.descent_kgPerS).toBe(burn.cruise_kgPerS);
    expect(burn.takenAsCruise).toEqual(["hold", "descent"]);
    expect(burn).not.toHaveProperty("climb_kgPerS");
    const most = await good(bare.replace("cruise: 25 kg/h", "cruise: 25 kg/h, maxContinuous: 40 L/h"));
    expect((had(most.fuel).burn.climb_kgPerS ?? 0) * 3600).toBeCloseTo(40 * 0.72, 9);
  });

  it("has no limit where it says that the manual gives none, and is refused where it says nothing", async () => {
    const none = flightBookText
      .replace("max: 111 kg", "max: none given")
      .replace("tailwindMax: 10 kt", "tailwindMax: none given");
    const book = await good(none);
    expect(had(book.loading).stations[1]).not.toHaveProperty("max_kg");
    expect(had(book.performance)).not.toHaveProperty("tailwindMax_mPerS");
    expect(await faults(flightBookText.replace("  tailwindMax: 10 kt\n", ""))).toEqual([
      expect.stringContaining("performance.tailwindMax: expected a speed with its unit, or none given"),
    ]);
    expect(await faults(flightBookText.replace("max: 55 kg", "max: none given"))).toEqual([
      expect.stringContaining(
        "loading.stations[4].max: expected what the bay bears, from the manual or its placard, found none given",
      ),
    ]);
  });

  it("needs nobody's name for a weighing, and has a tank where it is drawn", async () => {
    const text = flightBookText
      .replace("    by: Example Weighing\n", "")
      .replace("      lateralArm: -2.0 m\n", "");
    const { empty, tanks } = had((await good(text)).loading);
    expect(empty).not.toHaveProperty("by");
    expect(tanks[0]?.lateralArm_m).toBe(-2);
  });

  it("turns no volume into mass without a density, and asks for it", async () => {
    const text = flightBookText
      .replace("cruise: 25 kg/h", "cruise: 32 L/h")
      .replace("  density15: 0.72 kg/L\n", "");
    const result = await readBook(text, "book.yaml");
    expect(result.ok).toBe(false);
    expect(result.ok ? [] : result.faults.map(({ path, found }) => [path, found])).toContainEqual([
      "fuel.density15",
      "nothing",
    ]);
  });

  it("has the inner volume of a cylinder, also where the book gives what it holds", async () => {
    const { cylinder } = had((await good(flightBookText)).oxygen);
    expect(cylinder.nominal_m3).toBeCloseTo(1.4, 12);
    // A real gas at 1800 psi takes about 6 % less room than an ideal one: 1400 L x 14.70 psi / 1814.7 psi = 11.34 L
    expect(cylinder.waterVolume_m3).toBeGreaterThan(0.9 * 0.01134);
    expect(cylinder.waterVolume_m3).toBeLessThan(0.97 * 0.01134);
    const written = flightBookText.replace("nominal: 1400 L", "waterVolume: 11 L");
    expect(had((await good(written)).oxygen).cylinder).toMatchObject({
      waterVolume_m3: expect.closeTo(0.011, 12),
    });
  });

  it("names the check that reads the cylinder as the walk names it", async () => {
    const text = flightBookText.replace(
      "  - id: oxygen-pressure\n    at: oxygen\n",
      "  - id: oxygen-pressure\n    at: [oxygen]\n",
    );
    const book = await good(text);
    const { check } = had(book.oxygen).cylinder;
    expect(check).toBe("oxygen-pressure.oxygen");
    expect(book.checksById.get(check)?.reading?.gauge).toBe("oxygen-gauge");
  });

  it("says of an unpressurised cabin that it is one", async () => {
    const text = flightBookText.replace(
      /cabin:\n {2}pressurised: true\n(?: {2}.*\n)+/,
      "cabin: { pressurised: false }\n",
    );
    expect((await good(text)).cabin).toEqual({ pressurised: false });
  });

  it("has tables with their cells in one row, the last axis fastest, holes kept", async () => {
    const [roll, total, climb] = had((await good(flightBookText)).performance).tables;
    expect(roll).toMatchObject({ quantity: "take-off-ground-roll", unit: "m" });
    expect(roll?.cells).toEqual([410, 310, 220, 520, 400, null]);
    expect(roll?.axes.map(({ name }) => name)).toEqual(["mass_kg", "headwind_mPerS"]);
    expect(roll?.axes[1]?.values[0]).toBeCloseTo((-10 * 1852) / 3600, 12);
    expect(total?.cells[0]).toBeCloseTo(2010 * 0.3048, 9);
    expect(climb?.cells[0]).toBeCloseTo(0.091, 12);
    expect(climb?.axes[1]?.values).toEqual([-0.02, 0.02]);
  });

  it("counts half of a headwind and half as much again of a tailwind, unless the tables do", async () => {
    const silent = flightBookText.replace("  headwindCredit: 0.5\n  tailwindCharge: 1.5\n", "");
    expect((await good(silent)).performance).toMatchObject({
      windInTable: false,
      headwindCredit_1: 0.5,
      tailwindCharge_1: 1.5,
    });
    const inTable = flightBookText.replace(
      "  headwindCredit: 0.5\n  tailwindCharge: 1.5\n",
      "  windInTable: true\n",
    );
    expect((await good(inTable)).performance).toMatchObject({
      windInTable: true,
      headwindCredit_1: 1,
      tailwindCharge_1: 1,
    });
  });

  it("has the rule of a slope for a slope of 1: 5 % for 1 % is 5", async () => {
    const { slope } = had((await good(flightBookText)).performance);
    expect(slope).toEqual({
      max_1: expect.closeTo(0.02, 12),
      takeOffUp_1: expect.closeTo(5, 12),
      landingDown_1: expect.closeTo(6, 12),
    });
  });

  it("has runways with their own slope, heading and lengths", async () => {
    const [field] = had((await good(flightBookText)).fields);
    expect(field).toMatchObject({ code: "ZZAA", elevation_m: expect.closeTo(120 * 0.3048, 9), lights: true });
    expect(field?.runways[1]).toEqual({
      name: "27",
      trueHeading_deg: 268,
      tora_m: 901,
      toda_m: 951,
      asda_m: 921,
      lda_m: 881,
      slope_1: expect.closeTo(-0.005, 12),
      surface: "paved",
    });
  });

  it("cannot be changed at any depth", async () => {
    const book = await good(flightBookText);
    const parts = [
      book.loading?.stations[0],
      book.loading?.envelopes[0]?.points,
      book.fuel?.burn,
      book.performance?.tables[0]?.cells,
      book.fields?.[0]?.runways,
    ];
    for (const part of parts) expect(Object.isFrozen(part)).toBe(true);
  });
});

describe("the corners of an envelope", () => {
  const CORNERS = /points:\n(?: {8}- \{ arm: .*\n)+/;
  const withCorners = (corners: readonly (readonly [arm_m: number, mass_kg: number])[]): string =>
    flightBookText.replace(
      CORNERS,
      `points: [${corners.map(([arm, mass]) => `{ arm: ${arm.toFixed(4)} m, mass: ${mass.toFixed(2)} kg }`).join(", ")}]\n`,
    );
  /** Corners on an ellipse, in order of their angle: a convex polygon, however they are spread. */
  const convex = fc
    .uniqueArray(fc.integer({ min: 0, max: 71 }), { minLength: 4, maxLength: 9 })
    .map((steps) =>
      steps
        .toSorted((a, b) => a - b)
        .map((step) => {
          const angle_rad = (step * Math.PI) / 36;
          return [2.9 + 0.3 * Math.cos(angle_rad), 1000 + 250 * Math.sin(angle_rad)] as const;
        }),
    );

  it("are taken in order, either way round, from any corner on", async () => {
    await fc.assert(
      fc.asyncProperty(convex, fc.nat(8), fc.boolean(), async (corners, first, backwards) => {
        const from = first % corners.length;
        const turned = [...corners.slice(from), ...corners.slice(0, from)];
        expect(await faults(withCorners(backwards ? turned.toReversed() : turned))).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  it("are refused once when two neighbours of a convex one are changed over: the edge then crosses itself", async () => {
    await fc.assert(
      fc.asyncProperty(convex, fc.nat(8), async (corners, which) => {
        const i = which % corners.length;
        const j = (i + 1) % corners.length;
        const [one, other] = [had(corners[i]), had(corners[j])];
        const crossed = await faults(withCorners(corners.with(i, other).with(j, one)));
        expect(crossed).toEqual([
          expect.stringMatching(/expected an edge that does not cross or touch itself/),
        ]);
      }),
      { numRuns: 40 },
    );
  });
});

describe("a distance table", () => {
  it("is refused wherever one cell of a rising row is lowered below its lighter neighbour, and nowhere else", async () => {
    const rows = fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 2, maxLength: 8 });
    await fc.assert(
      fc.asyncProperty(rows, fc.nat(7), async (gaps, which) => {
        const cells = gaps.map((_, i) => 300 + gaps.slice(0, i + 1).reduce((sum, gap) => sum + gap, 0));
        const values = gaps.map((_, i) => 1000 + 10 * i);
        const text = (written: readonly number[]): string =>
          flightBookText.replace(
            /axes: \[\{ name: pressureAltitude.*\n.*\n.*\n/,
            `axes: [{ name: mass, unit: kg, values: [${values.join(", ")}] }]\n      unit: kt\n      cells: [${written.join(", ")}]\n`,
          );
        expect(await faults(text(cells))).toEqual([]);
        const at = 1 + (which % (cells.length - 1));
        const lowered = cells.with(at, had(cells[at - 1]) - 1);
        expect((await faults(text(lowered))).map((fault) => fault.split(": expected")[0])).toEqual([
          expect.stringMatching(new RegExp(`performance\\.tables\\[3\\]\\.cells\\[${at}\\]$`)),
        ]);
      }),
      { numRuns: 40 },
    );
  });
});
