import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { burnLines, chartRange, chartScale, foremostAt_m, joined } from "./envelope-layout.ts";

const ENVELOPE = [
  { arm_m: 4.02, mass_kg: 1850 },
  { arm_m: 4.02, mass_kg: 2250 },
  { arm_m: 4.13, mass_kg: 2720 },
  { arm_m: 4.36, mass_kg: 2720 },
  { arm_m: 4.36, mass_kg: 1850 },
];
const PLOT = { left: 62, right: 440, top: 20, bottom: 400 };
const SI = { mass: "kg", arm: "m" } as const;

const spot = fc.record({
  arm_m: fc.double({ min: 3.5, max: 5, noNaN: true }),
  mass_kg: fc.double({ min: 1500, max: 3200, noNaN: true }),
});

describe("the chart of an envelope", () => {
  it("shows every moment of the flight, inside the envelope and out of it", () => {
    fc.assert(
      fc.property(fc.array(spot, { minLength: 1, maxLength: 6 }), (spots) => {
        const scale = chartScale(chartRange(ENVELOPE, spots, [2740]), PLOT, SI);
        for (const { arm_m, mass_kg } of spots) {
          expect(scale.x(arm_m)).toBeGreaterThan(PLOT.left);
          expect(scale.x(arm_m)).toBeLessThan(PLOT.right);
          expect(scale.y(mass_kg)).toBeGreaterThan(PLOT.top);
          expect(scale.y(mass_kg)).toBeLessThan(PLOT.bottom);
        }
      }),
    );
  });

  it("shows the whole width of the envelope, and its top", () => {
    const scale = chartScale(chartRange(ENVELOPE, [{ arm_m: 4.2, mass_kg: 2600 }], [2740]), PLOT, SI);
    expect(scale.x(4.02)).toBeGreaterThan(PLOT.left);
    expect(scale.x(4.36)).toBeLessThan(PLOT.right);
    expect(scale.y(2740)).toBeGreaterThan(PLOT.top);
  });

  it("has whole figures at its grid in the unit that is shown", () => {
    const scale = chartScale(chartRange(ENVELOPE, [], [2740]), PLOT, { mass: "lb", arm: "in" });
    for (const { value, major } of scale.masses) if (major) expect(value % 100).toBeCloseTo(0, 6);
    expect(scale.masses.filter(({ major }) => major).length).toBeGreaterThan(2);
    // 4.36 m is 171.65 in, of 25.4 mm each
    const tick = scale.arms.find(({ value }) => value === 170);
    expect(tick?.px).toBeCloseTo(scale.x(170 * 0.0254), 6);
  });

  it("has its dashed limits from the forward edge on", () => {
    // half way up from (4.02 m, 2250 kg) to (4.13 m, 2720 kg)
    expect(foremostAt_m(ENVELOPE, 2485)).toBeCloseTo(4.075, 9);
    expect(foremostAt_m(ENVELOPE, 2000)).toBe(4.02);
    expect(foremostAt_m(ENVELOPE, 2720)).toBe(4.13);
    expect(foremostAt_m(ENVELOPE, 2740)).toBeNull();
  });

  it("only grows while a finger drags", () => {
    fc.assert(
      fc.property(spot, spot, (a, b) => {
        const one = chartRange(ENVELOPE, [a], [2740]);
        const both = joined(one, chartRange(ENVELOPE, [b], [2740]));
        expect(both.arm_m[0]).toBeLessThanOrEqual(one.arm_m[0]);
        expect(both.mass_kg[1]).toBeGreaterThanOrEqual(one.mass_kg[1]);
      }),
    );
  });
});

describe("the line of the burn", () => {
  const path = [2666, 2656, 2600, 2500, 2326].map((mass_kg) => ({
    mass_kg,
    arm_m: 4.2,
    burnt_kg: 2666 - mass_kg,
  }));
  const state = (at: "landing" | "alternate", mass_kg: number) => ({ at, mass_kg, arm_m: 4.2 }) as const;

  it("is drawn in full to the landing, and dashed from there", () => {
    const { flown, rest } = burnLines({ path, states: [state("landing", 2528)] });
    expect(flown.map(({ mass_kg }) => mass_kg)).toEqual([2666, 2656, 2600, 2528]);
    expect(rest.map(({ mass_kg }) => mass_kg)).toEqual([2528, 2500, 2326]);
  });

  it("goes on in full to the alternate, where there is one", () => {
    const { flown } = burnLines({ path, states: [state("landing", 2528), state("alternate", 2480)] });
    expect(flown.at(-1)?.mass_kg).toBe(2480);
  });

  it("is dashed all along while the trip is not known", () => {
    expect(burnLines({ path, states: [] })).toEqual({ flown: [], rest: path });
  });
});
