import { normalBelow_1 } from "../conformity/normal.ts";
import { bothWithin_1 } from "./both-within.ts";
import { checkPositive, checkSeries, checkShare, FEWEST_READINGS, type TooFew, tooFew } from "./series.ts";

/** The line on one side of a change: where it is in the middle of the gap, and how it runs. */
export interface Side {
  readonly value: number;
  readonly slope_perDay: number;
}

/** A change that chance does not explain. */
export interface ChangePoint {
  readonly kind: "level" | "slope";
  /** The places, from 0, of the last reading before it and the first after it. */
  readonly between: readonly [number, number];
  /** Probability of so clear a change anywhere in the series by chance. */
  readonly p: number;
  readonly before: Side;
  readonly after: Side;
}

/** Readings that a side has at least: one alone is an odd reading, not a change. */
const FEWEST_ON_A_SIDE = 2;
/** And of a bend: of two, the last alone would make it. */
const FEWEST_BESIDE_A_BEND = 3;
/** Below this the places of a change are counted one by one where the spread is not known. */
const FEWEST_FOR_NEIGHBOURS = 8;

/** How much of the largest reading the sums of 5,000 may lose. */
const ROUNDING_1 = 1e-12;

/** The series about its middle, and its sums from each place to the end. */
interface Sums {
  readonly n: number;
  readonly t: readonly number[];
  readonly y: readonly number[];
  readonly middle_d: number;
  readonly mean: number;
  /** The largest reading, either way. */
  readonly largest: number;
  readonly timeSquares: number;
  readonly timeProducts: number;
  /** From the place to the end: Σt, Σt², Σy, Σty. */
  readonly from: readonly (readonly [number, number, number, number])[];
}

function sumsOf(t_d: readonly number[], y: readonly number[]): Sums {
  const n = y.length;
  const middle_d = t_d.reduce((sum, time) => sum + time / n, 0);
  const mean = y.reduce((sum, value) => sum + value / n, 0);
  const t = t_d.map((time) => time - middle_d);
  const v = y.map((value) => value - mean);
  const from: (readonly [number, number, number, number])[] = [];
  let [st, stt, sy, sty] = [0, 0, 0, 0];
  for (let place = n - 1; place >= 0; place -= 1) {
    const time = t[place] ?? 0;
    const value = v[place] ?? 0;
    st += time;
    stt += time * time;
    sy += value;
    sty += time * value;
    from.push([st, stt, sy, sty]);
  }
  const largest = y.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return { n, t, y: v, middle_d, mean, largest, timeSquares: stt, timeProducts: sty, from: from.reverse() };
}

/** A shape that may be in the readings from a place on, and what is left of it beside a straight line. */
interface Shape {
  readonly last: number;
  /** Its sum, its product with time and with the readings; its square. */
  readonly sum: number;
  readonly withTime: number;
  readonly withY: number;
  readonly square: number;
  /** Product with the next shape, before the line is taken out. */
  readonly withNext: (next: Shape) => number;
}

const gapAfter_d = ({ t }: Sums, last: number): number => ((t[last] ?? 0) + (t[last + 1] ?? 0)) / 2;

/** A step between a reading and the next. */
function stepAfter(sums: Sums, last: number): Shape {
  const [st, , sy] = sums.from[last + 1] ?? [0, 0, 0, 0];
  const count = sums.n - last - 1;
  return { last, sum: count, withTime: st, withY: sy, square: count, withNext: (next) => next.sum };
}

/** A bend in the middle between a reading and the next. */
function bendAfter(sums: Sums, last: number): Shape {
  const [st, stt, sy, sty] = sums.from[last + 1] ?? [0, 0, 0, 0];
  const count = sums.n - last - 1;
  const at = gapAfter_d(sums, last);
  return {
    last,
    sum: st - count * at,
    withTime: stt - at * st,
    withY: sty - at * sy,
    square: stt - 2 * at * st + count * at * at,
    withNext: (next) => next.withTime - at * next.sum,
  };
}

const besideLine = ({ n, timeSquares }: Sums, a: Shape, b: Shape, product: number): number =>
  product - (a.sum * b.sum) / n - (a.withTime * b.withTime) / timeSquares;

interface Found {
  readonly shape: Shape;
  readonly size: number;
  readonly z: number;
  readonly p: number;
}

/** Student's t as the normal z of the same probability. @source Wallace, 1959 */
function normalised(t: number, degrees: number): number {
  return (
    ((8 * degrees + 1) / (8 * degrees + 3)) *
    Math.sqrt(degrees * Math.log1p((t * t) / degrees)) *
    Math.sign(t)
  );
}

/**
 * The clearest of a family of shapes, and the probability that the clearest of them is as clear by chance: the product
 * of what each adds to the one before it, which is on the safe side.
 *
 * @source Glaz and Johnson, Probability inequalities for multivariate distributions with dependence structures, 1984
 */
