import {
  type Book,
  type Check,
  centreLine,
  elevation,
  extent,
  feet,
  groundLine,
  noseLeft,
  planView,
  sideView,
} from "@witnessmark/book";
import { memo, useMemo } from "react";
import { Dimension } from "../../drawing/dimension.tsx";
import { placeWords } from "../../drawing/dimensions.ts";
import { Ruler } from "../../drawing/ruler.tsx";
import { Strokes } from "../../drawing/strokes.tsx";
import { useSize } from "../../instruments/use-width.ts";
import { figure } from "../../words/figures.ts";

interface BookDrawingProps {
  readonly book: Book;
  readonly check: Check | undefined;
}

/** Plan, nose left, over the elevation; the point in hand dimensioned from the datum. */
export function BookDrawing(props: BookDrawingProps) {
  const [ref, size] = useSize<HTMLDivElement>();
  return (
    <div className="plan-fill" ref={ref}>
      {size.width_px === 0 ? null : <Drawing {...props} {...size} />}
    </div>
  );
}

interface DrawingProps extends BookDrawingProps {
  readonly width_px: number;
  readonly height_px: number;
}

function Drawing({ book, check, width_px, height_px }: DrawingProps) {
  const { geometry } = book;
  const box = useMemo(() => extent(geometry), [geometry]);
  const small = height_px < 420;
  const margin = small
    ? { left: 46, right: 14, top: 34, between: 16, bottom: 34 }
    : { left: 74, right: 54, top: 46, between: 34, bottom: 44 };
  const k = Math.max(
    6,
    Math.min(
      (width_px - margin.left - margin.right) / (box.aft_m - Math.min(0, box.fore_m)),
      (height_px - margin.top - margin.between - margin.bottom) / (box.right_m - box.left_m + box.top_m),
    ),
  );
  const length_px = (box.aft_m - Math.min(0, box.fore_m)) * k;
  const ox = Math.round(Math.max(margin.left, (width_px - length_px) / 2) - Math.min(0, box.fore_m) * k);
  const planY = Math.round(margin.top + box.right_m * k);
  const groundY = Math.round(height_px - margin.bottom);
  const point = check === undefined ? undefined : book.points.get(check.point);
  const stance = check === undefined ? undefined : book.stances.find((each) => each.id === check.stance);
  return (
    <svg
      className="book-svg"
      width={width_px}
      height={height_px}
      viewBox={`0 0 ${width_px} ${height_px}`}
      role="img"
      aria-label={
        point === undefined
          ? `${book.aircraft.type} from above and from the left`
          : `${point.name}: ${placeWords(point.place)}`
      }
    >
      <Squares ox={ox} oy={planY} k={k} width_px={width_px} height_px={height_px} />
      <g transform={`translate(${ox} ${planY})`}>
        <PlanLeft book={book} k={k} dots={!small} />
        {stance === undefined || stance.posture === "inside" ? null : (
          <>
            <circle className="here-ring" cx={stance.place[0] * k} cy={-stance.place[1] * k} r={16} />
            <path className="feet feet-here" d={feet(stance.place, stance.facing, noseLeft(k, 0, 0))} />
          </>
        )}
      </g>
      <g transform={`translate(${ox} ${groundY})`}>
        <SideLeft book={book} k={k} />
      </g>
      {small ? null : (
        <Ruler
          from={Math.min(0, Math.ceil(box.fore_m))}
          to={Math.ceil(box.aft_m) - 1}
          minor={1}
          major={2}
          map={(x_m) => ox + x_m * k}
          at_px={groundY + 12}
          way={1}
          upright={false}
        />
      )}
      <Datum x={ox} y={planY} small={small} />
      {point === undefined ? null : (
        <PointDimensions
          place={point.place}
          ox={ox}
          planY={planY}
          groundY={groundY}
          k={k}
          top={margin.top - 24}
          left={small ? 20 : 30}
        />
      )}
    </svg>
  );
}

