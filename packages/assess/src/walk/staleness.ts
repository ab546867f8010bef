import type { Check, HappeningKind } from "@witnessmark/book";
import type { Happening, Origin } from "@witnessmark/ledger";
import type { Cause } from "../finding.ts";
import { durationText } from "../words/duration-text.ts";
import { happened } from "../words/happening-words.ts";
import { clockText, type LocalClock, momentText, whenText } from "../words/local-time.ts";
import type { Happenings } from "./happenings.ts";
import { HONEST_SKEW_MS, isAfter, recorded_ms } from "./moments.ts";

/** The earliest happening of these kinds after a look. */
export function firstAfter(
  happenings: Happenings,
  kinds: readonly HappeningKind[],
  look: Origin,
): Happening | undefined {
  let first: Happening | undefined;
  for (const kind of kinds) {
    const found = happenings.get(kind)?.find((happening) => isAfter(happening, look));
    if (found !== undefined && (first === undefined || found.at_ms < first.at_ms)) first = found;
  }
  return first;
}

/** Why a look no longer counts. */
export interface Stale {
  /** `Fuelled at 09:07, after the look at 07:40` */
  readonly says: string;
  readonly cause: Cause;
  /** The event that did it, where there is one. */
  readonly evidence?: string;
}

export const happeningCause = (happening: Happening, clock: LocalClock): Cause => ({
  key: `happening:${happening.event}`,
  at_ms: happening.at_ms,
  words: `${happened(happening.kind)} ${whenText(happening.at_ms, clock)}`,
  reopens: true,
});

/** The last moment at which a look still counts by its age; undefined when age does not end it. */
export const holdsUntil_ms = ({ holds }: Pick<Check, "holds">, look: Origin): number | undefined =>
  holds.atMost === undefined ? undefined : recorded_ms(look) + holds.atMost.valueSI * 1000;

/** Whether, and why, a look no longer counts: a happening after it, or its age. */
export function staleness(
  check: Pick<Check, "id" | "holds">,
  look: Origin,
  happenings: Happenings,
  clock: LocalClock,
  what: "look" | "reading" = "look",
): Stale | undefined {
  const happening = firstAfter(happenings, check.holds.until, look);
  const look_ms = recorded_ms(look);
  if (happening !== undefined) {
    const cause = happeningCause(happening, clock);
    return {
      says: `${cause.words}, after the ${what} ${whenText(look_ms, clock)}`,
      cause,
      evidence: happening.event,
    };
  }
  const until_ms = holdsUntil_ms(check, look);
  if (until_ms === undefined) return undefined;
  const span = durationText((until_ms - look_ms) / 1000);
  if (clock.now_ms > until_ms) {
    const ended = momentText(until_ms, clock);
    return {
      says: `The ${what} ${whenText(look_ms, clock)} counted for ${span}, until ${ended}`,
      cause: {
        key: `age:${check.id}`,
        at_ms: until_ms,
        words: `The ${what} ${whenText(look_ms, clock)} counted until ${ended}`,
        reopens: true,
      },
    };
  }
  if (look_ms > clock.now_ms + HONEST_SKEW_MS) {
    return {
      says: `The ${what} is dated ${clockText(look_ms, clock)}, ahead of now: its age cannot be known`,
      cause: {
        key: `clock:${look.device}`,
        at_ms: clock.now_ms,
        words: `A look is dated ${momentText(look_ms, clock)}, ahead of now`,
        reopens: true,
      },
    };
  }
  return undefined;
}
