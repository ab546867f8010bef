import { isMap } from "./differences.ts";
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
    ...sinceEdits(draft),
    ...without.map((section): BookEdit => ({ remove: [section] })),
  ]);
}

/** The draft after its issue: what was left out is still in it, and it goes on from there. */
export function draftAfterIssue(draft: BookDraft, issued: string, by: string, on: string): BookDraft {
  const revision = nextRevision(draft);
  return {
    ...rewriteDraft(draft, editText(draft.text, [...issueEdits(draft, by, on), ...sinceEdits(draft)])),
    base: { revision, text: issued },
  };
}

const issueEdits = (draft: BookDraft, by: string, on: string): readonly BookEdit[] => [
  { set: ["revision"], to: nextRevision(draft) },
  { set: ["issued"], to: { on, by } },
];

/** What makes a look another look: how it is made, and what it is held against. A limit is judged anew by itself. */
const ASKED = ["method", "how", "shouldBe", "reading"] as const;

/** What a check asks, so that two of them can be compared. */
const askedBy = (check: { readonly [key: string]: Plain }): string =>
  JSON.stringify(
    ASKED.map((key) => (key === "reading" ? gaugeAndQuantity(check[key]) : (check[key] ?? null))),
  );

const gaugeAndQuantity = (reading: Plain | undefined): readonly Plain[] =>
  isMap(reading) ? [reading["gauge"] ?? null, reading["quantity"] ?? null] : [];

/** Checks that ask something else than the revision before them, under the same name, say since when. */
function sinceEdits(draft: BookDraft): readonly BookEdit[] {
  if (draft.base === null) return [];
  const before = new Map(checksIn(draft.base.text).map((check) => [check["id"], askedBy(check)]));
  return checksIn(draft.text).flatMap((check, index): readonly BookEdit[] => {
    const was = before.get(check["id"]);
    return was === undefined || was === askedBy(check)
      ? []
      : [{ set: ["checks", index, "since"], to: nextRevision(draft) }];
  });
}

function checksIn(text: string): readonly { readonly [key: string]: Plain }[] {
  const read = plainOf(text, "the book");
  const checks = read.ok ? read.plain["checks"] : undefined;
  return Array.isArray(checks) ? checks.map((check) => (isMap(check) ? check : {})) : [];
}

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
    ...checksIn(text).flatMap((check, index): readonly BookEdit[] =>
      check["since"] === undefined ? [] : [{ remove: ["checks", index, "since"] }],
    ),
  ]);

/** The sections of a text, to know which can be left out. */
export function sectionsIn(text: string): readonly string[] {
  const read = plainOf(text, "the book");
  return read.ok ? Object.keys(read.plain as { readonly [key: string]: Plain }) : [];
}
