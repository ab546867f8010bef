import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ChartFrame, chartFrame } from "../frame/chart-frame.ts";
import { CHECK_TOLERANCE_1, checkPoints, type EyeReading } from "./check-points.ts";
import { familyOf, guideLines, readChain, readFamily } from "./family.ts";
import { monotoneCurve } from "./monotone-curve.ts";
import { type ReadCurve, readCurve } from "./traced-curve.ts";

/** One pixel is one unit, y up from 1000. */
function squareFrame(): ChartFrame {
  const result = chartFrame(
    { scale: "linear", unit: "kt" },
    { scale: "linear", unit: "m" },
    {
      kind: "axes",
      x: [
        { at: { x_px: 0, y_px: 1000 }, value: 0 },
        { at: { x_px: 1000, y_px: 1000 }, value: 1000 },
      ],
      y: [
        { at: { x_px: 0, y_px: 1000 }, value: 0 },
        { at: { x_px: 0, y_px: 0 }, value: 1000 },
      ],
    },
  );
  if (!result.ok) throw new Error(result.says);
  return result.frame;
}

const through = (parameter: number, places: readonly (readonly [number, number])[]): ReadCurve => {
  const points = places.map(([x, y]) => ({ x_px: x, y_px: 1000 - y }));
  const result = readCurve(squareFrame(), { parameter, points }, "x");
  if (!result.ok) throw new Error(result.says);
  return result.curve;
};

describe("the smooth curve", () => {
  it("agrees with the published data of Fritsch and Carlson: rising data give a curve that never falls", () => {
    // RPN 14 of F. N. Fritsch and R. E. Carlson, 1980, table 1
    const knots = [
      [7.99, 0],
      [8.09, 2.76429e-5],
      [8.19, 4.37498e-2],
      [8.7, 0.169183],
      [9.2, 0.469428],
      [10, 0.94374],
      [12, 0.998636],
      [15, 0.999919],
      [20, 0.999994],
    ] as const;
    const curve = monotoneCurve(knots);
    let before = 0;
    for (let x = 7.99; x <= 20; x += 0.01) {
      const y = curve.at(x) ?? Number.NaN;
      expect(y).toBeGreaterThanOrEqual(before);
      before = y;
    }
    for (const [x, y] of knots) expect(curve.at(x)).toBeCloseTo(y, 12);
  });

  it("stays between neighbours and is silent outside", () => {
    const steps = fc.array(
      fc.tuple(fc.double({ min: 0.01, max: 5, noNaN: true }), fc.double({ min: -9, max: 9, noNaN: true })),
      {
        minLength: 2,
        maxLength: 12,
      },
    );
    fc.assert(
      fc.property(steps, fc.double({ min: 0, max: 1, noNaN: true }), (made, share) => {
        let x = 0;
        const knots = made.map(([step, y]) => {
          x += step;
          return [x, y] as const;
        });
        const curve = monotoneCurve(knots);
        const at = curve.from + share * (curve.to - curve.from);
        const after = knots.findIndex(([knot]) => knot >= at);
        const around = [knots[Math.max(0, after - 1)]?.[1] ?? 0, knots[after]?.[1] ?? 0];
        const y = curve.at(at) ?? Number.NaN;
        expect(y).toBeGreaterThanOrEqual(Math.min(...around) - 1e-9);
        expect(y).toBeLessThanOrEqual(Math.max(...around) + 1e-9);
        expect(curve.at(curve.from - 1e-6)).toBeUndefined();
        expect(curve.at(curve.to + 1e-6)).toBeUndefined();
      }),
    );
  });
});

describe("a traced curve", () => {
  it("may be traced from either end", () => {
    const there = through(0, [
      [0, 100],
      [500, 300],
      [1000, 900],
    ]);
    const back = through(0, [
      [1000, 900],
      [500, 300],
      [0, 100],
    ]);
    for (const x of [0, 250, 700, 1000]) expect(back.at(x)).toBeCloseTo(there.at(x) ?? Number.NaN, 9);
  });

  it("that turns back is refused, with the point", () => {
    const points = [
      [0, 0],
      [600, 300],
      [400, 600],
    ].map(([x = 0, y = 0]) => ({ x_px: x, y_px: 1000 - y }));
    const result = readCurve(squareFrame(), { parameter: 4000, points }, "x");
    expect(result).toEqual({
      ok: false,
      says: "The curve for 4000 turns back here: one value of the x axis would have two answers. Move the point, or enter by the other axis.",
      at: { x_px: 400, y_px: 400 },
    });
  });

  it("reads a finger's width past its end and no further", () => {
    const curve = through(0, [
      [5, 105],
      [500, 600],
      [995, 1095],
    ]);
    expect(curve.at(0)).toBeCloseTo(100, 0);
    expect(curve.at(-10)).toBeUndefined();
    expect(curve.at(1010)).toBeUndefined();
  });
});

