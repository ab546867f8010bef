export { type DecisionSheet, type DecisionSheetResult, sheetOfDecision } from "./decision-sheet.ts";
export { clockText, clockWithUtc, dateText, offset_min } from "./local-time.ts";
export {
  decisionTitle,
  makeSheet,
  type Sheet,
  type SheetMark,
  type SheetNote,
  type SheetReading,
  type SheetSignature,
  STANDING_CAUTION,
} from "./sheet.ts";
