import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { roundToSafeSide } from "./round.ts";

const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const step = fc.constantFrom(0.01, 0.05, 0.1, 0.5, 1, 5, 10, 100);

describe("rounding to the safe side", () => {
  it.each([
    [441, 10, "up", 450],
    [441, 10, "down", 440],
    [0.034, 0.01, "down", 0.03],
    [-0.034, 0.01, "down", -0.04],
    [-0.034, 0.01, "up", -0.03],
    [0.3, 0.1, "down", 0.3], // 0.3 / 0.1 falls just under three
    [0.1 * 3, 0.1, "up", 0.3], // and 0.1 × 3 just over
    [440, 10, "up", 440],
  ] as const)("%d by %d %s is %d", (given, by, direction, rounded) => {
    expect(roundToSafeSide(given, by, direction)).toBe(rounded);
  });

  it("gives no minus zero", () => {
    expect(Object.is(roundToSafeSide(-0.004, 0.01, "up"), 0)).toBe(true);
  });

  it("up is never below the value, down never above, and neither by a whole step", () => {
    fc.assert(
      fc.property(value, step, (given, by) => {
        const slack = by * 1e-8 + Math.abs(given) * 1e-15;
        const up = roundToSafeSide(given, by, "up");
        const down = roundToSafeSide(given, by, "down");
        expect(up).toBeGreaterThanOrEqual(given - slack);
        expect(up).toBeLessThan(given + by + slack);
        expect(down).toBeLessThanOrEqual(given + slack);
        expect(down).toBeGreaterThan(given - by - slack);
      }),
    );
  });

  it("of what is rounded changes nothing", () => {
    fc.assert(
      fc.property(value, step, fc.constantFrom("up", "down"), (given, by, direction) => {
        const once = roundToSafeSide(given, by, direction);
        expect(roundToSafeSide(once, by, "up")).toBe(once);
        expect(roundToSafeSide(once, by, "down")).toBe(once);
      }),
    );
  });

  it("refuses what is no number and what is no step", () => {
    expect(() => roundToSafeSide(Number.NaN, 1, "up")).toThrow(
      "value: expected a finite number, received NaN",
    );
    expect(() => roundToSafeSide(1, 0, "up")).toThrow("step: expected a step above zero, received 0");
  });
});
