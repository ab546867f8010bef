import type { Status } from "@witnessmark/ledger";
import { memo } from "react";
import { cornerDashes, cutFor, hexagon, stubs, TURN_deg } from "./mark-geometry.ts";
import "./mark.css";

export const STATUS_NAME: Readonly<Record<Status, string>> = {
  clear: "Clear",
  caution: "Caution",
  stop: "Stop",
  open: "Open",
};

/** The strokes of a mark about 0,0 on a square of 48 units. */
export function MarkStrokes({ status, size_px }: { readonly status: Status; readonly size_px: number }) {
  const cut = cutFor(size_px);
  if (status === "open") {
    const corners = cornerDashes(cut);
    return (
      <polygon
        className="wm-nut"
        points={hexagon(cut.nut, 0)}
        strokeWidth={cut.edge}
        strokeDasharray={corners.dashes}
        strokeDashoffset={corners.offset}
      />
    );
  }
  const base =
    cut.ring === 0 ? null : <circle className="wm-base" r={cut.ring} strokeWidth={cut.edge * 0.42} />;
  const ease = size_px >= 36 ? 0.8 : 0;
  if (status === "clear") {
    const [, reach] = cut.stub;
    return (
      <>
        {base}
        <polygon className="wm-nut" points={hexagon(cut.nut, 0)} strokeWidth={cut.edge} />
        <rect
          className="wm-stripe"
          x={-cut.stripe / 2}
          y={-reach}
          width={cut.stripe}
          height={2 * reach}
          rx={ease}
        />
      </>
    );
  }
  return (
    <>
      {base}
      <path className="wm-stripe" d={stubs(cut)} />
      <g className="wm-turned">
        <polygon
          className={status === "stop" ? "wm-nut wm-filled" : "wm-nut"}
          points={hexagon(cut.nut, TURN_deg[status])}
          strokeWidth={cut.edge}
        />
        <rect
          className={status === "stop" ? "wm-stripe wm-on-ink" : "wm-stripe"}
          x={-cut.stripe / 2}
          y={-cut.bar}
          width={cut.stripe}
          height={2 * cut.bar}
          rx={ease}
          transform={`rotate(${TURN_deg[status]})`}
        />
      </g>
    </>
  );
}

interface MarkProps {
  readonly status: Status;
  readonly size_px?: number;
  /** True beside a word that already says the status. */
  readonly silent?: boolean;
}

/** A witness mark: what is known of one look, or of one verdict. Never used for an error of the app itself. */
export const Mark = memo(function Mark({ status, size_px = 24, silent = false }: MarkProps) {
  return (
    <svg
      className={`wm wm-${status}`}
      width={size_px}
      height={size_px}
      viewBox="-24 -24 48 48"
      role="img"
      aria-label={STATUS_NAME[status]}
      aria-hidden={silent}
    >
      <MarkStrokes status={status} size_px={size_px} />
    </svg>
  );
});

/** The glyph inside a drawing, `size_px` wide, at x,y of that drawing. */
export function MarkAt({
  status,
  x,
  y,
  size_px,
}: {
  readonly status: Status;
  readonly x: number;
  readonly y: number;
  readonly size_px: number;
}) {
  return (
    <g transform={`translate(${x.toFixed(1)} ${y.toFixed(1)}) scale(${(size_px / 48).toFixed(4)})`}>
      <MarkStrokes status={status} size_px={size_px} />
    </g>
  );
}
