import type { Status } from "@witnessmark/ledger";
import { memo } from "react";
import { useWidth } from "./use-width.ts";
import "./instruments.css";

interface WalkRuleProps {
  /** The status of each step, grouped by stop. */
  readonly groups: readonly (readonly Status[])[];
  /** Index of the group in hand; −1 for none. */
  readonly here: number;
  readonly height_px?: number;
  readonly gap_px?: number;
}

/** One stroke a step, grouped by stop: seen, a paint stroke; stop, an ink block; open, a short tick. */
export const WalkRule = memo(function WalkRule({ groups, here, height_px = 16, gap_px = 3 }: WalkRuleProps) {
  const [ref, width_px] = useWidth<HTMLSpanElement>();
  return (
    <span className="walk-rule" ref={ref} aria-hidden="true">
      {width_px === 0 ? null : (
        <Strokes groups={groups} here={here} width_px={width_px} height_px={height_px} gap_px={gap_px} />
      )}
    </span>
  );
});

interface StrokesProps extends Required<WalkRuleProps> {
  readonly width_px: number;
}

function Strokes({ groups, here, width_px, height_px, gap_px }: StrokesProps) {
  const count = groups.reduce((sum, group) => sum + group.length, 0);
  const step = (width_px - gap_px * (groups.length - 1)) / Math.max(1, count);
  const paths = { paint: "", turned: "", block: "", bar: "", tick: "", base: "", baseHere: "" };
  let x = 0;
  for (const [index, group] of groups.entries()) {
    const from = x;
    for (const status of group) {
      const c = x + step / 2;
      if (status === "clear") paths.paint += `M${c.toFixed(1)},0V${height_px}`;
      else if (status === "caution")
        paths.turned += `M${(c - 1.4).toFixed(1)},${height_px}L${(c + 1.4).toFixed(1)},0`;
      else if (status === "stop") {
        paths.block += `M${(c - step * 0.8).toFixed(1)},${height_px / 2}h${(step * 1.6).toFixed(1)}`;
        paths.bar += `M${(c - step * 0.6).toFixed(1)},${height_px / 2}h${(step * 1.2).toFixed(1)}`;
      } else paths.tick += `M${c.toFixed(1)},${height_px - 4}v4`;
      x += step;
    }
    const base = `M${from.toFixed(1)},${height_px + 2}H${x.toFixed(1)}`;
    if (index === here) paths.baseHere += base;
    else paths.base += base;
    x += gap_px;
  }
  return (
    <svg
      width={width_px}
      height={height_px + 4}
      viewBox={`0 0 ${width_px} ${height_px + 4}`}
      aria-hidden="true"
    >
      <path className="walk-tick" d={paths.tick} strokeWidth={1.1} />
      <path className="paint-line" d={paths.paint} strokeWidth={Math.min(2.2, step * 0.62)} />
      <path className="paint-line" d={paths.turned} strokeWidth={2.2} />
      <path className="ink-line" d={paths.block} strokeWidth={height_px} />
      <path className="paint-line" d={paths.bar} strokeWidth={2.6} />
      <path className="ink-1-line" d={paths.base} />
      <path className="ink-line" d={paths.baseHere} strokeWidth={3} />
    </svg>
  );
}
