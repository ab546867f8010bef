import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CLEAR_FROM_1, judgeReading } from "./judge-reading.ts";

const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const uncertainty = fc.double({ min: 1e-6, max: 1e5, noNaN: true });

describe("the rule for a reading", () => {
  // JCGM 106:2012, 7.3: y = −5.47 V, u = 0.05 V, upper limit −5.40 V, probability 0.92, from memory
  it("judges the Zener diode of JCGM 106 too close to call", () => {
    const judged = judgeReading({ value: -5.47, standardUncertainty: 0.05, high: -5.4 });
    expect(judged.status).toBe("caution");
    expect(Math.abs(judged.probability_1 - 0.92)).toBeLessThanOrEqual(0.005);
    expect(judged.nearest).toBe("high");
    expect(judged.margin).toBeCloseTo(0.07, 12);
  });

  it.each([
    ["well inside", { value: 5, standardUncertainty: 0.1, low: 4, high: 6 }, "clear", 1],
    ["on the lower limit", { value: 4, standardUncertainty: 0.1, low: 4, high: 6 }, "caution", 0],
    ["on the upper limit", { value: 6, standardUncertainty: 0.1, low: 4, high: 6 }, "caution", 0],
    [
      "just past the lower limit",
      { value: 3.9999999, standardUncertainty: 0.1, low: 4, high: 6 },
      "stop",
      -1e-7,
    ],
    [
      "just past the upper limit",
      { value: 6.0000001, standardUncertainty: 0.1, low: 4, high: 6 },
      "stop",
      -1e-7,
    ],
    ["far past", { value: 9, standardUncertainty: 0.1, low: 4, high: 6 }, "stop", -3],
    ["with an exact gauge, on the limit", { value: 4, standardUncertainty: 0, low: 4 }, "clear", 0],
    ["with an exact gauge, past it", { value: 3.9999, standardUncertainty: 0, low: 4 }, "stop", -1e-4],
    [
      "between limits closer than the gauge can tell",
      { value: 5, standardUncertainty: 1, low: 4.5, high: 5.5 },
      "caution",
      0.5,
    ],
  ])("%s", (_where, reading, status, margin) => {
    const judged = judgeReading(reading);
    expect(judged.status).toBe(status);
    expect(judged.margin).toBeCloseTo(margin, 9);
  });

  it("is clear from a probability of 0.95: 1.645 standard uncertainties inside one limit", () => {
    expect(CLEAR_FROM_1).toBe(0.95);
    expect(judgeReading({ value: 1.645, standardUncertainty: 1, low: 0 }).status).toBe("clear");
    expect(judgeReading({ value: 1.644, standardUncertainty: 1, low: 0 }).status).toBe("caution");
    expect(judgeReading({ value: -1.645, standardUncertainty: 1, high: 0 }).status).toBe("clear");
    expect(judgeReading({ value: -1.644, standardUncertainty: 1, high: 0 }).status).toBe("caution");
  });

  it("names the nearer limit, and the only one there is", () => {
    expect(judgeReading({ value: 4.4, standardUncertainty: 0.1, low: 4, high: 6 }).nearest).toBe("low");
    expect(judgeReading({ value: 5.6, standardUncertainty: 0.1, low: 4, high: 6 }).nearest).toBe("high");
    expect(judgeReading({ value: 100, standardUncertainty: 0.1, low: 4 }).nearest).toBe("low");
    expect(judgeReading({ value: -100, standardUncertainty: 0.1, high: 6 }).nearest).toBe("high");
  });

  it("keeps the probability between 0 and 1 and stops exactly where the margin is below zero", () => {
    fc.assert(
      fc.property(value, uncertainty, value, value, (reading, standardUncertainty, a, b) => {
        const low = Math.min(a, b);
        const high = Math.max(a, b);
        const judged = judgeReading({ value: reading, standardUncertainty, low, high });
        expect(judged.probability_1).toBeGreaterThanOrEqual(0);
        expect(judged.probability_1).toBeLessThanOrEqual(1);
        expect(judged.status === "stop").toBe(reading < low || reading > high);
        expect(judged.margin < 0).toBe(judged.status === "stop");
        if (judged.status === "clear") expect(judged.probability_1).toBeGreaterThanOrEqual(0.95);
        if (judged.status === "caution") expect(judged.probability_1).toBeLessThan(0.95);
      }),
    );
  });

  it("is never milder for a worse gauge or a reading nearer the limit", () => {
    const severity = { clear: 0, caution: 1, stop: 2 } as const;
    fc.assert(
      fc.property(
        value,
        uncertainty,
        fc.double({ min: 0, max: 1e4, noNaN: true }),
        (low, standardUncertainty, inside) => {
          const here = judgeReading({ value: low + inside, standardUncertainty, low });
          const coarser = judgeReading({
            value: low + inside,
            standardUncertainty: standardUncertainty * 2,
            low,
          });
          const nearer = judgeReading({ value: low + inside / 2, standardUncertainty, low });
          expect(severity[coarser.status]).toBeGreaterThanOrEqual(severity[here.status]);
          expect(severity[nearer.status]).toBeGreaterThanOrEqual(severity[here.status]);
        },
      ),
    );
  });

  it("gives the share between two limits that both lie on one side of the reading", () => {
    // Abramowitz and Stegun, Table 26.1: 0.97725 below 2, 0.84134 below 1
    const below = judgeReading({ value: 0, standardUncertainty: 1, low: 1, high: 2 });
    const above = judgeReading({ value: 3, standardUncertainty: 1, low: 1, high: 2 });
    for (const { status, probability_1, margin } of [below, above]) {
      expect(Math.abs(probability_1 - (0.97725 - 0.84134))).toBeLessThan(1.5e-5);
      expect([status, margin]).toEqual(["stop", -1]);
    }
    expect([below.nearest, above.nearest]).toEqual(["low", "high"]);
  });

  it("mirrors: a reading against a lower limit is its negative against an upper one", () => {
    fc.assert(
      fc.property(value, uncertainty, value, (reading, standardUncertainty, low) => {
        const below = judgeReading({ value: reading, standardUncertainty, low });
        const above = judgeReading({ value: -reading, standardUncertainty, high: -low });
        expect([above.status, above.margin]).toEqual([below.status, below.margin]);
        expect(Math.abs(above.probability_1 - below.probability_1)).toBeLessThan(1e-14);
      }),
    );
  });

  it.each([
    [
      { value: 5, standardUncertainty: 0.1 },
      "low, high: expected at least one limit, received none; a reading without a limit is open, not judged",
    ],
    [
      { value: Number.NaN, standardUncertainty: 0.1, low: 4 },
      "value: expected a finite number, received NaN",
    ],
    [
      { value: 5, standardUncertainty: 0.1, high: Number.POSITIVE_INFINITY },
      "high: expected a finite number, received Infinity",
    ],
    [
      { value: 5, standardUncertainty: -1, low: 4 },
      "standardUncertainty: expected zero or more, received -1",
    ],
    [
      { value: 5, standardUncertainty: Number.NaN, low: 4 },
      "standardUncertainty: expected zero or more, received NaN",
    ],
    [
      { value: 5, standardUncertainty: 0.1, low: 6, high: 4 },
      "low: expected at most the high limit, 4, received 6",
    ],
  ])("refuses %o", (reading, message) => {
    expect(() => judgeReading(reading)).toThrow(message);
  });
});
