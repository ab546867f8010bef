import type { Book } from "@witnessmark/book";
import {
  type AircraftState,
  compareOrder,
  type Discrepancy,
  type LocalDate,
  type PlannedFlight,
  type ReliefOnRecord,
} from "@witnessmark/ledger";
import { isOfAnyKind, KIND_WORDS } from "../flight/kinds-of-flight.ts";
import type { ReliefSaid } from "../rules/relief.ts";
import { rulePacks } from "../rules/rule-packs.ts";
import type { Citation } from "../rules/ruling.ts";
import { localDayOf } from "../timed/local-day.ts";
import { dateText } from "../timed/timed-words.ts";
import { useOfFlight } from "../timed/use-of-flight.ts";
import { type LocalClock, offsetOf_min } from "../words/local-time.ts";
import { natureForRelief, type ReliefAnswer, reliefOf } from "./relief-of.ts";
import { inspectedAfter } from "./required-inspection.ts";

interface Standing {
  /** The first of the reasons. */
  readonly because: string;
  /** All of them. */
  readonly reasons: readonly [string, ...string[]];
  readonly citations: readonly Citation[];
}

/** What a relief on the record is worth for a flight. */
export type ReliefStanding =
  | (Standing & { readonly holds: true })
  | (Standing & { readonly holds: "unknown" })
  | (Standing & { readonly holds: false });

/** The relief signed last that nobody has ended, and that was not signed before the thing was put right and came back. */
export function reliefOnRecord({ reliefs, reopenings }: Discrepancy): ReliefOnRecord | undefined {
  const reopened = reopenings.toSorted(compareOrder).at(-1);
  return reliefs
    .toSorted(compareOrder)
    .findLast(
      (relief) =>
        relief.ended === undefined && (reopened === undefined || compareOrder(relief, reopened) > 0),
    );
}

/** What was said when it was signed, as the rules ask for it. */
function saidOf(relief: ReliefOnRecord): ReliefSaid {
  const recorded = relief.recordEntry !== undefined;
  return {
    action: relief.action,
    placard: relief.placard !== undefined,
    deactivationIsMaintenance: recorded,
    recorded,
    noHazardBy: relief.as,
    recordAtHand: true, // it stands in this ledger, which the pilot holds
    provisosMet: true, // signed for; the kind of flight is looked at anew
    permit: relief.basis.includes("91.213(e)") || relief.basis.includes("A.105(b)"),
  };
}

const kindWords = (relief: ReliefOnRecord): string =>
  relief.notFor.map((kind) => KIND_WORDS[kind]).join(", ");

interface Asked {
  readonly relief: ReliefOnRecord;
  readonly discrepancy: Discrepancy;
  readonly book: Book;
  readonly state: AircraftState;
  readonly flight: PlannedFlight | null;
  readonly clock: LocalClock;
}

/** Its last day against today, and against the days of the flight. */
function ended({ relief, flight, clock }: Asked): readonly string[] {
  const { until } = relief;
  if (until === undefined) return [];
  const today = localDayOf(clock.now_ms, clock.offset_min);
  if (until < today) return [`The relief ended with ${dateText(until, clock)}`];
  const use = useOfFlight(flight);
  const lastDay: LocalDate = use?.endsOn ?? use?.beginsOn ?? today;
  if (until >= lastDay) return [];
  const begun = use !== undefined && use.beginsOn <= until;
  return [`The relief ends with ${dateText(until, clock)}, ${begun ? "during" : "before"} this flight`];
}

function failing({ relief, book, flight }: Asked, answer: ReliefAnswer | undefined): readonly string[] {
  const excluded =
    relief.notFor.length > 0 && isOfAnyKind(relief.notFor, natureForRelief(book, flight)) === true;
  return [
    ...(excluded ? [`The relief is not for a flight ${kindWords(relief)}`] : []),
    ...(answer?.broken ?? []),
    ...(answer?.ruling.steps ?? []).flatMap(({ holds, rule, words }) =>
      holds === false ? [`${rule} does not hold for this flight: ${words}`] : [],
    ),
  ];
}

function notKnown(asked: Asked, answer: ReliefAnswer | undefined): readonly string[] {
  const { relief, book, flight, state } = asked;
  const excluded =
    relief.notFor.length === 0 ? false : isOfAnyKind(relief.notFor, natureForRelief(book, flight));
  const signedOn = localDayOf(Date.parse(relief.recordedAt), offsetOf_min(relief.recordedAt));
  const inspected = relief.basis.includes("91.213(d)") ? inspectedAfter(book, state, signedOn) : undefined;
  const endless = relief.category === undefined || relief.until !== undefined;
  const use = useOfFlight(flight);
  const onLastDay = relief.until !== undefined && use?.endsOn === undefined && use?.beginsOn === relief.until;
  return [
    ...(onLastDay ? ["When the flight ends is not known, and the relief ends on that day"] : []),
    ...(excluded === undefined ? [`Not for a flight ${kindWords(relief)}`] : []),
    ...(answer === undefined ? ["Which equipment it is, is not known"] : []),
    ...(answer?.ruling.steps ?? []).flatMap(({ holds, words }) =>
      holds === "unknown" ? [`Not known: ${words}`] : [],
    ),
    ...(endless ? [] : ["The list says no last day for it"]),
    ...(inspected === undefined
      ? []
      : [
          `${inspected.name} was made on ${inspected.on}, after the relief: what was done about it there, 91.405(c)? Sign it again`,
        ]),
  ];
}

/**
 * Whether a relief covers a flight: its last day, the kinds of flight it is not for, and the rules once more for this
 * flight, with all that does not hold. Without a flight it can only be told what it is not for.
 */
export function reliefStanding(asked: Asked): ReliefStanding {
  const { relief, discrepancy, book, state, flight } = asked;
  const pack = rulePacks.get(relief.rulePack);
  const request = { book, discrepancy, flight, said: saidOf(relief), state };
  const answer = reliefOf(pack === undefined || flight?.plan !== undefined ? request : { ...request, pack });
  const citations = answer?.ruling.citations ?? [];
  const [no, ...more] = [...ended(asked), ...failing(asked, answer)];
  if (no !== undefined) return { holds: false, because: no, reasons: [no, ...more], citations };
  const [open, ...further] = notKnown(asked, answer);
  if (open !== undefined) return { holds: "unknown", because: open, reasons: [open, ...further], citations };
  const because = `${relief.basis}, determined by ${relief.determinedBy}`;
  return { holds: true, because, reasons: [because], citations };
}
