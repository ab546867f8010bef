import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputError } from "../input-error.ts";
import { changePoint } from "./change-point.ts";
import { crossing } from "./crossing.ts";
import { kendallTail_1 } from "./kendall.ts";
import { leastSquares } from "./least-squares.ts";
import { slowLeak } from "./slow-leak.ts";
import { theilSen } from "./theil-sen.ts";

describe("Kendall's exact tail", () => {
  // Hollander, Wolfe and Chicken, table of the upper tail of S without ties; printed figures from memory, and counted
  // again by permutations.
  it.each([
    [4, 6, 0.042],
    [5, 8, 0.042],
    [6, 11, 0.028],
    [8, 16, 0.031],
    [10, 21, 0.036],
    [10, 23, 0.023],
  ])("n = %i, S of at least %i: %f", (n, s, p) => {
    expect(kendallTail_1(n, s)).toBeCloseTo(p, 3);
  });
});

/** A sound gauge about a value: draws that are the same in every run. */
const noise = (seed: number) => {
  let state = seed;
  return () => {
    let sum = 0;
    for (let draw = 0; draw < 12; draw += 1) {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      sum += state / 2 ** 32;
    }
    return sum - 6; // twelve uniform draws: close to a normal one
  };
};

describe("what is claimed of few readings", () => {
  it("nothing below five", () => {
    for (let n = 0; n < 5; n += 1) {
      const t = Array.from({ length: n }, (_, at) => at);
      expect(leastSquares(t, t)).toEqual({ kind: "too-few", n });
      expect(theilSen(t, t, 0.95)).toEqual({ kind: "too-few", n });
    }
  });

  it("refuses times that do not go on, and values that are none", () => {
    expect(() => theilSen([0, 1, 1, 2, 3], [1, 2, 3, 4, 5], 0.95)).toThrow(InputError);
    expect(() => leastSquares([0, 1, 2, 3, 4], [1, 2, Number.NaN, 4, 5])).toThrow(InputError);
  });
});

describe("a straight line without scatter", () => {
  it("is found exactly, whatever it is, and meets a limit where it does", () => {
    fc.assert(
      fc.property(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -200, max: 200 }), (slope, start) => {
        fc.pre(slope !== 0);
        const t = [0, 2, 3, 7, 8, 11];
        const y = t.map((at) => start + slope * at);
        const line = leastSquares(t, y);
        const robust = theilSen(t, y, 0.95);
        if (line.kind !== "line" || robust.kind !== "robust-line") throw new Error("expected lines");
        expect(line.slope).toBeCloseTo(slope, 9);
        expect(robust.slope_perDay).toBeCloseTo(slope, 9);
        const met = crossing(line, start + slope * 20);
        expect(met.expected_d).toBeCloseTo(20, 6);
      }),
    );
  });
});

describe("a change of level", () => {
  it("is found between the readings where it happened", () => {
    const draw = noise(7);
    const t = Array.from({ length: 20 }, (_, at) => at * 3);
    const y = t.map((_, at) => (at < 12 ? 100 : 92) + draw() * 0.5);
    const found = changePoint(t, y, 0.5);
    expect(found).toMatchObject({ kind: "level", between: [11, 12] });
  });

  it("is claimed of at most one in ten series of a sound gauge", () => {
    let claimed = 0;
    for (let seed = 1; seed <= 200; seed += 1) {
      const draw = noise(seed * 977);
      const t = Array.from({ length: 15 }, (_, at) => at * 2);
      if (changePoint(t, t.map(draw), 1) !== undefined) claimed += 1;
    }
    expect(claimed).toBeLessThanOrEqual(20);
  });
});

describe("a slow leak", () => {
  it("of 0.2 standard deviations a day is noticed within a month, and not before it began", () => {
    const late: number[] = [];
    for (let seed = 1; seed <= 40; seed += 1) {
      const draw = noise(seed * 131);
      const t = Array.from({ length: 60 }, (_, at) => at * 2);
      const y = t.map((at) => draw() - Math.max(0, at - 60) * 0.2);
      const watch = slowLeak(t, y, 1, { direction: "falling" });
      const noticed = watch.kind === "watch" ? watch.alarmAt : undefined;
      if (noticed !== undefined) late.push((t[noticed] ?? 0) - 60);
    }
    expect(late.length).toBeGreaterThanOrEqual(39);
    const inTime = late.filter((days) => days > 0 && days <= 30);
    expect(inTime.length).toBeGreaterThanOrEqual(36);
  });
});
