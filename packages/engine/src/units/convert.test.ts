import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { differenceFromSI, differenceToSI, fromSI, toSI } from "./convert.ts";
import {
  type Dimension,
  isUnitId,
  siUnitOf,
  UNITS,
  type UnitId,
  type UnitSpec,
  unitFromText,
  unitsOf,
} from "./units.ts";

const ids = Object.keys(UNITS).filter(isUnitId);
const dimensions = [...new Set(ids.map((id): Dimension => UNITS[id].dimension))];
const anyUnit = fc.constantFrom(...ids);
/** As gauges and pages have them: nothing under a thousandth. */
const anyValue = fc.integer({ min: -1e12, max: 1e12 }).map((thousandths) => thousandths / 1000);
const close = (a: number, b: number, scale: number): boolean =>
  Math.abs(a - b) <= 1e-12 * Math.max(scale, Math.abs(a), Math.abs(b));

describe("a conversion", () => {
  it("there and back is where it began", () => {
    fc.assert(
      fc.property(anyUnit, anyValue, (unit, value) => {
        const spec: UnitSpec = UNITS[unit];
        expect(close(fromSI(toSI(value, unit), unit), value, Math.abs(spec.offset ?? 0))).toBe(true);
      }),
    );
  });

  it("keeps the order of values", () => {
    fc.assert(
      fc.property(anyUnit, anyValue, anyValue, (unit, a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        expect(toSI(low, unit)).toBeLessThanOrEqual(toSI(high, unit));
        expect(fromSI(low, unit)).toBeLessThanOrEqual(fromSI(high, unit));
      }),
    );
  });

  it("of a difference is the difference of the conversions", () => {
    fc.assert(
      fc.property(
        anyUnit,
        fc.integer({ min: -1e6, max: 1e6 }).map((n) => n / 1000),
        (unit, step) => {
          const spec: UnitSpec = UNITS[unit];
          const scale = 1e3 * spec.factor * (1 + Math.abs(spec.offset ?? 0));
          expect(
            Math.abs(toSI(100 + step, unit) - toSI(100, unit) - differenceToSI(step, unit)),
          ).toBeLessThanOrEqual(1e-12 * scale);
          expect(close(differenceFromSI(differenceToSI(step, unit), unit), step, 0)).toBe(true);
        },
      ),
    );
  });

  it("of a temperature difference takes no 32: 9 °F is 5 K", () => {
    expect(differenceToSI(9, "degF")).toBeCloseTo(5, 12); // SP 811, B.8 footnote: 1 °F of interval is 5/9 K
    expect(toSI(32, "degF")).toBeCloseTo(273.15, 10);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])("refuses %s both ways", (value) => {
    expect(() => toSI(value, "psi")).toThrow(`value_psi: expected a finite number, received ${value}`);
    expect(() => fromSI(value, "psi")).toThrow(`value_psi: expected a finite number, received ${value}`);
  });
});

describe("the units", () => {
  // NIST SP 811 (2008), Appendix B.8: figures as printed there, to its seven digits.
  it.each<[UnitId, number]>([
    ["psi", 6.894757e3],
    ["inHg", 3.386389e3],
    ["mmHg", 1.333224e2],
    ["kgfPerCm2", 9.80665e4],
    ["atm", 1.01325e5],
    ["bar", 1e5],
    ["lb", 4.535924e-1],
    ["oz", 2.834952e-2],
    ["t", 1e3],
    ["ft", 3.048e-1],
    ["in", 2.54e-2],
    ["in2", 6.4516e-4],
    ["ft2", 9.290304e-2],
    ["USgal", 3.785412e-3],
    ["impgal", 4.54609e-3],
    ["USqt", 9.463529e-4],
    ["USpt", 4.731765e-4],
    ["in3", 1.638706e-5],
    ["ft3", 2.831685e-2],
    ["kt", 5.144444e-1],
    ["mph", 4.4704e-1],
    ["ftPerMin", 5.08e-3],
    ["ftPerS", 3.048e-1],
    ["rpm", 1.666667e-2],
    ["Ah", 3.6e3],
    ["lbPerUSgal", 1.198264e2],
    ["lbf", 4.448222],
    ["kgf", 9.80665],
    ["ftlbf", 1.355818],
    ["inlbf", 1.129848e-1],
    ["hp", 7.456999e2],
    ["PS", 7.354988e2],
    ["USgalPerH", 3.785412e-3 / 3600],
    ["LPerMin", 1e-3 / 60],
    ["lbPerH", 1.259979e-4],
    ["lbPerFt2", 4.882428],
    ["lbin", 4.535924e-1 * 2.54e-2],
    ["lbft", 4.535924e-1 * 3.048e-1],
  ])("has %s at its printed factor", (unit, factor) => {
    expect(Math.abs(UNITS[unit].factor / factor - 1)).toBeLessThanOrEqual(5e-7); // half the seventh digit
  });

  it("have one SI unit for each dimension, first among those offered", () => {
    expect(dimensions.length).toBeGreaterThan(15);
    for (const dimension of dimensions) {
      const si = siUnitOf(dimension);
      expect(UNITS[si]).toMatchObject({ dimension, factor: 1 });
      expect(unitsOf(dimension)[0]).toBe(si);
    }
  });

  it("are each read from their id, their symbol and their other spellings, and no spelling means two", () => {
    const seen = new Map<string, UnitId>();
    for (const id of ids) {
      const spec: UnitSpec = UNITS[id];
      for (const spelling of [id, spec.symbol, ...(spec.also ?? [])].filter((text) => text !== "")) {
        expect(seen.get(spelling) ?? id, `"${spelling}"`).toBe(id);
        seen.set(spelling, id);
        expect(unitFromText(spelling)).toBe(id);
      }
    }
    expect(unitFromText("furlong")).toBeUndefined();
  });
});
