import { addMonths } from "@witnessmark/engine";
import type { LocalDate } from "@witnessmark/ledger";
import type { Citations } from "../ruling.ts";

export const RECORD_CITATIONS: Citations = [
  {
    title: "14 CFR 43.9 and 43.11: entries of maintenance and of inspections; 91.417: how long they are kept",
    edition: "2021 consolidation (43.9, 43.11), eCFR issue 2026-09-03 (91.417)",
    status: "published",
  },
];

/** Parts of an entry; what is not there, or empty, is missing. */
export type EntryParts = Readonly<Record<string, string | number | null | undefined>>;

const WORK_PARTS = [
  "description",
  "completed_date",
  "signature",
  "certificateNumber",
  "certificateKind",
] as const;
const INSPECTION_PARTS = [
  "inspectionType",
  "extentDescription",
  "inspection_date",
  "aircraftTotalTime_h",
  "signature",
  "certificateNumber",
  "certificateKind",
  "statement",
] as const;

const isThere = (part: string | number | null | undefined): boolean =>
  typeof part === "number" ? Number.isFinite(part) : typeof part === "string" && part.trim() !== "";

const lacks = (parts: EntryParts, names: readonly string[]): readonly string[] =>
  names.filter((name) => !isThere(parts[name]));

/** What an entry of maintenance lacks. @source 14 CFR 43.9(a) */
export const workEntryLacks = (parts: EntryParts, doneByAnother: boolean): readonly string[] =>
  lacks(parts, [...WORK_PARTS, ...(doneByAnother ? ["workerName"] : [])]);

/** What an entry of an inspection lacks: total time and the statement are easily forgotten. @source 14 CFR 43.11(a) */
export const inspectionEntryLacks = (parts: EntryParts): readonly string[] => lacks(parts, INSPECTION_PARTS);

/**
 * From when the law lets an ordinary entry go: a year after the work, or when it was repeated or superseded. This
 * program keeps it all the same.
 *
 * @source 14 CFR 91.417(b)(1)
 */
export function lawKeepsUntil(workOn: LocalDate, supersededOn?: LocalDate): LocalDate {
  const year = addMonths(workOn, 12);
  return supersededOn !== undefined && supersededOn < year ? supersededOn : year;
}

/** Until when a list of defects is kept: they are repaired and the aircraft is released. @source 14 CFR 91.417(b)(3) */
export const defectListKeptUntil = (repairedOn: LocalDate, releasedOn: LocalDate): LocalDate =>
  repairedOn > releasedOn ? repairedOn : releasedOn;

/** What stays with the aircraft when it is sold. @source 14 CFR 91.417(a)(2), (b)(2) */
export const RECORDS_OF_STATUS: readonly string[] = [
  "total time in service",
  "life-limited part status",
  "time since overhaul of time-controlled items",
  "inspection status",
  "AD status",
  "major alteration forms",
];

export const goesWithAircraft = (record: string): boolean => RECORDS_OF_STATUS.includes(record);
