import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { densityAltitude, moistDensityAltitude } from "./density-altitude.ts";
import { standardPressure, standardTemperature } from "./standard-atmosphere.ts";

const altitude = fc.double({ min: 0, max: 4000, noNaN: true });

describe("density altitude", () => {
  it("is the pressure altitude on a standard day, at any height", () => {
    fc.assert(
      fc.property(fc.double({ min: -1500, max: 20_000, noNaN: true }), (pressureAltitude_m) => {
        const oat_K = standardTemperature.compute({ geopotentialAltitude_m: pressureAltitude_m });
        expect(
          Math.abs(densityAltitude.compute({ pressureAltitude_m, oat_K }) - pressureAltitude_m),
        ).toBeLessThan(1e-4);
      }),
    );
  });

  it("rises with temperature and with pressure altitude", () => {
    fc.assert(
      fc.property(altitude, fc.double({ min: 240, max: 325, noNaN: true }), (pressureAltitude_m, oat_K) => {
        const here_m = densityAltitude.compute({ pressureAltitude_m, oat_K });
        expect(densityAltitude.compute({ pressureAltitude_m, oat_K: oat_K + 1 })).toBeGreaterThan(here_m);
        expect(
          densityAltitude.compute({ pressureAltitude_m: pressureAltitude_m + 1, oat_K }),
        ).toBeGreaterThan(here_m);
      }),
    );
  });

  it("is higher the more moisture the air holds, and the dry one is its floor", () => {
    fc.assert(
      fc.property(
        altitude,
        fc.double({ min: 280, max: 320, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        (pressureAltitude_m, oat_K, spread_K) => {
          const stationPressure_Pa = standardPressure.compute({ geopotentialAltitude_m: pressureAltitude_m });
          const dry_m = densityAltitude.compute({ pressureAltitude_m, oat_K });
          const moist_m = moistDensityAltitude.compute({
            stationPressure_Pa,
            oat_K,
            dewPoint_K: oat_K - spread_K,
          });
          const saturated_m = moistDensityAltitude.compute({ stationPressure_Pa, oat_K, dewPoint_K: oat_K });
          expect(moist_m).toBeGreaterThan(dry_m);
          expect(saturated_m).toBeGreaterThanOrEqual(moist_m);
        },
      ),
    );
  });

  it("refuses inputs that lead outside the standard atmosphere together", () => {
    expect(() => densityAltitude.compute({ pressureAltitude_m: 20_000, oat_K: 330 })).toThrow(
      "density-altitude, density_kgPerM3: expected inputs that lead to 0.0880347\u00A0kg/m³ to 1.93047\u00A0kg/m³, " +
        "received 0.0577961\u00A0kg/m³; check the inputs against each other; nothing is computed outside the range",
    );
  });

  it("refuses a dew point above the temperature", () => {
    expect(() =>
      moistDensityAltitude.compute({ stationPressure_Pa: 1e5, oat_K: 280, dewPoint_K: 285 }),
    ).toThrow(
      "moist-density-altitude, dewPoint_K: expected at most the temperature, 280\u00A0K, received 285\u00A0K; " +
        "check that the two were not taken for each other",
    );
  });
});
