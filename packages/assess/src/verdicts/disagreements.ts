import type { Answer, CheckAnswer } from "@witnessmark/ledger";
import { compareOrder } from "@witnessmark/ledger";
import type { Verdict } from "../assessment.ts";
import { bookSource, NOWHERE, pointName } from "../book-index.ts";
import type { Context } from "../context.ts";
import { type Finding, severityOf } from "../finding.ts";
import { recorded_ms } from "../walk/moments.ts";
import { momentText, whenText } from "../words/local-time.ts";

const SAID: Readonly<Record<Answer, string>> = {
  "as-it-should-be": "as it should be",
  "not-right": "not right",
  "could-not-check": "could not check",
};

/**
 * What each device last claims of a check. Could not check claims nothing; what is asked again is taken back; and a
 * "not right" ends when what was wrong is closed.
 */
function claims(
  check: string,
  byDevice: ReadonlyMap<string, CheckAnswer>,
  { discrepancies }: Context,
): readonly CheckAnswer[] {
  const closing = discrepancies.closedOfCheck.get(check);
  return [...byDevice.values()]
    .filter(({ answer, askedAgainBy }) => answer !== "could-not-check" && askedAgainBy === undefined)
    .filter(
      (said) => !(said.answer === "not-right" && closing !== undefined && compareOrder(closing, said) > 0),
    )
    .sort(compareOrder);
}

function disagreement(
  check: string,
  said: readonly CheckAnswer[],
  carried: Finding | undefined,
  context: Context,
): Finding {
  const { book, clock, index } = context;
  const known = index.checks.get(check);
  const title = pointName(book, known?.point) ?? check;
  const told = said.map((answer) => ({
    label: `${answer.author.name}, ${momentText(recorded_ms(answer), clock)}`,
    value: SAID[answer.answer],
  }));
  const common = {
    id: `disagreement:${check}`,
    topic: "disagreement" as const,
    title,
    says: `${known?.title ?? check}: ${told.map(({ label, value }) => `${label}: ${value}`).join("; ")}`,
    margin: { value: 0, unit: "", text: `${said.length} answers` },
    working: { lines: told },
    evidence: said.map(({ event }) => event),
    sources: [bookSource(book, `check ${check}`)],
    subject: { kind: "check" as const, id: check },
  };
  const because: readonly [string] = [
    "Two phones answered it differently in this walk, and both answers stand",
  ];
  // One of them says "not right": as bad as its discrepancy is, or a stop where there is none.
  const verdict: Verdict =
    carried?.verdict.status === "caution"
      ? { ...common, status: "caution", because }
      : {
          ...common,
          status: "stop",
          because,
          wayOut: ["Look again together; whoever was wrong answers again"],
        };
  const last = said.at(-1);
  return {
    verdict,
    severity: severityOf(known),
    place: index.placeOfCheck.get(check) ?? NOWHERE,
    ...(last === undefined
      ? {}
      : {
          cause: {
            key: `answer:${last.event}`,
            at_ms: recorded_ms(last),
            words: `${title}: answered differently ${whenText(recorded_ms(last), clock)}`,
            reopens: false,
          },
        }),
  };
}

/**
 * One verdict for each check that two devices answer differently in the walk in hand.
 *
 * @param ofDiscrepancies the verdicts on open discrepancies, by the id of the discrepancy
 */
export function disagreementVerdicts(
  context: Context,
  ofDiscrepancies: ReadonlyMap<string, Finding>,
): readonly Finding[] {
  const found: Finding[] = [];
  for (const [check, byDevice] of context.inWalk.byDevice) {
    const said = claims(check, byDevice, context);
    if (new Set(said.map(({ answer }) => answer)).size < 2) continue;
    const open = context.discrepancies.openOfCheck.get(check) ?? [];
    const worst =
      open.map(({ id }) => ofDiscrepancies.get(id)).find((finding) => finding?.verdict.status === "stop") ??
      (open[0] === undefined ? undefined : ofDiscrepancies.get(open[0].id));
    found.push(disagreement(check, said, worst, context));
  }
  return found;
}
