import type { KnownEvent, LedgerEvent } from "../event.ts";
import { hlcTime_ms } from "../hlc.ts";
import { isKnownEvent } from "../known.ts";
import { foldAnswer, foldImported, foldReading } from "./checks.ts";
import { foldOfDiscrepancy, foldRaised } from "./discrepancies.ts";
import { type Draft, originOf, present } from "./draft.ts";
import { foldFitted, foldRemoved } from "./ground-gear.ts";
import { applyUse, type UseEvent } from "./use.ts";
import { foldOfWalk, foldWalkStarted } from "./walks.ts";

/** Folds one event that counts into the draft. Events come in ledger order. */
export function applyEvent(draft: Draft, event: LedgerEvent): void {
  if (isKnownEvent(event)) {
    applyKnown(draft, event);
    return;
  }
  const { type, schemaVersion } = event;
  draft.list("unknown").push({ ...originOf(event), type, schemaVersion });
}

function applyKnown(draft: Draft, event: KnownEvent): void {
  switch (event.type) {
    case "check.answered":
      foldAnswer(draft, event);
      return;
    case "reading.recorded":
      foldReading(draft, event);
      return;
    case "reading.imported":
      foldImported(draft, event);
      return;
    case "walk.started":
      foldWalkStarted(draft, event);
      return;
    case "walk.interrupted":
    case "walk.finished":
    case "walk.abandoned":
      foldOfWalk(draft, event);
      return;
    case "groundGear.fitted":
      foldFitted(draft, event);
      return;
    case "groundGear.removed":
      foldRemoved(draft, event);
      return;
    case "discrepancy.raised":
      foldRaised(draft, event);
      return;
    case "discrepancy.closed":
    case "discrepancy.reopened":
    case "discrepancy.released":
    case "discrepancy.placed":
    case "discrepancy.assessed":
    case "discrepancy.measured":
    case "discrepancy.relieved":
    case "discrepancy.reliefEnded":
      foldOfDiscrepancy(draft, event);
      return;
    case "timedItem.done":
    case "timedItem.added":
    case "timedItem.dropped":
    case "counters.read":
    case "counter.replaced":
    case "component.fitted":
    case "component.removed":
    case "flight.made":
    case "servicing.recorded":
    case "aircraft.parked":
    case "experience.recorded":
    case "evidence.declined":
      applyUse(draft, event);
      return;
    case "event.withdrawn":
      return; // decided for all events at once, before any is folded
    default:
      applyRecord(draft, event);
  }
}

type Record_ = Exclude<
  Exclude<KnownEvent, UseEvent>,
  {
    type:
      | `walk.${string}`
      | `groundGear.${string}`
      | `discrepancy.${string}`
      | "check.answered"
      | `reading.${string}`
      | "event.withdrawn";
  }
>;

/** Events that stand alone in the record. */
function applyRecord(draft: Draft, event: Record_): void {
  const origin = originOf(event);
  switch (event.type) {
    case "device.introduced":
      draft.map("devices").set(event.device, { ...origin, label: event.body.label, key: event.body.key });
      return;
    case "book.adopted":
      draft.list("books").push({ ...origin, ...event.body });
      return;
    case "aircraft.archived":
      draft.state.archived = true;
      return;
    case "aircraft.restored":
      draft.state.archived = false;
      return;
    case "note.written":
      draft.list("notes").push({ ...origin, subject: event.body.subject, text: event.body.text });
      return;
    case "photo.attached": {
      const { subject, sha256, mediaType } = event.body;
      draft.list("photos").push({ ...origin, subject, sha256, mediaType });
      return;
    }
    case "happening.recorded": {
      const { happening: kind, at, words } = event.body;
      const said_ms = Date.parse(at);
      // A date that does not read got past the boundary; its stamp is the best that is known of its time.
      const at_ms = Number.isNaN(said_ms) ? hlcTime_ms(event.hlc) : said_ms;
      draft.list("happenings").push({ ...origin, kind, at, at_ms, ...present({ words }) });
      return;
    }
    case "flight.planned": {
      const { flight: id, planned } = event.body;
      const flights = draft.map("flights");
      flights.delete(id); // so that the one planned last stands last
      flights.set(id, { ...origin, id, planned: { ...planned, id } });
      return;
    }
    case "flight.dropped":
      draft.map("flights").delete(event.body.flight);
      return;
    case "decision.signed": {
      const { decision: id, ...said } = event.body;
      const signed = event.signature !== undefined;
      draft.list("decisions").push({ ...origin, id, ...said, hash: event.hash, signed });
      return;
    }
    default:
      event satisfies never;
  }
}
