import type { Book } from "@witnessmark/book";
import type { DrawingMark, DrawingRoute } from "./drawing-props.ts";
import type { ScenePoint, WalkScene } from "./walk-scene.ts";

/** A walk's points as marks, in the order in which they are walked; the next is the first open one after that in hand. */
export function walkMarks({ points, inHand }: Pick<WalkScene, "points" | "inHand">): readonly DrawingMark[] {
  const at = inHand === undefined ? -1 : points.indexOf(inHand);
  const isOpen = (point: ScenePoint) => point.status === "open" && point !== inHand;
  const next = points.find((point, index) => index > at && isOpen(point)) ?? points.find(isOpen);
  return points.map((point) => ({
    id: point.id,
    name: point.name,
    place: [point.x_m, point.y_m, point.z_m],
    status: point.status,
    state:
      point === inHand
        ? ("here" as const)
        : point === next
          ? ("next" as const)
          : point.status === "open"
            ? ("left" as const)
            : ("done" as const),
    // inside, many lie close together
    size: point.near === point.inside ? undefined : point.near ? ("large" as const) : ("small" as const),
  }));
}

/** How far outside the door a walk begins, metres aft of its middle and out from the side. */
const FROM_DOOR_m = { aft: 0.7, out: 1.5 } as const;

/** The stances of a walk, begun outside the door. */
export function walkRoute(
  { geometry }: Pick<Book, "geometry">,
  { stops }: Pick<WalkScene, "stops">,
): DrawingRoute {
  const { door, fuselage } = geometry;
  if (door === undefined) return { stops };
  const halfWidth_m = fuselage.find(([x]) => x >= door.x[1])?.[1] ?? 0;
  return {
    stops,
    start: [
      (door.x[0] + door.x[1]) / 2 + FROM_DOOR_m.aft,
      (door.side === "right" ? 1 : -1) * (halfWidth_m + FROM_DOOR_m.out),
    ],
  };
}
