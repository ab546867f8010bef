import { band } from "@witnessmark/assess";
import type { Book, Check, Reading } from "@witnessmark/book";
import { fromSI, UNITS } from "@witnessmark/engine";
import { useId } from "react";
import { Hatch } from "../../instruments/hatch.tsx";
import { multiples, tickIntervals } from "../../instruments/scale.ts";
import { useWidth } from "../../instruments/use-width.ts";
import { figure } from "../../words/figures.ts";

interface BandChartProps {
  readonly book: Book;
  readonly check: Check;
  readonly reading: Reading;
}

const HIGH = 92;
const LEFT = 36;
const COLD_degC = -25;
const HOT_degC = 50;

/** How the band moves with temperature; hatched where it should not be. */
export function BandChart({ book, check, reading }: BandChartProps) {
  const [ref, width_px] = useWidth<HTMLDivElement>();
  if (reading.limit.by === "fixed") return null;
  return (
    <>
      <dt>moves with the {reading.temperatureOf ?? "temperature"}’s warmth</dt>
      <dd>
        <div ref={ref}>
          {width_px === 0 ? null : <Chart book={book} check={check} reading={reading} width_px={width_px} />}
        </div>
      </dd>
    </>
  );
}

function Chart({ book, check, reading, width_px }: BandChartProps & { readonly width_px: number }) {
  const clip = useId();
  const gauge = book.gauges.get(reading.gauge);
  if (gauge === undefined) return null;
  const points: { t: number; low: number | undefined; high: number | undefined }[] = [];
  for (let t = COLD_degC; t <= HOT_degC; t += 2.5) {
    const limits = band(check, book, { value: t, unit: "degC" });
    if (limits === undefined) continue;
    points.push({
      t,
      low: limits.low === undefined ? undefined : fromSI(limits.low, gauge.unit),
      high: limits.high === undefined ? undefined : fromSI(limits.high, gauge.unit),
    });
  }
  const values = points.flatMap(({ low, high }) => [low, high]).filter((value) => value !== undefined);
  if (values.length === 0) return null;
  const pad = (Math.max(...values) - Math.min(...values)) * 0.18 || 1;
  const [least, most] = [Math.min(...values) - pad, Math.max(...values) + pad];
  const x = (t: number) => LEFT + ((t - COLD_degC) / (HOT_degC - COLD_degC)) * (width_px - LEFT - 6);
  const y = (value: number) => HIGH - 18 - ((value - least) / (most - least)) * (HIGH - 24);
  const edge = (of: "low" | "high") =>
    points.flatMap((point) => {
      const value = point[of];
      return value === undefined ? [] : [`${x(point.t).toFixed(1)},${y(value).toFixed(1)}`];
    });
  const [low, high] = [edge("low"), edge("high")];
  const [top, bottom, left, right] = [6, HIGH - 18, LEFT, x(HOT_degC)];
  const firstX = x(points[0]?.t ?? COLD_degC);
  const lastX = x(points.at(-1)?.t ?? HOT_degC);
  const inside = [
    ...(low.length > 0 ? low : [`${firstX},${bottom}`, `${lastX},${bottom}`]),
    ...(high.length > 0 ? high.toReversed() : [`${lastX},${top}`, `${firstX},${top}`]),
  ];
  const { limit } = reading;
  const written = "at" in limit ? fromSI(limit.at.valueSI, "degC") : undefined;
  const writtenBand = written === undefined ? undefined : band(check, book, { value: written, unit: "degC" });
  const numbers = multiples(least, most, tickIntervals(most - least, HIGH, 30).major);
  const decimals = most - least < 10 ? 1 : 0;
  return (
    <svg
      className="band-chart"
      width={width_px}
      height={HIGH}
      viewBox={`0 0 ${width_px} ${HIGH}`}
      role="img"
      aria-label={`The limit of ${reading.quantity} against temperature, from ${COLD_degC} to ${HOT_degC} °C`}
    >
      <clipPath id={clip}>
        <rect x={left} y={top} width={right - left} height={bottom - top} />
      </clipPath>
      <g clipPath={`url(#${clip})`}>
        <Hatch x={left} y={top} width={right - left} height={bottom - top} gap={6} />
        <polygon className="band-inside" points={inside.join(" ")} />
      </g>
      {low.length === 0 ? null : <polyline className="ink-2-line" points={low.join(" ")} />}
      {high.length === 0 ? null : <polyline className="ink-2-line" points={high.join(" ")} />}
      <path className="ink-1-line" d={`M${left},${top}V${bottom}H${right}`} />
      {written === undefined || writtenBand?.low === undefined || writtenBand.high === undefined ? null : (
        <path
          className="band-written"
          d={`M${x(written)},${y(fromSI(writtenBand.low, gauge.unit))}V${y(fromSI(writtenBand.high, gauge.unit))}`}
        />
      )}
      <g className="rule-number">
        {[-20, 0, 20, 40].map((t) => (
          <text key={t} x={x(t)} y={HIGH - 4} textAnchor="middle">
            {figure(t)}
          </text>
        ))}
        <text x={right} y={HIGH - 4} textAnchor="end">
          °C
        </text>
        {numbers.map((value) => (
          <text key={value} x={left - 5} y={y(value) + 4} textAnchor="end">
            {figure(value, decimals)}
          </text>
        ))}
      </g>
      <title>{UNITS[gauge.unit].symbol}</title>
    </svg>
  );
}