describe("a family of curves", () => {
  const family = (curves: readonly ReadCurve[]) => {
    const result = familyOf(curves, "linear");
    if (!result.ok) throw new Error(result.says);
    return result.family;
  };

  it("gives nothing beyond its outermost curves or where a neighbour does not reach", () => {
    const two = family([
      through(0, [
        [0, 100],
        [1000, 200],
      ]),
      through(10, [
        [300, 230],
        [1000, 300],
      ]),
    ]);
    expect(readFamily(two, 5, 500)).toBeCloseTo(200, 6);
    expect(readFamily(two, -1, 500)).toBeUndefined();
    expect(readFamily(two, 11, 500)).toBeUndefined();
    expect(readFamily(two, 5, 100)).toBeUndefined();
  });

  it("refuses two curves for one value", () => {
    const result = familyOf(
      [
        through(4000, [
          [0, 1],
          [9, 2],
        ]),
        through(4000, [
          [0, 1],
          [9, 2],
        ]),
      ],
      "linear",
    );
    expect(result).toMatchObject({ says: "Two curves are traced for 4000. Give one of them its own value." });
  });

  it("hands a line on from panel to panel along guide lines", () => {
    // first panel: height is 300 + parameter; second: along guides that fall by 0.2 of their height from 800 to 400
    const first = family([
      through(0, [
        [0, 300],
        [1000, 300],
      ]),
      through(200, [
        [0, 500],
        [1000, 500],
      ]),
    ]);
    const guides = guideLines(
      [200, 400, 600].map((height) =>
        through(0, [
          [800, height],
          [400, 0.8 * height],
        ]),
      ),
      800,
    );
    if (!guides.ok) throw new Error(guides.says);
    const second = family(guides.curves);
    expect(readChain([first, second], 100, [20, 800])).toBeCloseTo(400, 6);
    expect(readChain([first, second], 100, [20, 400])).toBeCloseTo(320, 6);
    expect(readChain([first, second], 50, [20, 400])).toBeCloseTo(280, 3);
    expect(readChain([first, second], 50, [20, 300])).toBeUndefined();
    expect(
      guideLines(
        [
          through(0, [
            [100, 1],
            [500, 2],
          ]),
        ],
        800,
      ),
    ).toMatchObject({ ok: false });
  });
});

describe("two readings by eye", () => {
  const checking = {
    value: ({ parameter, entered }: EyeReading) => (parameter === 0 ? 100 + (entered[0] ?? 0) : undefined),
    enteredSpans: [[0, 40]],
    readSpan: [0, 1000],
    readScale: "linear",
  } as const;
  const good = { parameter: 0, entered: [10], read: 112 };

  it("that agree let the table be taken", () => {
    const verdict = checkPoints([good, { parameter: 0, entered: [30], read: 121 }], checking);
    expect(verdict).toMatchObject({ taken: true, because: "agree" });
    expect(verdict.points.map(({ off }) => off)).toEqual([2, -9]);
  });

  it.each([
    [[good], "Read 1 more from the paper."],
    [
      [good, { ...good, entered: [11] }],
      "The two points are nearly the same. Read one of them elsewhere on the chart.",
    ],
    [
      [good, { parameter: 9, entered: [10], read: 1 }],
      "The curves do not reach point 2. Read a point that they cover.",
    ],
    [
      [good, { parameter: 0, entered: [30], read: 150 }],
      "Your reading of point 2 is off by 2.0 % of full scale; at most 1 % is expected. Look at the axes and the curve there again, or say why it stands.",
    ],
  ])("%j are not enough: %s", (readings, says) => {
    expect(checkPoints(readings, checking)).toMatchObject({ taken: false, says });
  });

  it("that differ stand with a reason", () => {
    const readings = [good, { parameter: 0, entered: [30], read: 150 }];
    expect(checkPoints(readings, { ...checking, why: "  " }).taken).toBe(false);
    expect(checkPoints(readings, { ...checking, why: "the print is smudged there" })).toMatchObject({
      taken: true,
      because: "said",
    });
    expect(CHECK_TOLERANCE_1).toBe(0.01);
  });
});
