import { measure, UNITS, type UnitId } from "@witnessmark/engine";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Gauge } from "../schema/gauge.ts";
import { scaleAround } from "./reading-scale.ts";

const gaugeIn = (unit: UnitId, range?: readonly [number, number]): Gauge => ({
  id: "gauge",
  name: "Gauge",
  unit,
  dimension: UNITS[unit].dimension,
  coverage: "bound",
  accuracy: measure(1, unit),
  resolution: measure(1, unit),
  ...(range === undefined ? {} : { range: [measure(range[0], unit), measure(range[1], unit)] as const }),
});

const around = (unit: UnitId, ends: readonly number[], range?: readonly [number, number]) =>
  scaleAround(
    ends.map((end) => measure(end, unit)),
    gaugeIn(unit, range),
  ).map(({ value }) => value);

describe("a rule made from its limit", () => {
  it("has room on both sides and ends on whole figures", () => {
    expect(around("psi", [22, 26])).toEqual([15, 33]); // a quarter of 26 on each side
    expect(around("USqt", [4, 8])).toEqual([2, 10]); // half of what lies between
    expect(around("V", [24])).toEqual([18, 30]);
    expect(around("degC", [-20, -10])).toEqual([-26, -4]);
  });

  it("does not go below nothing, nor beyond what the gauge shows", () => {
    expect(around("psi", [0])).toEqual([0, 1]);
    expect(around("psi", [22, 26], [0, 30])).toEqual([15, 30]);
  });

  it("holds every end of the limit, with something beyond each but zero", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.01, max: 5000, noNaN: true }), { minLength: 1 }), (ends) => {
        const [low = 0, high = 0] = around("psi", ends);
        expect(low).toBeLessThan(Math.min(...ends));
        expect(high).toBeGreaterThan(Math.max(...ends));
        expect(low).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});
