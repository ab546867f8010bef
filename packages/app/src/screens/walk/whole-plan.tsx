import type { Book } from "@witnessmark/book";
import type { WalkPlan } from "@witnessmark/planner";
import { useMemo } from "react";
import { wholeCamera } from "../../drawing/camera.ts";
import { walkBox } from "../../drawing/walk-camera.ts";
import { WalkDrawing } from "../../drawing/walk-drawing.tsx";
import { walkScene } from "../../drawing/walk-scene.ts";

interface WholePlanProps {
  readonly book: Book;
  readonly plan: WalkPlan;
  readonly width_px: number;
  readonly height_px: number;
}

/** A walk that has not begun: every stance ahead, every point open. */
export function WholePlan({ book, plan, width_px, height_px }: WholePlanProps) {
  const scene = useMemo(() => walkScene(book, plan, () => "open", undefined), [book, plan]);
  const camera = useMemo(
    () =>
      wholeCamera(walkBox(book, scene), { width_px, height_px }, { side_px: 34, top_px: 34, bottom_px: 34 }),
    [book, scene, width_px, height_px],
  );
  return (
    <svg
      className="plan-svg"
      width={width_px}
      height={height_px}
      viewBox={`0 0 ${width_px} ${height_px}`}
      aria-hidden="true"
    >
      <WalkDrawing
        book={book}
        plan={plan}
        scene={scene}
        camera={camera}
        mark_px={width_px < 500 ? 11 : 16}
        ring_px={19}
      />
    </svg>
  );
}
