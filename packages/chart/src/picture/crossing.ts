import type { Ink } from "./ink.ts";
import { distance_px, type PicturePoint } from "./point.ts";
import { type RidgePoint, ridgePoints, type Snapped } from "./snap.ts";

/** A straight line: all places where `acrossX · x + acrossY · y` is `offset`. */
interface Line {
  readonly acrossX: number;
  readonly acrossY: number;
  readonly offset: number;
}

/** How far around a tap the lines are looked at. */
const ARMS_px = 18;
/** Of the places on lines, so many of the strongest are tried. */
const MOST_TRIED = 60;
const ON_LINE_px = 1.2;
/** The cosine of the angle by which places on one line may differ. */
const SAME_WAY = Math.cos(Math.PI / 9);
/** The cosine of the least angle between lines that cross. */
const CROSSES = Math.cos(Math.PI / 6);
/** Nearer than this to the crossing each line is drawn aside by the other. */
const SPOILT_px = 5;
const FEWEST_ON_LINE = 5;

/**
 * Where two lines cross or meet near a tap: in a grid, at its edge or at its corner. Each line is laid through its
 * places away from the crossing.
 *
 * @param reach_px how far from the tap it may lie
 * @returns `undefined` where no two lines meet
 */
export function snapToCrossing(ink: Ink, tap: PicturePoint, reach_px = 10): Snapped | undefined {
  const all = ridgePoints(ink, tap, ARMS_px);
  const tried = all.toSorted((one, other) => other.strength_1 - one.strength_1).slice(0, MOST_TRIED);
  let best: readonly [Line, Line] | undefined;
  let worth = 0;
  for (const [i, one] of tried.entries()) {
    for (const other of tried.slice(i + 1)) {
      const lines = [lineAt(one), lineAt(other)] as const;
      const at = crossingOf(...lines);
      const away = at === undefined ? Number.POSITIVE_INFINITY : distance_px(at, tap);
      if (away > reach_px) continue;
      const held = Math.min(...lines.map((line) => supportOf(line, tried)));
      const counts = held * Math.exp(-2 * (away / reach_px) ** 2);
      if (counts > worth) {
        worth = counts;
        best = lines;
      }
    }
  }
  return best === undefined ? undefined : refined(best, all, tap, reach_px);
}

const lineAt = ({ point, acrossX, acrossY }: RidgePoint): Line => ({
  acrossX,
  acrossY,
  offset: acrossX * point.x_px + acrossY * point.y_px,
});

function crossingOf(one: Line, other: Line): PicturePoint | undefined {
  if (Math.abs(one.acrossX * other.acrossX + one.acrossY * other.acrossY) > CROSSES) return undefined;
  const area = one.acrossX * other.acrossY - one.acrossY * other.acrossX;
  return {
    x_px: (one.offset * other.acrossY - other.offset * one.acrossY) / area,
    y_px: (one.acrossX * other.offset - other.acrossX * one.offset) / area,
  };
}

const isOn = (line: Line, ridge: RidgePoint): boolean =>
  Math.abs(line.acrossX * ridge.point.x_px + line.acrossY * ridge.point.y_px - line.offset) <= ON_LINE_px &&
  Math.abs(line.acrossX * ridge.acrossX + line.acrossY * ridge.acrossY) >= SAME_WAY;

const supportOf = (line: Line, points: readonly RidgePoint[]): number =>
  points.reduce((sum, point) => (isOn(line, point) ? sum + point.strength_1 : sum), 0);

/** Both lines laid anew through their places, without those that the crossing itself spoils; twice. */
function refined(
  lines: readonly [Line, Line],
  all: readonly RidgePoint[],
  tap: PicturePoint,
  reach_px: number,
): Snapped | undefined {
  let [one, other] = lines;
  let at = crossingOf(one, other);
  for (let round = 0; round < 2 && at !== undefined; round += 1) {
    const middle = at;
    const clear = all.filter(({ point }) => distance_px(point, middle) > SPOILT_px);
    const laid = [one, other].map((line) => laidThrough(clear.filter((point) => isOn(line, point))));
    if (laid[0] === undefined || laid[1] === undefined) return undefined;
    [one, other] = [laid[0], laid[1]];
    at = crossingOf(one, other);
  }
  if (at === undefined || distance_px(at, tap) > reach_px) return undefined;
  const strengths = [one, other].map((line) => {
    const on = all.filter((point) => isOn(line, point));
    return on.reduce((sum, { strength_1 }) => sum + strength_1, 0) / Math.max(1, on.length);
  });
  return { point: at, strength_1: Math.min(...strengths) };
}

/** The line with the least squares of the distances to its places, the stronger counting more. */
function laidThrough(points: readonly RidgePoint[]): Line | undefined {
  if (points.length < FEWEST_ON_LINE) return undefined;
  const sum = (of: (point: RidgePoint) => number) =>
    points.reduce((total, point) => total + point.strength_1 * of(point), 0);
  const weight = sum(() => 1);
  const middleX = sum(({ point }) => point.x_px) / weight;
  const middleY = sum(({ point }) => point.y_px) / weight;
  const xx = sum(({ point }) => (point.x_px - middleX) ** 2);
  const xy = sum(({ point }) => (point.x_px - middleX) * (point.y_px - middleY));
  const yy = sum(({ point }) => (point.y_px - middleY) ** 2);
  const along = Math.atan2(2 * xy, xx - yy) / 2;
  const [acrossX, acrossY] = [-Math.sin(along), Math.cos(along)];
  return { acrossX, acrossY, offset: acrossX * middleX + acrossY * middleY };
}
