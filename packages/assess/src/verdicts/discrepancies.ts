import type { Book, Check, Fault } from "@witnessmark/book";
import { differenceFromSI, roundToSafeSide, toSI, UNITS, withSymbol } from "@witnessmark/engine";
import type { Discrepancy, Read } from "@witnessmark/ledger";
import type { Margin, Verdict, WorkingLine } from "../assessment.ts";
import { bookSource, NOWHERE, pointName } from "../book-index.ts";
import type { Context } from "../context.ts";
import { type Finding, severityOf } from "../finding.ts";
import { judge } from "../reading/judge.ts";
import { recorded_ms } from "../walk/moments.ts";
import { inside, sentence } from "../words/count-words.ts";
import { momentText, whenText } from "../words/local-time.ts";

const MEND: readonly [string] = ["Put it right: licensed mechanic, then look again"];
/** Words longer than this are told in the line, not as the title. */
const LONGEST_TITLE = 48;

/** A measured size against what the book allows of that fault. */
interface Sized {
  readonly over: boolean;
  readonly margin: Margin;
  /** `38 mm, 10 mm allowed` */
  readonly says: string;
  readonly lines: readonly WorkingLine[];
}

const plain = (value: number): string => String(Number(value.toPrecision(12))).replace("-", "−");
const readText = ({ value, unit }: Read): string => withSymbol(plain(value), unit);

/** The finest step of the figures as they were written, so that 38 and 10 leave 28 and 12.5 and 10 leave 2.5. */
const stepOf = (...values: readonly number[]): number =>
  10 ** -Math.max(0, ...values.map((value) => plain(value).split(".")[1]?.length ?? 0));

function sized(fault: Fault | undefined, measured: Read | undefined): Sized | undefined {
  const allowed = fault?.measure?.allowed;
  if (allowed === undefined || measured === undefined || !Number.isFinite(measured.value)) return undefined;
  if (UNITS[measured.unit].dimension !== UNITS[allowed.unit].dimension || measured.value < 0)
    return undefined;
  const { unit } = measured;
  const overSI = toSI(measured.value, unit) - allowed.valueSI;
  const step = stepOf(measured.value, unit === allowed.unit ? allowed.value : 0);
  const left = roundToSafeSide(differenceFromSI(-overSI, unit), step, "down");
  const over = overSI > 0 && left < 0; // a billionth of a step is the conversion's, not the fault's
  const size = withSymbol(plain(Math.abs(left)), unit);
  return {
    over,
    margin: { value: left, unit: UNITS[unit].symbol, text: over ? `${size} over` : `${size} left` },
    says: `${readText(measured)}, ${withSymbol(plain(allowed.value), allowed.unit)} allowed`,
    lines: [
      { label: "Measured", value: readText(measured) },
      { label: "Book allows", value: withSymbol(plain(allowed.value), allowed.unit) },
    ],
  };
}

interface About {
  readonly check: Check | undefined;
  readonly fault: Fault | undefined;
  readonly point: string | undefined;
}

function aboutOf(discrepancy: Discrepancy, { book, index }: Context): About {
  const check = discrepancy.check === undefined ? undefined : index.checks.get(discrepancy.check);
  return {
    check,
    fault: check?.faults.find(({ id }) => id === discrepancy.fault),
    point: pointName(book, discrepancy.point ?? check?.point),
  };
}

/** Its own words when they are short; else what it is, where it is. */
export function titleOf({ words }: Discrepancy, { fault, point }: About): string {
  if (words.length <= LONGEST_TITLE) return words.replace(/[.]$/, "");
  if (point === undefined) return fault?.name ?? `${words.slice(0, LONGEST_TITLE - 1).trimEnd()}…`;
  return fault === undefined ? point : `${point}: ${inside(fault.name)}`;
}

/** The working of the last reading on the check that found it, where there was one. */
function readingLines(check: Check | undefined, { looks, book }: Context): readonly WorkingLine[] {
  const reading = check === undefined ? undefined : looks.get(check.id)?.reading;
  return check === undefined || reading === undefined ? [] : judge(check, book, reading).working.lines;
}

const sourceOf = (book: Book, { check }: About, discrepancy: Discrepancy) =>
  bookSource(book, check === undefined ? `discrepancy ${discrepancy.id}` : `check ${check.id}`);

/**
 * The verdict on one open discrepancy. It stops, except where it was measured and the book allows so much: then it is
 * a caution, because it may grow.
 */
