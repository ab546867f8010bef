import type { Book, Check, GroundGearItem, HappeningKind } from "@witnessmark/book";
import type { AircraftState } from "@witnessmark/ledger";
import { assessWithCauses, checksOf } from "./assess.ts";
import { isAfter, recorded_ms, wouldBeAfter } from "./walk/moments.ts";
import { staleness } from "./walk/staleness.ts";

/** What a happening leaves to be done again, in the order of the walk. */
export interface Reopened {
  readonly checks: readonly Check[];
  readonly groundGear: readonly GroundGearItem[];
}

/**
 * What a happening would reopen, or, when it is in the record already, what it did reopen and nobody has looked at
 * since. What was open for another reason is not in it.
 *
 * @param at_ms when it happened, milliseconds since 1970 UTC
 */
export function reopenedBy(book: Book, state: AircraftState, kind: HappeningKind, at_ms: number): Reopened {
  const recorded = state.happenings.find((happening) => happening.kind === kind && happening.at_ms === at_ms);
  const without: AircraftState = {
    ...state,
    happenings: state.happenings.filter((happening) => happening !== recorded),
  };
  const latest_ms = [...state.answersByWalk.values()].at(-1)?.at(-1);
  const now_ms = Math.max(at_ms, latest_ms === undefined ? at_ms : recorded_ms(latest_ms));
  const { context, assessment } = assessWithCauses(book, without, null, now_ms);
  const checks = checksOf(context.index, context.walk).filter((check) => {
    const answer = context.looks.get(check.id)?.answer;
    if (answer === undefined || !check.holds.until.includes(kind)) return false;
    if (answer.answer !== "as-it-should-be" || answer.askedAgainBy !== undefined) return false;
    if (staleness(check, answer, context.happenings, context.clock) !== undefined) return false;
    return recorded === undefined ? wouldBeAfter(at_ms, answer) : isAfter(recorded, answer);
  });
  const off = new Set(
    assessment.verdicts
      .filter(({ topic, status }) => topic === "ground-gear" && status === "clear")
      .map(({ subject }) => subject?.id),
  );
  const groundGear =
    kind !== "unattended" || context.walk?.kind === "after-flight"
      ? []
      : book.groundGear.filter(({ id }) => {
          const last = state.groundGear.get(id)?.last;
          if (!off.has(id) || last === undefined) return false;
          return recorded === undefined ? wouldBeAfter(at_ms, last) : isAfter(recorded, last);
        });
  return { checks, groundGear };
}
