import type { Book } from "@witnessmark/book";
import { memo, useMemo } from "react";
import { AircraftPlan } from "./aircraft-plan.tsx";
import { wholeCamera } from "./camera.ts";
import { walkBox } from "./walk-camera.ts";
import type { SceneStop } from "./walk-scene.ts";

interface KeyPlanProps {
  readonly book: Book;
  readonly stops: readonly SceneStop[];
  readonly width_px: number;
  readonly height_px: number;
}

/** The whole walk at a glance: a stroke where one has been, a ring where one has not, a dot where one is. */
export const KeyPlan = memo(function KeyPlan({ book, stops, width_px, height_px }: KeyPlanProps) {
  const camera = useMemo(
    () =>
      wholeCamera(walkBox(book, { stops }), { width_px, height_px }, { side_px: 7, top_px: 8, bottom_px: 8 }),
    [book, stops, width_px, height_px],
  );
  const k = camera.pxPerMetre;
  return (
    <svg
      className="key-plan"
      width={width_px}
      height={height_px}
      viewBox={`0 0 ${width_px} ${height_px}`}
      aria-hidden="true"
    >
      <g transform={`translate(${camera.originX_px.toFixed(1)} ${camera.originY_px.toFixed(1)})`}>
        <AircraftPlan geometry={book.geometry} pxPerMetre={k} detail={0} />
        {stops.map(({ stance, state, number }) => {
          if (stance.posture === "inside") return null;
          const [x, y] = [stance.place[1] * k, stance.place[0] * k];
          if (state === "done") return <path key={number} className="key-seen" d={`M${x},${y - 4}v8`} />;
          return state === "here" ? (
            <circle key={number} className="key-here" cx={x} cy={y} r={4.5} />
          ) : (
            <circle key={number} className="key-ahead" cx={x} cy={y} r={2.6} />
          );
        })}
      </g>
    </svg>
  );
}, looksTheSame);

/** An answer seldom changes where one has been: the picture is drawn again only then. */
function looksTheSame(was: KeyPlanProps, now: KeyPlanProps): boolean {
  return (
    was.book === now.book &&
    was.width_px === now.width_px &&
    was.height_px === now.height_px &&
    was.stops.length === now.stops.length &&
    was.stops.every((stop, index) => stop.state === now.stops[index]?.state)
  );
}
