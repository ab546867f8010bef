import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromSI, toSI } from "../units/convert.ts";
import { onArc } from "./circle.ts";
import { crosswindComponent, headwindComponent, trueDirection } from "./components.ts";
import { countedWind, windAtCrosswindLimit } from "./limits.ts";
import {
  isGustReported,
  type RunwayWind,
  roundedRunwayWind,
  strongestWind_mPerS,
  type Wind,
  windOnRunway,
} from "./runway-wind.ts";

interface DecodedCase {
  readonly id: string;
  readonly expected: Readonly<Record<string, unknown>>;
}
const filed: { readonly cases: readonly DecodedCase[] } = JSON.parse(
  readFileSync(new URL("../../../../reference/decoded/wind.json", import.meta.url), "utf8"),
);
const expectedOf = (id: string): Readonly<Record<string, unknown>> => {
  const found = filed.cases.find((one) => one.id === id);
  if (found === undefined) throw new Error(`reference/decoded/wind.json has no case ${id}`);
  return found.expected;
};

const kt = (speed: number): number => toSI(speed, "kt");
const deg = (angle: number): number => toSI(angle, "deg");
const inKt = ({ headwind_mPerS, tailwind_mPerS, crosswind_mPerS }: RunwayWind): readonly number[] =>
  [headwind_mPerS, tailwind_mPerS, crosswind_mPerS].map((speed) => fromSI(speed, "kt"));

const from = (direction: number, speed: number, gust?: number): Wind => ({
  direction: { kind: "from", from_rad: deg(direction) },
  speed_mPerS: kt(speed),
  ...(gust === undefined ? {} : { gust_mPerS: kt(gust) }),
});
const sector = (main: number, low: number, high: number, speed: number, gust: number): Wind => ({
  direction: { kind: "sector", from_rad: deg(main), sector: { from_rad: deg(low), to_rad: deg(high) } },
  speed_mPerS: kt(speed),
  gust_mPerS: kt(gust),
});
const variable = (speed: number, gust?: number): Wind => ({
  direction: { kind: "variable" },
  speed_mPerS: kt(speed),
  ...(gust === undefined ? {} : { gust_mPerS: kt(gust) }),
});

const angle = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
const speed = fc.double({ min: 0, max: 60, noNaN: true });

describe("the components of a wind", () => {
  it("have squares that add up to the square of its speed", () => {
    fc.assert(
      fc.property(angle, angle, speed, (runwayHeading_rad, windFrom_rad, windSpeed_mPerS) => {
        const given = { runwayHeading_rad, windFrom_rad, windSpeed_mPerS };
        const sum = headwindComponent.compute(given) ** 2 + crosswindComponent.compute(given) ** 2;
        expect(Math.abs(sum - windSpeed_mPerS ** 2)).toBeLessThanOrEqual(
          1e-12 * Math.max(1, windSpeed_mPerS ** 2),
        );
      }),
    );
  });

  it("change their sign when the runway is used the other way", () => {
    fc.assert(
      fc.property(angle, speed, (windFrom_rad, windSpeed_mPerS) => {
        const east = { runwayHeading_rad: Math.PI / 2, windFrom_rad, windSpeed_mPerS };
        const west = { ...east, runwayHeading_rad: (3 * Math.PI) / 2 };
        expect(headwindComponent.compute(west)).toBeCloseTo(-headwindComponent.compute(east), 9);
        expect(crosswindComponent.compute(west)).toBeCloseTo(-crosswindComponent.compute(east), 9);
      }),
    );
  });

  it("are within the crosswind limit at the strongest wind that is said to keep it", () => {
    const given = { runwayHeading_rad: deg(200), windFrom_rad: deg(255) };
    const wind = windAtCrosswindLimit.compute({ ...given, crosswindLimit_mPerS: kt(17) });
    expect(crosswindComponent.compute({ ...given, windSpeed_mPerS: wind })).toBeCloseTo(kt(17), 12);
  });

  it("have no strongest wind where it blows along the runway", () => {
    expect(() =>
      windAtCrosswindLimit.compute({ runwayHeading_rad: 1, windFrom_rad: 1, crosswindLimit_mPerS: 8 }),
    ).toThrow("wind-at-crosswind-limit, maxWind_mPerS: expected inputs that lead to");
  });
});

