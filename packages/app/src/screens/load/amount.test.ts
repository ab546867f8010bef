import fc from "fast-check";
import { expect, it } from "vitest";
import { stepped } from "./amount.ts";

it("a step leads onto whole steps, and never below nothing", () => {
  expect(stepped({ value: 91, step: 1 }, 1)).toBe(92);
  expect(stepped({ value: 90.4, step: 1 }, 1)).toBe(91);
  expect(stepped({ value: 90.4, step: 1 }, -1)).toBe(90);
  expect(stepped({ value: 212, step: 5 }, 1)).toBe(215);
  expect(stepped({ value: null, step: 5 }, 1)).toBe(5);
  expect(stepped({ value: 0, step: 5 }, -1)).toBe(0);
});

it("a step always goes its way, by one step at the most", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 5_000, noNaN: true }),
      fc.constantFrom(1, 5, 10),
      fc.constantFrom(1 as const, -1 as const),
      (value, step, way) => {
        const moved = (stepped({ value, step }, way) - value) * way;
        // from 3 down by 5: there is only nothing to go to
        expect(moved).toBeGreaterThan(way < 0 && value < step ? -1e-6 : -1e-9);
        expect(moved).toBeLessThanOrEqual(step * 1.5 + 1e-9);
      },
    ),
  );
});
