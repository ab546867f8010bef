import { type ChartFrame, gathered, spread } from "../frame/chart-frame.ts";
import { type Ink, inkAt } from "../picture/ink.ts";
import { distance_px, type PicturePoint } from "../picture/point.ts";
import type { EnterBy, ReadCurve } from "./traced-curve.ts";

/** How well a curve lies on the line of the picture. */
export interface FitError {
  /** Root of the mean square of the distances, across the line. */
  readonly rms_px: number;
  readonly worst_px: number;
  readonly worstAt: PicturePoint | undefined;
  /** The worst of them as a share of the full scale of the axis that is read. */
  readonly worst_1: number;
  /** The share of the curve at which a line was found near; where it is low, nothing is said about the rest. */
  readonly seen_1: number;
}

const SAMPLES = 80;
const REACH_px = 6;
const STEP_px = 0.5;
const INK_FROM_1 = 0.1;

/** Where the curve runs over the picture: for drawing it, and for holding it against the ink. */
export function curveOnPicture(
  frame: ChartFrame,
  curve: ReadCurve,
  enterBy: EnterBy,
  samples = SAMPLES,
): readonly PicturePoint[] {
  const scale = enterBy === "x" ? frame.x.scale : frame.y.scale;
  const from = spread(scale, curve.from);
  const to = spread(scale, curve.to);
  const points: PicturePoint[] = [];
  for (let i = 0; i <= samples; i += 1) {
    const entered =
      i === samples ? curve.to : i === 0 ? curve.from : gathered(scale, from + ((to - from) * i) / samples);
    const read = curve.at(entered);
    if (read === undefined) continue;
    const at = frame.toPicture(enterBy === "x" ? { x: entered, y: read } : { x: read, y: entered });
    if (at !== undefined) points.push(at);
  }
  return points;
}

/** Holds a curve against the line of the picture under it. */
export function fitError(ink: Ink, frame: ChartFrame, curve: ReadCurve, enterBy: EnterBy): FitError {
  const points = curveOnPicture(frame, curve, enterBy);
  let squares = 0;
  let seen = 0;
  let worst_px = 0;
  let worst_1 = 0;
  let worstAt: PicturePoint | undefined;
  for (const [i, here] of points.entries()) {
    const before = points[Math.max(0, i - 1)] ?? here;
    const after = points[Math.min(points.length - 1, i + 1)] ?? here;
    const off = offLine(ink, here, before, after);
    if (off === undefined) continue;
    seen += 1;
    squares += off ** 2;
    if (Math.abs(off) >= worst_px) {
      worst_px = Math.abs(off);
      worstAt = here;
    }
    worst_1 = Math.max(worst_1, Math.abs(off) / perFullScale_px(frame, here, enterBy));
  }
  return {
    rms_px: seen === 0 ? 0 : Math.sqrt(squares / seen),
    worst_px,
    worstAt,
    worst_1,
    seen_1: points.length === 0 ? 0 : seen / points.length,
  };
}

/** How far to the side the middle of the ink lies; `undefined` where there is none near. */
function offLine(
  ink: Ink,
  here: PicturePoint,
  before: PicturePoint,
  after: PicturePoint,
): number | undefined {
  const long = distance_px(before, after);
  if (long === 0) return undefined;
  const acrossX = -(after.y_px - before.y_px) / long;
  const acrossY = (after.x_px - before.x_px) / long;
  const half = Math.round(REACH_px / STEP_px);
  const profile = Array.from({ length: 2 * half + 1 }, (_, i) => {
    const off = (i - half) * STEP_px;
    return inkAt(ink, here.x_px + acrossX * off, here.y_px + acrossY * off);
  });
  const most = Math.max(...profile);
  const floor = Math.min(...profile);
  if (most - floor < INK_FROM_1) return undefined;
  const edge = floor + (most - floor) / 2;
  // of several lines the nearest that is dark enough
  const dark = profile
    .map((value, i) => ({ value, off: (i - half) * STEP_px }))
    .filter(({ value }) => value > edge);
  const near = dark.reduce((one, other) => (Math.abs(other.off) < Math.abs(one.off) ? other : one));
  const start = Math.round(near.off / STEP_px) + half;
  let sum = 0;
  let moment = 0;
  for (const way of [-1, 1]) {
    for (let i = way < 0 ? start : start + 1; i >= 0 && i < profile.length; i += way) {
      const over = (profile[i] ?? 0) - edge;
      if (over <= 0) break;
      sum += over;
      moment += over * (i - half) * STEP_px;
    }
  }
  return sum === 0 ? undefined : moment / sum;
}

/** How many pixels full scale of the axis that is read is long, at a place: on a slanted picture it differs. */
function perFullScale_px(frame: ChartFrame, here: PicturePoint, enterBy: EnterBy): number {
  const [least, most] = enterBy === "x" ? frame.ySpan : frame.xSpan;
  const { scale } = enterBy === "x" ? frame.y : frame.x;
  const full = spread(scale, most) - spread(scale, least);
  const values = frame.toValues(here);
  if (values === undefined) return Number.POSITIVE_INFINITY;
  const read = enterBy === "x" ? values.y : values.x;
  const moved = gathered(scale, spread(scale, read) + 0.01 * full);
  const there = frame.toPicture(enterBy === "x" ? { ...values, y: moved } : { ...values, x: moved });
  return there === undefined ? Number.POSITIVE_INFINITY : 100 * distance_px(here, there);
}
