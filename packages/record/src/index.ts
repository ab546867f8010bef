export type {
  ImportAnswer,
  ImportAnswers,
  ImportFault,
  ImportQuestion,
  ImportRow,
  Matched,
} from "./import/answer.ts";
export type { OffsetAt } from "./import/dates.ts";
export { intervalText } from "./import/intervals.ts";
export { NONE_OF_THESE, nameOf as checkName } from "./import/reading-questions.ts";
export {
  beginReadings,
  type PastReading,
  READING_ROLES,
  type ReadingRole,
  readingColumns,
  readingDrafts,
  readReadings,
} from "./import/readings.ts";
export {
  type ReadTable,
  readLongTable,
  readTable,
  type Table,
  type TableRow,
  textOfFile,
} from "./import/table.ts";
export {
  readTimed,
  TIMED_ROLES,
  type TimedEntry,
  type TimedRole,
  timedColumns,
  timedDrafts,
} from "./import/timed.ts";
export { type MechanicAnswer, readAnswer } from "./mechanic/answer.ts";
export { workPaper } from "./mechanic/work-paper.ts";
export { readingsCsv } from "./readings-csv.ts";
export { timedCalendar } from "./timed-calendar.ts";
export { timedCsv } from "./timed-csv.ts";
