export { type Balloon, type BalloonRoom, balloons, type Noted } from "./balloons.ts";
export { type DecisionSheet, type DecisionSheetResult, sheetOfDecision } from "./decision-sheet.ts";
export { ended } from "./ended.ts";
export {
  type DrawnLine,
  type DrawnText,
  type EnvelopeDrawing,
  envelopeDrawing,
} from "./envelope/envelope-drawing.ts";
export type { SheetAboard, SheetBrief, SheetField, SheetSaid } from "./flight/brief.ts";
export type { SheetEdge, SheetEnvelope, SheetMass, SheetMassRow } from "./flight/mass-and-balance.ts";
export type { SheetNumber } from "./flight/number-line.ts";
export { type PartedNumbers, partNumbers } from "./flight/part-numbers.ts";
export type { SheetFigures } from "./flight/sheet-figures.ts";
export type { SheetTip } from "./flight/tips.ts";
export { type LegendRow, legendOf } from "./legend.ts";
export { clockText, clockWithUtc, dateText, offset_min } from "./local-time.ts";
export type {
  AircraftRecord,
  RecordCorrection,
  RecordDecision,
  RecordDiscrepancy,
  RecordDone,
  RecordEntry,
  RecordLedger,
  RecordStep,
  RecordTimed,
  RecordWalk,
  RecordWriter,
} from "./record/aircraft-record.ts";
export { type PeriodResult, periodOf, type RecordPeriod } from "./record/period.ts";
export { type RecordRequest, recordOf } from "./record/record-of.ts";
export { type RecordResult, recordOfLedger } from "./record/record-of-ledger.ts";
export {
  decisionTitle,
  makeSheet,
  type Sheet,
  type SheetAlsoOpen,
  type SheetMark,
  type SheetNote,
  type SheetReading,
  type SheetSignature,
  STANDING_CAUTION,
} from "./sheet.ts";
export type { SlipCell } from "./slip.ts";
export {
  type PaperLine,
  type PaperStop,
  type PlannedStep,
  type PlannedWalk,
  type WalkPaper,
  walkPaper,
} from "./walk-paper/walk-paper.ts";
