export { canonical } from "./canonical.ts";
export type {
  Answer,
  Author,
  Bodies,
  CouldNotReason,
  EventType,
  KnownEvent,
  LedgerEvent,
  Read,
  Status,
  Subject,
  UnknownEvent,
} from "./event.ts";
export type { ClockRemark, FaultCode, LedgerFault, RemarkCode } from "./fault.ts";
export type {
  AirspaceClass,
  FlightPlan,
  LoadedItem,
  OwnMinima,
  PlannedApproach,
  PlannedField,
  PlannedFlight,
  PlannedLoad,
  PlannedPlace,
  PlannedRoute,
  PlannedRunway,
  Report,
  RunwayCondition,
  TypedConditions,
} from "./flight.ts";
export { FIELD_CODE, RUNWAY_NAME } from "./flight.ts";
export { advance, emptyState, fold } from "./fold/fold.ts";
export { importOf } from "./fold/withdrawals.ts";
export { hashOfEvent, sha256 } from "./hash.ts";
export { DRIFT_BOUND_MS, hlcTime_ms, isHlc, type Merged, merge, tick } from "./hlc.ts";
export { type ReadLedger, type ReadOptions, readLedger } from "./jsonl/read-ledger.ts";
export {
  LEDGER_FILE_VERSION,
  type LedgerFileAbout,
  type LedgerFooter,
  type LedgerHeader,
  ledgerLines,
  writeLedger,
} from "./jsonl/write-ledger.ts";
export { isEventType, isKnownEvent, SCHEMA_VERSION } from "./known.ts";
export { LongPast } from "./long-past.ts";
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
export { Projection } from "./projection.ts";
export { bookInForce, currentWalk, lastAnswer, openDiscrepancies, plannedFlight } from "./readers.ts";
export type {
  AddedItem,
  CounterValues,
  LocalDate,
  RecordBodies,
  ReleaseRole,
  ReliefAction,
  ReliefRole,
  ReliefStep,
  ServicedThing,
  ServicingKind,
} from "./record-event.ts";
export type {
  AddedTimedItem,
  ComponentMove,
  CounterReading,
  DeclinedEvidence,
  DiscrepancyLife,
  Done,
  DroppedTimedItem,
  Experience,
  FlightMade,
  Parked,
  ReliefOnRecord,
  Servicing,
} from "./record-state.ts";
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
  FlightOnRecord,
  GearState,
  Happening,
  Interruption,
  Origin,
  RecordedReading,
  Walk,
} from "./state.ts";
export { BOOK_LIKE_CHECKS, BOOK_LIKE_GEAR, type CheckLike } from "./testing/book-like.ts";
export { generateHistory, type HistoryOptions } from "./testing/generate.ts";
export { Random } from "./testing/random.ts";
export { SoundStream } from "./verify/sound-stream.ts";
export { type LedgerReport, type VerifyOptions, verifyLedger } from "./verify/verify-ledger.ts";
export { wallTime } from "./wall-time.ts";
