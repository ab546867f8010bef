import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputError } from "../input-error.ts";
import { changePoint } from "./change-point.ts";
import { crossing } from "./crossing.ts";
import { kendall, kendallTail_1 } from "./kendall.ts";
import { leastSquares, predictionInterval } from "./least-squares.ts";
import { slowLeak } from "./slow-leak.ts";
import { modifiedZ } from "./statistics.ts";
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

  // 5 % of 800 are 40, and 60 is more than three standard errors above; none at all would be a test that never finds
  it.each([
    { n: 5, sd: undefined },
    { n: 5, sd: 1 },
    { n: 6, sd: undefined },
    { n: 15, sd: undefined },
    { n: 15, sd: 1 },
    { n: 60, sd: 1 },
  ])("is claimed of one in twenty series of a sound gauge: $n readings, spread $sd", ({ n, sd }) => {
    const draw = noise(20_261_125);
    const t = Array.from({ length: n }, (_, at) => at * 2 + (at % 3) / 2);
    const series = Array.from({ length: 800 }, () => t.map((at) => draw() - at * 0.1));
    const claimed = series.filter((y) => changePoint(t, y, sd) !== undefined).length;
    expect(claimed).toBeLessThanOrEqual(60);
    expect(claimed).toBeGreaterThanOrEqual(8);
  });

  it("in the flow of the Nile is found between 1898 and 1899", () => {
    // yearly flow at Aswan, 1871 to 1970, 1e8 m³, and its change: Cobb, The problem of the Nile, Biometrika 65, 1978;
    // figures from memory, their mean is the published 919.35
    const flow = [
      1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180, 799,
      958, 1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774, 840, 874, 694, 940, 833, 701, 916, 692,
      1020, 1050, 969, 831, 726, 456, 824, 702, 1120, 1100, 832, 764, 821, 768, 845, 864, 862, 698, 845, 744,
      796, 1040, 759, 781, 865, 845, 944, 984, 897, 822, 1010, 771, 676, 649, 846, 812, 742, 801, 1040, 860,
      874, 848, 890, 744, 749, 838, 1050, 918, 986, 797, 923, 975, 815, 1020, 906, 901, 1170, 912, 746, 919,
      718, 714, 740,
    ];
    const years = flow.map((_, index) => 1871 + index);
    const found = changePoint(years, flow);
    if (found === undefined || found.kind === "too-few") throw new Error("expected a change");
    expect(found.kind).toBe("level");
    expect(found.between.map((place) => years[place])).toEqual([1898, 1899]);
    expect(found.p).toBeLessThan(0.001);
  });

  it("is found where a slope begins, too, and is told with both slopes", () => {
    const draw = noise(11);
    const t = Array.from({ length: 40 }, (_, at) => at * 2);
    const y = t.map((at) => 50 - Math.max(0, at - 39) * 0.3 + draw() * 0.2);
    const found = changePoint(t, y, 0.2);
    if (found === undefined || found.kind === "too-few") throw new Error("expected a change");
    expect(found.kind).toBe("slope");
    expect(Math.abs(found.between[0] - 19)).toBeLessThanOrEqual(1);
    expect(found.before.slope_perDay).toBeCloseTo(0, 1);
    expect(found.after.slope_perDay).toBeCloseTo(-0.3, 1);
  });

  it("is not claimed of a straight line, of a constant, nor of one odd last reading", () => {
    const t = Array.from({ length: 12 }, (_, at) => at);
    for (const y of [t.map(() => 7), t.map((at) => 7.1 - 0.2 * at), t.map((at) => 1e6 + at / 3)]) {
      expect(changePoint(t, y)).toBeUndefined();
      expect(changePoint(t, y, 0.1)).toBeUndefined();
    }
    const draw = noise(3);
    const odd = t.map((at) => draw() + (at === 11 ? 3 : 0));
    expect(changePoint(t, odd, 1)).toBeUndefined();
  });
});

