import type { Check } from "@witnessmark/book";
import { type CouldNotReason, compareOrder, type RecordedReading } from "@witnessmark/ledger";
import type { Context } from "../context.ts";
import type { Finding } from "../finding.ts";
import { judge } from "../reading/judge.ts";
import type { ReadingVerdict } from "../reading/reading-verdict.ts";
import type { Look } from "../walk/looks.ts";
import { recorded_ms } from "../walk/moments.ts";
import { momentText, whenText } from "../words/local-time.ts";
import {
  answerCause,
  asFinding,
  baseOf,
  endsWith,
  evidenceOf,
  lookLines,
  opened,
  toldBy,
  toldLater,
  untilOf,
} from "./check-parts.ts";
import { whyOpen } from "./why-open.ts";

const REASONS: Readonly<Record<CouldNotReason, string>> = {
  "too-dark": "too dark",
  "out-of-reach": "out of reach",
  "too-hot": "too hot yet",
  "no-tool": "no tool",
  weather: "weather",
  "something-else": "another reason",
};

/** A reading never changes once it is on the record; the same book judges it the same. */
const judgements = new WeakMap<
  RecordedReading,
  { readonly check: Check; readonly book: Context["book"]; readonly judged: ReadingVerdict }
>();

function judgedOnce(check: Check, reading: RecordedReading, { book }: Context): ReadingVerdict {
  const known = judgements.get(reading);
  if (known?.check === check && known.book === book) return known.judged;
  const judged = judge(check, book, reading);
  judgements.set(reading, { check, book, judged });
  return judged;
}

const MEND = "Put it right: licensed mechanic, then look again";

/** The verdict on a reading, as the verdict of the look that it belongs to. */
function ofReading(check: Check, look: Look, judged: ReadingVerdict, context: Context): Finding {
  const { probability_1: _shownWhileTyping, ...verdict } = judged;
  const until_ms = untilOf(check, look);
  const holds = verdict.status === "clear" || verdict.status === "caution"; // age does not mend a stop
  return toldLater(
    verdict.status,
    check,
    context,
    () => {
      const base = baseOf(context, check, evidenceOf(look));
      const { lines } = verdict.working;
      return {
        ...base,
        ...verdict,
        sources: [...base.sources, ...verdict.sources],
        working: { ...verdict.working, lines: [...lines, ...lookLines(check, look, context)] },
        ...(holds && until_ms !== undefined ? { holdsUntil_ms: until_ms } : {}),
        ...endsWith(check),
      };
    },
    {
      ...(verdict.status === "clear"
        ? {}
        : { cause: answerCause(check, look, verdict.margin?.text ?? "not known", context) }),
      ...(verdict.status === "open" ? {} : { restsOn: { checks: 1, readings: 1 } }),
    },
  );
}

const isOutside = (judged: ReadingVerdict | undefined): judged is ReadingVerdict & { status: "stop" } =>
  judged?.status === "stop";

function notRight(check: Check, look: Look, judged: ReadingVerdict | undefined, context: Context): Finding {
  const said = `not right, ${toldBy(look.answer, context)}`;
  return asFinding(
    {
      ...baseOf(context, check, evidenceOf(look)),
      status: "stop",
      says: `${check.title}: ${said}`,
      margin: judged?.margin ?? { value: 0, unit: "", text: "not right" },
      because: ["It was found not right, and no discrepancy says what"],
      wayOut: [MEND],
      working: { lines: [...(judged?.working.lines ?? []), ...lookLines(check, look, context)] },
    },
    check,
    context,
    answerCause(check, look, "not right", context),
  );
}

/** The latest closing of a discrepancy on this check, when it came after everything that the look left. */
function putRightAfter(check: Check, { answer, reading }: Look, { discrepancies }: Context) {
  const closing = discrepancies.closedOfCheck.get(check.id);
  if (closing === undefined || compareOrder(closing, answer) < 0) return undefined;
  return reading !== undefined && compareOrder(closing, reading) < 0 ? undefined : closing;
}

function noLook(check: Check, context: Context): Finding {
  const { walk } = context;
  const never = walk === null ? "not looked at yet" : "not looked at in this walk";
  const isOfWalk = walk !== null && check.walks.includes(walk.kind);
  return opened(
    check,
    undefined,
    { says: isOfWalk ? never : "not looked at yet", short: "not looked at", missing: "a look" },
    context,
  );
}

/** The stop that a reading is, though nobody answered the check that asked for it. */
function readButNotAnswered(
  check: Check,
  reading: RecordedReading | undefined,
  context: Context,
): Finding | undefined {
  if (reading === undefined) return undefined;
  const judged = judgedOnce(check, reading, context);
  if (!isOutside(judged)) return undefined;
  const { probability_1: _shownWhileTyping, ...verdict } = judged;
  const base = baseOf(context, check, [reading.event]);
  return asFinding({ ...base, ...verdict, sources: [...base.sources, ...verdict.sources] }, check, context, {
    key: `reading:${reading.event}`,
    at_ms: recorded_ms(reading),
    words: `${base.title}: ${verdict.margin?.text ?? "outside its limit"}, read ${whenText(recorded_ms(reading), context.clock)}`,
    reopens: false,
  });
}

/**
 * The verdict on one check, or null when an open discrepancy that names it is its verdict.
 *
 * What is known to be wrong stays a stop until somebody has looked again: neither time nor a happening mends it.
 *
 * @param reading the reading of this walk, for a check that nobody answered
 */
export function checkVerdict(
  check: Check,
  reading: RecordedReading | undefined,
  context: Context,
): Finding | null {
  const look = context.looks.get(check.id);
  if (look === undefined) return readButNotAnswered(check, reading, context) ?? noLook(check, context);
  const { answer } = look;
  if (answer.answer === "not-right" && context.discrepancies.openOfCheck.has(check.id)) return null;
  const closing = putRightAfter(check, look, context);
  if (closing !== undefined) {
    const at_ms = recorded_ms(closing);
    const words = `${closing.how === "put-right" ? "Put right" : "No fault found"} ${whenText(at_ms, context.clock)}`;
    return opened(
      check,
      look,
      {
        says:
          closing.how === "put-right"
            ? "look again after it was put right"
            : "look again after no fault was found",
        short: "look again",
        missing: "a look after it was closed",
        evidence: closing.event,
        cause: { key: `closed:${closing.event}`, at_ms, words, reopens: true },
      },
      context,
    );
  }
  const judged = look.reading === undefined ? undefined : judgedOnce(check, look.reading, context);
  if (answer.answer === "not-right") return notRight(check, look, judged, context);
  if (isOutside(judged)) return ofReading(check, look, judged, context);
  if (answer.answer === "could-not-check") {
    const why = REASONS[answer.reason ?? "something-else"];
    const says = `could not check, ${why}`;
    return opened(
      check,
      look,
      { says, short: "could not check", missing: "a look", cause: answerCause(check, look, says, context) },
      context,
    );
  }
  const why = whyOpen(check, look, context);
  if (why !== undefined) return opened(check, look, why, context);
  if (judged !== undefined) return ofReading(check, look, judged, context);
  return toldLater(
    "clear",
    check,
    context,
    () => {
      const until_ms = untilOf(check, look);
      return {
        ...baseOf(context, check, evidenceOf(look)),
        status: "clear",
        says: `${check.title}: as it should be, ${momentText(recorded_ms(answer), context.clock)}`,
        working: { lines: lookLines(check, look, context) },
        ...(until_ms === undefined ? {} : { holdsUntil_ms: until_ms }),
        ...endsWith(check),
      };
    },
    { restsOn: { checks: 1, readings: 0 } },
  );
}
