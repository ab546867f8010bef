import { type Book, extent } from "@witnessmark/book";
import type { Status } from "@witnessmark/ledger";
import { memo } from "react";
import { AircraftPlan } from "../../drawing/aircraft-plan.tsx";
import { useSize } from "../../instruments/use-width.ts";
import { MarkAt } from "../../marks/mark.tsx";

/** What the pictures of an Apron must hold at their common scale. */
export interface Largest {
  readonly wide_m: number;
  readonly long_m: number;
}

interface ApronPictureProps {
  readonly book: Book;
  readonly largest: Largest;
  readonly status: Status;
  /** Where the worst verdict is: x aft, y right. */
  readonly place: readonly [number, number] | undefined;
  readonly scaleBar: boolean;
}

/** The aircraft on squared paper, a metre a square, all at one scale. */
export const ApronPicture = memo(function ApronPicture(props: ApronPictureProps) {
  const [ref, size] = useSize<HTMLDivElement>("apron");
  return (
    <div className="apron-picture" ref={ref}>
      {size.width_px === 0 ? null : <Picture {...props} {...size} />}
    </div>
  );
});

interface PictureProps extends ApronPictureProps {
  readonly width_px: number;
  readonly height_px: number;
}

function Picture({ book, largest, status, place, scaleBar, width_px, height_px }: PictureProps) {
  const k = Math.min((width_px - 12) / largest.wide_m, (height_px - 64) / largest.long_m);
  const { fore_m, aft_m } = extent(book.geometry);
  const x = width_px / 2;
  const y = height_px / 2 - ((fore_m + aft_m) / 2) * k - 4;
  let grid = "";
  for (let gx = x % k; gx < width_px; gx += k) grid += `M${gx.toFixed(1)},0V${height_px}`;
  for (let gy = y % k; gy < height_px; gy += k) grid += `M0,${gy.toFixed(1)}H${width_px}`;
  const foot = height_px - 14;
  return (
    <svg width={width_px} height={height_px} viewBox={`0 0 ${width_px} ${height_px}`} aria-hidden="true">
      <path className="squares" d={grid} />
      <g transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}>
        <AircraftPlan geometry={book.geometry} pxPerMetre={k} detail={1} centre />
        {place === undefined ? null : (
          <>
            <circle className="sight-end" cx={place[1] * k} cy={place[0] * k} r={11} />
            <MarkAt status={status} x={place[1] * k} y={place[0] * k} size_px={18} />
          </>
        )}
      </g>
      {scaleBar ? (
        <>
          <path
            className="scale-bar"
            d={`M${x - 5 * k},${foot}v-5M${x + 5 * k},${foot}v-5M${x - 5 * k},${foot}H${x + 5 * k}`}
          />
          <text className="scale-text halo" x={x} y={foot - 4} textAnchor="middle">
            10 m
          </text>
        </>
      ) : null}
    </svg>
  );
}
