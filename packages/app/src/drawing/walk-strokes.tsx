import { feet, noseUp, walkLine } from "@witnessmark/book";
import { memo, useMemo } from "react";
import { type Camera, fromDatum } from "./camera.ts";
import type { DrawingRoute } from "./drawing-props.ts";
import { LEADER_FROM_px, type Place } from "./label-places.ts";
import type { SceneStop } from "./walk-scene.ts";

/** Stances in their order, and where one is: what the walk's line depends on. */
export const WalkPath = memo(
  function WalkPath({ route, pxPerMetre }: { readonly route: DrawingRoute; readonly pxPerMetre: number }) {
    const line = useMemo(() => {
      const here = route.stops.find(({ state }) => state === "here")?.stance.id;
      return walkLine(
        route.stops.map(({ stance }) => stance),
        here,
        noseUp(pxPerMetre, 0, 0),
        { head_px: pxPerMetre > 40 ? 7 : 6, ...(route.start === undefined ? {} : { start: route.start }) },
      );
    }, [route, pxPerMetre]);
    return (
      <>
        <path className="walked" d={line.walked} />
        <path className="walk-ahead" d={line.ahead} />
        <path className="walk-heads" d={line.heads} />
      </>
    );
  },
  (was, now) =>
    was.pxPerMetre === now.pxPerMetre &&
    was.route.start?.[0] === now.route.start?.[0] &&
    was.route.start?.[1] === now.route.start?.[1] &&
    was.route.stops.length === now.route.stops.length &&
    was.route.stops.every((stop, index) => {
      const other = now.route.stops[index];
      return stop.stance === other?.stance && (stop.state === "here") === (other.state === "here");
    }),
);

interface StanceMarkProps {
  readonly stance: SceneStop["stance"];
  readonly number: number;
  readonly state: SceneStop["state"];
  readonly pxPerMetre: number;
  readonly turn_deg: number;
  readonly ring_px: number;
  /** Where its number stands; none without room, and none on a screen for a stance inside. */
  readonly at: Place | undefined;
  /** On paper a number stands on white of its own: the halo of a letter is filled by some printers. */
  readonly print: boolean;
}

/** What a number covers of the lines under it, beyond its digits. */
const GROUND_px = { digit: 8.5, side: 2, high: 15 } as const;

/** The soles where one stands, toes where one looks, and its number, upright. */
export const StanceMark = memo(function StanceMark({
  stance,
  number,
  state,
  pxPerMetre,
  turn_deg,
  ring_px,
  at,
  print,
}: StanceMarkProps) {
  const [x_m, y_m] = stance.place;
  const camera: Camera = { pxPerMetre, originX_px: 0, originY_px: 0, turn_deg };
  const [x, y] = fromDatum(camera, [y_m, x_m]);
  const inside = stance.posture === "inside";
  const soles = feet([0, 0], stance.facing + turn_deg, noseUp(pxPerMetre, x, y));
  const ring = state === "here" && !inside;
  const label = ring ? { x: x + ring_px + 14, y: y + 15 } : at;
  const wide_px = String(number).length * GROUND_px.digit + 2 * GROUND_px.side;
  const far = label === undefined || ring ? 0 : Math.hypot(label.x - x, label.y - y);
  return (
    <g>
      {ring ? <circle className="here-ring" cx={x} cy={y} r={ring_px} /> : null}
      {ring && stance.posture === "crouch" ? (
        <path className="here-ring" d={`M${x - ring_px - 5},${y}h10M${x + ring_px - 5},${y}h10`} />
      ) : null}
      {label !== undefined && far > LEADER_FROM_px ? (
        <path className="mark-leader" d={`M${x},${y}L${label.x},${label.y}`} />
      ) : null}
      <path className={`feet feet-${state}`} d={soles} />
      {label === undefined || !print ? null : (
        <rect
          className="number-ground"
          x={label.x - wide_px / 2}
          y={label.y - GROUND_px.high / 2}
          width={wide_px}
          height={GROUND_px.high}
        />
      )}
      {label === undefined ? null : (
        <text
          className={`stance-number stance-${state}${print ? "" : " halo"}`}
          x={label.x}
          y={label.y + 4.5}
          textAnchor="middle"
        >
          {number}
        </text>
      )}
    </g>
  );
});
