import fc from "fast-check";
import { expect, it } from "vitest";
import { roundStep } from "./round-step.ts";

it("goes to 1, 2 or 5 of a power of ten", () => {
  expect([0.034, 1.45, 3.6, 10, 70].map((value) => roundStep(value, "down"))).toEqual([0.02, 1, 2, 10, 50]);
  expect([0.034, 1.45, 3.6, 10, 70].map((value) => roundStep(value, "up"))).toEqual([0.05, 2, 5, 10, 100]);
});

it("stays on a step that a conversion has missed by its last digits", () => {
  expect(roundStep(0.1 + 0.2 - 0.1, "up")).toBe(0.2);
  expect(roundStep(4.999_999_9, "down")).toBe(5);
});

it("is never on the wrong side by more than that, and never more than 2.5 times away", () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-9, max: 1e9, noNaN: true }), (value) => {
      const [down, up] = [roundStep(value, "down"), roundStep(value, "up")];
      expect(down).toBeLessThanOrEqual(value * 1.000_002);
      expect(up).toBeGreaterThanOrEqual(value * 0.999_998);
      expect(value / down).toBeLessThan(2.500_01);
      expect(up / value).toBeLessThan(2.500_01);
    }),
  );
});
