import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  altitudeOfDensity,
  altitudeOfPressure,
  geopotentialAltitude,
  standardDensity,
  standardPressure,
  standardSpeedOfSound,
  standardTemperature,
} from "./standard-atmosphere.ts";

const height = fc.double({ min: -5000, max: 20_000, noNaN: true });
const twoHeights = fc.tuple(height, height).filter(([a, b]) => Math.abs(a - b) > 1e-3);

describe("the standard atmosphere", () => {
  it("has less pressure and less density the higher, and is nowhere warmer", () => {
    fc.assert(
      fc.property(twoHeights, ([a, b]) => {
        const below = { geopotentialAltitude_m: Math.min(a, b) };
        const above = { geopotentialAltitude_m: Math.max(a, b) };
        expect(standardPressure.compute(above)).toBeLessThan(standardPressure.compute(below));
        expect(standardDensity.compute(above)).toBeLessThan(standardDensity.compute(below));
        expect(standardTemperature.compute(above)).toBeLessThanOrEqual(standardTemperature.compute(below));
        expect(standardSpeedOfSound.compute(above)).toBeLessThanOrEqual(standardSpeedOfSound.compute(below));
      }),
    );
  });

  it("gives back the altitude of its own pressure, to a tenth of a millimetre", () => {
    fc.assert(
      fc.property(height, (geopotentialAltitude_m) => {
        const pressure_Pa = standardPressure.compute({ geopotentialAltitude_m });
        const back_m = altitudeOfPressure.compute({ pressure_Pa });
        expect(Math.abs(back_m - geopotentialAltitude_m)).toBeLessThan(1e-4);
      }),
    );
  });

  it("gives back the altitude of its own density, to a tenth of a millimetre", () => {
    fc.assert(
      fc.property(height, (geopotentialAltitude_m) => {
        const density_kgPerM3 = standardDensity.compute({ geopotentialAltitude_m });
        const back_m = altitudeOfDensity.compute({ density_kgPerM3 });
        expect(Math.abs(back_m - geopotentialAltitude_m)).toBeLessThan(1e-4);
      }),
    );
  });

  it("falls as the weight of the air above it: dp = −rho g dH", () => {
    fc.assert(
      fc.property(fc.double({ min: -4999, max: 19_999, noNaN: true }), (H) => {
        const above = standardPressure.compute({ geopotentialAltitude_m: H + 0.5 });
        const below = standardPressure.compute({ geopotentialAltitude_m: H - 0.5 });
        const weight = standardDensity.compute({ geopotentialAltitude_m: H }) * 9.80665;
        expect(Math.abs((below - above) / weight - 1)).toBeLessThan(1e-6);
      }),
    );
  });

  it("ends at −5000 m and at 20000 m, and says so", () => {
    expect(standardPressure.compute({ geopotentialAltitude_m: 20_000 })).toBeGreaterThan(5400);
    expect(standardPressure.compute({ geopotentialAltitude_m: -5000 })).toBeGreaterThan(170_000);
    expect(() => standardPressure.compute({ geopotentialAltitude_m: 20_000.1 })).toThrow(
      "standard-pressure, geopotentialAltitude_m: expected −5000\u00A0m to 20000\u00A0m, received 20000.1\u00A0m; " +
        "check the figure and its unit; nothing is computed outside the range",
    );
    expect(() => standardTemperature.compute({ geopotentialAltitude_m: -5000.1 })).toThrow(
      "received −5000.1\u00A0m",
    );
  });

  it("is reached by every geometric height that the conversion takes", () => {
    for (const geometricHeight_m of [-5000, 0, 20_063]) {
      const geopotentialAltitude_m = geopotentialAltitude.compute({ geometricHeight_m });
      expect(geopotentialAltitude_m).toBeLessThanOrEqual(geometricHeight_m);
    }
    expect(geopotentialAltitude.compute({ geometricHeight_m: 20_063 })).toBeLessThanOrEqual(20_000.1);
  });
});
