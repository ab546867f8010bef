import type { Book } from "@witnessmark/book";
import { doorway } from "@witnessmark/planner";
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

/** The stances of a walk, begun before the door. */
export const walkRoute = (
  { geometry }: Pick<Book, "geometry">,
  { stops }: Pick<WalkScene, "stops">,
): DrawingRoute => ({ stops, start: doorway(geometry).outside });
