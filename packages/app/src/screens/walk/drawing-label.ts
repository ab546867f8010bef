import type { WalkScene } from "../../drawing/walk-scene.ts";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import type { WalkView } from "../../walk/walk-view.ts";

/** What a screen reader says in place of the drawing. */
export function drawingLabel(open: OpenAircraft, view: WalkView, scene: WalkScene): string {
  const at =
    scene.here === undefined ? "" : ` You are at stance ${scene.here.number}, ${scene.here.stance.name}.`;
  const looking = scene.inHand === undefined ? "" : ` In hand: ${scene.inHand.name}.`;
  return `Drawing of ${open.registration} from above, nose up. ${view.left} of ${view.steps.length} steps are left.${at}${looking}`;
}
