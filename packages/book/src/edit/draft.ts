import { type BookEdit, editText } from "./edit-text.ts";

/** The revision that a draft was begun from: its text as it was issued. */
export interface DraftBase {
  readonly revision: number;
  readonly text: string;
}

/** One step of an edit: a piece of the text, before and after. */
export interface DraftStep {
  readonly at: number;
  readonly was: string;
  readonly now: string;
}

/**
 * A book in the making. Its truth is the text; a step back gives every character back as it was. Plain data, so that it
 * can be put away as it is and taken up again.
 */
export interface BookDraft {
  readonly text: string;
  /** What it was begun from; `null` for a book that has never been issued. */
  readonly base: DraftBase | null;
  /** What can be undone, the last one last. */
  readonly past: readonly DraftStep[];
  /** What can be done again, the next one last. */
  readonly future: readonly DraftStep[];
}

export const newDraft = (text: string, base: DraftBase | null): BookDraft => ({
  text,
  base,
  past: [],
  future: [],
});

/** @throws {EditError} as `editText`; the draft is then as it was */
export const editDraft = (draft: BookDraft, edits: readonly BookEdit[]): BookDraft =>
  edits.length === 0 ? draft : rewriteDraft(draft, editText(draft.text, edits));

/** The draft with another text, typed by hand or merged; one step. */
export function rewriteDraft(draft: BookDraft, text: string): BookDraft {
  if (text === draft.text) return draft;
  return { ...draft, text, past: [...draft.past, stepBetween(draft.text, text)], future: [] };
}

export function undoDraft(draft: BookDraft): BookDraft {
  const step = draft.past.at(-1);
  if (step === undefined) return draft;
  const { at, was, now } = step;
  return {
    ...draft,
    text: draft.text.slice(0, at) + was + draft.text.slice(at + now.length),
    past: draft.past.slice(0, -1),
    future: [...draft.future, step],
  };
}

export function redoDraft(draft: BookDraft): BookDraft {
  const step = draft.future.at(-1);
  if (step === undefined) return draft;
  const { at, was, now } = step;
  return {
    ...draft,
    text: draft.text.slice(0, at) + now + draft.text.slice(at + was.length),
    past: [...draft.past, step],
    future: draft.future.slice(0, -1),
  };
}

/** The draft on another revision, once what was issued meanwhile has been merged into it. */
export const rebaseDraft = (draft: BookDraft, base: DraftBase, merged: string): BookDraft => ({
  ...rewriteDraft(draft, merged),
  base,
});

/** The smallest piece that makes one text of the other. */
function stepBetween(was: string, now: string): DraftStep {
  const least = Math.min(was.length, now.length);
  let at = 0;
  while (at < least && was[at] === now[at]) at++;
  let same = 0;
  while (same < least - at && was[was.length - 1 - same] === now[now.length - 1 - same]) same++;
  return { at, was: was.slice(at, was.length - same), now: now.slice(at, now.length - same) };
}
