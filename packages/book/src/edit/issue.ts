import { type BookDraft, rewriteDraft } from "./draft.ts";
import { type BookEdit, editText, type Plain } from "./edit-text.ts";
import { plainOf } from "./plain-of.ts";

/** Sections that a book can do without: what depends on them is then open, never clear. */
export const SPARE_SECTIONS = [
  "loading",
  "fuel",
  "oxygen",
  "cabin",
  "performance",
  "iceProtection",
  "fields",
  "relief",
  "equipment",
  "groundGear",
  "counters",
  "timedItems",
] as const;

/** The revision that a draft becomes. */
export const nextRevision = ({ base }: Pick<BookDraft, "base">): number => (base?.revision ?? 0) + 1;

/**
 * The text of the next revision: the draft with its number, who issues it and on which day, without the sections that
 * are named, which stay in the draft.
 *
 * @param on ISO 8601 date
 * @throws {EditError} a text that cannot be read
 */
export function issuedText(
  draft: BookDraft,
  {
    by,
    on,
    without = [],
  }: { readonly by: string; readonly on: string; readonly without?: readonly string[] },
): string {
  return editText(draft.text, [
    ...issueEdits(draft, by, on),
    ...without.map((section): BookEdit => ({ remove: [section] })),
  ]);
}

/** The draft after its issue: what was left out is still in it, and it goes on from there. */
export function draftAfterIssue(draft: BookDraft, issued: string, by: string, on: string): BookDraft {
  const revision = nextRevision(draft);
  return {
    ...rewriteDraft(draft, editText(draft.text, issueEdits(draft, by, on))),
    base: { revision, text: issued },
  };
}

const issueEdits = (draft: BookDraft, by: string, on: string): readonly BookEdit[] => [
  { set: ["revision"], to: nextRevision(draft) },
  { set: ["issued"], to: { on, by } },
];

/**
 * The text of a book for another aircraft of the same kind: its own registration, never issued. What was weighed,
 * and what stands on that aircraft's papers, is that aircraft's: whoever issues it says so by issuing it.
 *
 * @throws {EditError} a text that cannot be read
 */
export const copyForAnother = (text: string, registration: string): string =>
  editText(text, [
    { set: ["aircraft", "registration"], to: registration },
    { set: ["revision"], to: 1 },
  ]);

/** The sections of a text, to know which can be left out. */
export function sectionsIn(text: string): readonly string[] {
  const read = plainOf(text, "the book");
  return read.ok ? Object.keys(read.plain as { readonly [key: string]: Plain }) : [];
}
