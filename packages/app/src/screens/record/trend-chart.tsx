import { limitText, type Trend } from "@witnessmark/assess";
import { decimalsOf } from "@witnessmark/engine";
import { useId } from "react";
import { Hatch } from "../../instruments/hatch.tsx";
import { useWidth } from "../../instruments/use-width.ts";
import { dayMonth } from "../../words/dates.ts";
import { figure, tally } from "../../words/figures.ts";
import { type TrendLayout, trendLayout } from "./trend-layout.ts";

interface TrendChartProps {
  readonly trend: Trend;
  readonly now_ms: number;
}

const HIGH = 300;
/** With more readings than this their doubts would cover each other. */
const DOUBTS_UP_TO = 40;

/** The readings of a series over time, the line through them with its band, and the limits; the table is its text. */
export function TrendChart(props: TrendChartProps) {
  const [ref, width_px] = useWidth<HTMLDivElement>("trend-chart");
  return (
    <div className="trend-chart" ref={ref}>
      {width_px === 0 ? null : <Chart {...props} width_px={width_px} />}
    </div>
  );
}

function Chart({ trend, now_ms, width_px }: TrendChartProps & { readonly width_px: number }) {
  const clip = useId();
  const layout = trendLayout(trend, now_ms, width_px, HIGH);
  const { left, right, top, bottom, points, restarts, now, dates, values, limits } = layout;
  const decimals = decimalsOf(trend.unit.step);
  return (
    <svg
      width={width_px}
      height={HIGH}
      viewBox={`0 0 ${width_px} ${HIGH}`}
      role="img"
      aria-label={`${trend.title}, ${trend.quantity}, ${tally(points.length, "reading")} over time. ${trend.sentence} The table below has every reading.`}
    >
      <clipPath id={clip}>
        <rect x={left} y={top} width={right - left} height={bottom - top} />
      </clipPath>
      {values.map(({ y, value }) => (
        <g key={value}>
          <path className="hair-line" d={`M${left},${y.toFixed(1)}H${right}`} />
          <text x={left - 6} y={y + 4.5} textAnchor="end">
            {figure(value, decimals)}
          </text>
        </g>
      ))}
      {dates.map(({ x, at_ms }) => (
        <g key={at_ms}>
          <path className="ink-1-line" d={`M${x.toFixed(1)},${bottom}v5`} />
          <text x={Math.min(x, right - 18)} y={HIGH - 5} textAnchor="middle">
            {dayMonth(at_ms)}
          </text>
        </g>
      ))}
      {limits.map(({ end, y, isAway }) =>
        isAway ? null : (
          <Hatch
            key={end}
            x={left}
            y={end === "low" ? y : top}
            width={right - left}
            height={end === "low" ? bottom - y : y - top}
            gap={7}
          />
        ),
      )}
      <g clipPath={`url(#${clip})`}>
        <Line layout={layout} />
        {points.map((point) => (
          <g key={point.event} className={`trend-point ${point.is}`}>
            {points.length <= DOUBTS_UP_TO ? (
              <path
                d={`M${point.x.toFixed(1)},${(point.y - point.doubt).toFixed(1)}v${(2 * point.doubt).toFixed(1)}`}
              />
            ) : null}
            <circle cx={point.x} cy={point.y} r={points.length <= DOUBTS_UP_TO ? 4 : 3} />
          </g>
        ))}
      </g>
      {now < right - 4 ? (
        <path className="trend-now" d={`M${now.toFixed(1)},${top}V${bottom}`}>
          <title>Now</title>
        </path>
      ) : null}
      {restarts.map(({ x, what, isNamed, at_ms }) => (
        <g key={at_ms}>
          <path className="trend-restart" d={`M${x.toFixed(1)},${top - 4}V${bottom}`} />
          {isNamed ? (
            <text
              className="trend-word"
              x={Math.min(Math.max(x, left + 26), right - 26)}
              y={14}
              textAnchor="middle"
            >
              {what}
            </text>
          ) : null}
        </g>
      ))}
      <rect className="ink-1-line" x={left} y={top} width={right - left} height={bottom - top} />
      {limits.map(({ end, y, isAway }) => {
        const limitSI = trend.limits[end];
        const text = limitSI === undefined ? "" : limitText(limitSI, end, trend.unit);
        return (
          <g key={end}>
            {isAway ? null : <path className="ink-2-line" d={`M${left - 4},${y.toFixed(1)}H${right}`} />}
            <text
              className="trend-limit"
              x={left + 6}
              y={end === "low" ? Math.min(y + 16, bottom - 5) : Math.max(y - 6, top + 15)}
            >
              {isAway ? `limit ${text}, ${end === "low" ? "further down" : "further up"}` : text}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

function Line({ layout: { line } }: { readonly layout: TrendLayout }) {
  if (line === undefined) return null;
  const up = line.map(({ x, high }) => `${x.toFixed(1)},${high.toFixed(1)}`);
  const down = line.toReversed().map(({ x, low }) => `${x.toFixed(1)},${low.toFixed(1)}`);
  const middle = line.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`);
  return (
    <>
      <polygon className="trend-band" points={[...up, ...down].join(" ")} />
      <polyline className="trend-edge" points={up.join(" ")} />
      <polyline className="trend-edge" points={down.join(" ")} />
      <polyline className="trend-line" points={middle.join(" ")} />
    </>
  );
}
