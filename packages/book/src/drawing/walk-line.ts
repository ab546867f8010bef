import type { Stance } from "../schema/book-source.ts";
import { type Cubic, cubicTo, moveTo, type Px, polygon, smoothCubics } from "./path.ts";

/** The walk as three pieces of path data, so that each can have its own ink. */
export interface WalkLine {
  /** Legs already walked. */
  readonly walked: string;
  /** Legs still ahead; drawn dashed. */
  readonly ahead: string;
  /** Filled arrow heads, one a leg, pointing the way one goes. */
  readonly heads: string;
  /** Places along all legs, so close together that a line's breadth is known by them. */
  readonly trace: readonly Px[];
}

export interface WalkLineLook {
  /** Length of an arrow head from its middle, pixels. */
  readonly head_px?: number;
  /** Where the walk starts, metres: the door, say. Without it, the first leg starts at the first outside stance. */
  readonly start?: readonly [x_m: number, y_m: number];
}

const LOOSE_ARM_1 = 1 / 5;
/** Places on the line are no further apart than this, about. */
const TRACE_px = 6;
/** A little past the middle of the leg, where no sole lies. */
const HEAD_AT_1 = 0.53;

/**
 * The smooth line through the stances in their order. What is done inside the aircraft is not on it.
 *
 * @param here id of the stance one is at: legs up to it are walked; `undefined` when the walk has not begun
 */
export function walkLine(
  stances: readonly Pick<Stance, "id" | "place" | "posture">[],
  here: string | undefined,
  project: (x_m: number, y_m: number) => Px,
  look: WalkLineLook = {},
): WalkLine {
  const isOutside = ({ posture }: Pick<Stance, "posture">): boolean => posture !== "inside";
  const outside = stances.filter(isOutside);
  const reached = stances.slice(0, stances.findIndex(({ id }) => id === here) + 1).filter(isOutside).length;
  const places = outside.map(({ place }) => project(place[0], place[1]));
  const start = look.start === undefined ? [] : [project(look.start[0], look.start[1])];
  const walkedLegs = Math.max(start.length + reached - 1, 0);
  const legs = smoothCubics([...start, ...places], LOOSE_ARM_1);
  const drawn = (leg: Cubic): string => moveTo(leg.from) + cubicTo(leg);
  return {
    walked: legs.slice(0, walkedLegs).map(drawn).join(""),
    ahead: legs.slice(walkedLegs).map(drawn).join(""),
    heads: legs.map((leg) => arrowHead(leg, look.head_px ?? 5)).join(""),
    trace: legs.flatMap(traced),
  };
}

function traced(leg: Cubic): readonly Px[] {
  const long_px = Math.hypot(leg.to[0] - leg.from[0], leg.to[1] - leg.from[1]);
  const parts = Math.max(1, Math.ceil(long_px / TRACE_px));
  return Array.from({ length: parts + 1 }, (_, part) => along(leg, part / parts));
}

function along(leg: Cubic, t: number): Px {
  const u = 1 - t;
  const mix = (i: 0 | 1): number =>
    u ** 3 * leg.from[i] + 3 * u * u * t * leg.arm1[i] + 3 * u * t * t * leg.arm2[i] + t ** 3 * leg.to[i];
  return [mix(0), mix(1)];
}

function arrowHead(leg: Cubic, length_px: number): string {
  const middle = along(leg, HEAD_AT_1);
  const before = along(leg, HEAD_AT_1 - 0.05);
  const way_rad = Math.atan2(middle[1] - before[1], middle[0] - before[0]);
  const corner = (turn_rad: number): Px => [
    middle[0] + Math.cos(way_rad + turn_rad) * length_px,
    middle[1] + Math.sin(way_rad + turn_rad) * length_px,
  ];
  return polygon([corner(0), corner(2.5), corner(-2.5)]);
}
