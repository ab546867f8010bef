import type { KnownEvent } from "../event.ts";
import type { Draft } from "./draft.ts";

/** Keeps an event by the walk or discrepancy it names, because it has no place in the state (yet). */
export function leaveUnplaced(draft: Draft, subject: string, event: KnownEvent): void {
  const unplaced = draft.map("unplaced");
  unplaced.set(subject, [...(unplaced.get(subject) ?? []), event]);
}

/** Places what was waiting for this subject, in order; what `place` does not take stays. */
export function placeWaiting(draft: Draft, subject: string, place: (event: KnownEvent) => boolean): void {
  const waiting = draft.state.unplaced.get(subject);
  if (waiting === undefined) return;
  const left = waiting.filter((event) => !place(event));
  const unplaced = draft.map("unplaced");
  if (left.length === 0) unplaced.delete(subject);
  else unplaced.set(subject, left);
}