function discrepancyVerdict(discrepancy: Discrepancy, context: Context): Finding {
  const { book, clock, index } = context;
  const about = aboutOf(discrepancy, context);
  const size = sized(about.fault, discrepancy.measured);
  const title = titleOf(discrepancy, about);
  const raised_ms = recorded_ms(discrepancy.raised);
  const raised = `${momentText(raised_ms, clock)}, by ${discrepancy.raised.author.name}`;
  const told = [
    ...(about.point === undefined || title.startsWith(about.point) ? [] : [about.point]),
    ...(size === undefined ? [] : [size.says]),
    ...(title === discrepancy.words.replace(/[.]$/, "") ? [] : [discrepancy.words]),
    `raised ${raised}`,
  ];
  const common = {
    id: `discrepancy:${discrepancy.id}`,
    topic: "discrepancy" as const,
    title,
    says: sentence(told.join(", ")),
    working: {
      lines: [
        { label: "Raised", value: raised },
        ...(size?.lines ?? []),
        ...(discrepancy.measured !== undefined && size === undefined
          ? [{ label: "Measured", value: readText(discrepancy.measured) }]
          : []),
        ...readingLines(about.check, context),
      ],
    },
    evidence: [discrepancy.raised.event],
    sources: [sourceOf(book, about, discrepancy)],
    subject: { kind: "discrepancy" as const, id: discrepancy.id },
  };
  const verdict: Verdict =
    size !== undefined && !size.over
      ? {
          ...common,
          margin: size.margin,
          status: "caution",
          because: [`Inside what the book allows, ${size.margin.text}`],
        }
      : {
          ...common,
          ...(size === undefined ? {} : { margin: size.margin }),
          status: "stop",
          because: [
            size === undefined ? "It is not as the book says" : `${size.margin.text} what the book allows`,
          ],
          wayOut: MEND,
        };
  return {
    verdict,
    severity: severityOf(about.check),
    place: (about.check === undefined ? undefined : index.placeOfCheck.get(about.check.id)) ?? NOWHERE,
    cause: {
      key: `discrepancy:${discrepancy.id}`,
      at_ms: raised_ms,
      words: `${title}, raised ${whenText(raised_ms, clock)}`,
      reopens: false,
    },
  };
}

const HOW = { "put-right": "put right", "no-fault-found": "no fault found" } as const;

/** Two phones closed it, and not in the same way: both stay, and the pilot hears of it. */
function contestedVerdict(discrepancy: Discrepancy, context: Context): Finding {
  const { clock, index, book } = context;
  const about = aboutOf(discrepancy, context);
  const said = discrepancy.closings.map(
    (closing) => `${closing.author.name}, ${momentText(recorded_ms(closing), clock)}: ${HOW[closing.how]}`,
  );
  const last = discrepancy.closings.at(-1);
  return {
    verdict: {
      id: `disagreement:${discrepancy.id}`,
      topic: "disagreement",
      status: "caution",
      title: titleOf(discrepancy, about),
      says: `Closed in two ways. ${said.join(". ")}`,
      because: [
        "Two people closed it differently; whoever was wrong closes it again, or takes the entry back",
      ],
      working: {
        lines: discrepancy.closings.map((closing) => ({
          label: `${closing.author.name}, ${momentText(recorded_ms(closing), clock)}`,
          value: `${HOW[closing.how]}, released by ${closing.releasedBy}`,
        })),
      },
      evidence: discrepancy.closings.map(({ event }) => event),
      sources: [sourceOf(book, about, discrepancy)],
      subject: { kind: "discrepancy", id: discrepancy.id },
    },
    severity: severityOf(about.check),
    place: (about.check === undefined ? undefined : index.placeOfCheck.get(about.check.id)) ?? NOWHERE,
    ...(last === undefined
      ? {}
      : {
          cause: {
            key: `closed:${last.event}`,
            at_ms: recorded_ms(last),
            words: `Closed a second time ${whenText(recorded_ms(last), clock)}`,
            reopens: false,
          },
        }),
  };
}

/** Every open discrepancy, and every one that was closed in two ways. */
export const discrepancyVerdicts = (context: Context): readonly Finding[] => [
  ...context.discrepancies.open.map((discrepancy) => discrepancyVerdict(discrepancy, context)),
  ...context.discrepancies.contested.map((discrepancy) => contestedVerdict(discrepancy, context)),
];
