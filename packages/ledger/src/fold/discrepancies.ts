import type { KnownEvent } from "../event.ts";
import type { Discrepancy } from "../state.ts";
import { type Draft, originOf, present } from "./draft.ts";
import { leaveUnplaced, placeWaiting } from "./unplaced.ts";

type Event<T extends KnownEvent["type"]> = Extract<KnownEvent, { type: T }>;

/** Every event about a discrepancy that was raised before. */
export type OfDiscrepancy = Event<
  Exclude<Extract<KnownEvent["type"], `discrepancy.${string}`>, "discrepancy.raised">
>;

const isOfDiscrepancy = (event: KnownEvent): event is OfDiscrepancy =>
  event.type.startsWith("discrepancy.") && event.type !== "discrepancy.raised";

export function foldRaised(draft: Draft, event: Event<"discrepancy.raised">): void {
  const { discrepancy: id, ...said } = event.body;
  if (draft.state.discrepancies.has(id)) {
    leaveUnplaced(draft, id, event);
    return;
  }
  const raised = originOf(event);
  draft.map("discrepancies").set(id, {
    id,
    raised,
    ...present(said),
    closings: [],
    assessments: [],
    measurements: said.measured === undefined ? [] : [{ ...raised, measured: said.measured }],
    reliefs: [],
    reopenings: [],
    releases: [],
    isOpen: true,
  });
  placeWaiting(draft, id, (waiting) => {
    if (!isOfDiscrepancy(waiting)) return false;
    foldOfDiscrepancy(draft, waiting);
    return true;
  });
}

export function foldOfDiscrepancy(draft: Draft, event: OfDiscrepancy): void {
  const id = event.body.discrepancy;
  const discrepancy = draft.state.discrepancies.get(id);
  if (discrepancy === undefined) {
    leaveUnplaced(draft, id, event);
    return;
  }
  draft.map("discrepancies").set(id, { ...discrepancy, ...changedBy(event, discrepancy) });
}

function changedBy(event: OfDiscrepancy, before: Discrepancy): Partial<Discrepancy> {
  const origin = originOf(event);
  switch (event.type) {
    case "discrepancy.closed": {
      // every closing stays: two phones may have closed it in two ways
      const { how, words, releasedBy } = event.body;
      return { closings: [...before.closings, { ...origin, how, words, releasedBy }], isOpen: false };
    }
    case "discrepancy.reopened":
      return { reopenings: [...before.reopenings, { ...origin, words: event.body.words }], isOpen: true };
    case "discrepancy.released": {
      const { discrepancy: _of, ...said } = event.body;
      return { releases: [...before.releases, { ...origin, ...said }] };
    }
    case "discrepancy.placed": {
      const { place, point, jasc } = event.body;
      return { place, ...present({ point, jasc }) };
    }
    case "discrepancy.assessed": {
      const { words, equipment } = event.body;
      return { assessments: [...before.assessments, { ...origin, words, ...present({ equipment }) }] };
    }
    case "discrepancy.measured": {
      const { measured, words } = event.body;
      return { measurements: [...before.measurements, { ...origin, measured, ...present({ words }) }] };
    }
    case "discrepancy.relieved": {
      const { discrepancy: _of, relief: id, ...said } = event.body;
      const signed = event.signature !== undefined;
      return { reliefs: [...before.reliefs, { ...origin, id, ...said, signed }] };
    }
    case "discrepancy.reliefEnded": {
      const { relief: id, why } = event.body;
      return {
        reliefs: before.reliefs.map((relief) =>
          relief.id === id && relief.ended === undefined ? { ...relief, ended: { ...origin, why } } : relief,
        ),
      };
    }
    default:
      return event satisfies never;
  }
}
