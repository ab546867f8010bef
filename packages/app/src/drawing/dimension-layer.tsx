import { memo } from "react";
import type { Px } from "./camera.ts";
import { Dimension } from "./dimension.tsx";
import type { PlacedDimension } from "./dimension-places.ts";
import type { DrawingZone } from "./dimensions.ts";

/** Measures beside the drawing, with their extension lines; figures stand upright however the picture is turned. */
export const DimensionLayer = memo(function DimensionLayer({
  placed,
}: {
  readonly placed: readonly PlacedDimension[];
}) {
  return (
    <g className="dimensions">
      {placed.map(({ key, text, from, to, extensions, at, upright, inline }) => (
        <g key={key}>
          <path
            className="dimension-extension"
            d={extensions.map(([start, end]) => `M${pair(start)}L${pair(end)}`).join("")}
          />
          <Dimension from={from} to={to} />
          <text
            className={inline ? "dimension-text halo halo-wide" : "dimension-text halo"}
            transform={`translate(${at.x.toFixed(1)} ${at.y.toFixed(1)})${upright ? " rotate(-90)" : ""}`}
            y={5.5}
            textAnchor="middle"
          >
            {text}
          </text>
        </g>
      ))}
    </g>
  );
});

const pair = ([x, y]: Px): string => `${x.toFixed(1)},${y.toFixed(1)}`;

/** Where nobody is to stand, dashed on the ground; drawn in the frame of the aircraft. */
export const ZoneLayer = memo(function ZoneLayer({
  zones,
  pxPerMetre: k,
}: {
  readonly zones: readonly DrawingZone[];
  readonly pxPerMetre: number;
}) {
  return (
    <g className="zones">
      {zones.map(({ name, place: [x_m, y_m], reach }) => {
        const key = `${name} ${x_m} ${y_m}`;
        if ("radius_m" in reach)
          return <circle key={key} className="zone" cx={y_m * k} cy={x_m * k} r={reach.radius_m * k} />;
        return (
          <rect
            key={key}
            className="zone"
            x={(y_m - reach.right_m) * k}
            y={(x_m - reach.aft_m) * k}
            width={2 * reach.right_m * k}
            height={2 * reach.aft_m * k}
          />
        );
      })}
    </g>
  );
});
