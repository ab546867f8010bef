import { type ReactNode, useCallback, useMemo } from "react";
import { AircraftDrawing } from "../../drawing/aircraft-drawing.tsx";
import type { Room } from "../../drawing/camera.ts";
import { KeyPlan } from "../../drawing/key-plan.tsx";
import { nearCamera } from "../../drawing/walk-camera.ts";
import { walkMarks, walkRoute } from "../../drawing/walk-marks.ts";
import { type WalkScene, walkScene } from "../../drawing/walk-scene.ts";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { useSize } from "../../instruments/use-width.ts";
import { WalkRule } from "../../instruments/walk-rule.tsx";
import { href } from "../../routes/route.ts";
import type { StepView, WalkView } from "../../walk/walk-view.ts";
import { drawingLabel } from "./drawing-label.ts";
import { PlanAndSide } from "./plan-and-side.tsx";

interface PlanPaneProps {
  readonly open: OpenAircraft;
  readonly view: WalkView;
  readonly inHand: StepView | undefined;
  readonly wide: boolean;
  readonly canUndo: boolean;
  readonly onUndo: () => void;
  readonly onMore: () => void;
  readonly onPoint: (point: string) => void;
  readonly strip: ReactNode;
}

/** The drawing with its tools, and the walk rule under it. */
export function PlanPane(props: PlanPaneProps) {
  const { open, view, inHand, wide, onPoint } = props;
  const stepId = inHand?.step.id;
  const scene = useMemo(
    () => walkScene(open.book, view.plan, (id) => view.byId.get(id)?.status ?? "open", stepId),
    [open.book, view, stepId],
  );
  const here = inHand === undefined ? -1 : view.plan.stops.indexOf(inHand.stop);
  return (
    <div className="walk-left">
      <div className="plan">
        {wide ? (
          <WidePlan open={open} view={view} scene={scene} onPoint={onPoint} />
        ) : (
          <NearPlan open={open} view={view} scene={scene} onPoint={onPoint} />
        )}
        {wide ? null : <KeyPlan book={open.book} stops={scene.stops} width_px={94} height_px={84} />}
        <div className="tools">
          <button type="button" onClick={props.onUndo} disabled={!props.canUndo}>
            <UndoGlyph />
            Undo
          </button>
          <button type="button" onClick={props.onMore} aria-haspopup="dialog">
            More
          </button>
        </div>
        {props.strip}
      </div>
      <a
        className="rule-row"
        href={href({ at: "left", registration: open.registration })}
        aria-label={`${view.left} left of ${view.steps.length}: what is left`}
      >
        <span>
          <b>{view.left}</b> left of {view.steps.length}
        </span>
        <WalkRule groups={view.groups} here={here} height_px={wide ? 20 : 16} gap_px={wide ? 5 : 3} />
      </a>
    </div>
  );
}

function WidePlan(props: NearPlanProps) {
  const [ref, size] = useSize<HTMLDivElement>("wide-plan");
  return (
    <div className="plan-fill" ref={ref}>
      {size.width_px === 0 ? null : <PlanAndSide {...props} {...size} />}
    </div>
  );
}

function UndoGlyph() {
  return (
    <svg className="glyph" width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
      <path d="M4,6.5h7a4.5,4.5 0 0 1 0,9H6M7.5,2.5L3.5,6.5l4,4" />
    </svg>
  );
}

interface NearPlanProps {
  readonly open: OpenAircraft;
  readonly view: WalkView;
  readonly scene: WalkScene;
  readonly onPoint: (point: string) => void;
}

/** Where the stance in hand lies in the room: left of the middle, for the key plan, and above it, for the tools. */
const NEAR_ZERO = { x_1: 0.46, y_1: 0.5, y_px: -12 } as const;

/** A phone's drawing: the stance in hand and what is seen from it. */
function NearPlan({ open, view, scene, onPoint }: NearPlanProps) {
  const marks = useMemo(() => walkMarks(scene), [scene]);
  const route = useMemo(() => walkRoute(open.book, scene), [open.book, scene]);
  const home = useCallback(({ width_px }: Room) => nearCamera(scene, width_px), [scene]);
  return (
    <AircraftDrawing
      room="plan"
      geometry={open.book.geometry}
      label={drawingLabel(open, view, scene)}
      marks={marks}
      route={route}
      heading_deg={scene.here?.stance.facing}
      home={home}
      zero={NEAR_ZERO}
      mark_px={17}
      apart_px={17}
      ring_px={20}
      tools="folded"
      onPoint={onPoint}
    />
  );
}
