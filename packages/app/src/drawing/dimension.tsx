import "./drawing.css";

type Px = readonly [x_px: number, y_px: number];

interface DimensionProps {
  readonly from: Px;
  readonly to: Px;
  readonly text?: string;
  /** The figure stands in the line, which is broken for it. */
  readonly inline?: boolean;
}

/** A dimension line between two places: arrows inside, or outside where there is no room between them. */
export function Dimension({ from, to, text, inline = false }: DimensionProps) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy) || 1;
  const [ux, uy] = [dx / length, dy / length];
  const outside = length < 20;
  const head = (at: Px, way: 1 | -1) =>
    `M${at[0]},${at[1]}l${(way * ux * 7 - uy * 2.4).toFixed(2)},${(way * uy * 7 + ux * 2.4).toFixed(2)}l${(uy * 4.8).toFixed(2)},${(-ux * 4.8).toFixed(2)}z`;
  const shaft = outside
    ? `M${from[0] - ux * 16},${from[1] - uy * 16}L${from[0]},${from[1]}M${to[0]},${to[1]}L${to[0] + ux * 16},${to[1] + uy * 16}`
    : `M${from[0]},${from[1]}L${to[0]},${to[1]}`;
  const [mx, my] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  return (
    <>
      <path className="dimension" d={shaft} />
      <path className="dimension-head" d={head(from, outside ? -1 : 1) + head(to, outside ? 1 : -1)} />
      {text === undefined ? null : (
        <text
          className={inline ? "dimension-text halo halo-wide" : "dimension-text halo"}
          x={mx}
          y={my + (inline ? 5.5 : -4)}
          textAnchor="middle"
        >
          {text}
        </text>
      )}
    </>
  );
}
