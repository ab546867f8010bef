import { memo } from "react";
import { AircraftView } from "./aircraft-view.tsx";
import { type Camera, fromDatum, type Px } from "./camera.ts";
import type { DatumLine } from "./datum-line.ts";
import { DimensionLayer, ZoneLayer } from "./dimension-layer.tsx";
import type { AircraftDrawingProps, DrawingMark, DrawingView, PlaceOnView } from "./drawing-props.ts";
import { LEADER_FROM_px, type Place } from "./label-places.ts";
import { StoodMark } from "./mark-strokes.tsx";
import { isOutside, type PlacedMarks, sizeOf } from "./placed-marks.ts";
import { onPlaneOf } from "./view-plane.ts";
import { StanceMark, WalkPath } from "./walk-strokes.tsx";

interface DrawingSceneProps
  extends Pick<
    AircraftDrawingProps,
    "geometry" | "route" | "selected" | "squares" | "detail" | "zones" | "print"
  > {
  readonly view: DrawingView;
  readonly marks: readonly DrawingMark[];
  readonly camera: Camera;
  readonly placed: PlacedMarks;
  readonly mark_px: number;
  readonly ring_px?: number;
  /** A mark under a finger, and where it would be put. */
  readonly dragged?: { readonly id: string; readonly at: PlaceOnView } | null;
}

/** Everything that is drawn, in its order: the aircraft, the walk's line, stances, the line of sight, marks. */
export const DrawingScene = memo(function DrawingScene(props: DrawingSceneProps) {
  const { geometry, view, marks, route, camera, placed, mark_px, ring_px = 19, selected, dragged } = props;
  const { pxPerMetre } = camera;
  const turn_deg = camera.turn_deg ?? 0;
  const byId = new Map(marks.map((mark) => [mark.id, mark] as const));
  const here = marks.find(({ state }) => state === "here");
  const hereAt = here === undefined ? undefined : placed.marks.find(({ ids }) => ids.includes(here.id));
  const stop = view === "plan" ? route?.stops.find(({ state }) => state === "here") : undefined;
  return (
    <g transform={`translate(${camera.originX_px.toFixed(1)} ${camera.originY_px.toFixed(1)})`}>
      <g transform={turn_deg === 0 ? undefined : `rotate(${turn_deg.toFixed(2)})`}>
        {props.squares === true ? <Squares pxPerMetre={pxPerMetre} /> : null}
        {view === "plan" && props.zones !== undefined ? (
          <ZoneLayer zones={props.zones} pxPerMetre={pxPerMetre} />
        ) : null}
        <AircraftView
          geometry={geometry}
          view={view}
          pxPerMetre={pxPerMetre}
          detail={props.detail ?? 2}
          centre
        />
        {/* over the aircraft: under a high wing one walks on, and sees where to */}
        {view === "plan" && route !== undefined ? <WalkPath route={route} pxPerMetre={pxPerMetre} /> : null}
      </g>
      {placed.datum === null ? null : <Datum {...placed.datum} />}
      <DimensionLayer placed={placed.dimensions} />
      {view !== "plan"
        ? null
        : route?.stops.map((each) => (
            <StanceMark
              key={each.stance.id}
              stance={each.stance}
              number={each.number}
              state={each.state}
              pxPerMetre={pxPerMetre}
              turn_deg={turn_deg}
              ring_px={ring_px}
              at={placed.numbers.get(each.stance.id)}
              print={props.print === true}
            />
          ))}
      {hereAt === undefined ? null : (
        <Sight
          from={
            stop === undefined ? undefined : fromDatum(camera, [stop.stance.place[1], stop.stance.place[0]])
          }
          start_px={stop !== undefined && isOutside(stop) ? ring_px : 12}
          to={[hereAt.x, hereAt.y]}
        />
      )}
      {placed.marks.map((stood) => {
        // what is in hand is seen itself, whoever shares its square
        const isHere = here !== undefined && stood.ids.includes(here.id);
        const its = isHere ? [here] : stood.ids.flatMap((id) => byId.get(id) ?? []);
        const [first] = its;
        if (first === undefined) return null;
        return (
          <StoodMark
            key={stood.ids[0]}
            stood={stood}
            marks={its}
            size_px={sizeOf(first, mark_px)}
            isSelected={selected !== undefined && stood.ids.includes(selected)}
          />
        );
      })}
      {[...placed.labels].map(([id, place]) => {
        const stood = placed.marks.find(({ ids }) => ids[0] === id);
        const text = byId.get(id)?.label;
        if (stood === undefined || text === undefined) return null;
        return <MarkLabel key={id} text={text} at={place} of={stood} />;
      })}
      {dragged === null || dragged === undefined ? null : (
        <Dragged camera={camera} view={view} mark={byId.get(dragged.id)} at={dragged.at} />
      )}
    </g>
  );
});