function Squares({
  ox,
  oy,
  k,
  width_px,
  height_px,
}: {
  readonly ox: number;
  readonly oy: number;
  readonly k: number;
  readonly width_px: number;
  readonly height_px: number;
}) {
  let d = "";
  for (let x = ox % k; x < width_px; x += k) d += `M${x.toFixed(1)},0V${height_px}`;
  for (let y = oy % k; y < height_px; y += k) d += `M0,${y.toFixed(1)}H${width_px}`;
  return <path className="squares" d={d} />;
}

const PlanLeft = memo(function PlanLeft({
  book,
  k,
  dots,
}: {
  readonly book: Book;
  readonly k: number;
  readonly dots: boolean;
}) {
  const { strokes, line } = useMemo(() => {
    const project = noseLeft(k, 0, 0);
    const { fore_m, aft_m } = extent(book.geometry);
    return {
      strokes: planView(book.geometry, project, 2),
      line: centreLine(project, fore_m - 1, aft_m + 0.7),
    };
  }, [book, k]);
  return (
    <>
      <path className="centre-line" d={line} />
      <Strokes strokes={strokes} />
      {dots
        ? [...book.points.values()].map(({ id, place }) => (
            <circle key={id} className="point-dot" cx={place[0] * k} cy={-place[1] * k} r={3} />
          ))
        : null}
    </>
  );
});

const SideLeft = memo(function SideLeft({ book, k }: { readonly book: Book; readonly k: number }) {
  const { ground, strokes } = useMemo(() => {
    const project = elevation(k, 0, 0);
    const { fore_m, aft_m } = extent(book.geometry);
    return {
      ground: groundLine(project, fore_m - 1, aft_m + 0.6),
      strokes: sideView(book.geometry, project, 1),
    };
  }, [book, k]);
  return (
    <>
      <Strokes strokes={ground} />
      <Strokes strokes={strokes} />
    </>
  );
});

function Datum({ x, y, small }: { readonly x: number; readonly y: number; readonly small: boolean }) {
  return (
    <>
      <circle className="sight-end" cx={x} cy={y} r={7} />
      <path className="dimension" d={`M${x - 11},${y}h22M${x},${y - 11}v22`} />
      {small ? null : (
        <text className="datum-text halo" x={x - 12} y={y + 24} textAnchor="end">
          datum
        </text>
      )}
    </>
  );
}

interface PointDimensionsProps {
  readonly place: readonly [number, number, number];
  readonly ox: number;
  readonly planY: number;
  readonly groundY: number;
  readonly k: number;
  readonly top: number;
  readonly left: number;
}

function PointDimensions({ place, ox, planY, groundY, k, top, left }: PointDimensionsProps) {
  const [x_m, y_m, z_m] = place;
  const [px, py] = [ox + x_m * k, planY - y_m * k];
  const pz = groundY - z_m * k;
  const metres = (value: number) => `${figure(Math.abs(value), 2)} m`;
  const high = px + 78;
  return (
    <>
      <path className="extension" d={`M${ox},${planY - 10}V${top - 8}M${px},${py - 12}V${top - 8}`} />
      <Dimension from={[ox, top]} to={[px, top]} text={metres(x_m)} inline />
      {Math.abs(y_m) < 0.02 ? null : (
        <>
          <path className="extension" d={`M${px - 12},${py}H${left - 8}M${ox - 14},${planY}H${left - 8}`} />
          <Dimension from={[left, planY]} to={[left, py]} />
          <text className="dimension-text halo" x={left + 8} y={(planY + py) / 2 + 6}>
            {metres(y_m)}
          </text>
        </>
      )}
      <path className="projection" d={`M${px},${py + 13}V${pz - 11}`} />
      <path className="extension" d={`M${px + 12},${pz}H${high + 10}`} />
      <Dimension from={[high, pz]} to={[high, groundY]} />
      <text className="dimension-text halo" x={high + 8} y={Math.min(pz - 4, groundY - 6)}>
        {metres(z_m)}
      </text>
      {[[px, py] as const, [px, pz] as const].map(([x, y]) => (
        <g key={y}>
          <circle className="point-ring" cx={x} cy={y} r={11} />
          <circle className="key-here" cx={x} cy={y} r={4} />
        </g>
      ))}
    </>
  );
}
