import type { LoadFigures } from "@witnessmark/assess";
import type { Loading } from "@witnessmark/book";
import { memo, useId, useMemo, useRef } from "react";
import { useSize } from "../../instruments/use-width.ts";
import { figure } from "../../words/figures.ts";
import { EnvelopeFlight } from "./envelope-flight.tsx";
import {
  type ChartRange,
  type ChartScale,
  chartRange,
  chartScale,
  foremostAt_m,
  joined,
  type Spot,
} from "./envelope-layout.ts";
import type { LiveLoad } from "./follow/live-load.ts";
import { type LoadUnits, plain, symbolOf } from "./load-units.ts";
import { pointsOf } from "./phase-rows.ts";

interface EnvelopeChartProps {
  readonly loading: Loading;
  readonly figures: LoadFigures;
  readonly units: LoadUnits;
  /** A finger is dragging: the picture may grow, and does not jump. */
  readonly held: boolean;
  readonly label: string;
  readonly live: LiveLoad;
}

/** Where the loaded aircraft lies, from the ramp to the last drop, and where it may not. */
export function EnvelopeChart(props: EnvelopeChartProps) {
  const [ref, size] = useSize<HTMLDivElement>("envelope");
  return (
    <div className="envelope" ref={ref}>
      {size.width_px === 0 ? null : <Chart {...props} {...size} />}
    </div>
  );
}

function Chart({
  loading,
  figures,
  units,
  held,
  label,
  live,
  width_px,
  height_px,
}: EnvelopeChartProps & { readonly width_px: number; readonly height_px: number }) {
  const points = figures.envelope?.points ?? loading.envelopes[0]?.points ?? [];
  const range = useSteadyRange(loading, points, figures, held);
  const small = width_px < 460;
  const scale = useMemo(
    () =>
      chartScale(
        range,
        { left: small ? 50 : 62, right: width_px - (small ? 74 : 92), top: 22, bottom: height_px - 42 },
        { mass: units.mass, arm: units.arm },
      ),
    [range, small, width_px, height_px, units.mass, units.arm],
  );
  return (
    <>
      <Under
        scale={scale}
        loading={loading}
        points={points}
        units={units}
        width_px={width_px}
        height_px={height_px}
      />
      <svg
        width={width_px}
        height={height_px}
        viewBox={`0 0 ${width_px} ${height_px}`}
        role="img"
        aria-label={label}
      >
        <EnvelopeFlight scale={scale} figures={figures} units={units} small={small} live={live} />
      </svg>
    </>
  );
}

/** Grid, envelope and limits, in a picture of their own: a drag paints over them and does not paint them. */
const Under = memo(function Under({
  scale,
  loading,
  points,
  units,
  width_px,
  height_px,
}: LimitLinesProps & { readonly width_px: number; readonly height_px: number }) {
  return (
    <svg
      className="under-layer"
      width={width_px}
      height={height_px}
      viewBox={`0 0 ${width_px} ${height_px}`}
      aria-hidden="true"
    >
      <Grid scale={scale} units={units} />
      <Allowed scale={scale} points={points} />
      <LimitLines scale={scale} loading={loading} points={points} units={units} />
    </svg>
  );
});

function useSteadyRange(
  loading: Loading,
  points: readonly Spot[],
  figures: LoadFigures,
  held: boolean,
): ChartRange {
  const { ramp_kg, takeOff_kg } = loading.limits;
  const spots = pointsOf(figures);
  const wanted = chartRange(points, spots, [ramp_kg ?? takeOff_kg]);
  const last = useRef<{ readonly points: readonly Spot[]; readonly range: ChartRange } | null>(null);
  const before = last.current;
  const range =
    before === null || before.points !== points
      ? wanted
      : same(held ? grown(before.range, spots, wanted) : wanted, before.range);
  last.current = { points, range };
  return range;
}

/** While a finger drags the picture stands still, until something leaves it. */
const grown = (was: ChartRange, spots: readonly Spot[], wanted: ChartRange): ChartRange =>
  spots.every(
    ({ arm_m, mass_kg }) =>
      arm_m >= was.arm_m[0] &&
      arm_m <= was.arm_m[1] &&
      mass_kg >= was.mass_kg[0] &&
      mass_kg <= was.mass_kg[1],
  )
    ? was
    : joined(was, wanted);

/** The same object while the same is shown, so that the grid is not drawn again. */
const same = (now: ChartRange, was: ChartRange): ChartRange =>
  now.arm_m[0] === was.arm_m[0] &&
  now.arm_m[1] === was.arm_m[1] &&
  now.mass_kg[0] === was.mass_kg[0] &&
  now.mass_kg[1] === was.mass_kg[1]
    ? was
    : now;

