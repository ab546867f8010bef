import type { LoadFigures, LoadState } from "@witnessmark/assess";
import { Dimension } from "../../drawing/dimension.tsx";
import { MarkAt } from "../../marks/mark.tsx";
import { burnLines, type ChartScale, MOMENT_NAMES, type Spot, spread } from "./envelope-layout.ts";
import { type LoadUnits, safe, symbolOf } from "./load-units.ts";

interface EnvelopeFlightProps {
  readonly scale: ChartScale;
  readonly figures: LoadFigures;
  readonly units: LoadUnits;
  readonly small: boolean;
}

/** The flight in the envelope: the burn as a line, its moments as marks, what is left as dimensions. */
export function EnvelopeFlight({ scale, figures, units, small }: EnvelopeFlightProps) {
  const { states } = figures;
  const { flown, rest } = burnLines(figures);
  const line = (spots: readonly Spot[]) =>
    spots.length < 2
      ? ""
      : `M${spots.map(({ arm_m, mass_kg }) => `${scale.x(arm_m).toFixed(1)},${scale.y(mass_kg).toFixed(1)}`).join("L")}`;
  const marked = states.filter(({ at }) => at !== "ramp" && at !== "alternate");
  const { ahead, behind } = nearestEdges(marked);
  const dots = states.filter(({ at }) => at === "ramp" || at === "alternate");
  return (
    <>
      <path className="envelope-rest" d={line(rest)} />
      <path className="envelope-burn" d={line(flown)} />
      {ahead === undefined ? null : <Across scale={scale} state={ahead} end={0} units={units} />}
      {behind === undefined ? null : <Across scale={scale} state={behind} end={1} units={units} />}
      {(["take-off", "landing"] as const).map((at, index) => {
        const state = states.find((one) => one.at === at);
        return state === undefined ? null : (
          <Up
            key={at}
            scale={scale}
            state={state}
            units={units}
            away_px={small ? 17 + index * 8 : 19 + index * 12}
          />
        );
      })}
      {marked.map(({ at, arm_m, mass_kg, status }) => (
        <MarkAt key={at} status={status} x={scale.x(arm_m)} y={scale.y(mass_kg)} size_px={small ? 24 : 26} />
      ))}
      {dots.map(({ at, arm_m, mass_kg }) => (
        <circle key={at} className="envelope-dot" cx={scale.x(arm_m)} cy={scale.y(mass_kg)} r={3} />
      ))}
      <Names scale={scale} states={states} behind={behind} />
    </>
  );
}

/** Where in the flight the edge ahead is nearest, and where the edge behind is. */
function nearestEdges(states: readonly LoadState[]): {
  readonly ahead: LoadState | undefined;
  readonly behind: LoadState | undefined;
} {
  const withRange = states.filter(({ armRange_m }) => armRange_m !== undefined);
  return {
    ahead: least(withRange, ({ arm_m, armRange_m }) => arm_m - (armRange_m?.[0] ?? 0)),
    behind: least(withRange, ({ arm_m, armRange_m }) => (armRange_m?.[1] ?? 0) - arm_m),
  };
}

/** What is left to the edge ahead (end 0) or behind (end 1), or how far past it. */
function Across({
  scale,
  state,
  end,
  units,
}: {
  readonly scale: ChartScale;
  readonly state: LoadState;
  readonly end: 0 | 1;
  readonly units: LoadUnits;
}) {
  const edge_m = state.armRange_m?.[end];
  if (edge_m === undefined) return null;
  const left_m = end === 0 ? state.arm_m - edge_m : edge_m - state.arm_m;
  const [x, y, edge] = [scale.x(state.arm_m), scale.y(state.mass_kg), scale.x(edge_m)];
  const over = left_m < 0;
  const text = over
    ? `${safe(-left_m, units.margin, "up")} ${symbolOf(units.margin)} over`
    : `${safe(left_m, units.margin, "down")} ${symbolOf(units.margin)}`;
  const middle = (x + edge) / 2 + (end === 1 ? 10 : -10);
  // ahead, what is left to the mass limit stands above the line
  const under = end === 0 && state.mass !== undefined && state.at !== "zero-fuel";
  return (
    <g className={over ? "envelope-over" : undefined}>
      <Dimension from={[x, y]} to={[edge, y]} />
      <text
        className="envelope-margin halo"
        x={within(middle, scale, over ? 48 : 34)}
        y={under ? y + 17 : y - 6}
        textAnchor="middle"
      >
        {text}
      </text>
    </g>
  );
}

