import { describe, expect, it } from "vitest";
import { InputError } from "../input-error.ts";
import { parseMeasure } from "./measure.ts";

describe("reading a measure", () => {
  it("takes a unit of either dimension where two will do, and names both where it is of neither", () => {
    expect(parseMeasure("32 L/h", ["mass-flow", "volume-flow"], "burn").unit).toBe("LPerH");
    expect(parseMeasure("23 kg/h", ["mass-flow", "volume-flow"], "burn").unit).toBe("kgPerH");
    expect(() => parseMeasure("32 L", ["mass", "length"], "burn")).toThrow(
      'burn: expected a mass or a length (kg, g, lb, t, oz, m, mm, cm, km, in, ft, NM, mi), received "32 L", a volume',
    );
  });

  it.each([
    ["5.20 bar", "pressure", 5.2, "bar", 520_000],
    ["5,2 bar", "pressure", 5.2, "bar", 520_000],
    ["0,125 bar", "pressure", 0.125, "bar", 12_500],
    ["−4 °C", "temperature", -4, "degC", 269.15],
    ["-4 C", "temperature", -4, "degC", 269.15],
    ["  12 US qt ", "volume", 12, "USqt", 12 * 9.46352946e-4],
    ["7", "count", 7, "count", 7],
    ["95 %", "ratio", 95, "percent", 0.95],
    ["1850\u00A0psi", "pressure", 1850, "psi", 1850 * 6894.757293],
  ] as const)("%s as a %s", (text, dimension, value, unit, valueSI) => {
    const read = parseMeasure(text, dimension, "limit");
    expect([read.value, read.unit]).toEqual([value, unit]);
    expect(Math.abs(read.valueSI - valueSI)).toBeLessThan(1e-6 * valueSI);
  });

  it.each([
    ["", "not-a-number", 'limit: expected a number and a unit (K, °C, °F, °R), received ""'],
    ["warm", "not-a-number", 'limit: expected a number and a unit (K, °C, °F, °R), received "warm"'],
    [
      "1,900 °C",
      "not-a-number",
      'limit: expected a number that can be read in one way only, 1900 °C or 1.900 °C, received "1,900 °C"',
    ],
    ["NaN °C", "not-a-number", 'limit: expected a number and a unit (K, °C, °F, °R), received "NaN °C"'],
    ["1e400 °C", "unknown-unit", 'limit: expected one of K, °C, °F, °R, received "e400 °C"'],
    ["12", "missing", 'limit: expected a unit after the number (K, °C, °F, °R), received "12"'],
    ["12 cubits", "unknown-unit", 'limit: expected one of K, °C, °F, °R, received "cubits"'],
    ["12 psi", "wrong-unit", 'limit: expected a temperature (K, °C, °F, °R), received "12 psi", a pressure'],
  ])("refuses %o: %s", (text, code, message) => {
    expect(() => parseMeasure(text, "temperature", "limit")).toThrow(message);
    try {
      parseMeasure(text, "temperature", "limit");
    } catch (error) {
      expect(error instanceof InputError && error.code).toBe(code);
    }
  });
});
