import { Hatch } from "./hatch.tsx";
import { straightScale } from "./scale.ts";
import { useWidth } from "./use-width.ts";
import "./instruments.css";

export interface StripeRow {
  readonly key: string;
  readonly when: string;
  readonly value: number;
  readonly text: string;
}

interface StripeLogProps {
  readonly rows: readonly StripeRow[];
  readonly min: number;
  readonly max: number;
  readonly low?: { readonly value: number; readonly text: string };
  readonly high?: { readonly value: number; readonly text: string };
  readonly label: string;
}

const ROW = 20;
const TOP = 22;
const LEFT = 66;
const RIGHT = 50;

/** One row a look, newest last: the stripes run straight while nothing moves, and step where it drifts. */
export function StripeLog(props: StripeLogProps) {
  const [ref, width_px] = useWidth<HTMLDivElement>();
  return (
    <div className="stripe-log" ref={ref}>
      {width_px === 0 ? null : <Log {...props} width_px={width_px} />}
    </div>
  );
}

function Log({ rows, min, max, low, high, label, width_px }: StripeLogProps & { readonly width_px: number }) {
  const inner_px = width_px - LEFT - RIGHT;
  const scale = straightScale(min, max, inner_px);
  const height = rows.length * ROW;
  const lowX = low === undefined ? LEFT : LEFT + scale.at(low.value);
  const highX = high === undefined ? LEFT + inner_px : LEFT + scale.at(high.value);
  const edges = [
    { edge: low, x: lowX },
    { edge: high, x: highX },
  ];
  return (
    <svg
      width={width_px}
      height={TOP + height + 2}
      viewBox={`0 0 ${width_px} ${TOP + height + 2}`}
      role="img"
      aria-label={`${label}: ${rows.map((row) => `${row.when} ${row.text}`).join(", ")}`}
    >
      <Hatch x={LEFT} y={TOP} width={lowX - LEFT} height={height} />
      <Hatch x={highX} y={TOP} width={LEFT + inner_px - highX} height={height} />
      {rows.map((row, index) => {
        const y = TOP + index * ROW;
        const newest = index === rows.length - 1;
        return (
          <g key={row.key} className={newest ? "log-row log-newest" : "log-row"}>
            <rect className="paint" x={LEFT + scale.at(row.value) - 3.5} y={y} width={7} height={ROW} />
            <text x={LEFT - 8} y={y + ROW / 2 + 4.5} textAnchor="end">
              {row.when}
            </text>
            <text className="log-value" x={width_px} y={y + ROW / 2 + 4.5} textAnchor="end">
              {row.text}
            </text>
            {index === 0 ? null : <path className="hair-line" d={`M${LEFT},${y}h${inner_px}`} />}
          </g>
        );
      })}
      <rect className="ink-1-line" x={LEFT} y={TOP} width={inner_px} height={height} />
      {edges.map(({ edge, x }) =>
        edge === undefined ? null : (
          <g key={edge.text}>
            <path className="ink-2-line" d={`M${x},${TOP - 5}v${height + 5}`} />
            <text className="log-edge" x={x} y={14} textAnchor="middle">
              {edge.text}
            </text>
          </g>
        ),
      )}
    </svg>
  );
}
