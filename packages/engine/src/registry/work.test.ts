import { describe, expect, it } from "vitest";
import { pressureAltitude } from "../air/altimetry.ts";
import { fromSI, toSI } from "../units/convert.ts";
import { work } from "./work.ts";

describe("work", () => {
  // FAA-H-8083-25, performance chapter, sample problem 1: 5,883 ft, 30.10 inHg, pressure altitude 5,718 ft
  const given = { elevation_ft: 5883, altimeterSetting_inHg: 30.1 };

  it("takes any unit of the dimension and computes what compute does", () => {
    const worked = work("pressure-altitude", given);
    expect(Math.abs(fromSI(worked.outputSI, "ft") - 5718)).toBeLessThanOrEqual(1);
    expect(worked.outputSI).toBe(
      pressureAltitude.compute({ elevation_m: toSI(5883, "ft"), altimeterSetting_Pa: toSI(30.1, "inHg") }),
    );
  });

  it("shows each input as given and as used, in the order of the quantity", () => {
    const { inputs, quantity } = work("pressure-altitude", {
      altimeterSetting_inHg: 30.1,
      elevation_ft: 5883,
    });
    expect(quantity.id).toBe("pressure-altitude");
    expect(inputs).toEqual([
      {
        name: "elevation_m",
        meaning: "elevation above mean sea level",
        given: { value: 5883, unit: "ft" },
        valueSI: 5883 * 0.3048,
      },
      {
        name: "altimeterSetting_Pa",
        meaning: "altimeter setting (QNH)",
        given: { value: 30.1, unit: "inHg" },
        valueSI: 30.1 * 3386.389,
      },
    ]);
  });

  it("writes the working as a person reads it", () => {
    expect(work("pressure-altitude", given).lines).toEqual([
      { label: "elevation above mean sea level", value: "5883\u00A0ft = 1793.14\u00A0m" },
      { label: "altimeter setting (QNH)", value: "30.1\u00A0inHg = 101930\u00A0Pa" },
      { label: "formula", value: "PA = elevation + standard altitude of the setting" },
      {
        label: "Pressure altitude of a place from its elevation and the altimeter setting",
        value: "1742.87\u00A0m = 5718.09\u00A0ft",
      },
    ]);
  });

  it("does not say a value twice that came in SI", () => {
    const { lines } = work("standard-pressure", { geopotentialAltitude_m: 0 });
    expect(lines.map(({ value }) => value)).toEqual([
      "0\u00A0m",
      expect.stringContaining("p0"),
      "101325\u00A0Pa",
    ]);
  });

  it.each([
    [
      "no-such-thing",
      {},
      /^no-such-thing: expected one of the \d+ quantities of the registry, received "no-such-thing"$/,
    ],
    [
      "pressure-altitude",
      { ...given, elevation_psi: 1 },
      "pressure-altitude, elevation_psi: expected a length (m, mm, cm, km, in, ft, NM, mi), received a pressure",
    ],
    [
      "pressure-altitude",
      { ...given, oat_K: 1 },
      "pressure-altitude, oat_K: expected one of elevation_m, altimeterSetting_Pa, or the same in another unit, received oat_K",
    ],
    [
      "pressure-altitude",
      { ...given, elevation_furlong: 1 },
      'pressure-altitude, elevation_furlong: expected a unit at its end (m, mm, cm, km, in, ft, NM, mi), received "furlong"',
    ],
    [
      "pressure-altitude",
      { elevation: 1 },
      "pressure-altitude, elevation: expected a unit at its end (m, mm, cm, km, in, ft, NM, mi), received no unit",
    ],
    [
      "pressure-altitude",
      { ...given, elevation_m: 1 },
      "pressure-altitude, elevation_m: expected it once, received it twice, in two units",
    ],
    [
      "pressure-altitude",
      { elevation_ft: 1 },
      "pressure-altitude, altimeterSetting_Pa: expected altimeter setting (QNH), 85000\u00A0Pa to 110000\u00A0Pa, received nothing",
    ],
    [
      "pressure-altitude",
      { elevation_ft: Number.NaN, altimeterSetting_hPa: 1013 },
      "pressure-altitude, elevation_ft: expected a number, −600\u00A0m to 9000\u00A0m, received NaN",
    ],
  ])("says what is wrong with %s %o", (id, inputs: Record<string, number>, message) => {
    expect(() => work(id, inputs)).toThrow(message);
  });
});
