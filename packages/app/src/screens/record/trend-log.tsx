import { limitText, type Trend, valueText } from "@witnessmark/assess";
import { decimalsOf } from "@witnessmark/engine";
import { StripeLog } from "../../instruments/stripe-log.tsx";
import { dayMonth, isSameDay } from "../../words/dates.ts";
import { figure } from "../../words/figures.ts";

/** So many readings stand in a log. */
const ROWS = 6;

/** The latest readings of a series, one row each. */
export function TrendLog({ trend, now_ms }: { readonly trend: Trend; readonly now_ms: number }) {
  const { unit, limits, points } = trend;
  const latest = points.slice(-ROWS);
  const edge = (end: "low" | "high") => {
    const limitSI = limits[end];
    if (limitSI === undefined) return undefined;
    return { value: limitSI * unit.perSI + unit.offset, text: limitText(limitSI, end, unit) };
  };
  const low = edge("low");
  const high = edge("high");
  const { min, max } = windowOf(
    latest.map(({ shown }) => shown),
    low?.value,
    high?.value,
    unit.step,
  );
  return (
    <StripeLog
      rows={latest.map((point) => ({
        key: point.event,
        when: isSameDay(point.at_ms, now_ms) ? "Today" : dayMonth(point.at_ms),
        value: point.shown,
        text: figure(point.shown, decimalsOf(unit.step)),
      }))}
      min={min}
      max={max}
      {...(low === undefined ? {} : { low })}
      {...(high === undefined ? {} : { high })}
      label={`${trend.title}, ${trend.quantity}, latest ${valueText(points.at(-1)?.shown ?? 0, unit)}`}
    />
  );
}

/** Room beside what is drawn, as a share of its width. */
const BESIDE_1 = 0.3;

/** The part of the scale that shows the stripes and both limits. */
function windowOf(
  values: readonly number[],
  low: number | undefined,
  high: number | undefined,
  step: number,
): { readonly min: number; readonly max: number } {
  const all = [...values, low ?? Number.NaN, high ?? Number.NaN].filter(Number.isFinite);
  const least = Math.min(...all);
  const most = Math.max(...all);
  const beside = Math.max((most - least) * BESIDE_1, 3 * step);
  return { min: least - beside, max: most + beside };
}
