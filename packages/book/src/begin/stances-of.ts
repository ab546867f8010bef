import type { Stance } from "../schema/book-source.ts";
import type { Geometry } from "../schema/geometry.ts";
import type { Figures } from "./figures.ts";
import { onWing } from "./place.ts";
import { cm } from "./round.ts";
import { shapeStands } from "./shape-stands.ts";
import { tailRoot_m } from "./shape-surfaces.ts";

/** How far from the metal one stands. Common practice: an arm and a half. */
const APART_m = 0.8;

/**
 * Where one stands, in the order of a walk: out of the door on the left, round the tail, along the right wing, past the
 * nose, and back along the left one.
 */
export function stancesOf(geometry: Geometry, figures: Figures): readonly Stance[] {
  const { span_m, length_m, engines } = figures;
  const sides = { left: shapeStands(geometry, "left"), right: shapeStands(geometry, "right") } as const;
  const shape = sides.right;
  const { halfWidth_m, mainWheel } = shape;
  const aft = onWing(0.55, 1)(shape, figures);
  const fore = onWing(0.6, 0)(shape, figures);
  const stand = (id: string, name: string, x_m: number, y_m: number, facing: number): Stance => ({
    id,
    name,
    place: [cm(x_m), cm(y_m)],
    facing,
    posture: "stand",
  });
  // of a tail-wheel aircraft the main wheels are near the propeller: one looks at them a little from behind
  const behind_m = figures.gear === "tail-wheel" ? 0.4 : 0.1;
  const isMono = figures.gear === "mono-wheel";
  const isGlider = figures.engine === "none";
  const monoWheel: Stance = {
    id: "main-wheel",
    name: "Main wheel, from the left",
    // between the nacelles there is no room to crouch: then from behind the wing
    place: [cm(engines === 2 ? aft[0] + 0.5 : mainWheel.x_m - 0.2), cm(-halfWidth_m - APART_m)],
    facing: 90,
    posture: "crouch",
  };
  const wheel = (side: "left" | "right"): Stance => ({
    id: `${side}-main-wheel`,
    name: `${side === "left" ? "Left" : "Right"} main wheel`,
    place: [
      cm(sides[side].mainWheel.x_m + behind_m),
      cm((side === "left" ? -1 : 1) * (sides[side].mainWheel.y_m + APART_m)),
    ],
    facing: side === "left" ? 90 : 270,
    posture: "crouch",
  });
  // a tail that was moved takes along who looks at it
  const moved_m = geometry.tailplane.root.leadingEdge - tailRoot_m(figures);
  const tail_x_m = 0.8 * length_m + moved_m;
  const tail_y_m = (isGlider ? 0.09 : 0.16) * span_m * 0.4 + APART_m;
  const front_m = ({ engine }: typeof shape) => (engine?.x_m ?? 0) - 1.1;
  const beside_m = ({ engine }: typeof shape) => (engine?.x_m ?? 0) + 0.75;
  const engineStances = (side: "left" | "right"): readonly Stance[] => {
    const way = side === "left" ? -1 : 1;
    const out_m = sides[side].engine?.y_m ?? 0;
    const name = side === "left" ? "Left" : "Right";
    return [
      stand(
        `${side}-engine-front`,
        `Before the ${side} engine`,
        front_m(sides[side]),
        way * (out_m + 0.3),
        side === "left" ? 170 : 190,
      ),
      stand(
        `${side}-engine-side`,
        `${name} engine, outer side`,
        beside_m(sides[side]),
        way * (out_m + 1.2),
        side === "left" ? 90 : 270,
      ),
    ];
  };
  return [
    {
      id: "seat",
      name: "Pilot's seat",
      place: [cm((isGlider ? 0.23 : 0.42) * length_m), cm(-0.3 * halfWidth_m)],
      facing: 0,
      posture: "inside",
    },
    stand("left-trailing-edge", "Behind the left wing", aft[0] + APART_m, -aft[1], 0),
    stand("left-tail", "Left of the tail", tail_x_m, -tail_y_m, 90),
    stand("behind-tail", "Behind the tail", length_m + moved_m + APART_m, 0.4, 0),
    stand("right-tail", "Right of the tail", tail_x_m, tail_y_m, 270),
    stand("right-trailing-edge", "Behind the right wing", aft[0] + APART_m, aft[1], 0),
    stand("right-leading-edge", "Before the right wing", fore[0] - APART_m, fore[1], 180),
    ...(isMono ? [] : [wheel("right")]),
    ...(engines === 2
      ? engineStances("right")
      : engines === 1
        ? [stand("engine-side", "Beside the engine", beside_m(shape), halfWidth_m + 0.8, 270)]
        : []),
    stand("nose", "Before the nose", engines === 1 ? front_m(shape) : -1, 0.35, 180),
    ...(engines === 2 ? engineStances("left") : []),
    isMono ? monoWheel : wheel("left"),
    stand("left-leading-edge", "Before the left wing", fore[0] - APART_m, -fore[1], 180),
  ];
}
