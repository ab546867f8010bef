import type { WindLayout } from "./wind-layout.ts";

/** The steady wind as an arrow to the threshold, its gust drawn on dashed. */
export function Arrow({ at }: { readonly at: WindLayout }) {
  const { steady, gust, runwayX_px: rx, touch_px: ty } = at;
  if (steady === undefined) return null;
  const length = Math.hypot(steady[0] - rx, steady[1] - ty);
  if (length < 3) return null;
  const [ux, uy] = [(rx - steady[0]) / length, (ty - steady[1]) / length];
  const size = Math.min(17, length);
  const head = `M${rx},${ty}l${(-ux * size - uy * size * 0.42).toFixed(1)},${(-uy * size + ux * size * 0.42).toFixed(1)}l${(uy * size * 0.84).toFixed(1)},${(-ux * size * 0.84).toFixed(1)}z`;
  return (
    <>
      {gust === undefined ? null : (
        <path
          className="cond-gust"
          d={`M${gust[0].toFixed(1)},${gust[1].toFixed(1)}L${steady[0].toFixed(1)},${steady[1].toFixed(1)}`}
        />
      )}
      <path
        className="cond-wind"
        d={`M${steady[0].toFixed(1)},${steady[1].toFixed(1)}L${(rx - ux * size * 0.65).toFixed(1)},${(ty - uy * size * 0.65).toFixed(1)}`}
      />
      <path className="cond-wind-head" d={head} />
    </>
  );
}

/** A wind without a direction: it may come from anywhere on the circle. */
export function FromAnywhere({
  at,
  speed_mPerS,
  gust_mPerS,
}: {
  readonly at: WindLayout;
  readonly speed_mPerS: number;
  readonly gust_mPerS: number | undefined;
}) {
  const { runwayX_px: rx, touch_px: ty, pxPerMps } = at;
  return (
    <>
      <circle className="cond-wind cond-circle" cx={rx} cy={ty} r={speed_mPerS * pxPerMps} />
      {gust_mPerS === undefined ? null : (
        <circle className="cond-gust cond-circle" cx={rx} cy={ty} r={gust_mPerS * pxPerMps} />
      )}
    </>
  );
}

interface SectorProps {
  readonly at: WindLayout;
  readonly speed_mPerS: number;
  readonly from_rad: number;
  readonly to_rad: number;
}

/** The part of the circle that a varying wind comes from, clockwise. */
export function Sector({ at, speed_mPerS, from_rad, to_rad }: SectorProps) {
  const { runwayX_px: rx, touch_px: ty, pxPerMps } = at;
  const r = speed_mPerS * pxPerMps;
  const place = (angle: number) =>
    `${(rx + r * Math.sin(angle)).toFixed(1)},${(ty - r * Math.cos(angle)).toFixed(1)}`;
  const span = (((to_rad - from_rad) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  return (
    <path
      className="cond-sector"
      d={`M${place(from_rad)}A${r.toFixed(1)},${r.toFixed(1)} 0 ${span > Math.PI ? 1 : 0} 1 ${place(to_rad)}`}
    />
  );
}
