import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromSI, toSI } from "../units/convert.ts";
import { carburettorIcing } from "./carburettor-icing.ts";
import { coldCorrectionRounding, coldTemperatureError, coldTemperatureTable } from "./cold-temperature.ts";
import { freezingLevelRule, icingConditions, USUAL_ICING_FROM_K } from "./freezing-level.ts";
import { frostOutlook } from "./frost.ts";
import { dewPoint } from "./humidity.ts";

interface FiledCase {
  readonly id: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: Readonly<Record<string, unknown>>;
}
const casesOf = (name: string): ((id: string) => FiledCase) => {
  // a file of this repository, of which the shape is known
  const { cases } = JSON.parse(
    readFileSync(new URL(`../../../../reference/decoded/${name}`, import.meta.url), "utf8"),
  ) as { readonly cases: readonly FiledCase[] };
  return (id) => {
    const found = cases.find((one) => one.id === id);
    if (found === undefined) throw new Error(`reference/decoded/${name} has no case ${id}`);
    return found;
  };
};
const cold = casesOf("cold-temperature.json");
const frost = casesOf("frost-and-icing.json");
const degC = (value: unknown): number => toSI(Number(value), "degC");

describe("the cold temperature table", () => {
  const { inputs, expected } = cold("cold-temperature-table-all-cells");
  const heights = inputs["heightsAboveAirport_ft"] as readonly number[]; // of the case file: a known shape
  const temperatures = inputs["temperatures_degC"] as readonly number[];
  const printed = expected["correction_ft"] as readonly (readonly number[])[];
  const table_ft = (height_ft: number, temperature_degC: number): number =>
    fromSI(
      coldTemperatureTable.compute({
        heightAboveAirport_m: toSI(height_ft, "ft"),
        reportedTemperature_K: degC(temperature_degC),
      }),
      "ft",
    );

  it("is met in every one of its 98 cells", () => {
    const computed = temperatures.map((temperature) =>
      heights.map((height) => Math.round(table_ft(height, temperature) * 1e6) / 1e6),
    );
    expect(computed.flat()).toHaveLength(98);
    expect(computed).toEqual(printed);
  });

  it("between its cells takes the higher and the colder one", () => {
    expect(table_ft(1200, -12)).toBeCloseTo(table_ft(1500, -20), 9);
    expect(table_ft(50, 8)).toBeCloseTo(table_ft(200, 0), 9);
  });

  it("never asks for less than the formula, at sea level to 5,000 ft", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 5000, noNaN: true }),
        fc.double({ min: -50, max: 15, noNaN: true }),
        (height_ft, temperature_degC) => {
          const formula_m = coldTemperatureError.compute({
            heightAboveAirport_m: toSI(height_ft, "ft"),
            reportedTemperature_K: degC(temperature_degC),
            elevation_m: 0,
          });
          expect(table_ft(height_ft, temperature_degC)).toBeGreaterThanOrEqual(
            fromSI(formula_m, "ft") - 1e-6,
          );
        },
      ),
    );
  });

  it("says nothing below −50 °C, and asks for nothing in warm air", () => {
    expect(() => table_ft(1000, -51)).toThrow(
      "cold-temperature-table, reportedTemperature_K: expected 223.15",
    );
    expect(table_ft(1000, 16)).toBe(0);
    expect(table_ft(0, -20)).toBe(0);
  });

  it("has corrections that are rounded to the nearest hundred or up, and for minimums never down", () => {
    const one = cold("cold-round-130");
    const rounded = coldCorrectionRounding(toSI(Number(one.inputs["tableCorrection_ft"]), "ft"));
    const inFeet = (values: readonly number[]): readonly number[] =>
      values.map((value) => Math.round(fromSI(value, "ft") * 1e6) / 1e6);
    expect(inFeet(rounded.segments_m)).toEqual(one.expected["acceptableRounded_ft"]);
    expect(inFeet(rounded.minimums_m)).toEqual([130, 200]);
    expect(inFeet(coldCorrectionRounding(toSI(170, "ft")).segments_m)).toEqual([200]);
    expect(inFeet(coldCorrectionRounding(toSI(200, "ft")).minimums_m)).toEqual([200]);
  });
});

