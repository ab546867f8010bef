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
  /** The worst of them, and which of them stop: two answers with the same one are the same answer. */
  readonly key: string;
  /** Those that were looked at to know that. */
  readonly seen: readonly Finding[];
  /** All of them, in their order. Few are ever read. */
  readonly all: () => readonly Finding[];
}

/** Of an answer with something that stops and did not: it is another, whatever the rest of it would be. */
const ANOTHER = "another";

/**
 * Looks at a flight part by part, and no further than it takes: something that stops it and did not settles the answer,
 * and what at most warns is not worked out while something else warns already.
 *
 * @param stopsNow what stops the flight as it is; without it no part is left out
 */
export function answerOf(context: Context, flight: Flight, stopsNow?: ReadonlySet<string>): Answer {
  const all = whenAsked(() => flightVerdicts(context, flight));
  const seen: Finding[] = [];
  let worst: Status = "clear";
  const stops: string[] = [];
  let isAnother = false;
  const see = (findings: readonly Finding[]): void => {
    for (const finding of findings) {
      const { id, status } = worthOf(finding);
      seen.push(finding);
      if (BADNESS[status] < BADNESS[worst]) worst = status;
      if (status !== "stop") continue;
      stops.push(id);
      if (stopsNow?.has(id) === false) isAnother = true;
    }
  };
  const parts: PartFound[] = [];
  for (const part of flightParts(context, flight)) {
    parts.push(part);
    see(part.stops);
    if (isAnother) return { key: ANOTHER, seen, all };
  }
  // what at most warns adds nothing to a warning
  if (BADNESS[worst] > BADNESS.caution) for (const part of parts) see(part.all());
  return { key: `${worst} ${stops.sort().join(" ")}`, seen, all };
}