/** The line that x is counted from. */
function Datum({ from, to, at }: DatumLine) {
  return (
    <>
      <path className="datum-line" d={`M${from.join()}L${to.join()}`} />
      <text className="datum-text halo" x={at.x} y={at.y + 5} textAnchor="middle">
        datum
      </text>
    </>
  );
}

function MarkLabel({ text, at, of }: { readonly text: string; readonly at: Place; readonly of: Place }) {
  const far = Math.hypot(at.x - of.x, at.y - of.y) > LEADER_FROM_px + text.length * 3.6;
  return (
    <>
      {far ? <path className="mark-leader" d={`M${of.x},${of.y}L${at.x},${at.y}`} /> : null}
      <text className="mark-label halo" x={at.x} y={at.y + 4.5} textAnchor="middle">
        {text}
      </text>
    </>
  );
}

/** Where a dragged mark would be put: a ring, and hairs that lead the eye along both axes. */
function Dragged({
  camera,
  view,
  mark,
  at,
}: {
  readonly camera: Camera;
  readonly view: DrawingView;
  readonly mark: DrawingMark | undefined;
  readonly at: PlaceOnView;
}) {
  const [x_m = 0, y_m = 0, z_m = 0] = mark?.place ?? [];
  const [x, y] = fromDatum(camera, onPlaneOf(view, [at.x_m ?? x_m, at.y_m ?? y_m, at.z_m ?? z_m]));
  return (
    <>
      <path className="drag-hair" d={`M${x - 2000},${y}h4000M${x},${y - 2000}v4000`} />
      <circle className="mark-ring" cx={x} cy={y} r={14} />
      <circle className="mark-dot mark-here" cx={x} cy={y} r={4} />
    </>
  );
}

const SIGHT_END_px = 14;

/** The line of sight from where one stands to the point in hand. */
function Sight({
  from,
  start_px,
  to,
}: {
  readonly from: Px | undefined;
  readonly start_px: number;
  readonly to: Px;
}) {
  const end = <circle className="sight-end" cx={to[0]} cy={to[1]} r={SIGHT_END_px} />;
  if (from === undefined) return end;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length <= start_px + SIGHT_END_px) return end;
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  return (
    <>
      <path
        className="sight"
        d={`M${from[0] + ux * start_px},${from[1] + uy * start_px}L${to[0] - ux * SIGHT_END_px},${to[1] - uy * SIGHT_END_px}`}
      />
      {end}
    </>
  );
}

const SQUARES_m = 24;

/** A metre a square, well past the aircraft. */
const Squares = memo(function Squares({ pxPerMetre: k }: { readonly pxPerMetre: number }) {
  const far = SQUARES_m * k;
  let d = "";
  for (let at = -SQUARES_m; at <= SQUARES_m; at += 1) {
    const px = (at * k).toFixed(1);
    d += `M${-far},${px}H${far}M${px},${-far}V${far}`;
  }
  return <path className="squares" d={d} />;
});
