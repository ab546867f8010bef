import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  dewPoint,
  frostPoint,
  relativeHumidity,
  vapourPressureIce,
  vapourPressureWater,
} from "./humidity.ts";
import { vapourPressureMurphyKoopIce, vapourPressureMurphyKoopWater } from "./vapour-pressure-forms.ts";

const temperature = fc.double({ min: 250, max: 333.15, noNaN: true });

describe("humidity", () => {
  it("goes from dew point to relative humidity and back", () => {
    fc.assert(
      fc.property(temperature, fc.double({ min: 0, max: 20, noNaN: true }), (temperature_K, spread_K) => {
        const dewPoint_K = temperature_K - spread_K;
        const relativeHumidity_1 = relativeHumidity.compute({ temperature_K, dewPoint_K });
        expect(relativeHumidity_1).toBeLessThanOrEqual(1);
        expect(Math.abs(dewPoint.compute({ temperature_K, relativeHumidity_1 }) - dewPoint_K)).toBeLessThan(
          1e-9,
        );
      }),
    );
  });

  it("makes the frost point warmer than the dew point, and the same at 0 °C", () => {
    fc.assert(
      fc.property(fc.double({ min: 228.15, max: 273.1, noNaN: true }), (dewPoint_K) => {
        const frostPoint_K = frostPoint.compute({ dewPoint_K });
        expect(frostPoint_K).toBeGreaterThan(dewPoint_K);
        expect(frostPoint_K).toBeLessThanOrEqual(273.15);
      }),
    );
    expect(frostPoint.compute({ dewPoint_K: 273.15 })).toBeCloseTo(273.15, 9);
  });

  it("holds more over water than over ice below 0 °C", () => {
    fc.assert(
      fc.property(fc.double({ min: 228.15, max: 273, noNaN: true }), (temperature_K) => {
        expect(vapourPressureIce.compute({ temperature_K })).toBeLessThan(
          vapourPressureWater.compute({ temperature_K }),
        );
      }),
    );
  });

  it("keeps within 0.8 % over water and 0.5 % over ice of the Murphy and Koop equations", () => {
    // The spread of the common forms; measured against the published equations, not against this program.
    fc.assert(
      fc.property(fc.double({ min: 228.15, max: 273.15, noNaN: true }), (temperature_K) => {
        const water = vapourPressureWater.compute({ temperature_K });
        const ice = vapourPressureIce.compute({ temperature_K });
        expect(Math.abs(water / vapourPressureMurphyKoopWater.compute({ temperature_K }) - 1)).toBeLessThan(
          0.008,
        );
        expect(Math.abs(ice / vapourPressureMurphyKoopIce.compute({ temperature_K }) - 1)).toBeLessThan(
          0.005,
        );
      }),
    );
  });

  it("refuses a dew point under −45 °C, where the formula ends", () => {
    expect(() => dewPoint.compute({ temperature_K: 250, relativeHumidity_1: 0.01 })).toThrow(
      /^dew-point, dewPoint_K: expected inputs that lead to 228\.15.K to 333\.15.K, received 207\.931.K; check the inputs/u,
    );
  });
});
