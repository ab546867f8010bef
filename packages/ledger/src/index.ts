export { canonical } from "./canonical.ts";
export type {
  Answer,
  Author,
  Bodies,
  CouldNotReason,
  EventType,
  KnownEvent,
  LedgerEvent,
  PlannedFlight,
  Read,
  Status,
  Subject,
  UnknownEvent,
} from "./event.ts";
export { advance, emptyState, fold } from "./fold/fold.ts";
export { hashOfEvent, sha256 } from "./hash.ts";
export { DRIFT_BOUND_MS, hlcTime_ms, isHlc, type Merged, merge, tick } from "./hlc.ts";
export { isEventType, isKnownEvent, SCHEMA_VERSION } from "./known.ts";
export {
  type ChainEnd,
  clockOf,
  type EventDraft,
  type MadeEvents,
  type MakeContext,
  makeEvents,
  sealEvent,
  type UnsealedEvent,
} from "./make-event.ts";
export { newId } from "./new-id.ts";
export { compareEvents, compareOrder, type OrderKey } from "./order.ts";
export {
  BODY_MAX_B,
  BOOK_BODY_MAX_B,
  type EventFault,
  type ParsedEvent,
  parseEvent,
  saysOfFaults,
} from "./parse-event.ts";
export { bookInForce, currentWalk, lastAnswer, openDiscrepancies } from "./readers.ts";
export {
  type DeviceKey,
  importPublicKey,
  mustBeSigned,
  newDeviceKey,
  type PublicKey,
  sign,
  tryDeviceKey,
  verify,
} from "./signature.ts";
export type {
  AdoptedBook,
  AircraftState,
  CheckAnswer,
  CheckHistory,
  Conflict,
  Decision,
  Device,
  Discrepancy,
  GearState,
  Happening,
  Interruption,
  Origin,
  RecordedReading,
  Walk,
} from "./state.ts";
export { wallTime } from "./wall-time.ts";
