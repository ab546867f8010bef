import { elevation, extent, groundLine, sideView } from "@witnessmark/book";
import { memo, useCallback, useMemo } from "react";
import { AircraftDrawing } from "../../drawing/aircraft-drawing.tsx";
import type { Camera } from "../../drawing/camera.ts";
import { Ruler } from "../../drawing/ruler.tsx";
import { Strokes } from "../../drawing/strokes.tsx";
import { walkBox } from "../../drawing/walk-camera.ts";
import { walkMarks, walkRoute } from "../../drawing/walk-marks.ts";
import type { WalkScene } from "../../drawing/walk-scene.ts";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Mark, MarkAt } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { piecesOffCount, type WalkView } from "../../walk/walk-view.ts";
import { drawingLabel } from "./drawing-label.ts";

interface PlanAndSideProps {
  readonly open: OpenAircraft;
  readonly view: WalkView;
  readonly scene: WalkScene;
  readonly onPoint: (point: string) => void;
  readonly width_px: number;
  readonly height_px: number;
}

/** The buttons and what was kept stand over the drawing, and over no stance: 52 px, and room for a number. */
const TOP_px = 80;
const NUMBER_px = 30;
const SIDE_px = 58;
const GROUND_px = 30;
const RULER_px = 26;

/** A tablet's drawing: the whole walk from above, the elevation under it, stations along the edge, and the tally. */
export function PlanAndSide({ open, view, scene, onPoint, width_px, height_px }: PlanAndSideProps) {
  const { book } = open;
  const camera = useMemo((): Camera => {
    const box = walkBox(book, scene);
    const { top_m } = extent(book.geometry);
    const across = (width_px - 2 * SIDE_px - RULER_px) / (box.right - box.left);
    // the elevation's tail reaches up to the last stance, and leaves room for its number
    const along = (height_px - TOP_px - GROUND_px - NUMBER_px) / (box.aft - box.fore + top_m);
    const pxPerMetre = Math.max(8, Math.min(across, along));
    return {
      pxPerMetre,
      originX_px: Math.round((width_px - RULER_px) / 2 + 8 - ((box.left + box.right) / 2) * pxPerMetre),
      originY_px: Math.round(TOP_px - box.fore * pxPerMetre),
    };
  }, [book, scene, width_px, height_px]);
  const marks = useMemo(() => walkMarks(scene), [scene]);
  const route = useMemo(() => walkRoute(book, scene), [book, scene]);
  const home = useCallback(() => camera, [camera]);
  const { fore_m, aft_m } = extent(book.geometry);
  return (
    <>
      <svg
        className="plan-svg plan-beside"
        width={width_px}
        height={height_px}
        viewBox={`0 0 ${width_px} ${height_px}`}
        aria-hidden="true"
      >
        <Ruler
          from={Math.floor(fore_m)}
          to={Math.ceil(aft_m)}
          minor={0.5}
          major={1}
          map={(x_m) => camera.originY_px + x_m * camera.pxPerMetre}
          at_px={width_px - 1}
          way={-1}
          upright
        />
        <Elevation book={book} scene={scene} pxPerMetre={camera.pxPerMetre} height_px={height_px} />
      </svg>
      <AircraftDrawing
        room="wide-plan"
        geometry={book.geometry}
        label={drawingLabel(open, view, scene)}
        marks={marks}
        route={route}
        heading_deg={scene.here?.stance.facing}
        home={home}
        apart_px={16}
        onPoint={onPoint}
      />
      <Tally open={open} view={view} />
    </>
  );
}

const Elevation = memo(function Elevation({
  book,
  scene,
  pxPerMetre,
  height_px,
}: {
  readonly book: OpenAircraft["book"];
  readonly scene: WalkScene;
  readonly pxPerMetre: number;
  readonly height_px: number;
}) {
  const { fore_m, aft_m } = extent(book.geometry);
  const project = useMemo(() => elevation(pxPerMetre, 0, 0), [pxPerMetre]);
  const strokes = useMemo(() => sideView(book.geometry, project, 1), [book.geometry, project]);
  const ground = useMemo(() => groundLine(project, fore_m - 0.5, aft_m + 0.5), [project, fore_m, aft_m]);
  const origin = { x: Math.round(32 - (fore_m - 0.5) * pxPerMetre), y: height_px - GROUND_px };
  return (
    <g transform={`translate(${origin.x} ${origin.y})`}>
      <Strokes strokes={ground} />
      <Strokes strokes={strokes} />
      {scene.points.map((point) => {
        if (point.inHand || point.y_m > 0 || point.y_m < -1) return null;
        const [x, y] = project(point.x_m, point.z_m);
        return <circle key={point.id} className="point-dot" cx={x} cy={y} r={2.2} />;
      })}
      {scene.inHand === undefined ? null : <InElevation point={scene.inHand} project={project} />}
    </g>
  );
});

function InElevation({
  point,
  project,
}: {
  readonly point: NonNullable<WalkScene["inHand"]>;
  readonly project: (x_m: number, z_m: number) => readonly [number, number];
}) {
  const [x, y] = project(point.x_m, point.z_m);
  return <MarkAt status={point.status} x={x} y={y} size_px={20} />;
}

function Tally({ open, view }: { readonly open: OpenAircraft; readonly view: WalkView }) {
  const count = (status: "stop" | "caution" | "open" | "clear") =>
    view.steps.filter((step) => step.status === status).length;
  const pieces = open.book.groundGear.reduce((sum, item) => sum + item.count, 0);
  const off = open.book.groundGear.reduce(
    (sum, item) => sum + Math.min(item.count, piecesOffCount(open.state, view.walk, item.id)),
    0,
  );
  return (
    <div className="tally">
      {(["stop", "caution", "open", "clear"] as const).map((status) => (
        <p key={status}>
          <Mark status={status} size_px={24} silent />
          <b>{count(status)}</b>
          <span>{status}</span>
        </p>
      ))}
      {pieces === 0 || view.walk.kind === "after-flight" ? null : (
        <a href={href({ at: "gear", registration: open.registration })}>
          Ground gear:{" "}
          <b>
            {off} of {pieces}
          </b>{" "}
          off
        </a>
      )}
    </div>
  );
}