describe("frost on an aircraft that stands outside", () => {
  it.each(["frost-clear-calm", "frost-dry", "frost-cold-fuel"])(
    "is as the published conditions say: %s",
    (id) => {
      const { inputs, expected } = frost(id);
      const outlook = frostOutlook({
        oat_K: degC(inputs["oat_C"]),
        dewPoint_K: degC(inputs["dewpoint_C"]),
        skin_K: degC(inputs["skin_C"]),
        sky: "clear",
      });
      expect(outlook.frost === "expected").toBe(expected["frost"]);
      expect(outlook.frost === "expected").toBe(outlook.margin_K <= 0);
    },
  );

  it("is expected after a clear calm night at M00/M01, though nobody measured the skin", () => {
    const { expected } = frost("frost-risk-from-metar");
    const outlook = frostOutlook({ oat_K: degC(0), dewPoint_K: degC(-1), sky: "clear", wind_mPerS: 0 });
    expect(outlook.frost === "expected").toBe(expected["frostRisk"]);
    expect(fromSI(outlook.skin_K, "degC")).toBeLessThanOrEqual(-4);
  });

  it("takes a sky that is not known as a clear one", () => {
    const night = { oat_K: degC(3), dewPoint_K: degC(0) };
    const [unknown, clear, overcast] = (["not known", "clear", "overcast"] as const).map((sky) =>
      frostOutlook({ ...night, sky }),
    );
    expect(unknown).toEqual(clear);
    expect(overcast?.frost).toBe("not expected");
    expect(frostOutlook({ ...night, sky: "clear", wind_mPerS: toSI(15, "kt") })).toEqual(overcast);
  });

  it("is never less to be expected on a colder skin or in damper air", () => {
    const temperature = fc.double({ min: -30, max: 20, noNaN: true });
    fc.assert(
      fc.property(
        temperature,
        temperature,
        fc.double({ min: 0, max: 10, noNaN: true }),
        (skin, dew, more) => {
          const margin = (skin_C: number, dew_C: number): number =>
            frostOutlook({ oat_K: degC(60), dewPoint_K: degC(dew_C), skin_K: degC(skin_C), sky: "clear" })
              .margin_K;
          expect(margin(skin - more, dew)).toBeLessThanOrEqual(margin(skin, dew) + 1e-9);
          expect(margin(skin, dew + more)).toBeLessThanOrEqual(margin(skin, dew) + 1e-9);
        },
      ),
    );
  });

  it("refuses a dew point that was taken for the temperature", () => {
    expect(() => frostOutlook({ oat_K: degC(-1), dewPoint_K: degC(5), sky: "clear" })).toThrow(
      "check that the two were not taken for each other",
    );
  });
});

describe("icing conditions", () => {
  const asked = (
    id: string,
  ): { readonly oat_K: number; readonly threshold_K: number; readonly moist: boolean } => {
    const { inputs } = frost(id);
    const weather = inputs["weather"];
    // Of the whole degrees of the body and the tenths of the remarks the colder one counts.
    const coldest = Math.min(
      Number(inputs["oat_C"]),
      inputs["body"] === undefined ? Infinity : Number(inputs["body"]),
    );
    return {
      oat_K: degC(coldest),
      threshold_K: degC(inputs["threshold_C"]),
      moist: Array.isArray(weather) && weather.length > 0,
    };
  };

  it.each([
    "icing-flag-rain-plus5",
    "icing-flag-rain-plus6",
    "icing-flag-dry-cold",
    "icing-flag-fog",
    "icing-flag-tenths",
  ])("are as flight manuals word them: %s", (id) => {
    const { oat_K, threshold_K, moist } = asked(id);
    expect(icingConditions({ oat_K, threshold_K, visibleMoisture: moist })).toBe(
      frost(id).expected["icingConditions"],
    );
  });

  it("are not known where it is cold and nothing is known of the moisture", () => {
    const question = { threshold_K: USUAL_ICING_FROM_K, visibleMoisture: undefined };
    expect(icingConditions({ ...question, oat_K: degC(2) })).toBe("not known");
    expect(icingConditions({ ...question, oat_K: degC(12) })).toBe(false);
    expect(icingConditions({ ...question, oat_K: Number.NaN })).toBe("not known");
  });
});

describe("the freezing level", () => {
  it("is never below the place, and never falls as it gets warmer", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -600, max: 4000, noNaN: true }),
        fc.double({ min: 190, max: 325, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (elevation_m, oat_K, warmer) => {
          const here = freezingLevelRule.compute({ elevation_m, oat_K });
          expect(here).toBeGreaterThanOrEqual(elevation_m);
          expect(freezingLevelRule.compute({ elevation_m, oat_K: oat_K + warmer })).toBeGreaterThanOrEqual(
            here,
          );
        },
      ),
    );
  });
});

describe("ice in a carburettor", () => {
  it("is severe at 10 °C over 9, where the chart has it at any power", () => {
    expect(frost("carb-icing-10-9").expected["zone"]).toBe("serious icing at any power");
    expect(carburettorIcing(degC(10), degC(9)).zone).toBe("severe");
  });

  it("is at least possible at 22 °C over 5, where the chart has it at descent power", () => {
    expect(frost("carb-icing-22-5").expected["zone"]).toBe("serious icing at descent power");
    expect(carburettorIcing(degC(22), degC(5)).zone).toBe("possible");
  });

  const at = (oat_degF: unknown, humidity_pct: unknown): ReturnType<typeof carburettorIcing> => {
    const temperature_K = toSI(Number(oat_degF), "degF");
    return carburettorIcing(
      temperature_K,
      dewPoint.compute({ temperature_K, relativeHumidity_1: Number(humidity_pct) / 100 }),
    );
  };

  it("is possible at 100 °F and 50 %, and rare at 70 °F and 20 %", () => {
    const [hot, dry] = [frost("carb-icing-hot-humid"), frost("carb-icing-dry")];
    expect(at(hot.inputs["oat_F"], hot.inputs["relativeHumidity_pct"]).zone === "possible").toBe(
      hot.expected["possible"],
    );
    expect(at(dry.inputs["oat_F"], dry.inputs["relativeHumidity_pct"]).zone === "rare").toBe(
      dry.expected["rare"],
    );
  });

  it("is not said to be rare where the rule is silent", () => {
    expect(at(105, 50).zone).toBe("not known");
    expect(at(105, 20).zone).toBe("rare");
    expect(at(5, 80).zone).toBe("rare");
    expect(at(25, 80).zone).toBe("possible");
  });
});
