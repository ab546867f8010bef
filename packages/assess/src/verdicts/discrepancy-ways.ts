import type { Discrepancy, PlannedFlight } from "@witnessmark/ledger";
import type { Source } from "../assessment.ts";
import type { Context } from "../context.ts";
import { packOf, type ReliefAnswer, reliefOf } from "../relief/relief-of.ts";
import { FAILED_LIGHT_LIMIT } from "../rules/us-part-91/lights.ts";
import { usPart91 } from "../rules/us-part-91/pack.ts";
import { preventiveFor } from "../rules/us-part-91/preventive-maintenance.ts";
import { localDayOf } from "../timed/local-day.ts";
import { listed } from "../words/count-words.ts";

export const MEND: readonly [string] = ["Put it right: licensed mechanic, then look again"];

/** What comes before anything that is said here. */
export const FIRST_SOURCE: Source = {
  title: "The approved manual, the authority's own text and licensed people come first",
  locator: "this program gives no relief; it shows the steps",
};

/** Work that the rules let the pilot do, by name; who releases it and writes it down. */
function pilotsOwn(
  discrepancy: Discrepancy,
  answer: ReliefAnswer | undefined,
  { index }: Context,
): readonly string[] {
  const check = discrepancy.check === undefined ? undefined : index.checks.get(discrepancy.check);
  const jasc = discrepancy.jasc ?? check?.jasc ?? answer?.equipment.jasc;
  const work = preventiveFor(jasc, answer?.equipment.ruleItem);
  if (work.length === 0) return [];
  const lines = listed(work.map(({ line, words }) => `(c)(${line}) ${words}`));
  return [
    `Preventive maintenance, if it is no more than this: 14 CFR part 43, appendix A ${lines}. The owner or operator with a private certificate or better may, and enters it by 43.9`,
  ];
}

/** What a rule lets be done where no relief is to be had on this flight. */
function namedWays({ pack, equipment }: ReliefAnswer): readonly string[] {
  if (pack.id !== usPart91.id)
    return ["A permit to fly is a way of its own: ask the authority, NCO.IDE.A.105(b)"];
  return [
    ...(equipment.ruleItem === "elt"
      ? ["It may be away for repair for 90 days, entered and placarded: 91.207(f)(10)"]
      : []),
    ...(equipment.ruleItem === "anticollision-lights"
      ? [`Failed on the way, by day: one may go on ${FAILED_LIGHT_LIMIT}, 91.205(b)(11)`]
      : []),
    "A special permit is a way of its own: ask the authority, 14 CFR 21.197",
  ];
}

/** Beside putting it right: relief, where no step of the rules bars it; else the permit, by name. */
export function otherWays(
  discrepancy: Discrepancy,
  context: Context,
  flight: PlannedFlight | null,
): readonly string[] {
  const { book, state } = context;
  const today = localDayOf(context.clock.now_ms, context.clock.offset_min);
  const answer = reliefOf({ book, discrepancy, flight, said: {}, state, today });
  const own = packOf(flight).id === usPart91.id ? pilotsOwn(discrepancy, answer, context) : [];
  if (answer === undefined) return own;
  const { ruling, pack } = answer;
  const barred = [...ruling.failing, ...answer.broken];
  if (barred.length === 0) {
    const rule = pack.id === usPart91.id ? `14 CFR ${ruling.path}` : ruling.path;
    return [...own, `Relief may be had: ${rule}, ${pack.title}; see its record`];
  }
  return [...own, `No relief for this flight: ${barred.join(", ")}`, ...namedWays(answer)];
}
