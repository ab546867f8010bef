import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { alsoOf } from "../walk-plan.ts";
import { lastTouched, type WalkView } from "../walk-view.ts";
import { askOrder } from "./ask-order.ts";
import { setTurn } from "./walk-turn.ts";

/** Where the pilot stands: at the stance of the last answer; before any, at the door. */
function standsAt(open: OpenAircraft, view: WalkView): readonly [number, number] | undefined {
  const stance = lastTouched(view, open.state, open.person.id)?.stop.stance;
  return stance === undefined || stance.posture === "inside" ? undefined : stance.place;
}

/** Puts what is left in the order that is shortest from where the pilot stands; what is done stays before it. */
export async function shortestLeft(open: OpenAircraft, view: WalkView): Promise<void> {
  const { book, state, assessment } = open;
  const { id, kind } = view.walk;
  const left = view.steps.filter(({ status }) => status === "open").map(({ step }) => step.id);
  const isLeft = new Set(left);
  const also = alsoOf(book, kind, id, state, assessment);
  const order = await askOrder({ ask: "left", book, kind, also, left, from: standsAt(open, view) });
  const done = view.plan.stops.flatMap(({ stance, steps }) => {
    const here = steps.filter((step) => !isLeft.has(step.id));
    return here.length === 0 ? [] : [{ stance: stance.id, steps: here.map((step) => step.id) }];
  });
  setTurn({ walk: id, stops: [...done, ...order.stops] });
}
