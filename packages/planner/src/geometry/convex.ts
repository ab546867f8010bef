import { f64 } from "../cells.ts";

/** [x aft, y right], metres. */
export type Ground = readonly [x_m: number, y_m: number];

/** Two places closer than this are one. */
const SAME_m = 1e-9;
/** What passes less than this inside an edge goes along it. */
const ALONG_m = 1e-7;

const cross = (o: Ground, a: Ground, b: Ground): number =>
  (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);

/** The convex hull, all corners turning the same way; without corners on straight edges. (Andrew's monotone chain.) */
export function hull(places: readonly Ground[]): readonly Ground[] {
  const sorted = [...places].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (run: readonly Ground[]): Ground[] => {
    const chain: Ground[] = [];
    for (const place of run) {
      for (let [o, a] = chain.slice(-2); o && a && cross(o, a, place) <= SAME_m; [o, a] = chain.slice(-2))
        chain.pop();
      chain.push(place);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}

/** Corners of an octagon that holds a circle. */
export function octagon([x, y]: Ground, radius_m: number): readonly Ground[] {
  const corner_m = radius_m / Math.cos(Math.PI / 8);
  return Array.from({ length: 8 }, (_, i) => {
    const turn_rad = ((2 * i + 1) * Math.PI) / 8;
    return [x + corner_m * Math.cos(turn_rad), y + corner_m * Math.sin(turn_rad)] as const;
  });
}

/** A convex shape with room for a body all round it: everything nearer than `room_m` is inside, and a little more. */
export const withRoom = (corners: readonly Ground[], room_m: number): readonly Ground[] =>
  room_m > 0 ? hull(corners.flatMap((corner) => octagon(corner, room_m))) : hull(corners);

/** Edges of a shape from `hull`: a place is inside where it lies to the left of every one. */
function* edges(corners: readonly Ground[]): Generator<readonly [from: Ground, to: Ground]> {
  let from = corners.at(-1);
  for (const to of corners) {
    if (from !== undefined) yield [from, to];
    from = to;
  }
}

/** How far a place lies inside, metres to the nearest edge; negative outside. */
export function depth_m(corners: readonly Ground[], place: Ground): number {
  let least_m = Number.POSITIVE_INFINITY;
  for (const [a, b] of edges(corners)) {
    const length_m = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length_m > SAME_m) least_m = Math.min(least_m, cross(a, b, place) / length_m);
  }
  return corners.length < 3 ? Number.NEGATIVE_INFINITY : least_m;
}

export const isInside = (corners: readonly Ground[], place: Ground): boolean =>
  depth_m(corners, place) > ALONG_m;

/** A convex shape made ready to be asked of many ways. */
export interface ReadyShape {
  /** For each edge: how far inside a place lies is `lines[0] * x + lines[1] * y + lines[2]`, metres. */
  readonly lines: Float64Array;
  readonly low: Ground;
  readonly high: Ground;
}

export function readyShape(corners: readonly Ground[]): ReadyShape {
  const lines: number[] = [];
  for (const [a, b] of corners.length < 3 ? [] : edges(corners)) {
    const length_m = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length_m <= SAME_m) continue;
    const [inX, inY] = [(a[1] - b[1]) / length_m, (b[0] - a[0]) / length_m];
    lines.push(inX, inY, -inX * a[0] - inY * a[1]);
  }
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  return {
    lines: Float64Array.from(lines),
    low: [Math.min(...xs), Math.min(...ys)],
    high: [Math.max(...xs), Math.max(...ys)],
  };
}

/** Whether a straight way goes through the inside of a convex shape; to go along its edge is no passing through. */
export function passesThrough({ lines, low, high }: ReadyShape, from: Ground, to: Ground): boolean {
  const [fromX, fromY, toX, toY] = [from[0], from[1], to[0], to[1]];
  if (lines.length === 0) return false;
  if ((fromX <= low[0] && toX <= low[0]) || (fromX >= high[0] && toX >= high[0])) return false;
  if ((fromY <= low[1] && toY <= low[1]) || (fromY >= high[1] && toY >= high[1])) return false;
  let enter = 0;
  let leave = 1;
  for (let at = 0; at < lines.length; at += 3) {
    const inX = f64(lines, at);
    const inY = f64(lines, at + 1);
    const start_m = inX * fromX + inY * fromY + f64(lines, at + 2) - ALONG_m;
    const end_m = inX * toX + inY * toY + f64(lines, at + 2) - ALONG_m;
    if (start_m <= 0 && end_m <= 0) return false;
    if (start_m < 0) enter = Math.max(enter, start_m / (start_m - end_m));
    if (end_m < 0) leave = Math.min(leave, start_m / (start_m - end_m));
  }
  return (leave - enter) * Math.hypot(toX - fromX, toY - fromY) > ALONG_m;
}

/** The nearest place on the edge of a shape, and a little outside it. */
export function stepOut(corners: readonly Ground[], place: Ground): Ground {
  let best: { readonly away_m: number; readonly at: Ground } | undefined;
  for (const [a, b] of edges(corners)) {
    const length_m = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length_m <= SAME_m) continue;
    const away_m = cross(a, b, place) / length_m;
    const out_m = away_m + 1e-6;
    // outward is to the right of an edge
    const at: Ground = [
      place[0] + ((b[1] - a[1]) / length_m) * out_m,
      place[1] - ((b[0] - a[0]) / length_m) * out_m,
    ];
    if (best === undefined || away_m < best.away_m) best = { away_m, at };
  }
  return best?.at ?? place;
}
