import type { FieldFigures } from "@witnessmark/assess";
import { type Book, elevation, extent, sideView } from "@witnessmark/book";
import type { UnitId } from "@witnessmark/engine";
import { memo, useMemo } from "react";
import { Dimension } from "../../drawing/dimension.tsx";
import { Strokes } from "../../drawing/strokes.tsx";
import { Hatch } from "../../instruments/hatch.tsx";
import { useWidth } from "../../instruments/use-width.ts";
import { exactLeft_m, leftText, safeText } from "./conditions-units.ts";
import { type DistanceRow, distanceRows, standingOf } from "./distance-rows.ts";

type Distance = NonNullable<FieldFigures["distance"]["value"]>;

interface DistanceDrawingProps {
  readonly distance: Distance;
  readonly geometry: Book["geometry"];
  readonly unit: UnitId;
}

const GROUND_px = 60;
const ROW_px = 23;
/** So tall is the aircraft drawn, whatever it is: the runway is to scale, the aircraft is not. */
const AIRCRAFT_px = 52;

/** The distance in elevation: to scale along the runway, each factor its own dimension. */
export function DistanceDrawing(props: DistanceDrawingProps) {
  const [ref, width_px] = useWidth<HTMLElement>("conditions-figure");
  return (
    <figure className="cond-figure" ref={ref}>
      {width_px === 0 ? null : <Drawing {...props} width_px={Math.min(width_px, 760)} />}
    </figure>
  );
}

function Drawing({
  distance,
  geometry,
  unit,
  width_px,
}: DistanceDrawingProps & { readonly width_px: number }) {
  const rows = useMemo(() => distanceRows(distance), [distance]);
  const longest_m = Math.max(...rows.map(({ to_m }) => to_m));
  const k = (width_px - 14) / longest_m;
  const there_px = distance.nearest.available_m * k;
  const lines = rows.map((row) => (laidOut(row, k, unit, width_px).standing === "below" ? 2 : 1));
  const linesBefore = (index: number) => lines.slice(0, index).reduce((sum, one) => sum + one, 0);
  const height_px = GROUND_px + 12 + linesBefore(rows.length) * ROW_px;
  return (
    <svg
      width={width_px}
      height={height_px}
      viewBox={`0 0 ${width_px} ${height_px}`}
      role="img"
      aria-label={labelOf(distance, rows, unit)}
    >
      <path className="cond-pavement" d={`M0,${GROUND_px}H${there_px.toFixed(1)}`} />
      <path className="cond-ext" d={`M${there_px.toFixed(1)},${GROUND_px + 2}H${width_px}`} />
      <Hatch x={0} y={GROUND_px + 3} width={width_px} height={6} gap={6} />
      <Path distance={distance} k={k} width_px={width_px} />
      <AircraftAt geometry={geometry} x_px={aircraftX(distance, k, width_px)} />
      {rows.map((row, index) => (
        <Row
          key={row.key}
          row={row}
          y={GROUND_px + 22 + linesBefore(index) * ROW_px}
          k={k}
          unit={unit}
          width_px={width_px}
        />
      ))}
    </svg>
  );
}

/** Where it lifts off, or comes to a stand. */
function aircraftX({ kind, start }: Distance, k: number, width_px: number): number {
  const roll_m = start.groundRoll_m ?? start.total_m ?? 0;
  const at_px = (kind === "landing" ? (start.total_m ?? roll_m) : roll_m) * k;
  return Math.min(width_px - AIRCRAFT_px, Math.max(kind === "landing" ? AIRCRAFT_px : 0, at_px));
}

