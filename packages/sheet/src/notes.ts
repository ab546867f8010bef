import type { Assessment, Verdict } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { AircraftState, Decision } from "@witnessmark/ledger";
import { ended } from "./ended.ts";
import type { SheetAlsoOpen, SheetMark, SheetNote } from "./sheet.ts";

/** Open things told one by one; more of them are named together. */
const OPEN_TOLD = 5;

/** The notes of a sheet, each with the verdict that it tells of, and what is only named. */
export interface Notes {
  readonly told: readonly { readonly verdict: string; readonly note: SheetNote }[];
  readonly alsoOpen: readonly SheetAlsoOpen[];
}

function reasonFor(verdict: Verdict, decision: Decision | null): string | undefined {
  const given = decision?.reasons.find((reason) => reason.verdict === verdict.id);
  if (given === undefined) return undefined;
  return given.basis === undefined ? given.words : `${ended(given.words)} Basis: ${given.basis}`;
}

/**
 * What is not clear: all that stops or warns, and the first of what is open, each with its number. The rest of what is
 * open is named, by the reason that was given for it; one that has a reason of its own is told.
 */
export function notesOf(assessment: Assessment, decision: Decision | null): Notes {
  const unclear = assessment.verdicts
    .filter(({ status }) => status !== "clear")
    .map((verdict) => ({ verdict, reason: reasonFor(verdict, decision) }));
  const given = new Map<string, number>();
  for (const { reason } of unclear) if (reason !== undefined) given.set(reason, (given.get(reason) ?? 0) + 1);
  const open = unclear.filter(({ verdict }) => verdict.status === "open");
  const named = new Set(
    open.slice(OPEN_TOLD).filter(({ reason }) => reason === undefined || (given.get(reason) ?? 0) > 1),
  );
  const told = unclear
    .filter((one) => !named.has(one))
    .map(({ verdict, reason }, index) => ({
      verdict: verdict.id,
      note: {
        number: index + 1,
        // the filter above leaves no clear one; the type cannot see it
        status: verdict.status as SheetNote["status"],
        title: verdict.title,
        says: verdict.says,
        margin: verdict.margin?.text ?? "",
        ...(reason === undefined ? {} : { reason }),
      },
    }));
  const byReason = new Map<string | undefined, string[]>();
  for (const { verdict, reason } of named)
    byReason.set(reason, [...(byReason.get(reason) ?? []), verdict.title]);
  const alsoOpen = [...byReason].map(([reason, titles]) => ({
    titles: counted(titles),
    ...(reason === undefined ? {} : { reason }),
  }));
  return { told, alsoOpen };
}

/** Each title once, with how many things it names where that is more than one. */
function counted(titles: readonly string[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const title of titles) counts.set(title, (counts.get(title) ?? 0) + 1);
  return [...counts].map(([title, count]) => (count === 1 ? title : `${title}, ${count} things`));
}

function pointOf(verdict: Verdict, book: Book, state: AircraftState): string | undefined {
  const subject = verdict.subject;
  if (subject === undefined) return undefined;
  const ofCheck = (id: string) => book.checks.find((check) => check.id === id)?.point;
  switch (subject.kind) {
    case "check":
    case "trend":
      return ofCheck(subject.id);
    case "ground-gear":
      return book.groundGear.find((item) => item.id === subject.id)?.point;
    case "discrepancy": {
      const found = state.discrepancies.get(subject.id);
      return found?.point ?? (found?.check === undefined ? undefined : ofCheck(found.check));
    }
    case "walk":
    case "timed":
      return undefined;
    default:
      return subject.kind satisfies never;
  }
}

/** The worst of every point; its number is that of a note that tells of it, and there is none where none does. */
export function marksOf(
  { told }: Notes,
  assessment: Assessment,
  book: Book,
  state: AircraftState,
): readonly SheetMark[] {
  const numbers = new Map(told.map(({ verdict, note }) => [verdict, note.number]));
  const worst = new Map<string, SheetMark>();
  // they come worst first
  for (const verdict of assessment.verdicts) {
    const id = pointOf(verdict, book, state);
    const point = id === undefined ? undefined : book.points.get(id);
    if (id === undefined || point === undefined) continue;
    const held = worst.get(id);
    const note = numbers.get(verdict.id);
    const isBetterTold = held?.note === undefined && held?.status === verdict.status && note !== undefined;
    if (held !== undefined && !isBetterTold) continue;
    worst.set(id, { place: point.place, status: verdict.status, ...(note === undefined ? {} : { note }) });
  }
  return [...worst.values()];
}
