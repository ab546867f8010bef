import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { WIND_HEIGHT_px, type WindGiven, windLayout } from "./wind-layout.ts";

const given: fc.Arbitrary<WindGiven> = fc
  .record({
    width_px: fc.integer({ min: 296, max: 700 }),
    limit_mPerS: fc.double({ min: 2, max: 25, noNaN: true }),
    speed_mPerS: fc.double({ min: 0, max: 45, noNaN: true }),
    more_mPerS: fc.double({ min: 0, max: 20, noNaN: true }),
    angle_rad: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
  })
  .map(({ width_px, limit_mPerS, speed_mPerS, more_mPerS, angle_rad }) => ({
    width_px,
    limit_mPerS,
    speed_mPerS,
    gust_mPerS: speed_mPerS + more_mPerS,
    angle_rad,
    crosswind_mPerS: Math.abs((speed_mPerS + more_mPerS) * Math.sin(angle_rad)),
    side: Math.sin(angle_rad) < 0 ? -1 : 1,
  }));

describe("the drawing of the wind", () => {
  it("has the whole wind and its limit in the picture", () => {
    fc.assert(
      fc.property(given, (wind) => {
        const at = windLayout(wind);
        for (const [x, y] of [at.steady, at.gust, [at.limitX_px, at.touch_px] as const].flatMap((place) =>
          place === undefined ? [] : [place],
        )) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(wind.width_px);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(WIND_HEIGHT_px);
        }
      }),
    );
  });

  it("draws the margin true: the gust is beyond the limit line exactly when the crosswind is past the limit", () => {
    fc.assert(
      fc.property(given, (wind) => {
        const { gust, limitX_px, runwayX_px } = windLayout(wind);
        fc.pre(gust !== undefined && Math.abs(wind.crosswind_mPerS - wind.limit_mPerS) > 1e-6);
        const isBeyond = Math.abs((gust?.[0] ?? 0) - runwayX_px) > Math.abs(limitX_px - runwayX_px);
        expect(isBeyond).toBe(wind.crosswind_mPerS > wind.limit_mPerS);
      }),
    );
  });

  it("a headwind comes from above, a tailwind from below, a wind from the left from the left", () => {
    const wind = { width_px: 336, crosswind_mPerS: 5, limit_mPerS: 10, side: -1, speed_mPerS: 7 } as const;
    const ahead = windLayout({ ...wind, angle_rad: -0.8 });
    expect(ahead.steady?.[1]).toBeLessThan(ahead.touch_px);
    expect(ahead.steady?.[0]).toBeLessThan(ahead.runwayX_px);
    const behind = windLayout({ ...wind, angle_rad: -2.4 });
    expect(behind.steady?.[1]).toBeGreaterThan(behind.touch_px);
  });
});
