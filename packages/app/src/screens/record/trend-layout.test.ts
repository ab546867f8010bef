import type { Trend, TrendPoint } from "@witnessmark/assess";
import { leastSquares } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { trendLayout } from "./trend-layout.ts";

const DAY_MS = 86_400_000;
const START_MS = Date.UTC(2031, 4, 8, 7);

const point = (day: number, value: number): TrendPoint => ({
  event: `event-${day}`,
  at_ms: START_MS + day * DAY_MS,
  valueSI: value,
  shown: value,
  uncertaintySI: 0.1,
  scatterSI: 0.03,
  asRead: String(value),
  by: "AB",
});

/** A series in plain figures, so that a value stands for itself. */
function trendOf(values: readonly number[], parts: Partial<Trend> = {}): Trend {
  const points = values.map((value, day) => point(day, value));
  const line = leastSquares(
    values.map((_value, day) => day),
    values,
  );
  return {
    id: "reading:a",
    kind: "reading",
    title: "A",
    quantity: "a",
    unit: { perSI: 1, offset: 0, step: 0.1, symbol: "" },
    points,
    total: points.length,
    notReferred: 0,
    restarts: [],
    limits: {},
    from: 0,
    fit:
      line.kind === "too-few"
        ? { kind: "too-few", n: points.length, needed: 5 }
        : {
            kind: "steady",
            slope_perDay: line.slope,
            low_perDay: -1,
            high_perDay: 1,
            line,
            origin_ms: START_MS,
            from: 0,
            odd: [],
          },
    sentence: "",
    more: [],
    status: "clear",
    ...parts,
  };
}

const NOW_MS = START_MS + 9 * DAY_MS;
const layoutOf = (trend: Trend) => trendLayout(trend, NOW_MS, 336, 300);
const FALLING = [10, 9.8, 9.7, 9.5, 9.3, 9.2, 9.0, 8.9];

describe("the chart of a trend", () => {
  it("has every reading inside, later ones further right and larger ones higher", () => {
    const { points, left, right, top, bottom } = layoutOf(trendOf(FALLING));
    for (const { x, y } of points) {
      expect(x).toBeGreaterThan(left);
      expect(x).toBeLessThan(right);
      expect(y).toBeGreaterThan(top);
      expect(y).toBeLessThan(bottom);
    }
    expect(points.map(({ x }) => x)).toEqual(points.map(({ x }) => x).toSorted((a, b) => a - b));
    expect(points.map(({ y }) => y)).toEqual(points.map(({ y }) => y).toSorted((a, b) => a - b));
  });

  it("has a limit that is near inside, and names one that is far away at the edge", () => {
    const near = layoutOf(trendOf(FALLING, { limits: { low: 8.5 } })).limits[0];
    expect(near?.isAway).toBe(false);
    const far = layoutOf(trendOf(FALLING, { limits: { low: -500 } }));
    expect(far.limits[0]).toMatchObject({ isAway: true, y: far.bottom });
    const own = far.points.map(({ y }) => y);
    expect(Math.max(...own) - Math.min(...own)).toBeGreaterThan(100); // the readings keep their room
  });

  it("has a limit that is forecast inside, however far away", () => {
    const forecast = { limit: "low", limitSI: -500, earliest_ms: NOW_MS + 400 * DAY_MS } as const;
    expect(layoutOf(trendOf(FALLING, { limits: { low: -500 }, forecast })).limits[0]?.isAway).toBe(false);
  });

  it("leaves the future a part of its width, and never all of it", () => {
    const latest_ms = NOW_MS + 5000 * DAY_MS;
    const forecast = { limit: "low", limitSI: 8, earliest_ms: NOW_MS, latest_ms } as const;
    const { now, left, right } = layoutOf(trendOf(FALLING, { limits: { low: 8 }, forecast }));
    expect((now - left) / (right - left)).toBeGreaterThan(0.6);
  });

  it("draws no line through too few readings, and marks what came before a restart", () => {
    const few = layoutOf(
      trendOf([10, 9, 8, 7], {
        from: 2,
        restarts: [{ at_ms: START_MS + 1.5 * DAY_MS, what: "refilled", event: "e" }],
      }),
    );
    expect(few.line).toBeUndefined();
    expect(few.points.map(({ is }) => is)).toEqual(["earlier", "earlier", "fitted", "fitted"]);
    expect(few.restarts).toHaveLength(1);
  });

  it("keeps dates apart, over a day and over ten years", () => {
    for (const step_d of [0.1, 1, 10, 100, 450]) {
      const points = FALLING.map((value, at) => point(at * step_d, value));
      const last_ms = points.at(-1)?.at_ms ?? 0;
      const { dates } = trendLayout(trendOf(FALLING, { points }), last_ms, 336, 300);
      for (const [at, { x }] of dates.entries()) {
        const before = dates[at - 1];
        if (before !== undefined) expect(x - before.x).toBeGreaterThan(48);
      }
      if (step_d >= 1) expect(dates.length).toBeGreaterThan(0);
    }
  });

  it("names what began anew where there is room for the word, the newest always", () => {
    const anew = (...days: readonly number[]) =>
      layoutOf(
        trendOf(FALLING, {
          restarts: days.map((day) => ({
            event: `anew-${day}`,
            at_ms: START_MS + day * DAY_MS,
            what: "refilled",
          })),
        }),
      ).restarts;
    expect(anew(1, 4, 7).map(({ isNamed }) => isNamed)).toEqual([true, true, true]);
    // a day is about 29 px wide here and the word 64 px
    expect(anew(4, 5, 6, 7).map(({ isNamed }) => isNamed)).toEqual([true, false, false, true]);
    expect(anew(3).map(({ isNamed }) => isNamed)).toEqual([true]);
  });
});
