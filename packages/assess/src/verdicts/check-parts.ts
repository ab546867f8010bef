import type { Check } from "@witnessmark/book";
import type { CheckAnswer, RecordedReading } from "@witnessmark/ledger";
import type { Verdict, WorkingLine } from "../assessment.ts";
import { bookSource, NOWHERE, pointName } from "../book-index.ts";
import type { Context } from "../context.ts";
import { type Cause, type Finding, LaterFinding, severityOf } from "../finding.ts";
import type { Look } from "../walk/looks.ts";
import { recorded_ms } from "../walk/moments.ts";
import { holdsUntil_ms } from "../walk/staleness.ts";
import { happeningWords } from "../words/happening-words.ts";
import { momentText, whenText } from "../words/local-time.ts";

/* The parts that the verdicts on a check have in common. */

export type Base = Omit<Extract<Verdict, { status: "clear" }>, "status" | "says" | "working">;

const idOf = ({ id }: Check): string => `check:${id}`;

export const baseOf = ({ book }: Context, check: Check, evidence: readonly string[]): Base => ({
  id: idOf(check),
  topic: "check",
  title: pointName(book, check.point) ?? check.title,
  evidence,
  sources: [bookSource(book, `check ${check.id}`)],
  subject: { kind: "check", id: check.id },
});

/** `07:41, by AB` */
export const toldBy = (answer: CheckAnswer | RecordedReading, { clock }: Pick<Context, "clock">): string =>
  `${momentText(recorded_ms(answer), clock)}, by ${answer.author.name}`;

export const lookLines = (check: Check, look: Look | undefined, context: Context): readonly WorkingLine[] => [
  { label: "Should be", value: check.shouldBe },
  ...(look === undefined ? [] : [{ label: "Looked at", value: toldBy(look.answer, context) }]),
  ...(look?.reading === undefined ? [] : [{ label: "Measured", value: toldBy(look.reading, context) }]),
];

export const evidenceOf = (look: Look | undefined): readonly string[] =>
  look === undefined ? [] : [look.answer.event, ...(look.reading === undefined ? [] : [look.reading.event])];

const placed = (check: Check, { index }: Context, cause: Cause | undefined) => ({
  severity: severityOf(check),
  place: index.placeOfCheck.get(check.id) ?? NOWHERE,
  ...(cause === undefined ? {} : { cause }),
});

export const asFinding = (verdict: Verdict, check: Check, context: Context, cause?: Cause): Finding => ({
  verdict,
  ...placed(check, context, cause),
});

/** A finding on a check that is told when somebody reads it: a look at another hour asks for the status alone. */
export const toldLater = <S extends Verdict["status"]>(
  status: S,
  check: Check,
  context: Context,
  tell: () => Extract<Verdict, { status: S }>,
  { cause, restsOn }: Pick<Finding, "cause" | "restsOn"> = {},
): Finding =>
  new LaterFinding(
    { id: idOf(check), status },
    { ...placed(check, context, cause), ...(restsOn === undefined ? {} : { restsOn }) },
    tell,
  );

/** Why a check is open. */
export interface Opened {
  readonly says: string;
  /** As at the right of a row: "not read". */
  readonly short: string;
  readonly missing: string;
  readonly cause?: Cause;
  readonly evidence?: string;
}

/** The open verdict on a check. */
export function opened(check: Check, look: Look | undefined, why: Opened, context: Context): Finding {
  return toldLater(
    "open",
    check,
    context,
    () => ({
      ...baseOf(context, check, [...evidenceOf(look), ...(why.evidence === undefined ? [] : [why.evidence])]),
      status: "open",
      says: `${check.title}: ${why.says}`,
      margin: { value: 0, unit: "", text: why.short },
      missing: [why.missing],
      working: { lines: lookLines(check, look, context) },
    }),
    why.cause === undefined ? {} : { cause: why.cause },
  );
}

export const answerCause = (check: Check, look: Look, words: string, context: Context): Cause => {
  const at_ms = recorded_ms(look.answer);
  const name = pointName(context.book, check.point) ?? check.title;
  return {
    key: `answer:${look.answer.event}`,
    at_ms,
    words: `${name}: ${words}, said ${whenText(at_ms, context.clock)}`,
    reopens: false,
  };
};

export const endsWith = (check: Check): { readonly endsWith?: readonly string[] } =>
  check.holds.until.length === 0 ? {} : { endsWith: check.holds.until.map(happeningWords) };

/** The age of a look ends with the older of its answer and its reading. */
export function untilOf(check: Check, { answer, reading }: Look): number | undefined {
  const ofAnswer_ms = holdsUntil_ms(check, answer);
  const ofReading_ms = reading === undefined ? undefined : holdsUntil_ms(check, reading);
  if (ofAnswer_ms === undefined || ofReading_ms === undefined) return ofAnswer_ms;
  return Math.min(ofAnswer_ms, ofReading_ms);
}
