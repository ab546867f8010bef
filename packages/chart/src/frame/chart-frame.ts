import { distance_px, type PicturePoint } from "../picture/point.ts";
import { type Homography, homographyOf, inverseOf, mapPoint } from "./homography.ts";

export type Scale = "linear" | "log";

/** One axis of a chart: how its values are spread, and in which unit they are printed. */
export interface ChartAxis {
  readonly scale: Scale;
  /** As the unit is written: `ft`, `°C`; none for a plain number. */
  readonly unit: string;
}

/** A printed value of one axis, and where it stands on the picture. */
export interface AxisMark {
  readonly at: PicturePoint;
  readonly value: number;
}

/** A place of the picture with the values of both axes there. */
export interface KnownPoint {
  readonly at: PicturePoint;
  readonly x: number;
  readonly y: number;
}

/** How a chart lies on its picture. */
export type Marks =
  /** Looked at straight on, or turned and sheared: two values on each axis, each pair along its axis. */
  | {
      readonly kind: "axes";
      readonly x: readonly [AxisMark, AxisMark];
      readonly y: readonly [AxisMark, AxisMark];
    }
  /** Photographed at a slant: at least four places whose values are known, no three of the first four on one line. */
  | { readonly kind: "points"; readonly points: readonly KnownPoint[] };

/** Turns places on a picture into values of a chart and back. */
export interface ChartFrame {
  readonly x: ChartAxis;
  readonly y: ChartAxis;
  /** `undefined` where the chart has no value: on the horizon of a slanted picture. */
  toValues(at: PicturePoint): ChartPoint | undefined;
  /** `undefined` for a value that the axis cannot show, such as 0 on a logarithmic one. */
  toPicture(point: ChartPoint): PicturePoint | undefined;
  /** From the least to the greatest known value of each axis: full scale. */
  readonly xSpan: readonly [number, number];
  readonly ySpan: readonly [number, number];
  /** How far the known points lie from where the frame has them: 0 for four; more tells of a bent sheet or a slip. */
  readonly worst_px: number;
}

/** A place on a chart, in the units of its axes. */
export interface ChartPoint {
  readonly x: number;
  readonly y: number;
}

export type FrameResult =
  | { readonly ok: true; readonly frame: ChartFrame }
  | { readonly ok: false; readonly says: string };

/** Two marks nearer than this make an axis that a shaking hand would turn. */
const NEAREST_MARKS_px = 40;

/** The frame that the marks give, or what is wrong with them, for a person. */
export function chartFrame(x: ChartAxis, y: ChartAxis, marks: Marks): FrameResult {
  const says = marks.kind === "axes" ? axesFault(x, y, marks) : pointsFault(x, y, marks.points);
  if (says !== undefined) return { ok: false, says };
  const map = marks.kind === "axes" ? ofAxes(x, y, marks) : ofPoints(x, y, marks.points);
  const back = map === undefined ? undefined : inverseOf(map);
  if (map === undefined || back === undefined) {
    return {
      ok: false,
      says:
        marks.kind === "axes"
          ? "The two axes lie along each other. Expected marks of the x axis and of the y axis that run across each other."
          : "Three of the known points lie on one line. Expected four that make a rectangle on the chart, such as its corners.",
    };
  }
  return { ok: true, frame: frameOf(x, y, marks, map, back) };
}

function frameOf(x: ChartAxis, y: ChartAxis, marks: Marks, map: Homography, back: Homography): ChartFrame {
  const toPicture = (point: ChartPoint): PicturePoint | undefined => {
    const u = spread(x.scale, point.x);
    const v = spread(y.scale, point.y);
    if (!(Number.isFinite(u) && Number.isFinite(v))) return undefined;
    const place = mapPoint(back, [u, v]);
    return place === undefined ? undefined : { x_px: place[0], y_px: place[1] };
  };
  const xs = marks.kind === "axes" ? marks.x.map(({ value }) => value) : marks.points.map((point) => point.x);
  const ys = marks.kind === "axes" ? marks.y.map(({ value }) => value) : marks.points.map((point) => point.y);
  const known = marks.kind === "axes" ? [] : marks.points;
  return {
    x,
    y,
    toValues(at) {
      const place = mapPoint(map, [at.x_px, at.y_px]);
      if (place === undefined) return undefined;
      const point = { x: gathered(x.scale, place[0]), y: gathered(y.scale, place[1]) };
      return Number.isFinite(point.x) && Number.isFinite(point.y) ? point : undefined;
    },
    toPicture,
    xSpan: [Math.min(...xs), Math.max(...xs)],
    ySpan: [Math.min(...ys), Math.max(...ys)],
    worst_px: known.reduce((worst, point) => {
      const there = toPicture(point);
      return there === undefined ? worst : Math.max(worst, distance_px(there, point.at));
    }, 0),
  };
}

