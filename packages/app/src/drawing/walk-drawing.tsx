import { type Book, feet, noseUp, walkLine } from "@witnessmark/book";
import type { WalkPlan } from "@witnessmark/planner";
import { memo, type RefCallback, useCallback, useMemo } from "react";
import { MarkAt } from "../marks/mark.tsx";
import { AircraftPlan } from "./aircraft-plan.tsx";
import type { Camera } from "./camera.ts";
import { labelPlaces, type Place } from "./label-places.ts";
import type { ScenePoint, SceneStop, WalkScene } from "./walk-scene.ts";

interface WalkDrawingProps {
  readonly book: Book;
  readonly plan: WalkPlan;
  readonly scene: WalkScene;
  readonly camera: Camera;
  readonly mark_px: number;
  readonly ring_px: number;
}

/** The strokes of a walk on the aircraft: line, aircraft, stances, line of sight, points. For use inside an SVG. */
export const WalkDrawing = memo(function WalkDrawing({
  book,
  plan,
  scene,
  camera,
  mark_px,
  ring_px,
}: WalkDrawingProps) {
  const { pxPerMetre } = camera;
  const project = useMemo(() => noseUp(pxPerMetre, 0, 0), [pxPerMetre]);
  const numbers = useMemo(
    () => stanceNumbers(plan, book, pxPerMetre, mark_px),
    [plan, book, pxPerMetre, mark_px],
  );
  return (
    <g transform={`translate(${camera.originX_px} ${camera.originY_px})`}>
      <WalkPath book={book} plan={plan} here={scene.here?.stance.id} pxPerMetre={pxPerMetre} />
      <AircraftPlan geometry={book.geometry} pxPerMetre={pxPerMetre} detail={2} centre />
      {scene.stops.map((stop) => (
        <StanceMark
          key={stop.stance.id}
          stance={stop.stance}
          number={stop.number}
          state={stop.state}
          pxPerMetre={pxPerMetre}
          ring_px={ring_px}
          at={numbers.get(stop.stance.id)}
        />
      ))}
      <Sight here={scene.here} inHand={scene.inHand} project={project} ring_px={ring_px} />
      {scene.points.map((point) => (
        <PointMark
          key={point.id}
          x={point.y_m * pxPerMetre}
          y={point.x_m * pxPerMetre}
          status={point.status}
          size_px={point.near ? mark_px * 1.35 : point.inside ? mark_px * 0.7 : mark_px}
        />
      ))}
    </g>
  );
});

const PointMark = memo(MarkAt);

const WalkPath = memo(function WalkPath({
  book,
  plan,
  here,
  pxPerMetre,
}: {
  readonly book: Book;
  readonly plan: WalkPlan;
  readonly here: string | undefined;
  readonly pxPerMetre: number;
}) {
  const door = book.geometry.door;
  const line = useMemo(() => {
    const stances = plan.stops.map((stop) => stop.stance);
    const head_px = pxPerMetre > 40 ? 7 : 6;
    if (door === undefined) return walkLine(stances, here, noseUp(pxPerMetre, 0, 0), { head_px });
    const start: [number, number] = [
      (door.x[0] + door.x[1]) / 2 + 0.7,
      (door.side === "right" ? 1 : -1) * (halfWidthAt(book, door.x[1]) + 1.5),
    ];
    return walkLine(stances, here, noseUp(pxPerMetre, 0, 0), { head_px, start });
  }, [book, plan, here, pxPerMetre, door]);
  return (
    <>
      <path className="walked" d={line.walked} />
      <path className="walk-ahead" d={line.ahead} />
      <path className="walk-heads" d={line.heads} />
    </>
  );
});

function halfWidthAt(book: Book, x_m: number): number {
  const aft = book.geometry.fuselage.find(([x]) => x >= x_m);
  return aft?.[1] ?? 0;
}

const DIGIT_px = 8.5;
const LINE_px = 15;
const SOLES_px = 9;

/** Where the number of each stance stands outside: behind who stands there, or where there is room. */
export function stanceNumbers(
  plan: WalkPlan,
  book: Book,
  pxPerMetre: number,
  mark_px: number,
): ReadonlyMap<string, Place> {
  const outside = plan.stops.filter(({ stance }) => stance.posture !== "inside");
  const labels = outside.map(({ stance, number }) => ({
    id: stance.id,
    x: stance.place[1] * pxPerMetre,
    y: stance.place[0] * pxPerMetre,
    width: String(number).length * DIGIT_px,
    height: LINE_px,
    liked_rad: ((stance.facing + 90) * Math.PI) / 180,
  }));
  const points = new Set(
    plan.stops.flatMap(({ steps }) =>
      steps.map((step) => (step.kind === "check" ? step.check.point : step.item.point)),
    ),
  );
  const taken = [...points].flatMap((id) => {
    const place = book.points.get(id)?.place;
    return place === undefined
      ? []
      : [{ x: place[1] * pxPerMetre, y: place[0] * pxPerMetre, radius: mark_px / 2 }];
  });
  const soles = labels.map(({ x, y }) => ({ x, y, radius: SOLES_px }));
  return labelPlaces(labels, [...taken, ...soles]);
}

