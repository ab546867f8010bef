import { interpolateTable } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import type { PerformanceQuantity, PerformanceTable } from "./schema/performance.ts";
import { DEMO_BOOKS, had, loadingOf, performanceOf } from "./testing/demo-books.ts";

/** Every pair of neighbours along one axis, both with a figure: plain counting, last axis fastest. */
function neighbours(table: PerformanceTable, axis: string): readonly (readonly [number, number])[] {
  const at = table.axes.findIndex(({ name }) => name === axis);
  const step = table.axes.slice(at + 1).reduce((product, { values }) => product * values.length, 1);
  const count = table.axes[at]?.values.length ?? 0;
  return table.cells.flatMap((cell, i) => {
    const next = table.cells[i + step];
    const isLast = Math.floor(i / step) % count === count - 1;
    if (isLast || typeof cell !== "number" || typeof next !== "number") return [];
    return [[cell, next] as const];
  });
}

const DISTANCES = [
  "take-off-ground-roll",
  "take-off-over-50ft",
  "landing-ground-roll",
  "landing-over-50ft",
  "accelerate-stop",
];

describe.each(DEMO_BOOKS)("the tables of %s", (name) => {
  const { tables } = performanceOf(name);
  const distances = tables.filter(({ quantity }) => DISTANCES.includes(quantity));

  it("never give a shorter distance to a heavier aircraft, in hotter or thinner air, or with less headwind", () => {
    expect(distances.length).toBeGreaterThanOrEqual(4);
    for (const table of distances) {
      for (const axis of ["mass_kg", "pressureAltitude_m", "oat_K"]) {
        const pairs = neighbours(table, axis);
        expect(pairs.length).toBeGreaterThan(50);
        expect(pairs.filter(([less, more]) => more < less)).toEqual([]);
        expect(pairs.some(([less, more]) => more > less)).toBe(true); // it does grow
      }
      const winds = neighbours(table, "headwind_mPerS");
      expect(winds.length).toBeGreaterThan(50);
      expect(winds.filter(([less, more]) => more >= less)).toEqual([]);
    }
  });

  it("give a climb that gets worse with mass, height and heat, and a stall that comes sooner with mass", () => {
    for (const table of tables.filter(({ quantity }) => quantity.endsWith("-gradient"))) {
      for (const axis of ["mass_kg", "pressureAltitude_m", "oat_K"]) {
        expect(neighbours(table, axis).filter(([less, more]) => more >= less)).toEqual([]);
      }
    }
    const stalls = tables.filter(({ quantity }) => quantity === "stall-speed");
    expect(stalls).toHaveLength(3);
    for (const table of stalls) {
      expect(neighbours(table, "mass_kg").filter(([less, more]) => more < less)).toEqual([]);
    }
  });

  // 14 CFR 23.77 (amendment 23-62): 3.3 % at sea level for a light piston aeroplane, 2.5 % for a single turbine above
  // 6,000 lb (2,722 kg), in landing configuration at VREF
  it("have a go-around that is certified, worse than the climb, at a speed above the stall with landing flap", () => {
    const of = (quantity: PerformanceQuantity) => had(tables.find((one) => one.quantity === quantity));
    const [goAround, climb] = [of("go-around-gradient"), of("climb-gradient")];
    const { limits } = loadingOf(name);
    const standard = { mass_kg: limits.takeOff_kg, pressureAltitude_m: 0, oat_K: 288.15 };
    const answer = interpolateTable(goAround, standard, { mode: "linear" });
    expect(answer.ok && answer.value).toBeGreaterThanOrEqual(name === "zz-skr" ? 0.025 : 0.033);
    expect(goAround.axes).toEqual(climb.axes);
    for (const [i, cell] of goAround.cells.entries())
      expect(had(cell ?? undefined)).toBeLessThan(climb.cells[i] ?? 0);
    const stall = had(
      tables.find(({ quantity, flaps }) => quantity === "stall-speed" && flaps === goAround.flaps),
    );
    const slowest = had(stall.cells.at(-1) ?? undefined) * performanceOf(name).approachFactor_1;
    expect(goAround.speed_mPerS).toBeGreaterThanOrEqual(slowest - 0.3);
    expect(goAround.speed_mPerS).toBeLessThan(had(climb.speed_mPerS));
  });

  it("take longer over 50 ft than on the ground, cell for cell", () => {
    for (const phase of ["take-off", "landing"]) {
      const roll = had(tables.find(({ quantity }) => quantity === `${phase}-ground-roll`));
      const total = had(tables.find(({ quantity }) => quantity === `${phase}-over-50ft`));
      expect(total.axes).toEqual(roll.axes);
      const pairs = total.cells.map((cell, i) => [cell, roll.cells[i]] as const);
      for (const [over, onGround] of pairs) {
        expect(over === null).toBe(onGround === null);
        if (typeof over === "number" && typeof onGround === "number") expect(over).toBeGreaterThan(onGround);
      }
    }
  });

  it("cover every mass from the least that flies to the most that takes off", () => {
    const { limits } = loadingOf(name);
    for (const { axes } of tables) {
      const masses = had(axes.find((axis) => axis.name === "mass_kg")).values;
      expect(masses.at(-1)).toBeGreaterThanOrEqual(limits.takeOff_kg);
    }
  });

  it("cover one and a half times the tailwind that is allowed, for that is what counts", () => {
    const { tailwindMax_mPerS, tailwindCharge_1 } = performanceOf(name);
    for (const { axes } of distances) {
      const winds = had(axes.find((axis) => axis.name === "headwind_mPerS")).values;
      expect(winds[0]).toBeLessThanOrEqual(-had(tailwindMax_mPerS) * tailwindCharge_1 + 1e-9);
    }
  });
});

describe("the island flight of the turboprop, against the figures that are drawn", () => {
  const KT_mPerS = 1852 / 3600;
  const figure_m = (quantity: PerformanceQuantity, at: Readonly<Record<string, number>>): number => {
    const table = had(performanceOf("zz-skr").tables.find((one) => one.quantity === quantity));
    const answer = interpolateTable(table, at, { mode: "linear" });
    if (!answer.ok) throw new Error(`no figure: ${JSON.stringify(answer)}`);
    return answer.value;
  };
  const within = (drawn_m: number, found_m: number, share_1: number): void =>
    expect(Math.abs(found_m / drawn_m - 1)).toBeLessThan(share_1);

  it("lands in about 573 m, and in about 758 m wet with 15 % of its own, on 870 m", () => {
    // 2,528 kg, 5 °C, QNH 1008 hPa at 24 ft, half of 9 kt of headwind
    const dry_m = figure_m("landing-over-50ft", {
      mass_kg: 2528,
      pressureAltitude_m: 51,
      oat_K: 278.15,
      headwind_mPerS: 4.5 * KT_mPerS,
    });
    within(573, dry_m, 0.02);
    const wet = had(performanceOf("zz-skr").factors.find(({ id }) => id === "wet-landing"));
    within(758, dry_m * wet.factor_1 * 1.15, 0.02);
  });

  const takeOff_m = (oat_degC: number): number =>
    1.15 *
    figure_m("take-off-over-50ft", {
      mass_kg: 2656,
      pressureAltitude_m: 55,
      oat_K: 273.15 + oat_degC,
      headwind_mPerS: 3 * KT_mPerS,
    });

  it("takes off in about 731 m at 4 °C with 15 % of its own, and needs all 960 m in the low thirties", () => {
    within(731, takeOff_m(4), 0.02);
    expect(takeOff_m(30)).toBeLessThan(960);
    expect(takeOff_m(36)).toBeGreaterThan(960);
  });
});
