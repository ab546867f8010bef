import type { Book } from "@witnessmark/book";
import type { AircraftState } from "@witnessmark/ledger";
import { type Learnt, type PastLook, timesLeast } from "@witnessmark/planner";

/** A look that took longer than this was interrupted. */
const MOST_TIMES_LEAST = 20;

const held = new WeakMap<AircraftState, { readonly book: Book; readonly learnt: Learnt }>();

/**
 * What looks take on this aircraft, from its own past walks: the time from one answer to the next of the same person
 * at the same stance, where nothing but the look lies between. A walk that was typed in from paper says nothing of it.
 */
export function learntOf(book: Book, state: AircraftState): Learnt {
  const known = held.get(state);
  if (known?.book === book) return known.learnt;
  const past = [...state.walks.values()]
    .filter(({ onPaper }) => onPaper === undefined)
    .flatMap(({ id }) => looksOf(book, state.answersByWalk.get(id) ?? []));
  const learnt = timesLeast(past);
  held.set(state, { book, learnt });
  return learnt;
}

type Answers = AircraftState["answersByWalk"] extends ReadonlyMap<string, infer T> ? T : never;

function looksOf(book: Book, answers: Answers): readonly PastLook[] {
  const last = new Map<string, { readonly stance: string; readonly at_ms: number }>();
  return answers.flatMap((answer): readonly PastLook[] => {
    const check = book.checksById.get(answer.check);
    if (check === undefined) return [];
    const key = `${answer.device} ${answer.author.id}`;
    const at_ms = Date.parse(answer.recordedAt);
    const before = last.get(key);
    last.set(key, { stance: check.stance, at_ms });
    if (before === undefined || before.stance !== check.stance) return [];
    const took_s = (at_ms - before.at_ms) / 1000;
    const least_s = check.least.valueSI;
    return took_s <= least_s * MOST_TIMES_LEAST ? [{ method: check.method, least_s, took_s }] : [];
  });
}
