import {
  type Book,
  centreLine,
  type Detail,
  elevation,
  extent,
  frontElevation,
  frontView,
  groundLine,
  noseUp,
  planView,
  sideView,
} from "@witnessmark/book";
import { memo, useMemo } from "react";
import type { DrawingView } from "./drawing-props.ts";
import { Strokes } from "./strokes.tsx";

interface AircraftViewProps {
  readonly geometry: Book["geometry"];
  readonly view: DrawingView;
  readonly pxPerMetre: number;
  readonly detail: Detail;
  readonly centre?: boolean;
}

/** The aircraft in one of its views, its datum (on the ground, but in plan) at 0,0: moving the picture never redraws it. */
export const AircraftView = memo(function AircraftView({
  geometry,
  view,
  pxPerMetre,
  detail,
  centre = false,
}: AircraftViewProps) {
  const { strokes, ground, line } = useMemo(() => {
    const { fore_m, aft_m } = extent(geometry);
    if (view === "plan") {
      const project = noseUp(pxPerMetre, 0, 0);
      return {
        strokes: planView(geometry, project, detail),
        ground: [],
        line: centreLine(project, fore_m - 0.9, aft_m + 0.9),
      };
    }
    if (view === "front") {
      const project = frontElevation(pxPerMetre, 0, 0);
      const { left_m, right_m } = extent(geometry);
      // the ground runs from left to right on the drawing, and y to the left
      const ground = groundLine(elevation(pxPerMetre, 0, 0), -right_m - 0.3, 0.3 - left_m);
      return { strokes: frontView(geometry, project, detail), ground, line: "" };
    }
    const project = elevation(pxPerMetre, 0, 0);
    return {
      strokes: sideView(geometry, project, detail),
      ground: groundLine(project, fore_m - 0.5, aft_m + 0.5),
      line: "",
    };
  }, [geometry, view, pxPerMetre, detail]);
  return (
    <>
      {ground.length === 0 ? null : <Strokes strokes={ground} />}
      <Strokes strokes={strokes} />
      {centre && line !== "" ? <path className="centre-line" d={line} /> : null}
    </>
  );
});
