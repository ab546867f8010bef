import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { abortPoint, accelerateStopEstimate, latestAbortSpeedEstimate } from "./abort.ts";

const rolls = fc.record({
  liftOffSpeed_mPerS: fc.double({ min: 15, max: 80, noNaN: true }),
  takeOffRoll_m: fc.double({ min: 100, max: 2000, noNaN: true }),
  touchdownSpeed_mPerS: fc.double({ min: 15, max: 80, noNaN: true }),
  landingRoll_m: fc.double({ min: 100, max: 2000, noNaN: true }),
  reaction_s: fc.double({ min: 0, max: 5, noNaN: true }),
});

describe("stopping a take-off", () => {
  it("from the latest speed uses just the runway that there is, or less at lift-off speed", () => {
    fc.assert(
      fc.property(rolls, fc.double({ min: 100, max: 5000, noNaN: true }), (given, available_m) => {
        const abortSpeed_mPerS = latestAbortSpeedEstimate.compute({ available_m, ...given });
        const used_m = accelerateStopEstimate.compute({ abortSpeed_mPerS, ...given });
        expect(used_m).toBeLessThanOrEqual(available_m * (1 + 1e-9));
        if (abortSpeed_mPerS < given.liftOffSpeed_mPerS) expect(used_m / available_m).toBeCloseTo(1, 9);
      }),
    );
  });

  it("takes more runway from more speed", () => {
    fc.assert(
      fc.property(rolls, fc.double({ min: 0.1, max: 0.9, noNaN: true }), (given, share) => {
        const at = (part: number): number =>
          accelerateStopEstimate.compute({ abortSpeed_mPerS: part * given.liftOffSpeed_mPerS, ...given });
        expect(at(share + 0.1)).toBeGreaterThan(at(share));
      }),
    );
  });

  it("is not asked of a speed above lift-off", () => {
    expect(() =>
      accelerateStopEstimate.compute({
        abortSpeed_mPerS: 36,
        liftOffSpeed_mPerS: 35,
        takeOffRoll_m: 350,
        touchdownSpeed_mPerS: 30,
        landingRoll_m: 300,
        reaction_s: 2,
      }),
    ).toThrow("accelerate-stop-estimate, shareOfLiftOffSpeed_1: expected inputs that lead to");
  });
});

describe("the abort point", () => {
  const given = {
    liftOffSpeed_mPerS: 30,
    takeOffRoll_m: 300,
    touchdownSpeed_mPerS: 30,
    landingRoll_m: 250,
    reaction_s: 2,
  };

  it("is half of the runway, at 70 % of the lift-off speed, and says whether the rest is enough to stop", () => {
    // Worked by hand: 400 + 21 × 2 + 250 × 0.49 = 564.5 m
    const point = abortPoint(800, given);
    expect(point).toMatchObject({ at_m: 400, speed_mPerS: 21, stopsWithinRunway: true });
    expect(point.stop_m).toBeCloseTo(564.5, 9);
    expect(point.method).toContain("70 % of the lift-off speed");
  });

  it("says so when it is not", () => {
    // 150 + 42 + 122.5 = 314.5 m of 300
    expect(abortPoint(300, given)).toMatchObject({ stopsWithinRunway: false });
  });

  it("refuses a runway that is none", () => {
    expect(() => abortPoint(Number.NaN, given)).toThrow(
      "latest-abort-speed-estimate, available_m: expected a number",
    );
  });
});
