import type { Status } from "@witnessmark/ledger";
import type { Flight } from "../assessment.ts";
import type { Context } from "../context.ts";
import { type Finding, worthOf } from "../finding.ts";
import type { PartFound } from "../flight/conditions/condition-verdicts.ts";
import { flightParts, flightVerdicts } from "../flight/flight-verdicts.ts";
import { whenAsked } from "../flight/when-asked.ts";
import { BADNESS } from "../order.ts";

/** An answer: what its verdicts are worth, as far as it takes to tell it from another. */
export interface Answer {
  /**
   * The worst of them, which of them stop, and which that may stop are not known: two answers with the same one are the
   * same answer.
   */
  readonly key: string;
  /** Those that were looked at to know that. */
  readonly seen: readonly Finding[];
  /** All of them, in their order. Few are ever read. */
  readonly all: () => readonly Finding[];
}

/** Of an answer with something that stops or is not known and was: it is another, whatever the rest of it would be. */
const ANOTHER = "another";

/** What each verdict on a flight is worth as it is. */
export const worthsOf = ({ seen, all }: Answer): ReadonlyMap<string, Status> =>
  new Map([...seen, ...all()].map((finding) => [worthOf(finding).id, worthOf(finding).status]));

/**
 * Looks at a flight part by part, and no further than it takes: something that stops it and did not, or that may stop it
 * and is not known any more, settles the answer; what at most warns is not worked out while something else warns
 * already.
 *
 * @param now what the verdicts are worth as it is; without it no part is left out
 */
export function answerOf(context: Context, flight: Flight, now?: ReadonlyMap<string, Status>): Answer {
  const all = whenAsked(() => flightVerdicts(context, flight));
  const seen: Finding[] = [];
  let worst: Status = "clear";
  const stops: string[] = [];
  const opens: string[] = [];
  let isAnother = false;
  const see = (findings: readonly Finding[], mayStop: boolean): void => {
    for (const finding of findings) {
      const { id, status } = worthOf(finding);
      seen.push(finding);
      if (BADNESS[status] < BADNESS[worst]) worst = status;
      if (status === "stop") stops.push(id);
      else if (mayStop && status === "open") opens.push(id);
      else continue;
      if (now !== undefined && now.get(id) !== status) isAnother = true;
    }
  };
  const parts: PartFound[] = [];
  for (const part of flightParts(context, flight)) {
    parts.push(part);
    see(part.stops, true);
    if (isAnother) return { key: ANOTHER, seen, all };
  }
  // what at most warns adds nothing to a warning
  if (BADNESS[worst] > BADNESS.caution) for (const part of parts) see(part.all(), false);
  return { key: `${worst} ${stops.sort().join(" ")} / ${opens.sort().join(" ")}`, seen, all };
}
