import type { Assessment, Verdict } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { AircraftState, Decision, Status } from "@witnessmark/ledger";
import { figuresOf, type SheetFigures } from "./flight/sheet-figures.ts";
import { grouped } from "./grouped.ts";
import { clockText, clockWithUtc, dateText, offset_min } from "./local-time.ts";
import { type SlipCell, slipOf } from "./slip.ts";
import { voidWhen } from "./void-when.ts";
import { WALK_NAMES } from "./walk-names.ts";

/** One numbered line: what is not as the book says, too close, or not known. */
export interface SheetNote {
  readonly number: number;
  readonly status: Exclude<Status, "clear">;
  readonly title: string;
  readonly says: string;
  readonly margin: string;
  /** Why the pilot decided as they did, in their words, and the lawful basis where a stop stands. */
  readonly reason?: string;
}

export interface SheetReading {
  readonly title: string;
  readonly says: string;
  readonly margin: string;
  readonly status: Status;
}

/** A mark on the drawing: the worst verdict at a point, and the note that tells of it. */
export interface SheetMark {
  readonly place: readonly [number, number, number];
  readonly status: Status;
  readonly note?: number;
}

export interface SheetSignature {
  readonly by: string;
  readonly role: string;
  readonly at: string;
  /** The first 16 figures of the decision's hash, in groups of four. */
  readonly hash: string;
  /** Whether the device's key signed it; the sheet says so when it did not. */
  readonly keySigned: boolean;
}

/** Everything that the printed sheet says, in its own order; nothing of how it is drawn. */
export interface Sheet {
  readonly title: string;
  readonly status: Status;
  readonly registration: string;
  readonly type: string;
  readonly date: string;
  /** The flight by name; its `figures` are null when it was only named and never planned. */
  readonly flight: {
    readonly from: string;
    readonly to: string;
    readonly offBlocks: string;
    readonly figures: SheetFigures | null;
  } | null;
  readonly walk: string;
  readonly counts: Readonly<Record<Status, number>>;
  readonly marks: readonly SheetMark[];
  readonly notes: readonly SheetNote[];
  readonly readings: readonly SheetReading[];
  readonly holds: string;
  /** What makes it void at once. */
  readonly voidWhen: readonly string[];
  /** The half that stays on the ground. */
  readonly slip: readonly SlipCell[];
  readonly caution: string;
  readonly signature: SheetSignature | null;
  readonly restsOn: string;
  readonly notice: string;
  /** Said above everything else: that the record is not what it was when it was signed. */
  readonly remark?: string;
}

export const STANDING_CAUTION =
  "The pilot in command decides. The approved flight manual, the rules where you fly and licensed mechanics come before this sheet.";

const BADNESS: Readonly<Record<Status, number>> = { stop: 0, caution: 1, open: 2, clear: 3 };

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

function reasonFor(verdict: Verdict, decision: Decision | null): string | undefined {
  const given = decision?.reasons.find((reason) => reason.verdict === verdict.id);
  if (given === undefined) return undefined;
  return given.basis === undefined
    ? given.words
    : `${given.words.replace(/[.\s]+$/, "")}. Basis: ${given.basis}`;
}

/** What was decided, in the words of sheet and screen: a stop that stands is said before everything else. */
export function decisionTitle({
  answer,
  counts,
  reasons,
}: Pick<Decision, "answer" | "counts" | "reasons">): string {
  if (answer === "not-going") return "Not going yet";
  if (counts.stop > 0)
    return counts.stop === 1 ? "Go, with one stop standing" : `Go, with ${counts.stop} stops standing`;
  if (reasons.length === 0) return "Go";
  return reasons.length === 1 ? "Go, with one reason given" : `Go, with ${reasons.length} reasons given`;
}