/** Up to the mass limit of this moment. */
function Up({
  scale,
  state,
  units,
  away_px,
}: {
  readonly scale: ChartScale;
  readonly state: LoadState;
  readonly units: LoadUnits;
  readonly away_px: number;
}) {
  const { mass, arm_m, mass_kg } = state;
  if (mass === undefined) return null;
  const [x, y, limit] = [scale.x(arm_m), scale.y(mass_kg), scale.y(mass.limit)];
  const side = x - scale.plot.left < 96 ? 1 : -1;
  // where the names stand on this side, it stands beyond them
  const namesHere = side < 0 && x > scale.plot.right - NAMES_px;
  const at = x + side * (away_px + (namesHere ? NAMES_px : 0));
  const over = mass.left < 0;
  const text = over
    ? `${safe(-mass.left, units.mass, "up")} ${symbolOf(units.mass)} over`
    : `${safe(mass.left, units.mass, "down")} ${symbolOf(units.mass)}`;
  return (
    <g className={over ? "envelope-over" : undefined}>
      <path className="extension" d={`M${x.toFixed(1)},${y.toFixed(1)}H${(at + side * 5).toFixed(1)}`} />
      <Dimension from={[at, y]} to={[at, limit]} />
      <text
        className="envelope-margin halo"
        x={at + side * 6}
        y={(y + limit) / 2 + 6}
        textAnchor={side < 0 ? "end" : "start"}
      >
        {text}
      </text>
    </g>
  );
}

const NAME_px = 18;
/** The longest name beside its mark. */
const NAMES_px = 92;

/** The moments by name, beside their marks, apart from each other. */
function Names({
  scale,
  states,
  behind,
}: {
  readonly scale: ChartScale;
  readonly states: readonly LoadState[];
  /** The moment whose line to the edge behind runs where its name would stand. */
  readonly behind: LoadState | undefined;
}) {
  const { plot } = scale;
  const labels = states.map((state) => {
    const [x, y] = [scale.x(state.arm_m), scale.y(state.mass_kg)];
    const dot = state.at === "ramp" || state.at === "alternate";
    return { at: state.at, x, y, dot, wanted: state === behind ? y + 20 : dot ? y - 12 : y + 5 };
  });
  const ys = spread(
    labels.map(({ wanted }) => wanted),
    NAME_px,
    plot.top + 12,
    plot.bottom - 4,
  );
  return labels.map(({ at, x, y, dot }, index) => {
    const label = ys[index] ?? y;
    const side = x > plot.right - NAMES_px ? -1 : 1;
    const start = x + side * (dot ? 33 : 18);
    const moved = Math.abs(label - y) > 24 && !dot;
    return (
      <g key={at}>
        {dot || moved ? (
          <path
            className="load-leader-ink"
            d={`M${x.toFixed(1)},${y.toFixed(1)}L${(start - side * 9).toFixed(1)},${(label - 5).toFixed(1)}h${side * 6}`}
          />
        ) : null}
        <text
          className="envelope-name halo"
          transform={`translate(${start.toFixed(1)} ${label.toFixed(1)})`}
          textAnchor={side > 0 ? "start" : "end"}
        >
          {MOMENT_NAMES[at]}
        </text>
      </g>
    );
  });
}

const within = (x: number, { plot }: ChartScale, half_px: number): number =>
  Math.max(plot.left + half_px, Math.min(plot.right - half_px, x));

function least<T>(all: readonly T[], value: (one: T) => number): T | undefined {
  return all.reduce<T | undefined>(
    (best, one) => (best === undefined || value(one) < value(best) ? one : best),
    undefined,
  );
}
