import type { Assessment } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { AircraftState, Decision, Status } from "@witnessmark/ledger";
import { figuresOf, type SheetFigures } from "./flight/sheet-figures.ts";
import { grouped } from "./grouped.ts";
import { clockText, clockWithUtc, dateText, offset_min } from "./local-time.ts";
import { marksOf, notesOf } from "./notes.ts";
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

/** Open things that are only named, for there are many; with the one reason that was given for all of them. */
export interface SheetAlsoOpen {
  /** Each once: `Right fuel cap`, `Nose leg, 2 things`. */
  readonly titles: readonly string[];
  readonly reason?: string;
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
  /** What is open beside the notes; no number on the drawing refers to it. */
  readonly alsoOpen: readonly SheetAlsoOpen[];
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
  /** Why it was decided so, of the decision as a whole. */
  readonly why?: string;
  /** Said above everything else: that the record is not what it was when it was signed. */
  readonly remark?: string;
}

export const STANDING_CAUTION =
  "The pilot in command decides. The approved flight manual, the rules where you fly and licensed mechanics come before this sheet.";

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

/** What was read; what was not is told as open. */
function readingsOf(assessment: Assessment, book: Book): SheetReading[] {
  const measured = new Set(
    book.checks.filter((check) => check.reading !== undefined).map((check) => check.id),
  );
  return assessment.verdicts
    .filter(
      ({ subject, status }) => subject?.kind === "check" && measured.has(subject.id) && status !== "open",
    )
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
  // a stop does not end by itself, and not to go is nothing that lapses
  const isKept = decision === null ? assessment.counts.stop === 0 : decision.answer === "go";
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
  const notes = notesOf(assessment, decision);
  return {
    title: decision === null ? "Not signed" : decisionTitle(decision),
    status: assessment.status,
    registration,
    type,
    date: dateText(at_ms, east_min),
    flight: named,
    walk: assessment.walk === null ? "No walk" : WALK_NAMES[assessment.walk.kind],
    counts: assessment.counts,
    marks: marksOf(notes, assessment, book, state),
    notes: notes.told.map(({ note }) => note),
    alsoOpen: notes.alsoOpen,
    readings: readingsOf(assessment, book),
    holds: `${isKept ? "Holds" : "What was found holds"} until ${holds === undefined ? "something happens" : `${clockText(holds.at_ms, east_min)}: ${holds.because}`}`,
    voidWhen: voidWhen(assessment, east_min),
    slip: slipOf({ registration, type, flight: named, signature }),
    caution: STANDING_CAUTION,
    signature,
    restsOn: `${plural(assessment.restsOn.checks, "check")}, ${plural(assessment.restsOn.readings, "reading")}, book revision ${assessment.book.revision}`,
    notice: book.notice,
    ...(decision?.words === undefined ? {} : { why: decision.words }),
  };
}
