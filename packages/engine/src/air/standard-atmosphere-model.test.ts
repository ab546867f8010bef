import { describe, expect, it } from "vitest";
import * as model from "./standard-atmosphere-model.ts";

describe("the constants of the standard atmosphere", () => {
  // ICAO Doc 7488/3 (1993), as in the test table of the open-source package ambiance
  it("are those of the standard", () => {
    expect(model.SEA_LEVEL_K).toBe(288.15);
    expect(model.SEA_LEVEL_PA).toBe(101_325);
    expect(model.GRAVITY_MPerS2).toBe(9.80665);
    expect(Math.abs(model.GAS_CONSTANT_JPerKgK - 287.05287)).toBeLessThanOrEqual(1e-5);
    expect(model.LAPSE_KPerM).toBe(0.0065);
    expect(model.RATIO_OF_SPECIFIC_HEATS_1).toBe(1.4);
    expect(model.NOMINAL_EARTH_RADIUS_M).toBe(6_356_766);
  });

  it("lead to the exponent that textbooks print: 5.25588", () => {
    expect(model.PRESSURE_EXPONENT_1).toBeCloseTo(5.25588, 5);
  });

  it("join the two layers without a step", () => {
    for (const at of [model.pressureAt_Pa, model.densityAt_kgPerM3, model.temperatureAt_K]) {
      expect(Math.abs(at(model.TROPOPAUSE_M - 1e-6) / at(model.TROPOPAUSE_M) - 1)).toBeLessThan(1e-9);
    }
  });
});
