import type { Book } from "@witnessmark/book";
import { type Decision, fold, type LedgerEvent } from "@witnessmark/ledger";
import { assess } from "../assess.ts";
import type { Assessment } from "../assessment.ts";
import { assessmentHash } from "./hash.ts";

/** Whether a decision's assessment comes out the same again from its ledger. */
export type DecisionCheck =
  | { readonly matches: true; readonly assessment: Assessment }
  | {
      readonly matches: false;
      /** For a person: what is missing or differs, and what to do. */
      readonly why: string;
      /** What came out now, where it could be computed. */
      readonly assessment?: Assessment;
    };

/** Reads a book's text; the result or a promise of it. Undefined when the text is no book for this version. */
export type BookReader = (text: string, sha256: string) => Book | undefined | Promise<Book | undefined>;

const no = (why: string, assessment?: Assessment): DecisionCheck =>
  assessment === undefined ? { matches: false, why } : { matches: false, why, assessment };

/** The events that the decision had seen, and how many of them are not here. */
function seenBy(events: readonly LedgerEvent[], heads: Decision["heads"]) {
  const seen = events.filter(({ device, deviceSeq }) => deviceSeq <= (heads[device] ?? 0));
  const here = new Map<string, Set<number>>();
  for (const { device, deviceSeq } of seen) here.set(device, (here.get(device) ?? new Set()).add(deviceSeq));
  const missing = Object.entries(heads).reduce(
    (sum, [device, head]) => sum + head - (here.get(device)?.size ?? 0),
    0,
  );
  return { seen, missing };
}

/**
 * Recomputes the assessment that a decision rests on, from nothing but its ledger, and compares its hash.
 *
 * @param events all events of the aircraft, in any order; those after the decision play no part. Where some are missing,
 *   it matches only when they change nothing.
 */
export async function verifyDecision(
  readBook: BookReader,
  events: readonly LedgerEvent[],
  decision: Decision,
): Promise<DecisionCheck> {
  const { seen, missing } = seenBy(events, decision.heads);
  const lacking = `${missing} of the entries that the decision had seen ${missing === 1 ? "is" : "are"} not in this ledger; fetch the rest and try again`;
  const state = fold(seen);
  const adopted = state.books.findLast(({ sha256 }) => sha256 === decision.bookSha256);
  if (adopted === undefined) {
    return no(
      missing > 0
        ? lacking
        : "The book that it was decided by is not among the entries that the decision had seen",
    );
  }
  const book = await readBook(adopted.text, adopted.sha256);
  if (book === undefined) {
    return no(`Revision ${adopted.revision} of the book cannot be read by this version of the program`);
  }
  if (book.sha256 !== decision.bookSha256) {
    return no("The text of the book is not the one that it was decided by: its hash differs");
  }
  const at_ms = Date.parse(decision.at);
  if (Number.isNaN(at_ms)) return no(`The moment of the decision cannot be read: "${decision.at}"`);
  const assessment = assess(book, state, decision.flight, at_ms);
  const hash = await assessmentHash(assessment);
  // The hash covers every word of it: what is missing, such as answers of walks long past, had no part in it then.
  if (hash === decision.assessmentSha256) return { matches: true, assessment };
  if (missing > 0) return no(lacking);
  const was = new Map(decision.restsOn.map(({ verdict, status }) => [verdict, status]));
  const differs = assessment.verdicts.filter(({ id, status }) => was.get(id) !== status).map(({ id }) => id);
  const gone = [...was.keys()].filter((id) => !assessment.verdicts.some((verdict) => verdict.id === id));
  const named = [...differs, ...gone].slice(0, 5).join(", ");
  return no(
    named === ""
      ? "The assessment comes out with the same verdicts and another text: it was made by another version of the program, or changed"
      : `The assessment comes out differently: ${named}`,
    assessment,
  );
}
