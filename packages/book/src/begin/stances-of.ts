import type { Stance } from "../schema/book-source.ts";
import type { Figures } from "./figures.ts";
import { onWing } from "./place.ts";
import { cm } from "./round.ts";
import type { Shape } from "./shape-of.ts";

/** How far from the metal one stands. Common practice: an arm and a half. */
const APART_m = 0.8;

/**
 * Where one stands, in the order of a walk: out of the door on the left, round the tail, along the right wing, past the
 * nose, and back along the left one.
 */
export function stancesOf(shape: Shape, figures: Figures): readonly Stance[] {
  const { span_m, length_m, engines } = figures;
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
  // of a tail-wheel aircraft the main wheels are near the propeller: one looks at them from behind
  const behind_m = figures.gear === "tail-wheel" ? 0.8 : 0.1;
  const isMono = figures.gear === "mono-wheel";
  const isGlider = figures.engine === "none";
  const monoWheel: Stance = {
    id: "main-wheel",
    name: "Main wheel, from the left",
    place: [cm(mainWheel.x_m - 0.2), cm(-halfWidth_m - APART_m)],
    facing: 90,
    posture: "crouch",
  };
  const wheel = (side: "left" | "right"): Stance => ({
    id: `${side}-main-wheel`,
    name: `${side === "left" ? "Left" : "Right"} main wheel`,
    place: [cm(mainWheel.x_m + behind_m), cm((side === "left" ? -1 : 1) * (mainWheel.y_m + APART_m))],
    facing: side === "left" ? 90 : 270,
    posture: "crouch",
  });
  const tail_x_m = 0.8 * length_m;
  const tail_y_m = (isGlider ? 0.09 : 0.16) * span_m * 0.4 + APART_m;
  const out_m = shape.engines[0]?.y_m ?? 0;
  const front_x_m = (shape.engines[0]?.x_m ?? 0) - 1.1;
  const side_x_m = (shape.engines[0]?.x_m ?? 0) + 0.75;
  const engineStances = (side: "left" | "right"): readonly Stance[] => {
    const way = side === "left" ? -1 : 1;
    const name = side === "left" ? "Left" : "Right";
    return [
      stand(
        `${side}-engine-front`,
        `Before the ${side} engine`,
        front_x_m,
        way * (out_m + 0.3),
        side === "left" ? 170 : 190,
      ),
      stand(
        `${side}-engine-side`,
        `${name} engine, outer side`,
        side_x_m,
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
    stand("behind-tail", "Behind the tail", length_m + APART_m, 0.4, 0),
    stand("right-tail", "Right of the tail", tail_x_m, tail_y_m, 270),
    stand("right-trailing-edge", "Behind the right wing", aft[0] + APART_m, aft[1], 0),
    stand("right-leading-edge", "Before the right wing", fore[0] - APART_m, fore[1], 180),
    ...(isMono ? [] : [wheel("right")]),
    ...(engines === 2
      ? engineStances("right")
      : engines === 1
        ? [stand("engine-side", "Beside the engine", side_x_m, halfWidth_m + 0.8, 270)]
        : []),
    stand("nose", "Before the nose", engines === 1 ? front_x_m : -1, 0.35, 180),
    ...(engines === 2 ? engineStances("left") : []),
    isMono ? monoWheel : wheel("left"),
    stand("left-leading-edge", "Before the left wing", fore[0] - APART_m, -fore[1], 180),
  ];
}