describe("a series of any shape", () => {
  const series = fc.array(
    fc.tuple(fc.double({ min: 0.01, max: 90, noNaN: true }), fc.integer({ min: -6, max: 6 })),
    { minLength: 5, maxLength: 30 },
  );

  it("gives finite figures, with the robust slope inside its interval, which widens with the confidence", () => {
    fc.assert(
      fc.property(series, (drawn) => {
        let at = 0;
        const t = drawn.map(([gap]) => {
          at += gap;
          return at;
        });
        const y = drawn.map(([, value]) => value);
        const narrow = theilSen(t, y, 0.8);
        const wide = theilSen(t, y, 0.95);
        if (narrow.kind === "robust-line" && wide.kind === "robust-line") {
          expect(wide.low).toBeLessThanOrEqual(narrow.low);
          expect(narrow.low).toBeLessThanOrEqual(narrow.slope_perDay);
          expect(narrow.slope_perDay).toBeLessThanOrEqual(narrow.high);
          expect(narrow.high).toBeLessThanOrEqual(wide.high);
        }
        const line = leastSquares(t, y, 1);
        if (line.kind !== "line") throw new Error("expected a line");
        const told = [narrow, wide, line, kendall(t, y), changePoint(t, y) ?? {}, crossing(line, 3)];
        const figures = told.flatMap((one) => Object.values(one)).filter((one) => typeof one === "number");
        expect(figures.filter((one) => !Number.isFinite(one))).toEqual([]);
        const watch = slowLeak(t, y, 0.5, { direction: "falling" });
        if (watch.kind !== "watch") throw new Error("expected a watch");
        expect([...watch.evidence_d, ...watch.alarmFrom_d].filter((one) => !Number.isFinite(one))).toEqual(
          [],
        );
      }),
    );
  });

  it("turned upside down gives the same with the other sign", () => {
    fc.assert(
      fc.property(series, (drawn) => {
        const t = drawn.map((_, index) => index * 1.5);
        const y = drawn.map(([, value]) => value);
        const up = theilSen(t, y, 0.9);
        const down = theilSen(
          t,
          y.map((value) => -value),
          0.9,
        );
        expect(down.kind).toBe(up.kind);
        if (up.kind !== "robust-line" || down.kind !== "robust-line") return;
        expect(down.slope_perDay).toBeCloseTo(-up.slope_perDay, 12);
        expect(down.low).toBeCloseTo(-up.high, 12);
      }),
    );
  });

  it("without any change has slope 0, and is as unsure as the gauge's steps are wide", () => {
    const t = [0, 3, 5, 8, 12, 13];
    const y = t.map(() => 40);
    expect(theilSen(t, y, 0.95)).toMatchObject({ slope_perDay: 0, low: 0, high: 0, intercept: 40 });
    const stepped = theilSen(t, y, 0.95, 2);
    if (stepped.kind !== "robust-line") throw new Error("expected a line");
    expect(stepped.low).toBeLessThan(-0.05);
    expect(stepped.high).toBe(-stepped.low);
    expect(leastSquares(t, y)).toMatchObject({ slope: 0, residualSd: 0 });
    // a step of 2 has a standard deviation of 2/√12: JCGM 100, F.2.2.1
    expect(leastSquares(t, y, 2)).toMatchObject({ slope: 0, residualSd: 2 / Math.sqrt(12) });
    expect(kendall(t, y)).toMatchObject({ s: 0, p: 1 });
    expect(modifiedZ(y)).toEqual(y.map(() => 0));
  });

  it("with one wild reading keeps its robust slope", () => {
    const t = Array.from({ length: 15 }, (_, at) => at);
    const y = t.map((at) => (at === 7 ? 1e6 : 100 - at));
    expect(theilSen(t, y, 0.95)).toMatchObject({ slope_perDay: -1 });
  });

  it("of two thousand readings is taken, of more refused by the robust line alone", () => {
    const t = Array.from({ length: 5000 }, (_, at) => at);
    const y = t.map((at) => 3 - 0.5 * at);
    expect(theilSen(t.slice(0, 2000), y.slice(0, 2000), 0.95)).toMatchObject({ slope_perDay: -0.5 });
    expect(() => theilSen(t.slice(0, 2001), y.slice(0, 2001), 0.95)).toThrow(
      "y: expected 2000 readings at most, received 2001; take the latest ones: every pair of readings is one slope",
    );
    expect(leastSquares(t, y)).toMatchObject({ n: 5000, slope: -0.5 });
    expect(kendall(t, y)).toMatchObject({ s: -(5000 * 4999) / 2, p: 0 });
    const still = t.map(() => 0);
    expect(slowLeak(t, still, 1, { direction: "falling" })).not.toHaveProperty("alarmAt");
  });

  it("is refused by name where two readings share a time, or all do", () => {
    expect(() => kendall([0, 1, 1, 2, 3], [1, 2, 3, 4, 5])).toThrow(
      "t_d: expected each reading later than the one before it, received 1 d and then 1 d, as values 2 and 3; " +
        "sort the readings by time, and keep one of those that were taken at the same time",
    );
    expect(() => leastSquares([2, 2, 2, 2, 2], [1, 2, 3, 4, 5])).toThrow(
      "t_d: expected readings of two different times at least, received 5 at 2 d; a slope needs time to pass",
    );
  });
});

