/** What a record is asked for with; what was left out is the first day on record, and today. */
export interface RecordJob {
  readonly from: string | undefined;
  readonly to: string | undefined;
  readonly now_ms: number;
  readonly paper: "A4" | "LETTER";
  /** How many events the ledger has. */
  readonly count: number;
}

/** What is sent to where a record is made, each when it was asked for: events as they are kept, or null at the end. */
export type RecordInput = readonly string[] | null;

/** `again`: from the first event. `next`: those that follow. */
export type RecordWant = { readonly want: "again" | "next" };

export type RecordOutput =
  | { readonly ok: true; readonly pdf: Uint8Array; readonly from: string; readonly to: string }
  | {
      readonly ok: false;
      readonly why: "bad-period" | "no-events";
      readonly says: string;
      readonly field?: "from" | "to";
    };
