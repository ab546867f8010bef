import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toSI } from "./convert.ts";
import { decimalsOf, formatMeasure, formatValue } from "./format.ts";
import { toDecimals, toSignificant } from "./plain-number.ts";

describe("the digits of a gauge", () => {
  it.each([
    [0.05, 2],
    [0.1, 1],
    [0.5, 1],
    [0.25, 2],
    [0.02, 2],
    [0.001, 3],
    [1, 0],
    [2, 0],
    [20, 0],
    [50, 0],
    [2.5, 1],
  ])("with a resolution of %d are %d", (resolution, decimals) => {
    expect(decimalsOf(resolution)).toBe(decimals);
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])(
    "are not given for a resolution of %s",
    (resolution) => {
      expect(() => decimalsOf(resolution)).toThrow(
        `resolution: expected a step above zero, received ${resolution}`,
      );
    },
  );
});

describe("a value on a gauge", () => {
  it.each([
    [4.85, "bar", 0.05, "4.85\u00A0bar"],
    [4.8, "bar", 0.05, "4.80\u00A0bar"],
    [1850, "psi", 20, "1850\u00A0psi"],
    [-4, "degC", 1, "−4\u00A0°C"],
    [-0.04, "degC", 0.5, "0.0\u00A0°C"],
    [29.92, "inHg", 0.01, "29.92\u00A0inHg"],
    [28.5, "V", 0.1, "28.5\u00A0V"],
    [97, "percent", 1, "97\u00A0%"],
    [12, "deg", 1, "12°"],
    [3, "count", 1, "3"],
  ] as const)("%d %s at %d is %s", (value, unit, resolution, text) => {
    expect(formatMeasure(toSI(value, unit), unit, resolution)).toBe(text);
  });

  it("converts first: 5.20 bar is 75 psi on a gauge that steps by one", () => {
    expect(formatValue(toSI(5.2, "bar"), "psi", 1)).toBe("75"); // 75.42 by SP 811
  });

  it("shows no NaN", () => {
    expect(() => formatValue(Number.NaN, "bar", 0.05)).toThrow(
      "value_bar: expected a finite number, received NaN",
    );
  });

  it("is within half a step of its last digit", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        fc.integer({ min: 0, max: 4 }),
        (value, decimals) => {
          const shown = Number(toDecimals(value, decimals).replace("−", "-"));
          expect(Math.abs(shown - value)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-9);
          expect(toDecimals(value, decimals)).toMatch(
            decimals === 0 ? /^−?\d+$/ : new RegExp(`^−?\\d+\\.\\d{${decimals}}$`),
          );
        },
      ),
    );
  });
});

describe("a plain number", () => {
  it.each([
    [1.005, 2, "1.01"],
    [2.5, 0, "3"],
    [-2.5, 0, "−3"],
    [-0.004, 2, "0.00"],
    [0.1 + 0.2, 1, "0.3"],
    [1e21, 1, "1e+21"],
  ])("%d to %d decimals is %s", (value, decimals, text) => {
    expect(toDecimals(value, decimals)).toBe(text);
  });

  it.each([
    [288.15, 6, "288.15"],
    [101_929.85, 6, "101930"],
    [-5000, 6, "−5000"],
    [0.00012345678, 4, "0.0001235"],
    [0, 6, "0"],
    [-0, 6, "0"],
    [1.5e-9, 3, "1.5e−9"],
    [2e20, 3, "2e20"],
    [99.9999999, 6, "100"],
  ])("%d to %d significant digits is %s", (value, digits, text) => {
    expect(toSignificant(value, digits)).toBe(text);
  });
});
