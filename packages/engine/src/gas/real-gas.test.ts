import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cylinderPressureAtTemperature } from "./cylinder-pressure.ts";
import { oxygenContents, oxygenUsable, oxygenUsableShare, oxygenWaterVolume } from "./oxygen-contents.ts";
import {
  nitrogenCompressibility,
  nitrogenDensity,
  oxygenCompressibility,
  oxygenDensity,
} from "./real-gas.ts";
import { realDensity_kgPerM3, realPressure_Pa } from "./real-gas-model.ts";

const gas = fc.constantFrom("oxygen", "nitrogen");
const temperature = fc.double({ min: 228, max: 340, noNaN: true });
const pressure = fc.double({ min: 1000, max: 21e6, noNaN: true });
const gauge = fc.double({ min: 1e5, max: 15e6, noNaN: true });
/** Warmest first: what cools stays inside the range of the gas equation. */
const twoTemperatures = fc
  .tuple(temperature, temperature)
  .map(([a, b]): readonly [number, number] => [Math.max(a, b), Math.min(a, b)]);
const SEA_PA = 101_325;

describe("a real gas", () => {
  it("has the pressure of its own density", () => {
    fc.assert(
      fc.property(gas, pressure, temperature, (name, pressure_Pa, temperature_K) => {
        const density = realDensity_kgPerM3(name, pressure_Pa, temperature_K);
        expect(Math.abs(realPressure_Pa(name, density, temperature_K) / pressure_Pa - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it("is denser at more pressure and less dense when warmer", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2000, max: 20e6, noNaN: true }),
        fc.double({ min: 229, max: 339, noNaN: true }),
        (pressure_Pa, temperature_K) => {
          for (const density of [oxygenDensity, nitrogenDensity]) {
            const here = density.compute({ pressure_Pa, temperature_K });
            expect(density.compute({ pressure_Pa: pressure_Pa * 1.001, temperature_K })).toBeGreaterThan(
              here,
            );
            expect(density.compute({ pressure_Pa, temperature_K: temperature_K + 1 })).toBeLessThan(here);
          }
        },
      ),
    );
  });

  it("becomes ideal as it becomes thin", () => {
    fc.assert(
      fc.property(temperature, (temperature_K) => {
        for (const z of [oxygenCompressibility, nitrogenCompressibility]) {
          expect(Math.abs(z.compute({ pressure_Pa: 1000, temperature_K }) - 1)).toBeLessThan(5e-5);
        }
      }),
    );
  });

  it("keeps Z in the span of the reference equations over the whole range", () => {
    // CoolProp 8.0.0 on a grid of 228 to 340 K and 0 to 21 MPa: oxygen 0.7712 to 1, nitrogen 0.9205 to 1.0847.
    fc.assert(
      fc.property(pressure, temperature, (pressure_Pa, temperature_K) => {
        const oxygen = oxygenCompressibility.compute({ pressure_Pa, temperature_K });
        const nitrogen = nitrogenCompressibility.compute({ pressure_Pa, temperature_K });
        expect(oxygen).toBeGreaterThan(0.7712 - 0.0007);
        expect(oxygen).toBeLessThan(1.0007);
        expect(nitrogen).toBeGreaterThan(0.9205 - 0.0012);
        expect(nitrogen).toBeLessThan(1.0847 + 0.0012);
      }),
    );
  });
});

describe("a cylinder at another temperature", () => {
  it("goes there and back at constant contents", () => {
    fc.assert(
      fc.property(gas, gauge, twoTemperatures, (name, gaugePressure_Pa, [temperature_K, other_K]) => {
        const quantity = cylinderPressureAtTemperature[name];
        const there_Pa = quantity.compute({
          gaugePressure_Pa,
          temperature_K,
          newTemperature_K: other_K,
          ambientPressure_Pa: SEA_PA,
        });
        fc.pre(there_Pa >= 0);
        const back_Pa = quantity.compute({
          gaugePressure_Pa: there_Pa,
          temperature_K: other_K,
          newTemperature_K: temperature_K,
          ambientPressure_Pa: SEA_PA,
        });
        expect(Math.abs(back_Pa / gaugePressure_Pa - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  it("does not change its contents", () => {
    fc.assert(
      fc.property(gauge, twoTemperatures, (gaugePressure_Pa, [temperature_K, other_K]) => {
        const there_Pa = cylinderPressureAtTemperature.oxygen.compute({
          gaugePressure_Pa,
          temperature_K,
          newTemperature_K: other_K,
          ambientPressure_Pa: SEA_PA,
        });
        fc.pre(there_Pa >= 0);
        const contents = (pressure_Pa: number, kelvin: number): number =>
          oxygenContents.compute({
            waterVolume_m3: 0.016,
            gaugePressure_Pa: pressure_Pa,
            temperature_K: kelvin,
            ambientPressure_Pa: SEA_PA,
          });
        expect(
          Math.abs(contents(there_Pa, other_K) / contents(gaugePressure_Pa, temperature_K) - 1),
        ).toBeLessThan(1e-9);
      }),
    );
  });

  it("shows more when it is warmer", () => {
    const at = (newTemperature_K: number): number =>
      cylinderPressureAtTemperature.nitrogen.compute({
        gaugePressure_Pa: 10e6,
        temperature_K: 290,
        newTemperature_K,
        ambientPressure_Pa: SEA_PA,
      });
    expect(at(300)).toBeGreaterThan(at(290));
    expect(at(290)).toBeGreaterThan(at(280));
  });

  it("is not computed past the pressure that the gas equation holds for", () => {
    expect(() =>
      cylinderPressureAtTemperature.oxygen.compute({
        gaugePressure_Pa: 20e6,
        temperature_K: 280,
        newTemperature_K: 335,
        ambientPressure_Pa: SEA_PA,
      }),
    ).toThrow(
      /^oxygen-pressure-at-temperature, newTemperature_K: expected a temperature at which the gas stays below 21.MPa absolute, received 335.K, where it has 2\d\.\d+.MPa; nothing is computed outside the range of the gas equation$/u,
    );
  });
});

describe("what an oxygen cylinder holds", () => {
  const full = { fullPressure_Pa: 12.755e6, fullTemperature_K: 294.26 };

  it("is its nominal contents when it is full", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 5, noNaN: true }), (nominalContents_m3) => {
        const waterVolume_m3 = oxygenWaterVolume.compute({
          nominalContents_m3,
          ...full,
          ambientPressure_Pa: SEA_PA,
        });
        const contents_m3 = oxygenContents.compute({
          waterVolume_m3,
          gaugePressure_Pa: full.fullPressure_Pa,
          temperature_K: full.fullTemperature_K,
          ambientPressure_Pa: SEA_PA,
        });
        expect(Math.abs(contents_m3 / nominalContents_m3 - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it("is less usable the more is left behind, and none below the residual", () => {
    const usable = (residualPressure_Pa: number): number =>
      oxygenUsable.compute({
        waterVolume_m3: 0.016,
        gaugePressure_Pa: 5e6,
        residualPressure_Pa,
        temperature_K: 290,
        ambientPressure_Pa: SEA_PA,
      });
    expect(usable(1e6)).toBeLessThan(usable(0));
    expect(usable(5e6)).toBe(0);
    expect(usable(6e6)).toBe(0);
  });

  it("is all of its usable share when full and nothing when only the rest is left", () => {
    const share = (gaugePressure_Pa: number, unusableShare_1: number): number =>
      oxygenUsableShare.compute({
        gaugePressure_Pa,
        temperature_K: full.fullTemperature_K,
        ...full,
        unusableShare_1,
        ambientPressure_Pa: SEA_PA,
      });
    expect(share(full.fullPressure_Pa, 0.2)).toBeCloseTo(1, 12);
    expect(share(1e5, 0.2)).toBe(0);
  });
});