describe("the wind on a runway", () => {
  it("counts the headwind of the steady wind and the crosswind of the gust", () => {
    const expected = expectedOf("crosswind-kpit-28");
    const wind = windOnRunway(deg(280), from(220, 15, 25));
    const [headwind, tailwind, crosswind] = inKt(wind);
    expect(headwind).toBeCloseTo(Number(expected["headwind_kt"]), 1);
    expect(tailwind).toBe(0);
    expect(Math.abs((crosswind ?? 0) - Number(expected["gustCrosswind_kt"]))).toBeLessThanOrEqual(0.1);
    expect(wind.crosswindFrom).toBe(expected["crosswindFrom"]);
    expect(wind.along_mPerS).toBe(wind.headwind_mPerS);
  });

  it("counts the tailwind of the gust", () => {
    const wind = windOnRunway(deg(90), from(270, 8, 18));
    expect(inKt(wind).map((speed_kt) => Math.round(speed_kt * 1e6) / 1e6)).toEqual([0, 18, 0]);
    expect(fromSI(wind.along_mPerS, "kt")).toBeCloseTo(-18, 9);
  });

  it("takes the worst direction of a sector: 32012G22KT 280V350 on 28", () => {
    const expected = expectedOf("wind-metar-variable-group");
    const wind = windOnRunway(deg(280), sector(320, 280, 350, 12, 22));
    const [headwind = 0, tailwind, crosswind = 0] = inKt(wind);
    expect(Math.abs(crosswind - Number(expected["worstCrosswind_kt"]))).toBeLessThanOrEqual(0.06);
    expect(Math.abs(headwind - Number(expected["worstHeadwind_kt"]))).toBeLessThanOrEqual(0.06);
    expect(tailwind).toBe(0);
    expect(wind.crosswindFrom).toBe("right");
  });

  it("is square across where the sector holds the abeam direction: 22015G25KT 180V250 on 28", () => {
    const expected = expectedOf("crosswind-sector");
    const wind = windOnRunway(deg(280), sector(220, 180, 250, 15, 25));
    expect(fromSI(wind.crosswind_mPerS, "kt")).toBeCloseTo(Number(expected["worstGustCrosswind_kt"]), 9);
    expect(wind.crosswindFrom).toBe("left");
    // 180 is 100 degrees off: 25 cos 100 = −4.34 of tailwind, and no headwind is left to count on
    expect(fromSI(wind.tailwind_mPerS, "kt")).toBeCloseTo(4.341, 3);
    expect(wind.headwind_mPerS).toBe(0);
  });

  it("goes through a sector clockwise, across north too", () => {
    const across = windOnRunway(deg(360), sector(10, 340, 40, 10, 10));
    expect(across.crosswindFrom).toBe("either side");
    expect(fromSI(across.crosswind_mPerS, "kt")).toBeCloseTo(10 * Math.sin(deg(40)), 9);
    const round = windOnRunway(deg(360), sector(180, 40, 340, 10, 10));
    expect(fromSI(round.tailwind_mPerS, "kt")).toBeCloseTo(10, 9);
  });

  it("takes all of a variable wind as tailwind and as crosswind, and a calm as nothing", () => {
    const expected = expectedOf("wind-metar-vrb-calm");
    const found = [variable(4), from(0, 0)].map((wind) => windOnRunway(deg(110), wind));
    const inWholeKt = (of: (wind: RunwayWind) => number): readonly number[] =>
      found.map((wind) => Number(fromSI(of(wind), "kt").toFixed(9)));
    expect(inWholeKt((wind) => wind.crosswind_mPerS)).toEqual(expected["worstCrosswind_kt"]);
    expect(inWholeKt((wind) => wind.tailwind_mPerS)).toEqual(expected["worstTailwind_kt"]);
    expect(found.map(({ crosswindFrom }) => crosswindFrom)).toEqual(["either side", "none"]);
    expect(windOnRunway(deg(280), from(0, 0)).along_mPerS).toBe(expectedOf("crosswind-calm")["headwind_kt"]);
  });

  it("takes the gust of a variable wind", () => {
    expect(inKt(windOnRunway(1, variable(8, 20)))[2]).toBeCloseTo(20, 9);
  });

  it("is never kinder for a sector than for any direction in it", () => {
    fc.assert(
      fc.property(
        angle,
        angle,
        angle,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (heading, low, width, share) => {
          const direction = { from_rad: low, to_rad: low + width };
          const one = low + width * share;
          fc.pre(onArc(direction, one));
          const whole = windOnRunway(heading, {
            direction: { kind: "sector", sector: direction },
            speed_mPerS: 10,
          });
          const single = windOnRunway(heading, {
            direction: { kind: "from", from_rad: one },
            speed_mPerS: 10,
          });
          expect(whole.crosswind_mPerS).toBeGreaterThanOrEqual(single.crosswind_mPerS - 1e-9);
          expect(whole.tailwind_mPerS).toBeGreaterThanOrEqual(single.tailwind_mPerS - 1e-9);
          expect(whole.headwind_mPerS).toBeLessThanOrEqual(single.headwind_mPerS + 1e-9);
          expect(whole.along_mPerS).toBeLessThanOrEqual(single.along_mPerS + 1e-9);
        },
      ),
    );
  });

  it("counts a main direction that lies outside its own sector", () => {
    const wind = windOnRunway(deg(0), sector(180, 350, 10, 10, 10));
    expect(fromSI(wind.tailwind_mPerS, "kt")).toBeCloseTo(10, 9);
  });

  it("is rounded against the pilot", () => {
    const wind = windOnRunway(deg(280), from(220, 15, 25));
    expect(roundedRunwayWind(wind, "kt", 1)).toEqual({ headwind: 7, tailwind: 0, crosswind: 22 });
    fc.assert(
      fc.property(angle, angle, speed, (heading, direction, speed_mPerS) => {
        const exact = windOnRunway(heading, {
          direction: { kind: "from", from_rad: direction },
          speed_mPerS,
        });
        const whole = roundedRunwayWind(exact, "kt", 1);
        expect(whole.headwind).toBeLessThanOrEqual(fromSI(exact.headwind_mPerS, "kt") + 1e-6);
        expect(whole.crosswind).toBeGreaterThanOrEqual(fromSI(exact.crosswind_mPerS, "kt") - 1e-6);
        expect(whole.tailwind).toBeGreaterThanOrEqual(fromSI(exact.tailwind_mPerS, "kt") - 1e-6);
      }),
    );
  });

  it.each([
    [
      "a gust below the steady wind",
      { ...from(10, 15), gust_mPerS: 1 },
      "gust_mPerS: expected at least the steady wind",
    ],
    ["a speed below zero", from(10, -1), "speed_mPerS: expected a speed of zero or more"],
    [
      "a speed that is no number",
      { ...from(10, 0), speed_mPerS: Number.NaN },
      "speed_mPerS: expected a speed of zero or more, received NaN",
    ],
    [
      "a direction that is no number",
      { ...from(10, 5), direction: { kind: "from", from_rad: Number.NaN } },
      "from_rad: expected a direction, received NaN",
    ],
  ] as const)("refuses %s", (_what, wind, message) => {
    expect(() => windOnRunway(0, wind)).toThrow(message);
  });
});

