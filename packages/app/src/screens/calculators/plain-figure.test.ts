import fc from "fast-check";
import { expect, it } from "vitest";
import { plainFigure, plainMeasure } from "./plain-figure.ts";

it.each([
  [0, "0"],
  [29527.559, "29,527.6"],
  [-600, "−600"],
  [0.0065, "0.0065"],
  [1013.25, "1,013.25"],
  [1234567, "1,234,570"],
  [3.15e-6, "3.15 × 10⁻⁶"],
  [-0.000012, "−1.2 × 10⁻⁵"],
  [1.3, "1.3"],
])("%d is written %s", (value, written) => {
  expect(plainFigure(value)).toBe(written);
});

it("keeps six digits of any size, and never more than a millionth of the value is lost", () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-4, max: 1e9, noNaN: true }), (value) => {
      const back = Number(plainFigure(value).replaceAll(",", ""));
      expect(Math.abs(back - value)).toBeLessThanOrEqual(value * 5.1e-6);
    }),
  );
});

it("a unit stands behind it", () => {
  expect(plainMeasure(1500, "ft")).toBe("1,500\u00A0ft");
  expect(plainMeasure(0.5, "1")).toBe("0.5");
});
