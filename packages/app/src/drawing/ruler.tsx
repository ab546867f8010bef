import { multiples } from "../instruments/scale.ts";
import { figure } from "../words/figures.ts";

interface RulerProps {
  readonly from: number;
  readonly to: number;
  readonly minor: number;
  readonly major: number;
  readonly map: (value: number) => number;
  /** The edge it stands on, and which way its ticks point. */
  readonly at_px: number;
  readonly way: 1 | -1;
  readonly upright: boolean;
}

/** An edge ruler in metres. */
export function Ruler({ from, to, minor, major, map, at_px, way, upright }: RulerProps) {
  const isMajor = (value: number) => Math.abs(value / major - Math.round(value / major)) < 1e-6;
  const values = multiples(from, to, minor);
  const ticks = values
    .map((value) => {
      const along = map(value).toFixed(1);
      const length = way * (isMajor(value) ? 9 : 5);
      return upright ? `M${at_px},${along}h${length}` : `M${along},${at_px}v${length}`;
    })
    .join("");
  return (
    <>
      <path className="ruler" d={ticks} />
      <g className="ruler-number">
        {values.filter(isMajor).map((value) =>
          upright ? (
            <text
              key={value}
              x={at_px + way * 12}
              y={map(value) + 4.2}
              textAnchor={way > 0 ? "start" : "end"}
            >
              {figure(value)}
            </text>
          ) : (
            <text key={value} x={map(value)} y={at_px + way * (way > 0 ? 21 : 12)} textAnchor="middle">
              {figure(value)}
            </text>
          ),
        )}
      </g>
    </>
  );
}
