import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { erfc, normalBelow_1 } from "./normal.ts";
import { normalQuantile } from "./normal-quantile.ts";
import { studentFactor } from "./student.ts";

describe("the complementary error function", () => {
  // Values computed with mpmath 1.3.0; 0.5, 1 and 2 also in Abramowitz and Stegun, Tables 7.1 and 7.2.
  it.each([
    [0, 1],
    [0.1, 0.887537083981715],
    [0.5, 0.4795001221869535],
    [1, 0.1572992070502851],
    [1.249, 0.07733668868493403],
    [1.251, 0.076863646104968],
    [1.5, 0.03389485352468927],
    [1.999, 0.00469844334862949],
    [2, 0.004677734981047266],
    [2.001, 0.004657109281475348],
    [3, 2.209049699858544e-5],
    [5, 1.537459794428035e-12],
    [10, 2.088487583762545e-45],
    [20, 5.395865611607901e-176],
    [-0.5, 1.520499877813047],
    [-2, 1.995322265018953],
    [-5, 1.999999999998463],
  ])("of %d is right to a part in 1e14", (x, value) => {
    expect(Math.abs(erfc(x) / value - 1)).toBeLessThan(1e-14);
  });

  it("is nothing far out and two at the other end", () => {
    expect(erfc(40)).toBe(0);
    expect(erfc(-40)).toBe(2);
  });
});

describe("the normal distribution", () => {
  it("has half on either side, and both sides together are one", () => {
    expect(normalBelow_1(0)).toBe(0.5);
    fc.assert(
      fc.property(fc.double({ min: -8, max: 8, noNaN: true }), (z) => {
        expect(Math.abs(normalBelow_1(z) + normalBelow_1(-z) - 1)).toBeLessThan(1e-14);
      }),
    );
  });

  it("never falls from left to right, across the change of method too", () => {
    const z = fc.oneof(
      fc.double({ min: -10, max: 10, noNaN: true }),
      fc.double({ min: 1.767, max: 1.769, noNaN: true }),
    );
    fc.assert(
      fc.property(z, z, (a, b) => {
        expect(normalBelow_1(Math.min(a, b))).toBeLessThanOrEqual(normalBelow_1(Math.max(a, b)) + 1e-15);
      }),
    );
  });

  // JCGM 100:2008, Table G.1: 95 % at 1.960, 99 % at 2.576, 90 % at 1.645, from memory
  it.each([
    [0.975, 1.96],
    [0.995, 2.576],
    [0.95, 1.645],
  ])("has the share %d below %d", (share, z) => {
    expect(Math.abs(normalQuantile(share) - z)).toBeLessThan(0.0005);
  });

  it("gives back the share of its own quantile", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 0.5, noNaN: true }), (share) => {
        expect(Math.abs(normalBelow_1(normalQuantile(share)) / share - 1)).toBeLessThan(1e-12);
        expect(normalQuantile(1 - share) + normalQuantile(share)).toBeCloseTo(0, 3);
      }),
    );
  });
});

describe("Student's factor", () => {
  // The closed forms of Abramowitz and Stegun, chapter 26: one degree of freedom is Cauchy's distribution.
  it.each([0.01, 0.5, 0.95, 0.9999])(
    "for a share of %d is the closed form at one and two degrees of freedom",
    (share) => {
      const one = Math.tan((Math.PI / 2) * share);
      const two = share * Math.sqrt(2 / (1 - share ** 2));
      expect(Math.abs(studentFactor(share, 1) / one - 1)).toBeLessThan(1e-10);
      expect(Math.abs(studentFactor(share, 2) / two - 1)).toBeLessThan(1e-10);
    },
  );

  it("falls towards the normal one as readings become many", () => {
    let before = Number.POSITIVE_INFINITY;
    for (const degrees of [1, 2, 3, 4, 5, 10, 50, 200, 1000]) {
      const factor = studentFactor(0.95, degrees);
      expect(factor).toBeLessThan(before);
      expect(factor).toBeGreaterThan(1.959963984540054);
      before = factor;
    }
    expect(before).toBeLessThan(1.963); // 1.9623 by any table of t at 1000 degrees of freedom
  });
});
