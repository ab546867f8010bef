import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exactSum, exactSumOfProducts } from "./exact-sum.ts";

/** A double as a whole number of 2^-1100, which every double is. */
function asWhole(value: number): bigint {
  const bits = new DataView(new ArrayBuffer(8));
  bits.setFloat64(0, value);
  const raw = bits.getBigUint64(0);
  const exponent = Number((raw >> 52n) & 0x7ffn);
  const fraction = raw & 0xfffffffffffffn;
  const mantissa = exponent === 0 ? fraction : fraction | 0x10000000000000n;
  const whole = mantissa << BigInt(Math.max(exponent, 1) - 1075 + 1100);
  return raw >> 63n === 0n ? whole : -whole;
}

const SCALE = 1100n;
const distance = (whole: bigint, value: number): bigint => {
  const gap = whole - asWhole(value);
  return gap < 0n ? -gap : gap;
};

/** The neighbours of a double, below and above. */
function neighbours(value: number): readonly number[] {
  const step = Math.max(Number.MIN_VALUE, Math.abs(value) * 2 ** -53);
  return [value - step, value + step];
}

const number = fc
  .double({ min: -1e6, max: 1e6, noNaN: true, noDefaultInfinity: true })
  .map((value) => (Math.abs(value) < 1e-100 ? 0 : value));

describe("a sum that is rounded once", () => {
  it("is the double nearest to the true sum, by whole-number arithmetic", () => {
    fc.assert(
      fc.property(fc.array(number, { maxLength: 20 }), (terms) => {
        const whole = terms.map(asWhole).reduce((a, b) => a + b, 0n);
        const sum = exactSum(terms);
        for (const other of neighbours(sum))
          expect(distance(whole, sum) <= distance(whole, other)).toBe(true);
      }),
    );
  });

  it("of products is the double nearest to the true sum", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(number, number), { maxLength: 12 }), (pairs) => {
        // Twice the scale: a product of two wholes of 2^-1100 is a whole of 2^-2200.
        const whole = pairs.map(([a, b]) => asWhole(a) * asWhole(b)).reduce((a, b) => a + b, 0n);
        const sum = exactSumOfProducts(pairs);
        const gap = (value: number): bigint => {
          const difference = whole - (asWhole(value) << SCALE);
          return difference < 0n ? -difference : difference;
        };
        for (const other of neighbours(sum)) expect(gap(sum) <= gap(other)).toBe(true);
      }),
    );
  });

  it("does not depend on the order, to the last bit", () => {
    fc.assert(
      fc.property(
        fc
          .array(number, { minLength: 2, maxLength: 12 })
          .chain((terms) =>
            fc.tuple(fc.constant(terms), fc.shuffledSubarray(terms, { minLength: terms.length })),
          ),
        ([terms, shuffled]) => {
          expect(exactSum(shuffled)).toBe(exactSum(terms));
        },
      ),
    );
  });

  it.each([
    [[0.1, 0.2, 0.3, -0.6], 2 ** -55], // by whole-number arithmetic: the four doubles leave 2^-55
    [[1e16, 1, -1e16], 1],
    [[1, 2 ** -53, 2 ** -106], 1 + 2 ** -52], // above the half: up
    [[1, 2 ** -53], 1], // the half itself: to even
    [[1, 2 ** -53, -(2 ** -106)], 1], // below the half: down
    [[], 0],
  ])("of %o is %d", (terms, sum) => {
    expect(exactSum(terms)).toBe(sum);
  });
});
