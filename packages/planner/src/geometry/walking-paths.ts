import { f64, u8 } from "../cells.ts";
import { type Ground, isInside, passesThrough, readyShape, stepOut } from "./convex.ts";
import type { Obstacle } from "./obstacles.ts";

/** The shortest ways between places on the ground, round every obstacle. */
export interface WalkingPaths {
  /** `metres[from * places + to]`; infinite where no way leads. */
  readonly metres: Float64Array;
  /** The corners of the way, both ends included; empty where no way leads. */
  way(from: number, to: number): readonly Ground[];
}

/** How often a place inside an obstacle is moved out of it, and out of the next, before it is given up. */
const MOST_STEPS_OUT = 12;

/**
 * @param places where one stands. From inside an obstacle, close to the metal, say, one first steps out the shortest
 *   way
 */
export function walkingPaths(places: readonly Ground[], obstacles: readonly Obstacle[]): WalkingPaths {
  const shapes = obstacles.map(({ corners }) => corners).filter((corners) => corners.length >= 3);
  const isFree = (place: Ground): boolean => !shapes.some((corners) => isInside(corners, place));
  const outside = places.map((place) => steppedOut(place, shapes));
  // where nobody gets out, the place only keeps its number: no way leads to it
  const terminals = places.map((place, i): Ground => outside[i] ?? place);
  const nodes: readonly Ground[] = [...terminals, ...shapes.flat().filter(isFree)];
  const count = nodes.length;
  const ready = shapes.map(readyShape);
  const length_m = new Float64Array(count * count).fill(Number.POSITIVE_INFINITY);
  for (const [a, from] of nodes.entries()) {
    if (a < places.length && outside[a] === undefined) continue;
    for (const [b, to] of nodes.entries()) {
      if (b <= a || (b < places.length && outside[b] === undefined)) continue;
      if (ready.some((shape) => passesThrough(shape, from, to))) continue;
      const metres = Math.hypot(to[0] - from[0], to[1] - from[1]);
      length_m[a * count + b] = metres;
      length_m[b * count + a] = metres;
    }
  }
  const stepped_m = places.map((place, i) => {
    const out = outside[i];
    return out === undefined ? 0 : Math.hypot(out[0] - place[0], out[1] - place[1]);
  });
  const trees = places.map((_, from) => shortestTree(from, length_m, count));
  const metres = new Float64Array(places.length ** 2);
  for (const [from, { distance_m }] of trees.entries()) {
    for (let to = 0; to < places.length; to += 1) {
      metres[from * places.length + to] =
        from === to ? 0 : f64(distance_m, to) + (stepped_m[from] ?? 0) + (stepped_m[to] ?? 0);
    }
  }
  return {
    metres,
    way(from, to) {
      const [start, end, tree] = [places[from], places[to], trees[from]];
      if (start === undefined || end === undefined || tree === undefined) return [];
      if (f64(tree.distance_m, to) === Number.POSITIVE_INFINITY) return [];
      const corners: Ground[] = [];
      for (let node = to; node >= 0; node = tree.before[node] ?? -1) corners.unshift(nodes[node] ?? start);
      const whole = [start, ...corners, end];
      return whole.filter((corner, i) => i === 0 || corner !== whole[i - 1]);
    },
  };
}

function steppedOut(place: Ground, shapes: readonly (readonly Ground[])[]): Ground | undefined {
  let at = place;
  for (let step = 0; step < MOST_STEPS_OUT; step += 1) {
    const around = shapes.find((corners) => isInside(corners, at));
    if (around === undefined) return at;
    at = stepOut(around, at);
  }
  return undefined;
}

/** Dijkstra's algorithm on a full matrix: the graph is small and dense. */
function shortestTree(start: number, length_m: Float64Array, count: number) {
  const distance_m = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const before = new Int32Array(count).fill(-1);
  const isDone = new Uint8Array(count);
  distance_m[start] = 0;
  for (;;) {
    let node = -1;
    for (let i = 0; i < count; i += 1) {
      const isNearer = node < 0 || f64(distance_m, i) < f64(distance_m, node);
      if (u8(isDone, i) === 0 && f64(distance_m, i) < Number.POSITIVE_INFINITY && isNearer) node = i;
    }
    if (node < 0) return { distance_m, before };
    isDone[node] = 1;
    for (let to = 0; to < count; to += 1) {
      const through_m = f64(distance_m, node) + f64(length_m, node * count + to);
      if (through_m >= f64(distance_m, to)) continue;
      distance_m[to] = through_m;
      before[to] = node;
    }
  }
}
