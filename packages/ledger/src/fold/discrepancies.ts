import type { KnownEvent } from "../event.ts";
import { type Draft, originOf, present } from "./draft.ts";
import { leaveUnplaced, placeWaiting } from "./unplaced.ts";

type Event<T extends KnownEvent["type"]> = Extract<KnownEvent, { type: T }>;

export function foldRaised(draft: Draft, event: Event<"discrepancy.raised">): void {
  const { discrepancy, ...said } = event.body;
  if (draft.state.discrepancies.has(discrepancy)) {
    leaveUnplaced(draft, discrepancy, event);
    return;
  }
  draft
    .map("discrepancies")
    .set(discrepancy, { id: discrepancy, raised: originOf(event), ...present(said), closings: [] });
  placeWaiting(draft, discrepancy, (waiting) => {
    if (waiting.type !== "discrepancy.closed") return false;
    foldClosed(draft, waiting);
    return true;
  });
}

/** Every closing stays: two phones may have closed it in two ways. */
export function foldClosed(draft: Draft, event: Event<"discrepancy.closed">): void {
  const { discrepancy: id, how, words, releasedBy } = event.body;
  const discrepancy = draft.state.discrepancies.get(id);
  if (discrepancy === undefined) {
    leaveUnplaced(draft, id, event);
    return;
  }
  draft.map("discrepancies").set(id, {
    ...discrepancy,
    closings: [...discrepancy.closings, { ...originOf(event), how, words, releasedBy }],
  });
}
