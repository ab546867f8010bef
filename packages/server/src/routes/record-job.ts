import type { LedgerEvent } from "@witnessmark/ledger";

/** What a record is asked for with; what was left out is the first day on record, and today. */
export interface RecordJob {
  readonly from: string | undefined;
  readonly to: string | undefined;
  readonly now_ms: number;
  readonly paper: "A4" | "LETTER";
}

/** What is sent to where a record is made: events in handfuls, then null. */
export type RecordInput = readonly LedgerEvent[] | null;

export type RecordOutput =
  | { readonly ok: true; readonly pdf: Uint8Array; readonly from: string; readonly to: string }
  | {
      readonly ok: false;
      readonly why: "bad-period" | "no-events";
      readonly says: string;
      readonly field?: "from" | "to";
    };
