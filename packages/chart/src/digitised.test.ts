import { describe, expect, it } from "vitest";
import {
  type ChartFrame,
  type ChartPoint,
  chartFrame,
  type EnterBy,
  familyOf,
  fitError,
  followLine,
  type Ink,
  inkOf,
  type PicturePoint,
  type ReadCurve,
  readCurve,
  readFamily,
  type Scale,
  snapToCrossing,
  snapToLine,
} from "./index.ts";
import { type Camera, drawChart, randomOf, type SheetPoint, throughCamera } from "./testing/draw-chart.ts";
import { jpegNoise } from "./testing/jpeg-noise.ts";

// Every chart here is drawn by the test from curves it knows; what is read back must be those curves.

/** A chart that fills its sheet: x from 0 to 40 °C, y from 200 to 1000 m. */
const X = [0, 40] as const;
const Y = [200, 1000] as const;
const PARAMETERS = [0, 2000, 4000, 6000] as const;
/** An invented ground roll that grows with temperature and altitude, as such curves do. */
const roll = (altitude_ft: number, oat_degC: number): number =>
  230 * Math.exp(altitude_ft / 8000) * (1 + 0.008 * oat_degC + 0.00012 * oat_degC ** 2);

const straight: Camera = [900, 0, 80, 0, -640, 720, 0, 0, 1];
/** Turned by 4 degrees and not square: the axes are 86 degrees apart. */
const turned: Camera = [880, 20, 90, 61, -640, 700, 0, 0, 1];
/** From the lower left, as a phone is held over a table: the far side is a fifth shorter. */
const slanted: Camera = [1010, 150, 70, 12, -560, 730, 0.17, 0.2, 1];

/** Held over the table by hand: turned by 3 degrees, the far side an eighth shorter and one side nearer than the other. */
const handHeld: Camera = (() => {
  const [cos, sin] = [Math.cos((3 * Math.PI) / 180), Math.sin((3 * Math.PI) / 180)];
  // straight on first, then turned about the middle of the picture, then tilted
  const [a, b, c, d, e, f] = [900, 0, 70, 0, -640, 740];
  const turn = (x: number, y: number) => [x * cos - y * sin, x * sin + y * cos] as const;
  const [[a2, d2], [b2, e2], [c2, f2]] = [turn(a, d), turn(b, e), turn(c - 530, f - 400)];
  const [g, h] = [0.06, 0.13];
  return [a2 + 530 * g, b2 + 530 * h, c2 + 530, d2 + 400 * g, e2 + 400 * h, f2 + 400, g, h, 1];
})();

const CASES = [
  {
    name: "held in the hand, turned by 3 degrees, saved as JPEG of quality 40",
    camera: handHeld,
    noise: 10,
    shade_1: 0.35,
    width_px: 2.5,
    scale: "linear",
    jpeg: 40,
  },
  { name: "looked at straight on", camera: straight, noise: 6, shade_1: 0, width_px: 2, scale: "linear" },
  { name: "turned and not square", camera: turned, noise: 10, shade_1: 0.3, width_px: 3, scale: "linear" },
  { name: "at a slant", camera: slanted, noise: 10, shade_1: 0.35, width_px: 2.5, scale: "linear" },
  {
    name: "at a slant, in thick lines and coarse grain",
    camera: slanted,
    noise: 18,
    shade_1: 0.2,
    width_px: 5,
    scale: "linear",
  },
  { name: "with a logarithmic axis", camera: turned, noise: 8, shade_1: 0.2, width_px: 2, scale: "log" },
] as const;

function onSheet(point: ChartPoint, scale: Scale): SheetPoint {
  const v = scale === "log" ? Math.log : (value: number) => value;
  return [(point.x - X[0]) / (X[1] - X[0]), (v(point.y) - v(Y[0])) / (v(Y[1]) - v(Y[0]))];
}

function photograph({ camera, noise, shade_1, width_px, scale, ...saved }: (typeof CASES)[number]): Ink {
  const grid = Array.from({ length: 9 }, (_, i) => i / 8).flatMap((at) => [
    [
      [at, 0],
      [at, 1],
    ] as const,
    [
      [0, at],
      [1, at],
    ] as const,
  ]);
  const image = drawChart({
    width: 1060,
    height: 800,
    camera,
    noise,
    shade_1,
    seed: 7,
    lines: [
      ...grid.map((points) => ({ points, width_px: 1.2, ink_1: 0.4 })),
      ...PARAMETERS.map((parameter) => ({
        points: Array.from({ length: 81 }, (_, i): SheetPoint => {
          const x = i / 2;
          return onSheet({ x, y: roll(parameter, x) }, scale);
        }),
        width_px,
        ink_1: 0.85,
      })),
    ],
  });
  return inkOf("jpeg" in saved ? jpegNoise(image, saved.jpeg) : image);
}

/** A finger: beside what was meant by up to 3 pixels each way. */
function finger(camera: Camera, random: () => number) {
  return (point: SheetPoint): PicturePoint => {
    const [x, y] = throughCamera(camera, point);
    return { x_px: x + 6 * (random() - 0.5), y_px: y + 6 * (random() - 0.5) };
  };
}

