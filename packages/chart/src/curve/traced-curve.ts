import { type ChartFrame, gathered, type Scale, spread } from "../frame/chart-frame.ts";
import type { PicturePoint } from "../picture/point.ts";
import { monotoneCurve } from "./monotone-curve.ts";

/** A curve of a chart as it was traced, for one value of its parameter. */
export interface Tracing {
  /** What the curve stands for, such as a pressure altitude of 4000; 0 where the chart has one curve only. */
  readonly parameter: number;
  /** Along the curve, from one end to the other. */
  readonly points: readonly PicturePoint[];
}

/** Which axis one enters the chart by: the other is read. */
export type EnterBy = "x" | "y";

/** A curve in the values of its chart. */
export interface ReadCurve {
  readonly parameter: number;
  /** The values between which it was traced, on the axis one enters by. */
  readonly from: number;
  readonly to: number;
  /** `undefined` outside: nothing is extrapolated. */
  at(entered: number): number | undefined;
}

export type CurveResult =
  | { readonly ok: true; readonly curve: ReadCurve }
  | { readonly ok: false; readonly says: string; readonly at?: PicturePoint };

/** Two points nearer than this share of the axis are one: a hand that shakes is no curve that turns. */
const SAME_PLACE_1 = 0.0005;
/** So far past its last point a curve still reads, by its slope there: a finger falls a little short of the edge. */
const GRACE_1 = 0.01;
/** The slope at an end is taken over this share of the axis. */
const END_1 = 0.02;
/** A step back by more than this share of the axis is a curve that turns. */
const TURNS_1 = 0.003;

/** The smooth curve through what was traced; where it cannot be one, which point is to blame. */
export function readCurve(frame: ChartFrame, { parameter, points }: Tracing, enterBy: EnterBy): CurveResult {
  if (points.length < 2) {
    return { ok: false, says: `The curve for ${parameter} has fewer than two points. Tap along it.` };
  }
  const [scaleIn, scaleOut] =
    enterBy === "x" ? [frame.x.scale, frame.y.scale] : [frame.y.scale, frame.x.scale];
  const placed: { readonly knot: readonly [number, number]; readonly at: PicturePoint }[] = [];
  for (const at of points) {
    const values = frame.toValues(at);
    if (values === undefined) {
      return { ok: false, says: `A point of the curve for ${parameter} lies outside the chart.`, at };
    }
    const [enter, read] = enterBy === "x" ? [values.x, values.y] : [values.y, values.x];
    placed.push({ knot: [spread(scaleIn, enter), spread(scaleOut, read)], at });
  }
  const first = placed[0]?.knot[0] ?? 0;
  const last = placed.at(-1)?.knot[0] ?? 0;
  const ordered = first <= last ? placed : placed.toReversed();
  const full = fullOf(frame, enterBy, scaleIn);
  const knots: (readonly [number, number])[] = [];
  for (const { knot, at } of ordered) {
    const before = knots.at(-1);
    if (before !== undefined && knot[0] < before[0] - TURNS_1 * full) {
      return {
        ok: false,
        says: `The curve for ${parameter} turns back here: one value of the ${enterBy} axis would have two answers. Move the point, or enter by the other axis.`,
        at,
      };
    }
    if (before === undefined || knot[0] > before[0] + SAME_PLACE_1 * full) knots.push(knot);
  }
  if (knots.length < 2) {
    return {
      ok: false,
      says: `The curve for ${parameter} runs along the other axis. Enter the chart by the ${enterBy === "x" ? "y" : "x"} axis.`,
    };
  }
  const curve = monotoneCurve(withGrace(knots, full));
  return {
    ok: true,
    curve: {
      parameter,
      from: gathered(scaleIn, knots[0]?.[0] ?? curve.from),
      to: gathered(scaleIn, knots.at(-1)?.[0] ?? curve.to),
      at(entered) {
        const found = curve.at(spread(scaleIn, entered));
        return found === undefined ? undefined : gathered(scaleOut, found);
      },
    },
  };
}

/** Full scale of the axis one enters by, as it is spread. */
function fullOf(frame: ChartFrame, enterBy: EnterBy, scale: Scale): number {
  const [least, most] = enterBy === "x" ? frame.xSpan : frame.ySpan;
  return spread(scale, most) - spread(scale, least);
}

type Knots = readonly (readonly [number, number])[];

function withGrace(knots: Knots, full: number): Knots {
  const before = past(knots, -GRACE_1 * full, full);
  const after = past(knots.toReversed(), GRACE_1 * full, full);
  return [...before, ...knots, ...after];
}

/** One more knot past the first, by the slope there. */
function past(knots: Knots, by: number, full: number): Knots {
  const [end] = knots;
  const inner =
    knots.find(([at]) => end !== undefined && Math.abs(at - end[0]) >= END_1 * full) ?? knots.at(-1);
  if (end === undefined || inner === undefined || inner === end) return [];
  return [[end[0] + by, end[1] + (by * (inner[1] - end[1])) / (inner[0] - end[0])]];
}