const Grid = memo(function Grid({ scale, units }: { readonly scale: ChartScale; readonly units: LoadUnits }) {
  const { left, right, top, bottom } = scale.plot;
  const lines = (major: boolean) =>
    scale.arms
      .filter((tick) => tick.major === major)
      .map(({ px }) => `M${px.toFixed(1)},${top}V${bottom}`)
      .join("") +
    scale.masses
      .filter((tick) => tick.major === major)
      .map(({ px }) => `M${left},${px.toFixed(1)}H${right}`)
      .join("");
  return (
    <>
      <path className="squares" d={lines(false)} />
      <path className="envelope-major" d={lines(true)} />
      <g className="ruler-number">
        {scale.masses.map(({ value, px, major }) =>
          major ? (
            <text key={value} x={left - 8} y={px + 4.5} textAnchor="end">
              {figure(value)}
            </text>
          ) : null,
        )}
        {scale.arms.map(({ value, px, major }) =>
          major ? (
            <text key={value} x={px} y={bottom + 17} textAnchor="middle">
              {figure(value, scale.armDecimals)}
            </text>
          ) : null,
        )}
        <text x={left} y={bottom + 35}>
          {symbolOf(units.arm)} aft of datum
        </text>
        <text x={left - 8} y={top - 8} textAnchor="end">
          {symbolOf(units.mass)}
        </text>
      </g>
    </>
  );
});

/** The envelope; all outside it is hatched: not here. */
const Allowed = memo(function Allowed({
  scale,
  points,
}: {
  readonly scale: ChartScale;
  readonly points: readonly Spot[];
}) {
  const id = useId();
  const { left, right, top, bottom } = scale.plot;
  const frame = `M${left},${top}H${right}V${bottom}H${left}z`;
  const inside = `M${points.map(({ arm_m, mass_kg }) => `${scale.x(arm_m).toFixed(1)},${scale.y(mass_kg).toFixed(1)}`).join("L")}z`;
  const high = bottom - top;
  let hatch = "";
  for (let along = -high; along < right - left; along += 7)
    hatch += `M${left + along},${bottom}l${high},${-high}`;
  return (
    <>
      <clipPath id={`${id}-frame`}>
        <path d={frame} />
      </clipPath>
      <clipPath id={`${id}-outside`}>
        <path d={frame + inside} clipRule="evenodd" />
      </clipPath>
      <g clipPath={`url(#${id}-frame)`}>
        <path className="envelope-out" clipPath={`url(#${id}-outside)`} d={frame} />
        <path className="envelope-hatch" clipPath={`url(#${id}-outside)`} d={hatch} />
        <path className="envelope-edge" d={inside} />
      </g>
    </>
  );
});

interface LimitLinesProps {
  readonly scale: ChartScale;
  readonly loading: Loading;
  readonly points: readonly Spot[];
  readonly units: LoadUnits;
}

/** The mass limits that are no edge of the envelope, dashed across it, each named at the right. */
const LimitLines = memo(function LimitLines({ scale, loading, points, units }: LimitLinesProps) {
  const { limits } = loading;
  const { right } = scale.plot;
  const named = new Map<number, string>();
  for (const [name, value_kg] of [
    ["take-off", limits.takeOff_kg],
    ["landing", limits.landing_kg],
    ["zero fuel", limits.zeroFuel_kg],
  ] as const) {
    if (value_kg === undefined) continue;
    const before = named.get(value_kg);
    named.set(value_kg, before === undefined ? name : "all");
  }
  const placed = placeNames([...named.keys()].map(scale.y));
  return [...named].map(([value_kg, name], index) => {
    const y = scale.y(value_kg);
    const at = placed[index] ?? y;
    const edge_m = foremostAt_m(points, value_kg);
    const isTop = value_kg >= Math.max(...points.map(({ mass_kg }) => mass_kg));
    const from = isTop || edge_m === null ? right : scale.x(edge_m);
    return (
      <g key={value_kg}>
        <path className="envelope-limit" d={`M${from.toFixed(1)},${y.toFixed(1)}H${right}`} />
        <path className="envelope-limit-end" d={`M${right},${y.toFixed(1)}h3l4,${(at - y).toFixed(1)}`} />
        <text className="envelope-limit-name" x={right + 9} y={at - 1}>
          {name}
        </text>
        <text className="envelope-limit-value" x={right + 9} y={at + 14}>
          {plain(value_kg, units.mass)}
        </text>
      </g>
    );
  });
});

const NAME_px = 33;

/** From above down, each at its line or as little below it as the one above allows. */
function placeNames(wanted: readonly number[]): readonly number[] {
  const placed: number[] = [];
  for (const y of wanted) placed.push(Math.max(y, (placed.at(-1) ?? Number.NEGATIVE_INFINITY) + NAME_px));
  return placed;
}
