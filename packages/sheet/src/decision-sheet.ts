import { type DecisionCheck, verifyDecision } from "@witnessmark/assess";
import { type Book, readBook } from "@witnessmark/book";
import { canonical, type Decision, fold, type LedgerEvent } from "@witnessmark/ledger";
import { makeSheet, type Sheet } from "./sheet.ts";

/** The sheet of a signed decision, worked out again from the ledger, and the record that goes with it. */
export interface DecisionSheet {
  readonly sheet: Sheet;
  readonly book: Book;
  readonly decision: Decision;
  /** Whether the assessment came out as it was when it was signed. */
  readonly check: DecisionCheck;
  /** Canonical JSON: the signed event, the assessment, and whether it came out the same. */
  readonly record: string;
}

export type DecisionSheetResult =
  | ({ readonly ok: true } & DecisionSheet)
  | { readonly ok: false; readonly why: "no-such-decision" | "not-recomputable"; readonly says: string };

/**
 * Works a decision out again from nothing but its ledger, as it stood when it was signed.
 *
 * @param events all events of the aircraft, in any order
 * @param decisionId the decision's id; the last one signed when left out
 */
export async function sheetOfDecision(
  events: readonly LedgerEvent[],
  decisionId?: string,
): Promise<DecisionSheetResult> {
  const { decisions } = fold(events);
  const decision =
    decisionId === undefined ? decisions.at(-1) : decisions.find(({ id }) => id === decisionId);
  if (decision === undefined) {
    const says =
      decisionId === undefined
        ? "No decision was signed in this ledger"
        : `There is no decision ${decisionId} in this ledger`;
    return { ok: false, why: "no-such-decision", says };
  }
  let book: Book | undefined;
  const check = await verifyDecision(
    async (text, sha256) => {
      const result = await readBook(text, `book ${sha256.slice(0, 8)}`);
      book = result.ok ? result.book : undefined;
      return book;
    },
    events,
    decision,
  );
  if (check.assessment === undefined || book === undefined) {
    return {
      ok: false,
      why: "not-recomputable",
      says: check.matches ? "Its book cannot be read" : check.why,
    };
  }
  const state = fold(events.filter(({ device, deviceSeq }) => deviceSeq <= (decision.heads[device] ?? 0)));
  const sheet = makeSheet({ book, state, assessment: check.assessment, decision, east_min: 0 });
  const record = canonical({
    event: events.find(({ id }) => id === decision.event),
    assessment: check.assessment,
    matches: check.matches,
  });
  const remark = check.matches
    ? {}
    : { remark: `Worked out again, its assessment is not the one that was signed. ${check.why}.` };
  return { ok: true, sheet: { ...sheet, ...remark }, book, decision, check, record };
}
