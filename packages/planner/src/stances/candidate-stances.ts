import { extent, type Geometry, type Method } from "@witnessmark/book";
import { type Ground, isInside } from "../geometry/convex.ts";
import type { Obstacle } from "../geometry/obstacles.ts";
import type { Person } from "../geometry/person.ts";
import { reachOf } from "../geometry/reach.ts";
import type { Space } from "../geometry/solids.ts";

/** Something to be looked at or touched, as far as it decides where one stands. */
export interface Target {
  readonly id: string;
  readonly place: Space;
  readonly method: Method;
}

/** A place where one may stand or crouch, and what can be done from it. */
export interface Candidate {
  readonly place: Ground;
  readonly posture: "stand" | "crouch";
  /** Places in the list of targets. */
  readonly serves: readonly number[];
  /** Of those, what is too high to touch from the ground. */
  readonly needsStep: readonly number[];
  /** The arc of a propeller is stood in: with caution, and only because something in it cannot be done from outside. */
  readonly isInArc: boolean;
}

/** Places tried lie on a grid. */
const GRID_m = 0.5;
/** How far outside the aircraft places are tried. */
const AROUND_m = 2.5;

/**
 * Where one may stand: places on a grid, outside everything one walks round, from which at least one target is served;
 * without those that a near place outdoes.
 *
 * A place in the arc of a propeller is given only for what no place outside it serves. Inlets, exhausts and antennas
 * are never stood in.
 */
export function candidateStances(
  geometry: Geometry,
  obstacles: readonly Obstacle[],
  targets: readonly Target[],
  person: Person,
): readonly Candidate[] {
  const places = gridOf(geometry);
  const isFree = (place: Ground): boolean => !obstacles.some(({ corners }) => isInside(corners, place));
  const outside = served(geometry, places.filter(isFree), targets, person, false);
  const reached = new Set(outside.flatMap(({ serves }) => serves));
  const isOnlyInArc = (place: Ground): boolean => {
    const around = obstacles.filter(({ corners }) => isInside(corners, place));
    return around.length > 0 && around.every(({ propeller }) => propeller !== undefined);
  };
  const missing = (one: number): boolean => !reached.has(one);
  const inArc = served(geometry, places.filter(isOnlyInArc), targets, person, true)
    .map((candidate) => ({
      ...candidate,
      serves: candidate.serves.filter(missing),
      needsStep: candidate.needsStep.filter(missing),
    }))
    .filter(({ serves }) => serves.length > 0);
  return withoutOutdone([...outside, ...inArc]);
}

function gridOf(geometry: Geometry): readonly Ground[] {
  const { fore_m, aft_m, left_m, right_m } = extent(geometry);
  const steps = (low_m: number, high_m: number): readonly number[] =>
    Array.from(
      { length: Math.ceil((high_m - low_m) / GRID_m) + 1 },
      (_, i) => Math.round(low_m / GRID_m) * GRID_m + i * GRID_m,
    );
  const across = steps(left_m - AROUND_m, right_m + AROUND_m);
  return steps(fore_m - AROUND_m, aft_m + AROUND_m).flatMap((x) => across.map((y): Ground => [x, y]));
}

function served(
  geometry: Geometry,
  places: readonly Ground[],
  targets: readonly Target[],
  person: Person,
  isInArc: boolean,
): readonly Candidate[] {
  return places.flatMap((place) =>
    (["stand", "crouch"] as const).flatMap((posture): readonly Candidate[] => {
      const reached = targets.flatMap((target, i) => {
        const reach = reachOf(geometry, person, place, posture, target);
        return reach === undefined ? [] : [{ i, needsStep: reach.needsStep }];
      });
      if (reached.length === 0) return [];
      const serves = reached.map(({ i }) => i);
      const needsStep = reached.filter((reach) => reach.needsStep).map(({ i }) => i);
      return [{ place, posture, serves, needsStep, isInArc }];
    }),
  );
}

/** Without each place next to another that serves all it serves, and more, or as much and came first. */
function withoutOutdone(candidates: readonly Candidate[]): readonly Candidate[] {
  const near_m = 2.5 * GRID_m;
  const sets = candidates.map(({ serves }) => new Set(serves));
  return candidates.filter((mine, i) =>
    candidates.every((other, j) => {
      if (i === j || mine.posture !== other.posture || mine.isInArc !== other.isInArc) return true;
      if (Math.hypot(mine.place[0] - other.place[0], mine.place[1] - other.place[1]) > near_m) return true;
      if (!mine.serves.every((target) => sets[j]?.has(target))) return true;
      return other.serves.length === mine.serves.length && i < j;
    }),
  );
}
