import { type ReactNode, useMemo } from "react";
import { KeyPlan } from "../../drawing/key-plan.tsx";
import { nearCamera } from "../../drawing/walk-camera.ts";
import { usePointTap, WalkDrawing, type Zero } from "../../drawing/walk-drawing.tsx";
import { type WalkScene, walkScene } from "../../drawing/walk-scene.ts";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { useSize, useWidth } from "../../instruments/use-width.ts";
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

/** Where `.near-svg` has its 0,0: left of the middle, for the key plan, and above it, for the tools. */
const NEAR_ZERO: Zero = { x_1: 0.46, y_1: 0.5, y_px: -12 };

/** A phone's drawing: the stance in hand and what is seen from it. */
function NearPlan({ open, view, scene, onPoint }: NearPlanProps) {
  const [ref, width_px] = useWidth<HTMLDivElement>("plan");
  const camera = useMemo(() => nearCamera(scene, width_px), [scene, width_px]);
  const tap = usePointTap<HTMLDivElement>(scene, camera, onPoint, NEAR_ZERO);
  return (
    <div className="plan-fill" ref={ref}>
      <div className="plan-fill plan-near" ref={tap} role="img" aria-label={drawingLabel(open, view, scene)}>
        {width_px === 0 ? null : (
          <svg className="near-svg" width="1" height="1" aria-hidden="true">
            <WalkDrawing
              book={open.book}
              plan={view.plan}
              scene={scene}
              camera={camera}
              mark_px={17}
              ring_px={20}
            />
          </svg>
        )}
      </div>
    </div>
  );
}