function clearestOf(sums: Sums, shapes: readonly Shape[], sd: number | undefined): Found | undefined {
  const left =
    sums.y.reduce((sum, value) => sum + value * value, 0) - sums.timeProducts ** 2 / sums.timeSquares;
  // What is smaller than the last digits of the readings themselves is no scatter and no change.
  const least = ROUNDING_1 * sums.largest;
  let best: { shape: Shape; size: number; z: number } | undefined;
  const squares = shapes.map((shape) => besideLine(sums, shape, shape, shape.square));
  for (const [index, shape] of shapes.entries()) {
    const square = squares[index] ?? 0;
    if (!(square > 0)) continue;
    const product = shape.withY - (shape.withTime * sums.timeProducts) / sums.timeSquares;
    const rest = Math.max(0, left - product ** 2 / square);
    const spread = Math.max(sd ?? Math.sqrt(rest / (sums.n - 3)), least);
    if (product === 0) continue;
    const ratio = product / (Math.sqrt(square) * spread);
    const bounded = Math.sign(ratio) * Math.min(Math.abs(ratio), 1e100);
    const z = sd === undefined ? normalised(bounded, sums.n - 3) : bounded;
    if (best === undefined || Math.abs(z) > Math.abs(best.z)) best = { shape, size: product / square, z };
  }
  if (best === undefined) return undefined;
  const width = Math.abs(best.z);
  const one = 1 - 2 * normalBelow_1(-width);
  let all = Math.log(Math.max(one, Number.MIN_VALUE));
  for (const [index, shape] of shapes.entries()) {
    const next = shapes[index + 1];
    if (next === undefined) break;
    const size = Math.sqrt((squares[index] ?? 0) * (squares[index + 1] ?? 0));
    const product = besideLine(sums, shape, next, shape.withNext(next));
    const correlation = size > 0 ? Math.min(1, Math.max(-1, product / size)) : 0;
    all += Math.log(
      Math.max(bothWithin_1(width, correlation), Number.MIN_VALUE) / Math.max(one, Number.MIN_VALUE),
    );
  }
  // Where so few readings also give the spread, neighbours are less alike than their correlation says.
  const byPlaces = sd === undefined && sums.n < FEWEST_FOR_NEIGHBOURS ? shapes.length : 1;
  return { ...best, p: Math.min(1, Math.max(-Math.expm1(all), byPlaces * 2 * normalBelow_1(-width))) };
}

function told(sums: Sums, kind: ChangePoint["kind"], { shape, size, p }: Found): ChangePoint {
  const slope = (sums.timeProducts - size * shape.withTime) / sums.timeSquares;
  const middle = gapAfter_d(sums, shape.last);
  const value = sums.mean - (size * shape.sum) / sums.n + slope * middle;
  const isLevel = kind === "level";
  return {
    kind,
    between: [shape.last, shape.last + 1],
    p,
    before: { value, slope_perDay: slope },
    after: { value: isLevel ? value + size : value, slope_perDay: isLevel ? slope : slope + size },
  };
}

/**
 * Between which two readings the level or the slope of a series changed, if it did: the step or the bend that explains
 * most beside one straight line.
 *
 * @param t_d times in days, each later than the one before
 * @param sd standard deviation of one reading, as its gauge has it; left out, it is taken from the series itself
 * @param falseAlarm_1 how often a series without a change may be said to have one
 * @returns undefined where chance explains what is seen
 * @throws {InputError} `not-a-number`, `out-of-range`
 * @source likelihood ratio for one change: Quandt, 1958; Hinkley, Inference about the intersection in two-phase
 *   regression, 1969
 */
export function changePoint(
  t_d: readonly number[],
  y: readonly number[],
  sd?: number,
  falseAlarm_1 = 0.05,
): ChangePoint | TooFew | undefined {
  checkSeries(t_d, y);
  checkShare("falseAlarm_1", falseAlarm_1);
  if (sd !== undefined) checkPositive("sd", sd);
  const n = y.length;
  if (n < FEWEST_READINGS) return tooFew(n);
  const sums = sumsOf(t_d, y);
  /** The places after which a shape may begin, with so many readings on either side. */
  const places = (fewest: number): readonly number[] =>
    Array.from({ length: Math.max(0, n - 2 * fewest + 1) }, (_, index) => index + fewest - 1);
  const step = clearestOf(
    sums,
    places(FEWEST_ON_A_SIDE).map((last) => stepAfter(sums, last)),
    sd,
  );
  const bend = clearestOf(
    sums,
    places(FEWEST_BESIDE_A_BEND).map((last) => bendAfter(sums, last)),
    sd,
  );
  const isBend = (bend === undefined ? 0 : Math.abs(bend.z)) > (step === undefined ? 0 : Math.abs(step.z));
  const found = isBend ? bend : step;
  if (found === undefined) return undefined;
  const p = Math.min(1, 2 * found.p); // two families are looked at
  if (!(p <= falseAlarm_1)) return undefined;
  return told(sums, isBend ? "slope" : "level", { ...found, p });
}
