import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gaugePressureAtAmbient, gaugePressureAtTemperature } from "./gauge-pressure.ts";

const temperature = fc.double({ min: 203.15, max: 473.15, noNaN: true });
const gauge = fc.double({ min: 0, max: 5e6, noNaN: true });
const ambient = fc.double({ min: 20_000, max: 110_000, noNaN: true });

describe("gauge pressure at another temperature", () => {
  it("goes there and back", () => {
    fc.assert(
      fc.property(
        gauge,
        temperature,
        temperature,
        ambient,
        (gaugePressure_Pa, temperature_K, other_K, ambientPressure_Pa) => {
          const there_Pa = gaugePressureAtTemperature.compute({
            gaugePressure_Pa,
            temperature_K,
            newTemperature_K: other_K,
            ambientPressure_Pa,
          });
          fc.pre(there_Pa >= 0);
          const back_Pa = gaugePressureAtTemperature.compute({
            gaugePressure_Pa: there_Pa,
            temperature_K: other_K,
            newTemperature_K: temperature_K,
            ambientPressure_Pa,
          });
          expect(Math.abs(back_Pa - gaugePressure_Pa)).toBeLessThan(1e-6);
        },
      ),
    );
  });

  it("is the reading itself at the same temperature, and more when it is warmer", () => {
    fc.assert(
      fc.property(gauge, temperature, ambient, (gaugePressure_Pa, temperature_K, ambientPressure_Pa) => {
        const at = (newTemperature_K: number): number =>
          gaugePressureAtTemperature.compute({
            gaugePressure_Pa,
            temperature_K,
            newTemperature_K,
            ambientPressure_Pa,
          });
        expect(Math.abs(at(temperature_K) - gaugePressure_Pa)).toBeLessThan(1e-6);
        expect(at(473.15)).toBeGreaterThanOrEqual(at(temperature_K));
        expect(at(203.15)).toBeLessThanOrEqual(at(temperature_K));
      }),
    );
  });

  it("falls below zero for a flat tyre that cools: the gas inside shrinks", () => {
    const cold_Pa = gaugePressureAtTemperature.compute({
      gaugePressure_Pa: 0,
      temperature_K: 300,
      newTemperature_K: 270,
      ambientPressure_Pa: 100_000,
    });
    expect(cold_Pa).toBeCloseTo(-10_000, 6); // a tenth less absolute
  });

  it("refuses a temperature in degrees Celsius", () => {
    expect(() =>
      gaugePressureAtTemperature.compute({
        gaugePressure_Pa: 3e5,
        temperature_K: 15,
        newTemperature_K: 288,
        ambientPressure_Pa: 101_325,
      }),
    ).toThrow(
      "gauge-pressure-at-temperature, temperature_K: expected 203.15\u00A0K to 473.15\u00A0K, received 15\u00A0K; " +
        "check the figure and its unit; nothing is computed outside the range",
    );
  });
});

describe("gauge pressure in other surrounding air", () => {
  it("rises by what the air outside has less", () => {
    const there_Pa = gaugePressureAtAmbient.compute({
      gaugePressure_Pa: 350_000,
      ambientPressure_Pa: 101_325,
      newAmbientPressure_Pa: 75_000,
    });
    expect(there_Pa).toBeCloseTo(376_325, 6);
  });
});