function notesOf(assessment: Assessment, decision: Decision | null): SheetNote[] {
  const told = assessment.verdicts.filter((verdict) => verdict.status !== "clear");
  return told.map((verdict, index) => {
    const reason = reasonFor(verdict, decision);
    return {
      number: index + 1,
      // the filter above leaves no clear one; the type cannot see it
      status: verdict.status as SheetNote["status"],
      title: verdict.title,
      says: verdict.says,
      margin: verdict.margin?.text ?? "",
      ...(reason === undefined ? {} : { reason }),
    };
  });
}

function marksOf(assessment: Assessment, book: Book, state: AircraftState): SheetMark[] {
  const worst = new Map<string, SheetMark>();
  let note = 0;
  for (const verdict of assessment.verdicts) {
    const number = verdict.status === "clear" ? undefined : ++note;
    const id = pointOf(verdict, book, state);
    const point = id === undefined ? undefined : book.points.get(id);
    if (id === undefined || point === undefined) continue;
    const held = worst.get(id);
    if (held !== undefined && BADNESS[held.status] <= BADNESS[verdict.status]) continue;
    worst.set(id, {
      place: point.place,
      status: verdict.status,
      ...(number === undefined ? {} : { note: number }),
    });
  }
  return [...worst.values()];
}

function readingsOf(assessment: Assessment, book: Book): SheetReading[] {
  const measured = new Set(
    book.checks.filter((check) => check.reading !== undefined).map((check) => check.id),
  );
  return assessment.verdicts
    .filter((verdict) => verdict.subject?.kind === "check" && measured.has(verdict.subject.id))
    .map((verdict) => ({
      title: verdict.title,
      says: verdict.says,
      margin: verdict.margin?.text ?? "",
      status: verdict.status,
    }));
}

const plural = (n: number, one: string) => `${n} ${n === 1 ? one : `${one}s`}`;

/** What the sheet says of an assessment and, when there is one, the decision that rests on it. */
export function makeSheet(given: {
  readonly book: Book;
  readonly state: AircraftState;
  readonly assessment: Assessment;
  readonly decision: Decision | null;
  /** Minutes east of UTC, for an assessment without a decision. */
  readonly east_min: number;
}): Sheet {
  const { book, state, assessment, decision } = given;
  const east_min = decision === null ? given.east_min : offset_min(decision.recordedAt);
  const at_ms = Date.parse(decision?.recordedAt ?? assessment.at);
  const flight = decision?.flight ?? assessment.flight;
  const holds = assessment.holdsUntil;
  const named: Sheet["flight"] =
    flight === null
      ? null
      : {
          from: flight.from,
          to: flight.to,
          offBlocks: clockWithUtc(Date.parse(flight.offBlocks), offset_min(flight.offBlocks)),
          figures: figuresOf({ book, state, assessment, east_min: offset_min(flight.offBlocks) }),
        };
  const signature: SheetSignature | null =
    decision === null
      ? null
      : {
          by: decision.author.name,
          role: decision.author.role,
          at: `${clockText(at_ms, east_min, true)}, ${clockText(at_ms, 0)} UTC`,
          hash: grouped(decision.hash),
          keySigned: decision.signed,
        };
  const { registration, type } = book.aircraft;
  return {
    title: decision === null ? "Not signed" : decisionTitle(decision),
    status: assessment.status,
    registration,
    type,
    date: dateText(at_ms, east_min),
    flight: named,
    walk: assessment.walk === null ? "No walk" : WALK_NAMES[assessment.walk.kind],
    counts: assessment.counts,
    marks: marksOf(assessment, book, state),
    notes: notesOf(assessment, decision),
    readings: readingsOf(assessment, book),
    holds:
      holds === undefined
        ? "Holds until something happens"
        : `Holds until ${clockText(holds.at_ms, east_min)}: ${holds.because}`,
    voidWhen: voidWhen(assessment, east_min),
    slip: slipOf({ registration, type, flight: named, signature }),
    caution: STANDING_CAUTION,
    signature,
    restsOn: `${plural(assessment.restsOn.checks, "check")}, ${plural(assessment.restsOn.readings, "reading")}, book revision ${assessment.book.revision}`,
    notice: book.notice,
  };
}
