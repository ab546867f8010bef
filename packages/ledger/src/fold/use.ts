import type { KnownEvent } from "../event.ts";
import { type Draft, originOf } from "./draft.ts";
import { foldCountersRead, foldDone, foldReplaced, saidMoment_ms } from "./timed.ts";

/** Events of what an aircraft was used for, what was done to it, and what runs out. */
export type UseEvent = Extract<
  KnownEvent,
  {
    type:
      | `timedItem.${string}`
      | `component.${string}`
      | "counters.read"
      | "counter.replaced"
      | "flight.made"
      | "servicing.recorded"
      | "aircraft.parked"
      | "experience.recorded"
      | "evidence.declined";
  }
>;

export function applyUse(draft: Draft, event: UseEvent): void {
  const origin = originOf(event);
  switch (event.type) {
    case "timedItem.done":
      foldDone(draft, event);
      return;
    case "timedItem.added":
      draft.map("timedAdded").set(event.body.item.id, { ...origin, ...event.body });
      draft.map("timedDropped").delete(event.body.item.id); // followed again
      return;
    case "timedItem.dropped":
      draft.map("timedDropped").set(event.body.item, { ...origin, why: event.body.why });
      return;
    case "counters.read":
      foldCountersRead(draft, event);
      return;
    case "counter.replaced":
      foldReplaced(draft, event);
      return;
    case "component.fitted":
    case "component.removed":
      draft
        .list("componentMoves")
        .push({ ...origin, ...event.body, fitted: event.type === "component.fitted" });
      return;
    case "flight.made": {
      const { made: id, ...said } = event.body;
      draft.list("flightsMade").push({ ...origin, id, ...said });
      return;
    }
    case "servicing.recorded":
      draft.list("servicings").push({ ...origin, ...event.body, at_ms: saidMoment_ms(event.body.at, event) });
      return;
    case "aircraft.parked":
      draft.list("parkings").push({ ...origin, ...event.body, at_ms: saidMoment_ms(event.body.at, event) });
      return;
    case "experience.recorded":
      draft.list("experiences").push({ ...origin, ...event.body });
      return;
    case "evidence.declined":
      draft.list("evidenceDeclined").push({ ...origin, ...event.body });
      return;
    default:
      event satisfies never;
  }
}