describe("what a limit is compared with", () => {
  it("is the strongest wind of the report: 29017G27KT with a peak of 45", () => {
    const expected = expectedOf("peak-wind-used");
    const strongest = strongestWind_mPerS({ ...from(290, 17, 27), peak_mPerS: kt(45) });
    expect(fromSI(strongest, "kt")).toBeCloseTo(Number(expected["windForLimit_kt"]), 9);
    expect(strongest > kt(40)).toBe(expected["exceeds"]);
    expect(fromSI(strongestWind_mPerS(from(290, 17)), "kt")).toBeCloseTo(17, 9);
  });

  it("is a gust from ten knots between lull and peak", () => {
    expect([isGustReported(kt(24), kt(14)), isGustReported(kt(23), kt(14))]).toEqual(
      expectedOf("wind-gust-criterion")["gustReported"],
    );
    const spread = Number(expectedOf("gust-definition")["variationPeaksToLulls_kt"]);
    expect([isGustReported(kt(4 + spread), kt(4)), isGustReported(kt(3.9 + spread), kt(4))]).toEqual([
      true,
      false,
    ]);
  });

  it("is half of a headwind and one and a half of a tailwind, where nothing else is said", () => {
    fc.assert(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), (wind_mPerS) => {
        const counted = countedWind.compute({ wind_mPerS, headwindCredit_1: 0.5, tailwindCharge_1: 1.5 });
        expect(counted).toBeLessThanOrEqual(wind_mPerS);
      }),
    );
  });
});

describe("a magnetic direction", () => {
  it.each([
    [5, -10, 355],
    [355, 10, 5],
    [350, 10, 0],
  ])("of %d with a variation of %d stays on the circle: %d", (magnetic, variation, expected) => {
    const found = trueDirection.compute({
      magneticDirection_rad: deg(magnetic),
      variation_rad: deg(variation),
    });
    expect(fromSI(found, "deg")).toBeCloseTo(expected, 9);
  });
});
