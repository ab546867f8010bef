import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitOf } from "./fit.ts";
import type { TrendPoint } from "./trend.ts";

/* Invented series; the numbers of the mathematics are held against published ones in the engine. */

const DAY_MS = 86_400_000;
const STEP = 0.01;
const SCATTER = STEP / Math.sqrt(12);

/** A gauge of ±0.05, read to its step. */
const pointsOf = (values: readonly number[]): readonly TrendPoint[] =>
  values.map((value, day) => ({
    event: `event-${day}`,
    at_ms: day * 2 * DAY_MS,
    valueSI: Math.round(value / STEP) * STEP,
    shown: value,
    uncertaintySI: Math.hypot(0.05 / Math.sqrt(3), SCATTER),
    scatterSI: SCATTER,
    asRead: String(value),
    by: "AB",
  }));

/** Normal deviates from a fixed beginning: the same in each run. @source Box and Muller, 1958 */
function* deviates(seed: number): Generator<number, never> {
  let state = seed;
  const next = (): number => {
    state = (state * 1_664_525 + 1_013_904_223) % 4_294_967_296;
    return (state + 1) / 4_294_967_297;
  };
  for (;;) yield Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
}

describe("the fit of a series", () => {
  it("calls at most one in twenty sound series moving", () => {
    const noise = deviates(20_310_508);
    const SERIES = 120;
    let moving = 0;
    for (let series = 0; series < SERIES; series += 1) {
      const values = Array.from({ length: 40 }, () => 5.4 + 0.02 * noise.next().value);
      if (fitOf(pointsOf(values), 0).kind === "moving") moving += 1;
    }
    expect(moving / SERIES).toBeLessThanOrEqual(0.05);
  });

  it("finds a leak of one step a reading under twice that scatter", () => {
    const noise = deviates(7);
    let found = 0;
    for (let series = 0; series < 40; series += 1) {
      const values = Array.from({ length: 20 }, (_, at) => 5.4 - STEP * at + 0.02 * noise.next().value);
      const fit = fitOf(pointsOf(values), 0);
      if (fit.kind === "moving" && fit.slope_perDay < 0) found += 1;
    }
    expect(found).toBeGreaterThanOrEqual(38);
  });

  it("is turned by no single wild reading", () => {
    const values = Array.from({ length: 12 }, (_, at) => 5.4 + (at % 2) * STEP);
    const wild = values.with(7, 52);
    const fit = fitOf(pointsOf(wild), 0);
    expect(fit.kind).toBe("steady");
    expect(fit.kind !== "too-few" && fit.odd).toEqual([7]);
  });

  it("says nothing of fewer than five, whatever they are", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 10, noNaN: true }), { maxLength: 4 }), (values) => {
        expect(fitOf(pointsOf(values), 0)).toEqual({ kind: "too-few", n: values.length, needed: 5 });
      }),
    );
  });

  it("gives finite numbers for whatever was read", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 5, maxLength: 30 }),
        (values) => {
          const fit = fitOf(pointsOf(values), 0);
          if (fit.kind === "too-few") return;
          for (const value of [fit.slope_perDay, fit.low_perDay, fit.high_perDay, fit.line.slope]) {
            expect(Number.isFinite(value)).toBe(true);
          }
          expect(fit.low_perDay).toBeLessThanOrEqual(fit.slope_perDay);
          expect(fit.high_perDay).toBeGreaterThanOrEqual(fit.slope_perDay);
        },
      ),
      { numRuns: 60 },
    );
  });
});
