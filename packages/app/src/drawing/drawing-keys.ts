import { TURN_STEP_deg, ZOOM_STEP_1 } from "./drawing-tools.tsx";
import type { Gestures } from "./gestures.ts";

const PAN_px = 64;

type KeyDoes = "home" | ((gestures: Gestures, turns: boolean) => void);

const zoomIn: KeyDoes = (gestures) => gestures.zoom(ZOOM_STEP_1);
const zoomOut: KeyDoes = (gestures) => gestures.zoom(1 / ZOOM_STEP_1);

/** What the keys do to a drawing that has the focus. */
export const KEYS: Readonly<Record<string, KeyDoes>> = {
  ArrowLeft: (gestures) => gestures.pan(PAN_px, 0),
  ArrowRight: (gestures) => gestures.pan(-PAN_px, 0),
  ArrowUp: (gestures) => gestures.pan(0, PAN_px),
  ArrowDown: (gestures) => gestures.pan(0, -PAN_px),
  "+": zoomIn,
  "=": zoomIn,
  "-": zoomOut,
  _: zoomOut,
  "[": (gestures, turns) => (turns ? gestures.turn(-TURN_STEP_deg) : undefined),
  "]": (gestures, turns) => (turns ? gestures.turn(TURN_STEP_deg) : undefined),
  "0": "home",
};
