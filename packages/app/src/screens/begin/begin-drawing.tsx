import type { drawnFrom } from "@witnessmark/book";
import { extent, type Figures, noseUp, planView } from "@witnessmark/book";
import { useMemo } from "react";
import { Strokes } from "../../drawing/strokes.tsx";
import { lengthIn, type Said } from "./first-figures.ts";

interface BeginDrawingProps {
  readonly drawn: ReturnType<typeof drawnFrom>;
  readonly figures: Figures;
  readonly unit: Said["unit"];
}

/** Pixels for a metre in the drawing's own box; it is shown as wide as there is room. */
const SCALE = 40;
const MARGIN_px = 12;

/** The aircraft as a book of these figures would draw it, nose up, with its points. */
export function BeginDrawing({ drawn: { geometry, points }, figures, unit }: BeginDrawingProps) {
  const box = useMemo(() => extent(geometry), [geometry]);
  const project = useMemo(
    () => noseUp(SCALE, MARGIN_px - box.left_m * SCALE, MARGIN_px - box.fore_m * SCALE),
    [box],
  );
  const strokes = useMemo(() => planView(geometry, project, 2), [geometry, project]);
  const width = (box.right_m - box.left_m) * SCALE + 2 * MARGIN_px;
  const height = (box.aft_m - box.fore_m) * SCALE + 2 * MARGIN_px;
  return (
    <figure className="begin-drawing">
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={`From above: ${lengthIn(figures.span_m, unit)} from tip to tip, ${lengthIn(figures.length_m, unit)} long, ${points.length} points`}
      >
        <Strokes strokes={strokes} />
        {points.map(({ id, place: [x_m, y_m] }) => {
          const [cx, cy] = project(x_m, y_m);
          return <circle key={id} className="begin-point" cx={cx} cy={cy} r={4} />;
        })}
      </svg>
      <figcaption>
        {lengthIn(figures.span_m, unit)} from tip to tip, {lengthIn(figures.length_m, unit)} long,{" "}
        {points.length} points
      </figcaption>
    </figure>
  );
}
