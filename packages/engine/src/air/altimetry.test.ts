import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromSI, toSI } from "../units/convert.ts";
import { altimeterSettingUs, stationPressureUs } from "./altimeter-setting-us.ts";
import {
  flightLevelAdjustment,
  indicationChange,
  pressureAltitude,
  qfe,
  reportedQnh,
  settingBeyondScale,
} from "./altimetry.ts";
import { altitudeOfPressure } from "./standard-atmosphere.ts";

const elevation = fc.double({ min: -600, max: 9000, noNaN: true });
const setting = fc.double({ min: 85_000, max: 110_000, noNaN: true });

describe("pressure altitude", () => {
  it("rises with elevation and falls with the setting", () => {
    fc.assert(
      fc.property(
        elevation,
        fc.double({ min: 86_000, max: 109_000, noNaN: true }),
        (elevation_m, altimeterSetting_Pa) => {
          const here_m = pressureAltitude.compute({ elevation_m, altimeterSetting_Pa });
          expect(
            pressureAltitude.compute({ elevation_m, altimeterSetting_Pa: altimeterSetting_Pa + 100 }),
          ).toBeLessThan(here_m);
          expect(
            pressureAltitude.compute({ elevation_m: elevation_m * 0.5 - 300, altimeterSetting_Pa }),
          ).toBeLessThanOrEqual(here_m);
        },
      ),
    );
  });

  it("is the standard altitude of the pressure at the place", () => {
    fc.assert(
      fc.property(elevation, setting, (elevation_m, altimeterSetting_Pa) => {
        const pressure_Pa = qfe.compute({ elevation_m, altimeterSetting_Pa });
        const altitude_m = pressureAltitude.compute({ elevation_m, altimeterSetting_Pa });
        expect(Math.abs(altitudeOfPressure.compute({ pressure_Pa }) - altitude_m)).toBeLessThan(1e-4);
      }),
    );
  });

  it("refuses a setting in the wrong unit", () => {
    expect(() => pressureAltitude.compute({ elevation_m: 0, altimeterSetting_Pa: 1013.25 })).toThrow(
      "pressure-altitude, altimeterSetting_Pa: expected 85000\u00A0Pa to 110000\u00A0Pa, received 1013.25\u00A0Pa; " +
        "check the figure and its unit; nothing is computed outside the range",
    );
  });
});

describe("the US form", () => {
  it("goes there and back", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -600, max: 5000, noNaN: true }),
        setting,
        (elevation_m, altimeterSetting_Pa) => {
          const stationPressure_Pa = stationPressureUs.compute({ elevation_m, altimeterSetting_Pa });
          const back_Pa = altimeterSettingUs.compute({ elevation_m, stationPressure_Pa });
          expect(Math.abs(back_Pa - altimeterSetting_Pa)).toBeLessThan(1e-3);
        },
      ),
    );
  });

  it("stays within 0.5 hPa of the ICAO relation up to 3000 m", () => {
    // Its 0.3 hPa and its 288 K are all that is different.
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 3000, noNaN: true }),
        setting,
        (elevation_m, altimeterSetting_Pa) => {
          const us_Pa = stationPressureUs.compute({ elevation_m, altimeterSetting_Pa });
          expect(Math.abs(us_Pa - qfe.compute({ elevation_m, altimeterSetting_Pa }))).toBeLessThan(50);
        },
      ),
    );
  });
});

describe("settings", () => {
  it("a change and its reverse cancel", () => {
    fc.assert(
      fc.property(setting, setting, (altimeterSetting_Pa, newAltimeterSetting_Pa) => {
        const there = indicationChange.compute({ altimeterSetting_Pa, newAltimeterSetting_Pa });
        const back = indicationChange.compute({
          altimeterSetting_Pa: newAltimeterSetting_Pa,
          newAltimeterSetting_Pa: altimeterSetting_Pa,
        });
        expect(Math.abs(there + back)).toBeLessThan(1e-9);
        fc.pre(Math.abs(newAltimeterSetting_Pa - altimeterSetting_Pa) > 1e-3);
        expect(Math.sign(there)).toBe(Math.sign(newAltimeterSetting_Pa - altimeterSetting_Pa));
      }),
    );
  });

  it("are reported rounded down, never up", () => {
    fc.assert(
      fc.property(setting, (altimeterSetting_Pa) => {
        const reported_Pa = reportedQnh.compute({ altimeterSetting_Pa });
        expect(reported_Pa).toBeLessThanOrEqual(altimeterSetting_Pa);
        expect(reported_Pa).toBeGreaterThan(altimeterSetting_Pa - 100);
      }),
    );
  });

  // FAA Order JO 7110.65, Table 4-5-3: each edge and just under it
  it.each([
    [29.92, 0],
    [29.91, 500],
    [29.42, 500],
    [29.41, 1000],
    [28.92, 1000],
    [28.91, 1500],
    [28.42, 1500],
    [28.41, 2000],
    [27.92, 2000],
  ])("at %d inHg add %d ft to the lowest usable flight level", (setting_inHg, adjustment_ft) => {
    const adjustment_m = flightLevelAdjustment.compute({ altimeterSetting_Pa: toSI(setting_inHg, "inHg") });
    expect(fromSI(adjustment_m, "ft")).toBeCloseTo(adjustment_ft, 9);
  });

  it("below the table are refused, not guessed", () => {
    expect(() => flightLevelAdjustment.compute({ altimeterSetting_Pa: toSI(27.91, "inHg") })).toThrow(
      "flight-level-adjustment, altimeterSetting_Pa: expected 94548\u00A0Pa to 110000\u00A0Pa, received 94514.1\u00A0Pa",
    );
  });

  it("within the scale are not beyond it", () => {
    expect(settingBeyondScale.compute({ altimeterSetting_Pa: 101_325 })).toBe(0);
  });
});
