import {
  type Book,
  centreLine,
  chordwise_m,
  elevation,
  extent,
  groundLine,
  noseLeft,
  planView,
  sideView,
} from "@witnessmark/book";
import { memo, useId, useMemo } from "react";
import { Ruler } from "../../drawing/ruler.tsx";
import { Strokes } from "../../drawing/strokes.tsx";
import type { LoadLayout } from "./plan-layout.ts";

interface LoadBaseProps {
  readonly geometry: Book["geometry"];
  readonly at: LoadLayout;
  readonly width_px: number;
  readonly height_px: number;
}

/**
 * The aircraft under the load: from above, and from the left where there is room. It is drawn once, in a picture of its
 * own, so that a drag paints over it and never paints it.
 */
export const LoadBase = memo(function LoadBase({ geometry, at, width_px, height_px }: LoadBaseProps) {
  const id = useId();
  const { pxPerMetre: k, originX_px, planY_px, groundY_px } = at;
  const drawn = useMemo(() => {
    const project = noseLeft(k, originX_px, planY_px);
    const { fore_m, aft_m } = extent(geometry);
    // wheels are dashed under the wing in a walk; here they would lie on the fuel
    const strokes = planView({ ...geometry, wheels: [] }, project, 1);
    return { strokes, line: centreLine(project, fore_m - 0.7, aft_m + 0.4) };
  }, [geometry, k, originX_px, planY_px]);
  const half_px = at.cut_m === null ? height_px : at.cut_m * k;
  const left = at.foreCut_m === null ? 0 : originX_px + at.foreCut_m * k;
  const right = at.aftCut_m === null ? width_px : originX_px + at.aftCut_m * k;
  return (
    <svg
      className="under-layer"
      width={width_px}
      height={height_px}
      viewBox={`0 0 ${width_px} ${height_px}`}
      aria-hidden="true"
    >
      <clipPath id={id}>
        <rect x={left} y={planY_px - half_px} width={right - left} height={2 * half_px} />
      </clipPath>
      <g clipPath={`url(#${id})`}>
        <Strokes strokes={drawn.strokes} />
      </g>
      <path className="break-line" d={wingBreaks(geometry, at) + bodyBreaks(geometry, at)} />
      <path className="centre-line" d={drawn.line} />
      {groundY_px === null ? null : <Side geometry={geometry} at={at} groundY_px={groundY_px} />}
    </svg>
  );
});

function Side({
  geometry,
  at,
  groundY_px,
}: {
  readonly geometry: Book["geometry"];
  readonly at: LoadLayout;
  readonly groundY_px: number;
}) {
  const { pxPerMetre: k, originX_px } = at;
  const { fore_m, aft_m } = extent(geometry);
  const { ground, side } = useMemo(() => {
    const project = elevation(k, originX_px, groundY_px);
    return {
      ground: groundLine(project, fore_m - 0.55, aft_m + 0.2),
      side: sideView(geometry, project, 1),
    };
  }, [geometry, k, originX_px, groundY_px, fore_m, aft_m]);
  const last = Math.max(1, Math.floor(aft_m) - 2);
  return (
    <>
      <Strokes strokes={ground} />
      <Strokes strokes={side} />
      <Ruler
        from={Math.min(0, Math.ceil(fore_m))}
        to={last}
        minor={0.5}
        major={1}
        map={(x_m) => originX_px + x_m * k}
        at_px={groundY_px + 12}
        way={1}
        upright={false}
      />
      <text className="load-note" x={originX_px + (last + 0.35) * k} y={groundY_px + 33}>
        m aft of datum
      </text>
    </>
  );
}

/** A break across a cut wing: a straight line with one tooth. */
function wingBreaks({ wing }: Book["geometry"], at: LoadLayout): string {
  const { cut_m, originX_px, planY_px, pxPerMetre: k } = at;
  if (cut_m === null || cut_m > wing.tip.y) return "";
  const from = originX_px + chordwise_m(wing, cut_m, -0.06) * k;
  const to = originX_px + chordwise_m(wing, cut_m, 1.06) * k;
  const middle = (from + to) / 2;
  return [1, -1]
    .map((side) => {
      const y = planY_px - side * cut_m * k;
      return `M${from.toFixed(1)},${y.toFixed(1)}H${(middle - 9).toFixed(1)}l6,-8l6,16l6,-8H${to.toFixed(1)}`;
    })
    .join("");
}

function bodyBreaks({ fuselage }: Book["geometry"], at: LoadLayout): string {
  const { originX_px, planY_px, pxPerMetre: k } = at;
  return [at.foreCut_m, at.aftCut_m]
    .map((cut_m) => {
      if (cut_m === null) return "";
      const aft = fuselage.findIndex(([x]) => x >= cut_m);
      const [behind, ahead] = [fuselage[aft], fuselage[aft - 1]];
      if (behind === undefined || ahead === undefined) return "";
      const share = (cut_m - ahead[0]) / (behind[0] - ahead[0]);
      const half = (ahead[1] + (behind[1] - ahead[1]) * share) * k + 5;
      const x = originX_px + cut_m * k;
      return `M${x.toFixed(1)},${(planY_px - half).toFixed(1)}V${planY_px - 8}l-6,5l12,6l-6,5V${(planY_px + half).toFixed(1)}`;
    })
    .join("");
}
