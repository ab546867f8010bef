import type { Book } from "@witnessmark/book";
import type { WalkPlan } from "@witnessmark/planner";
import { useMemo } from "react";
import { AircraftDrawing } from "../../drawing/aircraft-drawing.tsx";
import { walkMarks, walkRoute } from "../../drawing/walk-marks.ts";
import { walkScene } from "../../drawing/walk-scene.ts";

interface WholePlanProps {
  readonly book: Book;
  readonly plan: WalkPlan;
  readonly width_px: number;
}

/** A walk that has not begun: every stance ahead, every point open. */
export function WholePlan({ book, plan, width_px }: WholePlanProps) {
  const scene = useMemo(() => walkScene(book, plan, () => "open", undefined), [book, plan]);
  const marks = useMemo(() => walkMarks({ points: scene.points, inHand: undefined }), [scene]);
  const route = useMemo(() => walkRoute(book, scene), [book, scene]);
  const mark_px = width_px < 500 ? 11 : 16;
  return (
    <AircraftDrawing
      geometry={book.geometry}
      label={`The whole walk on the aircraft from above, nose up: ${scene.stops.length} stances, ${marks.length} points`}
      marks={marks}
      route={route}
      mark_px={mark_px}
      apart_px={mark_px}
      still
    />
  );
}
