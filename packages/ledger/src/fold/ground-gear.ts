import type { KnownEvent } from "../event.ts";
import type { GearState } from "../state.ts";
import { type Draft, originOf, present, seenAt } from "./draft.ts";

type Event<T extends KnownEvent["type"]> = Extract<KnownEvent, { type: T }>;

/** Pieces that go on come from where they were stowed first. */
export function foldFitted(draft: Draft, event: Event<"groundGear.fitted">): void {
  const { item, count, walk } = event.body;
  const before = draft.state.groundGear.get(item);
  draft.map("groundGear").set(item, {
    fitted: (before?.fitted ?? 0) + count,
    removals: withoutFirst(before?.removals ?? [], count),
    last: { ...originOf(event), recordedAt: seenAt(draft, walk, event) },
  });
}

/** Never below none: the ledger may begin after the pieces were fitted. */
export function foldRemoved(draft: Draft, event: Event<"groundGear.removed">): void {
  const { item, count, stowedIn, walk } = event.body;
  const before = draft.state.groundGear.get(item);
  const origin = { ...originOf(event), recordedAt: seenAt(draft, walk, event) };
  draft.map("groundGear").set(item, {
    fitted: Math.max(0, (before?.fitted ?? 0) - count),
    removals: [...(before?.removals ?? []), { ...origin, count, stowedIn, ...present({ walk }) }],
    last: origin,
  });
}

function withoutFirst(removals: GearState["removals"], count: number): GearState["removals"] {
  let left = count;
  return removals.flatMap((removal) => {
    const taken = Math.min(left, removal.count);
    left -= taken;
    return taken === removal.count ? [] : [{ ...removal, count: removal.count - taken }];
  });
}
