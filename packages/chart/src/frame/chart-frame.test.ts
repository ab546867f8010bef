import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Camera, throughCamera } from "../testing/draw-chart.ts";
import { chartFrame, type Marks } from "./chart-frame.ts";
import { homographyOf, inverseOf, mapPoint } from "./homography.ts";

const linear = { scale: "linear", unit: "ft" } as const;
const at = (x_px: number, y_px: number) => ({ x_px, y_px });
const axes = (x: readonly [number, number], y: readonly [number, number]): Marks => ({
  kind: "axes",
  x: [
    { at: at(100, 900), value: x[0] },
    { at: at(900, 900), value: x[1] },
  ],
  y: [
    { at: at(100, 900), value: y[0] },
    { at: at(100, 100), value: y[1] },
  ],
});

describe("a homography", () => {
  it("through four places finds the camera again, and its inverse leads back", () => {
    const small = fc.double({ min: -0.25, max: 0.25, noNaN: true });
    const place = fc.tuple(
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
    );
    fc.assert(
      fc.property(small, small, small, small, place, (turn, shear, far, high, inside) => {
        const camera: Camera = [900, 900 * shear, 60, 700 * turn, -640, 720, far, high, 1];
        const corners = [
          [0, 0],
          [1, 0],
          [1, 1],
          [0, 1],
        ] as const;
        const found = homographyOf(
          corners.map((corner) => ({ from: throughCamera(camera, corner), to: corner })),
        );
        expect(found).toBeDefined();
        if (found === undefined) return;
        const seen = throughCamera(camera, inside);
        const back = mapPoint(found, seen) ?? [Number.NaN, Number.NaN];
        expect(Math.hypot(back[0] - inside[0], back[1] - inside[1])).toBeLessThan(1e-7);
        const inverse = inverseOf(found);
        const again = inverse === undefined ? undefined : mapPoint(inverse, back);
        expect(Math.hypot((again?.[0] ?? 0) - seen[0], (again?.[1] ?? 0) - seen[1])).toBeLessThan(1e-4);
      }),
    );
  });

  it("is none where three of four places lie on one line", () => {
    const from = [
      [0, 0],
      [1, 1],
      [2, 2],
      [5, 0],
    ] as const;
    expect(homographyOf(from.map((place, i) => ({ from: place, to: [i, i * i] })))).toBeUndefined();
  });
});

describe("the frame of a chart", () => {
  it("reads both axes, linear and logarithmic", () => {
    const result = chartFrame(linear, { scale: "log", unit: "m" }, axes([-2000, 6000], [10, 1000]));
    if (!result.ok) throw new Error(result.says);
    expect(result.frame.toValues(at(500, 500))?.x).toBeCloseTo(2000, 9);
    expect(result.frame.toValues(at(500, 500))?.y).toBeCloseTo(100, 9); // halfway from 10 to 1000
    expect(result.frame.toPicture({ x: 2000, y: 100 })?.x_px).toBeCloseTo(500, 9);
    expect(result.frame.toPicture({ x: 2000, y: 0 })).toBeUndefined();
  });

  it("tells how far a fifth known point lies off", () => {
    const points = [
      { at: at(0, 0), x: 0, y: 10 },
      { at: at(800, 0), x: 10, y: 10 },
      { at: at(800, 800), x: 10, y: 0 },
      { at: at(0, 800), x: 0, y: 0 },
    ];
    const exact = chartFrame(linear, linear, { kind: "points", points });
    const five = chartFrame(linear, linear, {
      kind: "points",
      points: [...points, { at: at(430, 400), x: 5, y: 5 }],
    });
    expect(exact.ok && exact.frame.worst_px).toBeLessThan(1e-6);
    expect(five.ok && five.frame.worst_px).toBeGreaterThan(5);
  });

  it.each([
    [axes([0, 0], [1, 2]), "The x axis has 0 at both of its marks. Expected two different values."],
    [axes([0, Number.NaN], [1, 2]), "The x axis lacks the value of a mark. Expected a number."],
    [
      {
        ...axes([0, 1], [1, 2]),
        y: [
          { at: at(100, 900), value: 1 },
          { at: at(500, 900), value: 2 },
        ],
      } as Marks,
      "The two axes lie along each other. Expected marks of the x axis and of the y axis that run across each other.",
    ],
    [
      {
        ...axes([0, 1], [1, 2]),
        y: [
          { at: at(100, 900), value: 1 },
          { at: at(100, 880), value: 2 },
        ],
      } as Marks,
      "The two marks of the y axis are nearly at one place. Expected them far apart: the ends of the axis are best.",
    ],
    [{ kind: "points", points: [] } as Marks, "Expected four known points, found 0."],
  ])("refuses %j", (marks, says) => {
    expect(chartFrame(linear, linear, marks)).toEqual({ ok: false, says });
  });

  it("refuses a logarithmic axis with a value of 0", () => {
    expect(chartFrame({ scale: "log", unit: "" }, linear, axes([0, 10], [0, 1]))).toEqual({
      ok: false,
      says: "The x axis is logarithmic and has 0 at a mark. Expected a value above 0, or a linear axis.",
    });
  });
});
