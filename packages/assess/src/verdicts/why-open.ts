import type { Check } from "@witnessmark/book";
import { type CheckAnswer, compareOrder, type OrderKey } from "@witnessmark/ledger";
import { pointName } from "../book-index.ts";
import type { Context } from "../context.ts";
import { askedByChance } from "../evidence/by-chance.ts";
import type { Cause } from "../finding.ts";
import type { Look } from "../walk/looks.ts";
import { recorded_ms } from "../walk/moments.ts";
import { staleness } from "../walk/staleness.ts";
import { whenText } from "../words/local-time.ts";
import type { Opened } from "./check-parts.ts";

/** What must be done before a check and was not, in the walk of its look. */
function outOfOrder(check: Check, look: Look, { inWalk, walk, book, index }: Context): string | undefined {
  if (look.answer.walk !== walk?.id) return undefined;
  for (const before of check.after) {
    const earlier = index.checks.get(before);
    if (earlier === undefined || !earlier.walks.includes(walk.kind)) continue;
    const first = inWalk.first.get(before);
    if (first !== undefined && compareOrder(first, look.answer) < 0) continue;
    return `${pointName(book, earlier.point) ?? earlier.title}: ${earlier.title}`;
  }
  return undefined;
}

/**
 * The book has come to ask something else under the same name, and nobody has looked at that yet, as far as the order of
 * the ledger tells: an answer does not say from which revision it was asked.
 */
function askedOtherwise(check: Check, said: OrderKey, { state, clock }: Context): Opened | undefined {
  const { since } = check;
  if (since === undefined) return undefined;
  const adopted = state.books.find(({ revision }) => revision >= since);
  if (adopted === undefined || compareOrder(adopted, said) < 0) return undefined;
  const at_ms = recorded_ms(adopted);
  return {
    says: `the book asks something else here since revision ${since}`,
    short: "look again",
    missing: `a look as revision ${since} asks for it`,
    evidence: adopted.event,
    cause: {
      key: `book:${adopted.event}`,
      at_ms,
      words: `Revision ${adopted.revision} of the book came in ${whenText(at_ms, clock)}`,
      reopens: true,
    },
  };
}

/** Why a look that says "as it should be" does not count, or undefined when it does. */
export function whyOpen(check: Check, look: Look, context: Context): Opened | undefined {
  const { answer, reading } = look;
  const { clock, happenings, photos, state } = context;
  if (answer.askedAgainBy !== undefined) {
    return {
      says: "asked again, because the walk was interrupted",
      short: "look again",
      missing: "a look after the interruption",
      evidence: answer.askedAgainBy,
      cause: interruptionCause(answer, context),
    };
  }
  const stale = staleness(check, answer, happenings, clock);
  if (stale !== undefined) {
    return {
      ...stale,
      says: lowered(stale.says),
      short: "look again",
      missing: "a look since then",
      cause: named(stale.cause, check, context),
    };
  }
  const otherwise = askedOtherwise(check, answer, context);
  if (otherwise !== undefined) return otherwise;
  const before = outOfOrder(check, look, context);
  if (before !== undefined) {
    return {
      says: `it comes after "${before}", and was not`,
      short: "look again",
      missing: `a look after "${before}"`,
    };
  }
  if (check.reading !== undefined) {
    const unread = whyUnread(check, check.reading.quantity, reading, context);
    if (unread !== undefined) return unread;
  } else if (check.evidence === "reading") {
    return {
      says: "the book asks for a figure and names none",
      short: "not read",
      missing: "a reading in the book",
    };
  }
  const ofLook = state.walks.get(answer.walk) ?? null;
  const isByChance = askedByChance(context.book, state, ofLook).has(check.id);
  if (check.evidence === "photo" || (isByChance && !declined(check, answer, state))) {
    const photo = photos.get(check.id);
    if (photo === undefined || (ofLook !== null && compareOrder(photo, ofLook) < 0)) {
      return {
        says: isByChance ? "its walk asked for a photo of it" : "no photo was left in this walk",
        short: "no photo",
        missing: isByChance ? "a photo, or why there is none" : "a photo",
      };
    }
  }
  return undefined;
}

/** Somebody has said in its walk why there is no photo. */
const declined = (check: Check, { walk }: CheckAnswer, { evidenceDeclined }: Context["state"]): boolean =>
  evidenceDeclined.some((said) => said.walk === walk && said.check === check.id);

/** Why its reading does not count, or undefined when it does. */
function whyUnread(
  check: Check,
  quantity: string,
  reading: Look["reading"],
  context: Context,
): Opened | undefined {
  if (reading === undefined) return notRead(check);
  const otherwise = askedOtherwise(check, reading, context);
  if (otherwise !== undefined) return { ...otherwise, short: "not read", missing: quantity };
  const old = staleness(check, reading, context.happenings, context.clock, "reading");
  if (old === undefined) return undefined;
  return {
    ...old,
    says: `not read since; ${lowered(old.says)}`,
    short: "not read",
    missing: quantity,
    cause: named(old.cause, check, context),
  };
}

const notRead = (check: Check): Opened => ({
  says: `${check.reading?.quantity ?? "a reading"} not read`,
  short: "not read",
  missing: check.reading?.quantity ?? "a reading",
});

/** What ends one look only is told with its name; what ends many is not. */
const named = (cause: Cause, check: Check, { book }: Context): Cause =>
  cause.key.startsWith("age:")
    ? { ...cause, words: `${pointName(book, check.point) ?? check.title}: ${lowered(cause.words)}` }
    : cause;

const lowered = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

function interruptionCause(answer: CheckAnswer, { state, clock }: Context): Cause {
  const interruption = state.walks
    .get(answer.walk)
    ?.interruptions.find((one) => one.event === answer.askedAgainBy);
  const at_ms = recorded_ms(interruption ?? answer);
  return {
    key: `interruption:${answer.askedAgainBy}`,
    at_ms,
    words: `The walk was interrupted ${whenText(at_ms, clock)}`,
    reopens: true,
  };
}
