import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toSI } from "../units/convert.ts";
import { endurance, fuelFromTotaliser, fuelMass, fuelVolume } from "./amount.ts";
import { chiSquareAbove_1 } from "./chi-square.ts";
import { coldSoakedTemperature, recoveryTemperature } from "./cold-soak.ts";
import { FUEL_KINDS } from "./fuel-kinds.ts";
import { reconcileFuel } from "./reconcile.ts";
import {
  DENSITY_15_RANGE_kgPerM3,
  fuelDensity,
  fuelDensity15,
  fuelVolumeCorrection,
} from "./volume-correction.ts";

const density15 = fc.double({
  min: DENSITY_15_RANGE_kgPerM3[0],
  max: DENSITY_15_RANGE_kgPerM3[1],
  noNaN: true,
});
const celsius = (value: number) => toSI(value, "degC");

describe("the density of fuel", () => {
  it("at 15 °C is what was stated", () => {
    fc.assert(
      fc.property(density15, (density15_kgPerM3) => {
        const stated = { density15_kgPerM3, fuelTemperature_K: celsius(15) };
        expect(fuelVolumeCorrection.compute(stated)).toBe(1);
        expect(fuelDensity.compute(stated)).toBe(density15_kgPerM3);
      }),
    );
  });

  it("falls as the fuel warms", () => {
    fc.assert(
      fc.property(density15, fc.integer({ min: -50, max: 59 }), (density15_kgPerM3, t) => {
        const at = (degrees: number) =>
          fuelDensity.compute({ density15_kgPerM3, fuelTemperature_K: celsius(degrees) });
        expect(at(t + 1)).toBeLessThan(at(t));
      }),
    );
  });

  it("comes back from a hydrometer reading, to within the step where two groups meet", () => {
    fc.assert(
      fc.property(density15, fc.integer({ min: -50, max: 60 }), (density15_kgPerM3, t) => {
        const fuelTemperature_K = celsius(t);
        const observedDensity_kgPerM3 = fuelDensity.compute({ density15_kgPerM3, fuelTemperature_K });
        const back = fuelDensity15.compute({ observedDensity_kgPerM3, fuelTemperature_K });
        expect(Math.abs(back - density15_kgPerM3)).toBeLessThan(0.1);
      }),
    );
  });

  it.each([652.9, 838.6])("is not given for %d kg/m³, beyond the groups", (density15_kgPerM3) => {
    expect(() => fuelDensity.compute({ density15_kgPerM3, fuelTemperature_K: 288 })).toThrow(
      `fuel-density, density15_kgPerM3: expected 653\u00A0kg/m³ to 838.5\u00A0kg/m³, received ${density15_kgPerM3}\u00A0kg/m³`,
    );
  });

  it("is refused from a hydrometer that shows what no fuel can have", () => {
    expect(() =>
      fuelDensity15.compute({ observedDensity_kgPerM3: 880, fuelTemperature_K: celsius(20) }),
    ).toThrow(
      /fuel-density-15, observedDensity_kgPerM3: expected 648\.\d to 835\.\d kg\/m³ at this temperature, received 880 kg\/m³; check the hydrometer/,
    );
  });

  it("of each kind is within what can be computed, but for jet fuel at the top of its specification", () => {
    for (const { density15_kgPerM3, id } of Object.values(FUEL_KINDS)) {
      expect(density15_kgPerM3[0]).toBeGreaterThanOrEqual(DENSITY_15_RANGE_kgPerM3[0]);
      expect(density15_kgPerM3[1]).toBeLessThanOrEqual(
        id.startsWith("jet") ? 840 : DENSITY_15_RANGE_kgPerM3[1],
      );
    }
  });
});

describe("an amount of fuel", () => {
  it("is the same as mass and as volume", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 2, noNaN: true }), density15, (volume_m3, density_kgPerM3) => {
        const fuel_kg = fuelMass.compute({ volume_m3, density_kgPerM3 });
        expect(fuelVolume.compute({ fuel_kg, density_kgPerM3 })).toBeCloseTo(volume_m3, 12);
      }),
    );
  });

  it("lasts shorter the more burns", () => {
    const at = (burn_kgPerS: number) => endurance.compute({ fuel_kg: 300, burn_kgPerS });
    expect(at(0.05)).toBeLessThan(at(0.04));
  });

  it("cannot be less than nothing by the totaliser", () => {
    expect(() => fuelFromTotaliser.compute({ start_kg: 100, used_kg: 120, added_kg: 0 })).toThrow(
      "fuel-from-totaliser, left_kg: expected inputs that lead to 0\u00A0kg to 600000\u00A0kg, received −20\u00A0kg",
    );
  });
});