/** Over 50 ft down to the ground and along it; or along it and up over 50 ft. */
function Path({
  distance,
  k,
  width_px,
}: {
  readonly distance: Distance;
  readonly k: number;
  readonly width_px: number;
}) {
  const { kind, start } = distance;
  const total_px = (start.total_m ?? start.groundRoll_m ?? 0) * k;
  const roll_px = (start.groundRoll_m ?? 0.6 * (start.total_m ?? 0)) * k;
  const low = GROUND_px - 4;
  const top = 14;
  if (kind === "landing") {
    const touch = Math.max(8, total_px - roll_px);
    return (
      <>
        <path className="cond-ext" d={`M0,${GROUND_px}V${top}`} />
        <path
          className="cond-path"
          d={`M0,${top}C${(touch * 0.5).toFixed(1)},${top + 22} ${(touch * 0.8).toFixed(1)},${low - 1} ${touch.toFixed(1)},${low}H${total_px.toFixed(1)}`}
        />
        <text className="cond-small" x={6} y={13}>
          50 ft
        </text>
      </>
    );
  }
  const climb_px = Math.max(6, total_px - roll_px);
  return (
    <>
      <path className="cond-ext" d={`M${total_px.toFixed(1)},${GROUND_px}V${top}`} />
      <path
        className="cond-path"
        d={`M0,${low}H${roll_px.toFixed(1)}C${(roll_px + climb_px * 0.35).toFixed(1)},${low} ${(roll_px + climb_px * 0.6).toFixed(1)},${top + 18} ${total_px.toFixed(1)},${top}`}
      />
      <text
        className="cond-small halo"
        x={total_px + (total_px > width_px - 44 ? -6 : 6)}
        y={13}
        textAnchor={total_px > width_px - 44 ? "end" : "start"}
      >
        50 ft
      </text>
    </>
  );
}

/** The aircraft from the side, its nose in the direction of travel. */
const AircraftAt = memo(function AircraftAt({
  geometry,
  x_px,
}: {
  readonly geometry: Book["geometry"];
  readonly x_px: number;
}) {
  const strokes = useMemo(() => {
    const { fore_m, aft_m } = extent(geometry);
    const scale = AIRCRAFT_px / (aft_m - fore_m);
    return sideView(geometry, elevation(scale, -fore_m * scale, GROUND_px - 2), 0);
  }, [geometry]);
  return (
    <g className="cond-aircraft" transform={`translate(${x_px.toFixed(1)} 0) scale(-1 1)`}>
      <Strokes strokes={strokes} />
    </g>
  );
});

/** A row's words, and where they have room. */
function laidOut(row: DistanceRow, k: number, unit: UnitId, width_px: number) {
  const figure = figureOf(row, unit);
  const text = row.kind === "table" ? figure : `${figure}, ${wordsOf(row, unit)}`;
  return { figure, text, standing: standingOf(text, row.to_m * k, width_px) };
}

interface RowProps {
  readonly row: DistanceRow;
  readonly y: number;
  readonly k: number;
  readonly unit: UnitId;
  readonly width_px: number;
}

const figureOf = ({ kind, to_m }: DistanceRow, unit: UnitId): string =>
  safeText(to_m, unit, kind === "there" ? "down" : "up");

/** "× 1.15 wet paved"; of the ground roll alone with that, so that the figures add up. */
const wordsOf = ({ words, ofRoll_m }: DistanceRow, unit: UnitId): string =>
  ofRoll_m === undefined ? words : `ground roll ${safeText(ofRoll_m, unit, "up")} ${words}`;

function Row({ row, y, k, unit, width_px }: RowProps) {
  const end = row.to_m * k;
  const { figure, text, standing } = laidOut(row, k, unit, width_px);
  const style = `cond-dim cond-row-${row.kind} halo halo-wide`;
  return (
    <>
      <path
        className="cond-ext"
        d={`M.5,${GROUND_px + 4}V${y + 5}M${end.toFixed(1)},${GROUND_px + 4}V${y + 5}`}
      />
      <Dimension from={[0, y]} to={[end, y]} />
      {standing === "beside" ? null : (
        <text className={style} x={end / 2} y={y + 5} textAnchor="middle">
          {standing === "below" ? figure : text}
        </text>
      )}
      {standing === "beside" ? (
        <text className={style} x={end + 8} y={y + 5}>
          {text}
        </text>
      ) : null}
      {standing === "below" ? (
        <text className={style} x={6} y={y + 5 + ROW_px}>
          {wordsOf(row, unit)}
        </text>
      ) : null}
    </>
  );
}

function labelOf({ kind, nearest }: Distance, rows: readonly DistanceRow[], unit: UnitId): string {
  const chain = rows.map((row) => `${figureOf(row, unit)} ${wordsOf(row, unit).replace("×", "times")}`);
  return `${kind === "landing" ? "Landing" : "Take-off"}, ${nearest.name}: ${chain.join(", ")}; ${leftText(exactLeft_m(nearest), unit)}`;
}
