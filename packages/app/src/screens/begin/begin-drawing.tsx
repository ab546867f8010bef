import { type drawnFrom, extent, type Figures } from "@witnessmark/book";
import { useMemo } from "react";
import { AircraftDrawing } from "../../drawing/aircraft-drawing.tsx";
import { datumWords, lengthIn, type Said } from "./first-figures.ts";

interface BeginDrawingProps {
  readonly drawn: ReturnType<typeof drawnFrom>;
  readonly figures: Figures;
  readonly unit: Said["unit"];
  /** With the figures as they stand now nothing can be drawn: this is what was drawn last. */
  readonly isPast: boolean;
}

const DOT_px = 13;

/** The aircraft as a book of these figures would draw it, nose up, with its points. */
export function BeginDrawing({ drawn: { geometry, points }, figures, unit, isPast }: BeginDrawingProps) {
  const ratio = useMemo(() => {
    const { fore_m, aft_m, left_m, right_m } = extent(geometry);
    return (right_m - left_m) / (Math.max(0, aft_m) - Math.min(0, fore_m));
  }, [geometry]);
  const datum_m = figures.datumAft_m;
  const said = `${lengthIn(figures.span_m, unit)} from tip to tip, ${lengthIn(figures.length_m, unit)} long, ${points.length} points; datum at ${datumWords(datum_m, unit)}`;
  return (
    <figure className={isPast ? "begin-drawing begin-past" : "begin-drawing"}>
      <div className="begin-plan" style={{ aspectRatio: ratio }}>
        <AircraftDrawing
          geometry={geometry}
          label={`From above: ${said}`}
          marks={points.map(({ id, place }) => ({ id, name: id, place }))}
          mark_px={DOT_px}
          apart_px={DOT_px}
          datum
          still
        />
      </div>
      <figcaption>{isPast ? `Drawn last: ${said}` : said}</figcaption>
    </figure>
  );
}