describe("cold-soaked fuel", () => {
  it("lies between what it was and its skin, and comes nearer with time", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -40, max: 40 }),
        fc.integer({ min: -60, max: 30 }),
        fc.integer({ min: 0, max: 30_000 }),
        (was, skin, time_s) => {
          const inputs = { fuelTemperature_K: celsius(was), skin_K: celsius(skin), timeConstant_s: 9000 };
          const soaked = coldSoakedTemperature.compute({ ...inputs, time_s });
          const later = coldSoakedTemperature.compute({ ...inputs, time_s: time_s + 60 });
          expect(soaked).toBeGreaterThanOrEqual(Math.min(celsius(was), celsius(skin)) - 1e-9);
          expect(soaked).toBeLessThanOrEqual(Math.max(celsius(was), celsius(skin)) + 1e-9);
          expect(Math.abs(later - celsius(skin))).toBeLessThanOrEqual(
            Math.abs(soaked - celsius(skin)) + 1e-9,
          );
        },
      ),
    );
  });

  it("does not cool below the air on a skin that stands still", () => {
    expect(recoveryTemperature.compute({ oat_K: 220, trueAirspeed_mPerS: 0, recovery_1: 0.9 })).toBe(220);
  });
});

describe("chi-square", () => {
  // NIST/SEMATECH e-Handbook, 1.3.6.7.4: upper critical values, printed to three decimals
  it.each([
    [1, 0.05, 3.841],
    [2, 0.05, 5.991],
    [3, 0.05, 7.815],
    [4, 0.05, 9.488],
    [5, 0.05, 11.07],
    [10, 0.05, 18.307],
    [1, 0.01, 6.635],
    [3, 0.01, 11.345],
    [6, 0.01, 16.812],
    [2, 0.1, 4.605],
  ])(
    "with %d degrees of freedom is above its printed %d point as often as printed",
    (freedom, probability, value) => {
      expect(Math.abs(chiSquareAbove_1(value, freedom) - probability)).toBeLessThan(probability * 0.001);
    },
  );

  it("is certain above zero, and hopeless far out", () => {
    expect(chiSquareAbove_1(0, 3)).toBe(1);
    expect(chiSquareAbove_1(0, 4)).toBe(1);
    expect(chiSquareAbove_1(2000, 5)).toBe(0);
  });
});

const source = (id: string, fuel_kg: number, standardUncertainty_kg: number) => ({
  id,
  fuel_kg,
  standardUncertainty_kg,
});

describe("the fuel by several sources", () => {
  it("is their weighted mean, surer than any of them, where they agree", () => {
    const { fuel_kg, standardUncertainty_kg, consistent, odd } = reconcileFuel([
      source("gauge", 200, 10),
      source("dip", 206, 4),
      source("totaliser", 203, 5),
    ]);
    expect(consistent).toBe(true);
    expect(odd).toBeUndefined();
    // (200/100 + 206/16 + 203/25) / (1/100 + 1/16 + 1/25), by hand
    expect(fuel_kg).toBeCloseTo((2 + 12.875 + 8.12) / 0.1125, 9);
    expect(standardUncertainty_kg).toBeCloseTo(1 / Math.sqrt(0.1125), 12);
  });

  it("names the one that alone explains a disagreement", () => {
    const { consistent, odd, deviations, least_kg } = reconcileFuel([
      source("gauge", 240, 6),
      source("dip", 200, 4),
      source("totaliser", 203, 5),
    ]);
    expect(consistent).toBe(false);
    expect(odd).toBe("gauge");
    expect(least_kg).toBe(200);
    const worst = [...deviations].sort((a, b) => Math.abs(b.deviation_1) - Math.abs(a.deviation_1))[0];
    expect(worst?.id).toBe("gauge");
  });

  it("names none of two, and none where each differs from each", () => {
    expect(reconcileFuel([source("gauge", 240, 6), source("dip", 200, 4)])).toMatchObject({
      consistent: false,
      odd: undefined,
    });
    expect(
      reconcileFuel([source("gauge", 160, 4), source("dip", 200, 4), source("totaliser", 240, 4)]),
    ).toMatchObject({ consistent: false, odd: undefined });
  });

  it("is the only source's where there is one, which nothing checks", () => {
    expect(reconcileFuel([source("dip", 200, 4)])).toMatchObject({
      fuel_kg: 200,
      standardUncertainty_kg: 4,
      probability_1: 1,
      consistent: true,
      deviations: [{ id: "dip", deviation_1: 0 }],
    });
  });

  it("does not depend on their order", () => {
    fc.assert(
      fc.property(
        fc
          .array(fc.tuple(fc.integer({ min: 100, max: 140 }), fc.integer({ min: 1, max: 10 })), {
            minLength: 2,
            maxLength: 5,
          })
          .map((all) => all.map(([fuel_kg, u], index) => source(String(index), fuel_kg, u))),
        (sources) => {
          const there = reconcileFuel(sources);
          const back = reconcileFuel(sources.toReversed());
          expect([back.fuel_kg, back.chiSquare_1, back.odd, back.consistent]).toEqual([
            there.fuel_kg,
            there.chiSquare_1,
            there.odd,
            there.consistent,
          ]);
        },
      ),
    );
  });

  it("refuses no source, a mass below zero and an uncertainty of nothing", () => {
    expect(() => reconcileFuel([])).toThrow(
      "sources: expected one source of the fuel at least, received none",
    );
    expect(() => reconcileFuel([source("dip", -1, 4)])).toThrow(
      "dip, fuel_kg: expected a mass of zero or more, received -1",
    );
    expect(() => reconcileFuel([source("dip", 1, 0)])).toThrow(
      "dip, standardUncertainty_kg: expected an uncertainty above zero, received 0",
    );
  });
});
