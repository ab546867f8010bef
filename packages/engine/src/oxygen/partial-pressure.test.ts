import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { standardPressure } from "../air/standard-atmosphere.ts";
import { toSI } from "../units/convert.ts";
import { leastAddedOxygenFlow, maskFlowPureOxygen } from "./mask-flow.ts";
import { alveolarOxygenPressure, ambientOxygenPressure, trachealOxygenPressure } from "./partial-pressure.ts";

const pressureAt_Pa = (altitude_ft: number): number =>
  standardPressure.compute({ geopotentialAltitude_m: toSI(altitude_ft, "ft") });

const altitude_ft = fc.double({ min: 0, max: 45_000, noNaN: true });

describe("oxygen on its way into the body", () => {
  it("is less in the windpipe than in the air, and less again in the lung, at any altitude to 20,000 ft", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 20_000, noNaN: true }), (height_ft) => {
        const air = { oxygenFraction_1: 0.2095, ambientPressure_Pa: pressureAt_Pa(height_ft) };
        const lung_Pa = alveolarOxygenPressure.compute({
          ...air,
          carbonDioxidePressure_Pa: toSI(30, "mmHg"),
          respiratoryQuotient_1: 0.8,
        });
        const windpipe_Pa = trachealOxygenPressure.compute(air);
        expect(lung_Pa).toBeLessThan(windpipe_Pa);
        expect(windpipe_Pa).toBeLessThan(ambientOxygenPressure.compute(air));
      }),
    );
  });

  it("is refused where the water vapour alone is more than the air, by name", () => {
    const ambientPressure_Pa = toSI(46.9, "mmHg");
    expect(() => trachealOxygenPressure.compute({ oxygenFraction_1: 1, ambientPressure_Pa })).toThrow(
      /^tracheal-oxygen-pressure, dryPressure_Pa: expected inputs that lead to 0/,
    );
  });

  it("is refused in the lung where the equation leads below nothing", () => {
    const given = {
      oxygenFraction_1: 0.2095,
      ambientPressure_Pa: pressureAt_Pa(45_000),
      carbonDioxidePressure_Pa: toSI(40, "mmHg"),
      respiratoryQuotient_1: 0.8,
    };
    expect(() => alveolarOxygenPressure.compute(given)).toThrow(
      /^alveolar-oxygen-pressure, oxygenPressure_Pa/,
    );
  });
});

describe("a mask's flow", () => {
  it("on 100 % falls as the cabin climbs", () => {
    fc.assert(
      fc.property(altitude_ft, altitude_ft, (one_ft, other_ft) => {
        const flow = (height_ft: number): number =>
          maskFlowPureOxygen.compute({
            minuteVolume_m3PerS: toSI(20, "LPerMin"),
            ambientPressure_Pa: pressureAt_Pa(height_ft),
          });
        const [low_ft, high_ft] = one_ft < other_ft ? [one_ft, other_ft] : [other_ft, one_ft];
        expect(flow(high_ft)).toBeLessThanOrEqual(flow(low_ft));
      }),
    );
  });

  it("needs to add nothing where air already gives the target", () => {
    const given = {
      targetPressure_Pa: toSI(100, "mmHg"),
      minuteVolume_m3PerS: toSI(15, "LPerMin"),
      ambientPressure_Pa: pressureAt_Pa(9000),
    };
    expect(leastAddedOxygenFlow.compute(given)).toBe(0);
  });

  it("that even pure oxygen cannot give is refused", () => {
    const given = {
      targetPressure_Pa: toSI(149, "mmHg"),
      minuteVolume_m3PerS: toSI(15, "LPerMin"),
      ambientPressure_Pa: toSI(195, "mmHg"),
    };
    expect(() => leastAddedOxygenFlow.compute(given)).toThrow(
      /^least-added-oxygen-flow, oxygenFraction_1: expected inputs that lead to 0 to 1/,
    );
  });
});