/** A value as it is spread along its axis: its logarithm on a logarithmic one. */
export const spread = (scale: Scale, value: number): number => (scale === "log" ? Math.log(value) : value);

/** The value that stands at a place along its axis. */
export const gathered = (scale: Scale, place: number): number => (scale === "log" ? Math.exp(place) : place);

/** Straight on: a place is so much of one axis and so much of the other, whatever the angle between them. */
function ofAxes(
  x: ChartAxis,
  y: ChartAxis,
  marks: Marks & { readonly kind: "axes" },
): Homography | undefined {
  const [x1, x2] = marks.x;
  const [y1, y2] = marks.y;
  const perU = spread(x.scale, x2.value) - spread(x.scale, x1.value);
  const perV = spread(y.scale, y2.value) - spread(y.scale, y1.value);
  const ax = (x2.at.x_px - x1.at.x_px) / perU;
  const ay = (x2.at.y_px - x1.at.y_px) / perU;
  const bx = (y2.at.x_px - y1.at.x_px) / perV;
  const by = (y2.at.y_px - y1.at.y_px) / perV;
  const area = ax * by - ay * bx;
  // the sine of the angle between the axes: below 0.2 they are 11 degrees apart
  if (!(Math.abs(area) > 0.2 * Math.hypot(ax, ay) * Math.hypot(bx, by))) return undefined;
  const [ux, uy, vx, vy] = [by / area, -bx / area, -ay / area, ax / area];
  const u0 = spread(x.scale, x1.value) - ux * x1.at.x_px - uy * x1.at.y_px;
  const v0 = spread(y.scale, y1.value) - vx * y1.at.x_px - vy * y1.at.y_px;
  return [ux, uy, u0, vx, vy, v0, 0, 0, 1];
}

const ofPoints = (x: ChartAxis, y: ChartAxis, points: readonly KnownPoint[]): Homography | undefined =>
  homographyOf(
    points.map((point) => ({
      from: [point.at.x_px, point.at.y_px],
      to: [spread(x.scale, point.x), spread(y.scale, point.y)],
    })),
  );

function axesFault(x: ChartAxis, y: ChartAxis, marks: Marks & { readonly kind: "axes" }): string | undefined {
  for (const [name, axis, [one, other]] of [
    ["x", x, marks.x],
    ["y", y, marks.y],
  ] as const) {
    const fault = valuesFault(name, axis, [one.value, other.value]);
    if (fault !== undefined) return fault;
    if (one.value === other.value) {
      return `The ${name} axis has ${one.value} at both of its marks. Expected two different values.`;
    }
    if (distance_px(one.at, other.at) < NEAREST_MARKS_px) {
      return `The two marks of the ${name} axis are nearly at one place. Expected them far apart: the ends of the axis are best.`;
    }
  }
  return undefined;
}

function pointsFault(x: ChartAxis, y: ChartAxis, points: readonly KnownPoint[]): string | undefined {
  if (points.length < 4) return `Expected four known points, found ${points.length}.`;
  const fault =
    valuesFault(
      "x",
      x,
      points.map((point) => point.x),
    ) ??
    valuesFault(
      "y",
      y,
      points.map((point) => point.y),
    );
  if (fault !== undefined) return fault;
  for (const [i, one] of points.entries()) {
    if (points.slice(i + 1).some((other) => distance_px(one.at, other.at) < NEAREST_MARKS_px)) {
      return "Two of the known points are nearly at one place. Expected them far apart: the corners of the grid are best.";
    }
  }
  return undefined;
}

function valuesFault(name: string, axis: ChartAxis, values: readonly number[]): string | undefined {
  const odd = values.find((value) => !Number.isFinite(value));
  if (odd !== undefined) return `The ${name} axis lacks the value of a mark. Expected a number.`;
  const low = axis.scale === "log" ? values.find((value) => value <= 0) : undefined;
  if (low !== undefined) {
    return `The ${name} axis is logarithmic and has ${low} at a mark. Expected a value above 0, or a linear axis.`;
  }
  return undefined;
}