interface StanceMarkProps {
  readonly stance: SceneStop["stance"];
  readonly number: number;
  readonly state: SceneStop["state"];
  readonly pxPerMetre: number;
  readonly ring_px: number;
  /** Where its number stands; none for a stance inside. */
  readonly at: Place | undefined;
}

const StanceMark = memo(function StanceMark({
  stance,
  number,
  state,
  pxPerMetre,
  ring_px,
  at,
}: StanceMarkProps) {
  const [x_m, y_m] = stance.place;
  const [x, y] = [y_m * pxPerMetre, x_m * pxPerMetre];
  const inside = stance.posture === "inside";
  const soles = feet(stance.place, stance.facing, noseUp(pxPerMetre, 0, 0));
  const ring = state === "here" && !inside;
  const label = state === "here" && !inside ? { x: x + ring_px + 14, y: y + 15 } : at;
  return (
    <g>
      {ring ? <circle className="here-ring" cx={x} cy={y} r={ring_px} /> : null}
      {ring && stance.posture === "crouch" ? (
        <path className="here-ring" d={`M${x - ring_px - 5},${y}h10M${x + ring_px - 5},${y}h10`} />
      ) : null}
      <path className={`feet feet-${state}`} d={soles} />
      {label === undefined ? null : (
        <text
          className={`stance-number stance-${state} halo`}
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

/** The line of sight from where one stands to the point in hand. */
function Sight({
  here,
  inHand,
  project,
  ring_px,
}: {
  readonly here: SceneStop | undefined;
  readonly inHand: ScenePoint | undefined;
  readonly project: (x_m: number, y_m: number) => readonly [number, number];
  readonly ring_px: number;
}) {
  if (inHand === undefined) return null;
  const [bx, by] = project(inHand.x_m, inHand.y_m);
  const end = <circle className="sight-end" cx={bx} cy={by} r={14} />;
  if (here === undefined) return end;
  const [ax, ay] = project(here.stance.place[0], here.stance.place[1]);
  const start_px = here.stance.posture === "inside" ? 12 : ring_px;
  const length = Math.hypot(bx - ax, by - ay);
  if (length <= start_px + 14) return end;
  const [ux, uy] = [(bx - ax) / length, (by - ay) / length];
  return (
    <>
      <path
        className="sight"
        d={`M${ax + ux * start_px},${ay + uy * start_px}L${bx - ux * 14},${by - uy * 14}`}
      />
      {end}
    </>
  );
}

const REACH_px = 34;

/**
 * Goes to the nearest point when the drawing is tapped; the list of what is left is the way there by keyboard.
 *
 * @param zero where the drawing's 0,0 lies in the element, as shares of its width and height and so many pixels more
 */
export function usePointTap<E extends Element>(
  scene: WalkScene,
  camera: Camera,
  onPoint: (id: string) => void,
  zero: Zero = CORNER,
): RefCallback<E> {
  return useCallback(
    (element: E | null) => {
      if (element === null) return;
      const tap = (event: Event) => {
        if (!(event instanceof MouseEvent)) return;
        const box = element.getBoundingClientRect();
        const x = event.clientX - box.left - box.width * zero.x_1 - camera.originX_px;
        const y = event.clientY - box.top - box.height * zero.y_1 - zero.y_px - camera.originY_px;
        let nearest: { id: string; far_px: number } | undefined;
        for (const point of scene.points) {
          const far_px = Math.hypot(point.y_m * camera.pxPerMetre - x, point.x_m * camera.pxPerMetre - y);
          if (far_px <= (nearest?.far_px ?? REACH_px)) nearest = { id: point.id, far_px };
        }
        if (nearest !== undefined) onPoint(nearest.id);
      };
      element.addEventListener("click", tap);
      return () => element.removeEventListener("click", tap);
    },
    [scene, camera, onPoint, zero],
  );
}

export interface Zero {
  readonly x_1: number;
  readonly y_1: number;
  readonly y_px: number;
}

const CORNER: Zero = { x_1: 0, y_1: 0, y_px: 0 };
