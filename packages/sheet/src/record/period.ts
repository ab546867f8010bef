import { dayNumber, InputError } from "@witnessmark/engine";
import type { LocalDate } from "@witnessmark/ledger";

/** From the first day to the last, both included; days of the places where things were written down. */
export interface RecordPeriod {
  readonly from: LocalDate;
  readonly to: LocalDate;
}

export type PeriodResult =
  | { readonly ok: true; readonly period: RecordPeriod }
  | { readonly ok: false; readonly field: "from" | "to"; readonly says: string };

/** What is wrong with a day, as a sentence without its full stop. */
function faultOf(field: "from" | "to", day: LocalDate): string | undefined {
  try {
    dayNumber(day);
    return undefined;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const { expected, received, remedy } = error.detail;
    return `${field}: expected ${expected}, received ${received}${remedy === undefined ? "" : `; ${remedy}`}`;
  }
}

/** The period asked for; what was left out is the first day on record, and today. */
export function periodOf(
  asked: { readonly from?: LocalDate | undefined; readonly to?: LocalDate | undefined },
  whole: RecordPeriod,
): PeriodResult {
  const { from = whole.from, to = whole.to } = asked;
  for (const [field, day] of [
    ["from", from],
    ["to", to],
  ] as const) {
    const says = faultOf(field, day);
    if (says !== undefined) return { ok: false, field, says };
  }
  if (from <= to) return { ok: true, period: { from, to } };
  if (asked.from === undefined)
    return {
      ok: false,
      field: "to",
      says: `to: expected ${from}, the first day on record, or later, received ${to}; give a later last day, or a first day with it`,
    };
  const today = asked.to === undefined ? ", which is today" : "";
  return {
    ok: false,
    field: "from",
    says: `from: expected a day not after the last day ${to}${today}, received ${from}; give an earlier first day or a later last day`,
  };
}
