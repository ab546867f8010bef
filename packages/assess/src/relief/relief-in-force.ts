import type { Book } from "@witnessmark/book";
import type { Discrepancy, LocalDate, PlannedFlight, ReliefOnRecord } from "@witnessmark/ledger";
import { isOfAnyKind, KIND_WORDS } from "../flight/kinds-of-flight.ts";
import type { ReliefSaid } from "../rules/relief.ts";
import { rulePacks } from "../rules/rule-packs.ts";
import { localDayOf } from "../timed/local-day.ts";
import { useOfFlight } from "../timed/use-of-flight.ts";
import type { LocalClock } from "../words/local-time.ts";
import { natureForRelief, reliefOf } from "./relief-of.ts";

/** What a relief on the record is worth for a flight. */
export type ReliefStanding =
  | { readonly holds: true; readonly because: string }
  | { readonly holds: "unknown"; readonly because: string }
  | { readonly holds: false; readonly because: string };

/** The relief signed last that nobody has ended. */
export const reliefOnRecord = ({ reliefs }: Discrepancy): ReliefOnRecord | undefined =>
  reliefs.findLast(({ ended }) => ended === undefined);

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

/**
 * Whether a relief covers a flight: its last day, the kinds of flight it is not for, and the rules once more for this
 * flight. Without a flight it can only be told what it is not for.
 */
export function reliefStanding(
  relief: ReliefOnRecord,
  discrepancy: Discrepancy,
  book: Book,
  flight: PlannedFlight | null,
  clock: LocalClock,
): ReliefStanding {
  const today = localDayOf(clock.now_ms, clock.offset_min);
  const use = useOfFlight(flight);
  const lastDay: LocalDate = use?.endsOn ?? use?.beginsOn ?? today;
  if (relief.until !== undefined && relief.until < today) {
    return { holds: false, because: `The relief ended with ${relief.until}` };
  }
  if (relief.until !== undefined && relief.until < lastDay) {
    return { holds: false, because: `The relief ends with ${relief.until}, during this flight` };
  }
  const nature = natureForRelief(book, flight);
  const excluded = relief.notFor.length === 0 ? false : isOfAnyKind(relief.notFor, nature);
  if (excluded === true)
    return { holds: false, because: `The relief is not for a flight ${kindWords(relief)}` };
  const pack = rulePacks.get(relief.rulePack);
  const asked = { book, discrepancy, flight, said: saidOf(relief) };
  const answer = reliefOf(pack === undefined || flight?.plan !== undefined ? asked : { ...asked, pack });
  const failing = answer?.ruling.steps.find(({ holds }) => holds === false);
  if (answer !== undefined && failing !== undefined) {
    return { holds: false, because: `${failing.rule} does not hold for this flight: ${failing.words}` };
  }
  if (excluded === undefined) return { holds: "unknown", because: `Not for a flight ${kindWords(relief)}` };
  if (answer === undefined || !answer.ruling.allowed) {
    const open = answer?.ruling.steps.find(({ holds }) => holds === "unknown");
    return {
      holds: "unknown",
      because: open === undefined ? "Which equipment it is, is not known" : `Not known: ${open.words}`,
    };
  }
  return { holds: true, because: `${relief.basis}, determined by ${relief.determinedBy}` };
}
