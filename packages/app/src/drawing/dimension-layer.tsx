import { memo } from "react";
import { type Camera, fromDatum, type Px } from "./camera.ts";
import { Dimension } from "./dimension.tsx";
import type { DrawingDimension, DrawingZone } from "./dimensions.ts";

/** Pixels from what is measured to the first line, and from line to line. */
const FIRST_px = 20;
const ROW_px = 26;
const EXTENDS_px = 5;

interface DimensionLayerProps {
  readonly dimensions: readonly DrawingDimension[];
  readonly camera: Camera;
}

/** Measures beside the drawing, with their extension lines; figures stand upright however the picture is turned. */
export const DimensionLayer = memo(function DimensionLayer({ dimensions, camera }: DimensionLayerProps) {
  return (
    <g className="dimensions">
      {dimensions.map((each) => {
        const way = unit(fromDatum({ ...camera, originX_px: 0, originY_px: 0 }, each.off));
        const off_px = FIRST_px + (each.row - 1) * ROW_px;
        const [from, to] = [fromDatum(camera, each.from), fromDatum(camera, each.to)];
        const [a, b] = [away(from, way, off_px), away(to, way, off_px)];
        const end = (at: Px) => away(at, way, off_px + EXTENDS_px);
        return (
          <g key={`${each.off.join()} ${each.row} ${each.text}`}>
            <path
              className="dimension-extension"
              d={`M${pair(away(from, way, 4))}L${pair(end(from))}M${pair(away(to, way, 4))}L${pair(end(to))}`}
            />
            <Dimension from={a} to={b} />
            <Figure text={each.text} from={a} to={b} way={way} />
          </g>
        );
      })}
    </g>
  );
});

/** About the width of a letter of the figures, and how much line is left on each side of them. */
const LETTER_px = 8.8;
const LINE_px = 14;

/** In the line, which is broken for it, and along it; beyond the line where that is too short. */
function Figure({
  text,
  from,
  to,
  way,
}: {
  readonly text: string;
  readonly from: Px;
  readonly to: Px;
  readonly way: Px;
}) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const fits = Math.hypot(dx, dy) > text.length * LETTER_px + 2 * LINE_px;
  const middle: Px = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const [x, y] = fits ? middle : away(middle, way, 13);
  const upright = Math.abs(dy) > Math.abs(dx);
  return (
    <text
      className={fits ? "dimension-text halo halo-wide" : "dimension-text halo"}
      transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})${upright ? " rotate(-90)" : ""}`}
      y={5.5}
      textAnchor="middle"
    >
      {text}
    </text>
  );
}

const away = ([x, y]: Px, [dx, dy]: Px, by_px: number): Px => [x + dx * by_px, y + dy * by_px];
const pair = ([x, y]: Px): string => `${x.toFixed(1)},${y.toFixed(1)}`;

function unit([x, y]: Px): Px {
  const length = Math.hypot(x, y) || 1;
  return [x / length, y / length];
}

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