function frameFor(
  ink: Ink,
  { camera, scale }: (typeof CASES)[number],
  tap: (point: SheetPoint) => PicturePoint,
): ChartFrame {
  const x = { scale: "linear", unit: "°C" } as const;
  const y = { scale, unit: "m" } as const;
  const mark = (point: SheetPoint): PicturePoint => snapToCrossing(ink, tap(point))?.point ?? tap(point);
  const result =
    camera === slanted || camera === handHeld
      ? chartFrame(x, y, {
          kind: "points",
          points: [
            { at: mark([0, 0]), x: X[0], y: Y[0] },
            { at: mark([1, 0]), x: X[1], y: Y[0] },
            { at: mark([1, 1]), x: X[1], y: Y[1] },
            { at: mark([0, 1]), x: X[0], y: Y[1] },
          ],
        })
      : chartFrame(x, y, {
          kind: "axes",
          x: [
            { at: mark([0, 0]), value: X[0] },
            { at: mark([1, 0]), value: X[1] },
          ],
          y: [
            { at: mark([0, 0]), value: Y[0] },
            { at: mark([0, 1]), value: Y[1] },
          ],
        });
  if (!result.ok) throw new Error(result.says);
  return result.frame;
}

function trace(
  ink: Ink,
  frame: ChartFrame,
  parameter: number,
  tap: (x: number) => PicturePoint,
  enterBy: EnterBy = "x",
): ReadCurve {
  const taps = [0, 10, 20, 30, 40].map((x) => snapToLine(ink, tap(x))?.point ?? tap(x));
  const points = taps.flatMap((point, i) => {
    const next = taps[i + 1];
    return next === undefined ? [point] : followLine(ink, point, next).points.slice(0, -1);
  });
  const result = readCurve(frame, { parameter, points }, enterBy);
  if (!result.ok) throw new Error(result.says);
  return result.curve;
}

describe("a chart that was traced by a finger", () => {
  it.each(CASES)("is read to within 0.5 % of full scale $name", (chart) => {
    const ink = photograph(chart);
    const tap = finger(chart.camera, randomOf(11));
    const frame = frameFor(ink, chart, tap);
    const curves = PARAMETERS.map((parameter) =>
      trace(ink, frame, parameter, (x) => tap(onSheet({ x, y: roll(parameter, x) }, chart.scale))),
    );
    const family = familyOf(curves, chart.scale);
    if (!family.ok) throw new Error(family.says);
    let worst_1 = 0;
    for (const parameter of PARAMETERS) {
      for (let x = 0; x <= 40; x += 2.5) {
        const read = readFamily(family.family, parameter, x);
        expect(read).toBeDefined();
        worst_1 = Math.max(worst_1, Math.abs((read ?? 0) - roll(parameter, x)) / (Y[1] - Y[0]));
      }
    }
    expect(worst_1).toBeLessThan(0.005);
    // between two curves the line through all of them is as good: the curves here are 2000 ft apart
    for (const altitude of [1000, 3000, 5000]) {
      const read = readFamily(family.family, altitude, 20) ?? 0;
      expect(Math.abs(read - roll(altitude, 20)) / (Y[1] - Y[0])).toBeLessThan(0.0075);
    }
    // and the ink agrees with it
    for (const curve of curves) {
      const error = fitError(ink, frame, curve, "x");
      expect(error.seen_1).toBeGreaterThan(0.9);
      expect(error.rms_px).toBeLessThan(1.5);
    }
  });
});

describe("the help in tapping", () => {
  const chart = CASES[3];
  const ink = photograph(chart);

  it("finds the middle of the line near a tap, and none on blank paper", () => {
    const [x, y] = throughCamera(chart.camera, onSheet({ x: 17, y: roll(4000, 17) }, "linear"));
    const snapped = snapToLine(ink, { x_px: x + 3, y_px: y - 4 });
    const [left, top] = throughCamera(chart.camera, onSheet({ x: 16, y: roll(4000, 16) }, "linear"));
    const [right, bottom] = throughCamera(chart.camera, onSheet({ x: 18, y: roll(4000, 18) }, "linear"));
    const long = Math.hypot(right - left, bottom - top);
    const aside =
      ((snapped?.point.x_px ?? 0) - left) * (bottom - top) -
      ((snapped?.point.y_px ?? 0) - top) * (right - left);
    expect(Math.abs(aside / long)).toBeLessThan(0.5);
    expect(
      snapToLine(inkOf({ width: 60, height: 60, data: new Uint8Array(3600).fill(230) }), {
        x_px: 30,
        y_px: 30,
      }),
    ).toBeUndefined();
  });

  it("finds a corner of the grid to half a pixel", () => {
    for (const corner of [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
      [0.25, 0.75],
    ] as const) {
      const [x, y] = throughCamera(chart.camera, corner);
      const snapped = snapToCrossing(ink, { x_px: x + 3, y_px: y - 3 });
      expect(Math.hypot((snapped?.point.x_px ?? 0) - x, (snapped?.point.y_px ?? 0) - y)).toBeLessThan(0.5);
    }
  });

  it("says that there is no line to follow over blank paper", () => {
    const blank = inkOf(
      drawChart({ width: 300, height: 200, camera: straight, noise: 8, seed: 3, shade_1: 0.3, lines: [] }),
    );
    const followed = followLine(blank, { x_px: 20, y_px: 100 }, { x_px: 280, y_px: 90 });
    expect(followed.onLine_1).toBeLessThan(0.5);
    expect(followed.points).toHaveLength(2);
  });
});