describe("Kendall's p with ties", () => {
  const orders = (left: readonly number[]): readonly (readonly number[])[] =>
    left.length === 0
      ? [[]]
      : left.flatMap((value, at) =>
          orders(left.filter((_, other) => other !== at)).map((rest) => [value, ...rest]),
        );
  const scoreOf = (y: readonly number[]): number =>
    y.flatMap((a, at) => y.slice(at + 1).map((b) => Math.sign(b - a))).reduce((sum, one) => sum + one, 0);

  // counted here order by order, as Kendall, Rank Correlation Methods, 1975, defines it
  it.each([
    { y: [1, 1, 2, 2, 3] },
    { y: [1, 2, 1, 2, 3] },
    { y: [3, 2, 1, 2, 1] },
    { y: [1, 1, 1, 2, 1, 2] },
  ])("counts every order of $y", ({ y }) => {
    const scores = orders(y).map(scoreOf);
    const beyond = scores.filter((one) => Math.abs(one) >= Math.abs(scoreOf(y))).length;
    const test = kendall(
      y.map((_, at) => at),
      y,
    );
    if (test.kind !== "kendall") throw new Error("expected a test");
    expect(test.s).toBe(scoreOf(y));
    expect(test.p).toBeCloseTo(beyond / scores.length, 12);
  });
});

describe("when a limit is met", () => {
  it("is where the line and the two ends of the prediction interval come to it", () => {
    const draw = noise(5);
    const t = Array.from({ length: 12 }, (_, at) => at * 5);
    const line = leastSquares(
      t,
      t.map((at) => 60 - 0.2 * at + draw()),
    );
    if (line.kind !== "line") throw new Error("expected a line");
    const { earliest_d, expected_d, latest_d } = crossing(line, 40, 0.95);
    if (earliest_d === undefined || expected_d === undefined || latest_d === undefined)
      throw new Error("expected three times");
    expect(earliest_d).toBeLessThan(expected_d);
    expect(expected_d).toBeLessThan(latest_d);
    expect(predictionInterval(line, earliest_d, 0.95).low).toBeCloseTo(40, 9);
    expect(predictionInterval(line, expected_d, 0.95).expected).toBeCloseTo(40, 9);
    expect(predictionInterval(line, latest_d, 0.95).high).toBeCloseTo(40, 9);
  });

  it("has no date where the readings move away, and is now where they are past it", () => {
    const t = [0, 1, 2, 3, 4, 5];
    const line = leastSquares(
      t,
      t.map((at) => 10 + at),
    );
    if (line.kind !== "line") throw new Error("expected a line");
    expect(crossing(line, 9)).toEqual({});
    expect(crossing(line, 15)).toMatchObject({ earliest_d: 5, expected_d: 5 });
  });
});

describe("a slow leak", () => {
  // 5 % of 300 are 15; 25 is more than two and a half standard errors above
  it.each([{ gaps_d: [1] }, { gaps_d: [1, 4, 2, 3, 2] }, { gaps_d: [7] }])(
    "is claimed of one sound series in twenty within the horizon, with readings $gaps_d days apart",
    ({ gaps_d }) => {
      const horizon_d = 180;
      const draw = noise(1971);
      const t: number[] = [];
      for (let at = 0; at <= horizon_d; at += gaps_d[t.length % gaps_d.length] ?? 1) t.push(at);
      const called = Array.from({ length: 300 }, () =>
        slowLeak(t, t.map(draw), 1, { direction: "falling", horizon_d }),
      ).filter((watch) => watch.kind === "watch" && watch.alarmAt !== undefined);
      expect(called.length).toBeLessThanOrEqual(25);
      expect(called.length).toBeGreaterThanOrEqual(1);
    },
  );

  it("is the same rising as falling, and says since when and how fast", () => {
    const draw = noise(17);
    const t = Array.from({ length: 60 }, (_, at) => at * 2);
    const falling = t.map((at) => 800 + draw() - Math.max(0, at - 60) * 0.4);
    const down = slowLeak(t, falling, 1, { direction: "falling" });
    const up = slowLeak(
      t,
      falling.map((value) => -value),
      1,
      { direction: "rising" },
    );
    if (down.kind !== "watch" || up.kind !== "watch") throw new Error("expected watches");
    expect(up.alarmAt).toBe(down.alarmAt);
    expect(up.likely?.slope_perDay).toBeCloseTo(-(down.likely?.slope_perDay ?? 0), 9);
    expect(down.likely?.slope_perDay).toBeCloseTo(-0.4, 1);
    expect(Math.abs((t[down.likely?.between[0] ?? 0] ?? 0) - 60)).toBeLessThanOrEqual(6);
    expect(slowLeak(t, falling, 1, { direction: "rising" })).not.toHaveProperty("alarmAt");
  });

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
