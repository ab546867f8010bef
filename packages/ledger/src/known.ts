import type { EventType, KnownEvent, LedgerEvent } from "./event.ts";

/** The schema version of every body in `Bodies`. */
export const SCHEMA_VERSION = 1;

const TYPES: Readonly<Record<EventType, true>> = {
  "device.introduced": true,
  "book.adopted": true,
  "aircraft.archived": true,
  "aircraft.restored": true,
  "walk.started": true,
  "walk.interrupted": true,
  "walk.finished": true,
  "walk.abandoned": true,
  "check.answered": true,
  "reading.recorded": true,
  "note.written": true,
  "photo.attached": true,
  "happening.recorded": true,
  "groundGear.removed": true,
  "groundGear.fitted": true,
  "discrepancy.raised": true,
  "discrepancy.closed": true,
  "discrepancy.placed": true,
  "discrepancy.assessed": true,
  "discrepancy.measured": true,
  "discrepancy.relieved": true,
  "discrepancy.reliefEnded": true,
  "discrepancy.reopened": true,
  "discrepancy.released": true,
  "timedItem.done": true,
  "timedItem.added": true,
  "timedItem.dropped": true,
  "counters.read": true,
  "counter.replaced": true,
  "component.fitted": true,
  "component.removed": true,
  "flight.made": true,
  "servicing.recorded": true,
  "aircraft.parked": true,
  "experience.recorded": true,
  "reading.imported": true,
  "evidence.declined": true,
  "flight.planned": true,
  "flight.dropped": true,
  "decision.signed": true,
  "event.withdrawn": true,
};

export const isEventType = (type: string): type is EventType => Object.hasOwn(TYPES, type);

/**
 * Whether this version knows what the event says. Its body is then as in `Bodies`, provided that the event came
 * through `parseEvent` or `makeEvents`.
 */
export const isKnownEvent = (event: LedgerEvent): event is KnownEvent =>
  event.schemaVersion === SCHEMA_VERSION && isEventType(event.type);
