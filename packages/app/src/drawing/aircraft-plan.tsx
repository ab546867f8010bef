import { type Book, centreLine, type Detail, extent, noseUp, planView } from "@witnessmark/book";
import { memo, useMemo } from "react";
import { Strokes } from "./strokes.tsx";

interface AircraftPlanProps {
  readonly geometry: Book["geometry"];
  readonly pxPerMetre: number;
  readonly detail: Detail;
  readonly centre?: boolean;
}

/** The aircraft from above, nose up, with its datum at 0,0: moving the picture never redraws it. */
export const AircraftPlan = memo(function AircraftPlan({
  geometry,
  pxPerMetre,
  detail,
  centre = false,
}: AircraftPlanProps) {
  const { strokes, line } = useMemo(() => {
    const project = noseUp(pxPerMetre, 0, 0);
    const { fore_m, aft_m } = extent(geometry);
    return {
      strokes: planView(geometry, project, detail),
      line: centreLine(project, fore_m - 0.9, aft_m + 0.9),
    };
  }, [geometry, pxPerMetre, detail]);
  return (
    <>
      <Strokes strokes={strokes} />
      {centre ? <path className="centre-line" d={line} /> : null}
    </>
  );
});
