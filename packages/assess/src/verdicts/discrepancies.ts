import type { Book, Check, Fault } from "@witnessmark/book";
import { differenceFromSI, roundToSafeSide, toSI, UNITS, withSymbol } from "@witnessmark/engine";
import type { Discrepancy, PlannedFlight, Read } from "@witnessmark/ledger";
import type { Margin, Verdict, WorkingLine } from "../assessment.ts";
import { bookSource, NOWHERE, pointName } from "../book-index.ts";
import type { Context } from "../context.ts";
import { type Finding, severityOf } from "../finding.ts";
import { judge } from "../reading/judge.ts";
import { type ReliefStanding, reliefOnRecord, reliefStanding } from "../relief/relief-in-force.ts";
import { reliefOf } from "../relief/relief-of.ts";
import { recorded_ms } from "../walk/moments.ts";
import { inside, sentence } from "../words/count-words.ts";
import { dayText, type LocalClock, momentText, whenText } from "../words/local-time.ts";

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

type OnRecord = NonNullable<ReturnType<typeof reliefOnRecord>>;

const reliefText = ({ basis, until, placard }: OnRecord): string =>
  [
    `relief by ${basis}`,
    ...(placard === undefined ? [] : ["placard fitted"]),
    ...(until === undefined ? [] : [`put right by ${until}`]),
  ].join(", ");

const reliefLines = (relief: OnRecord): readonly WorkingLine[] => [
  { label: "Relief", value: `${relief.basis}, determined by ${relief.determinedBy}, ${relief.as}` },
  ...relief.steps.map(({ rule, words, holds }) => ({
    label: rule,
    value: `${words}: ${holds ? "yes" : "no"}`,
  })),
  ...(relief.placard === undefined ? [] : [{ label: "Placard", value: relief.placard }]),
  ...(relief.until === undefined ? [] : [{ label: "Until", value: relief.until }]),
];

/** `grew 30 mm since 30 Oct`, or shrank; nothing where it was measured once, or in another dimension. */
function grown({ measurements }: Discrepancy, clock: LocalClock): readonly string[] {
  const [first] = measurements;
  const last = measurements.at(-1);
  if (first === undefined || last === undefined || first === last) return [];
  const { unit } = last.measured;
  if (UNITS[first.measured.unit].dimension !== UNITS[unit].dimension) return [];
  const more = differenceFromSI(
    toSI(last.measured.value, unit) - toSI(first.measured.value, first.measured.unit),
    unit,
  );
  const size = withSymbol(plain(Math.abs(Number(more.toPrecision(6)))), unit);
  const since = dayText(recorded_ms(first), clock);
  return [more === 0 ? `as large as on ${since}` : `${more > 0 ? "grew" : "shrank"} ${size} since ${since}`];
}

type Common = Omit<Extract<Verdict, { status: "clear" }>, "status">;

/** A relief that covers the flight clears it; one that does not, or has ended, leaves the stop as it was. */
function underRelief(common: Common, standing: ReliefStanding): Verdict {
  switch (standing.holds) {
    case true:
      return { ...common, status: "clear", margin: { value: 0, unit: "", text: "relief" } };
    case "unknown":
      return {
        ...common,
        status: "caution",
        margin: { value: 0, unit: "", text: "relief" },
        because: [standing.because],
      };
    case false:
      return { ...common, status: "stop", because: [standing.because], wayOut: MEND };
    default:
      return standing satisfies never;
  }
}

/** Beside putting it right: relief, where no step of the rules bars it; else the permit, by name. */
function otherWays(
  discrepancy: Discrepancy,
  { book }: Context,
  flight: PlannedFlight | null,
): readonly string[] {
  const answer = reliefOf({ book, discrepancy, flight, said: {} });
  if (answer === undefined) return [];
  const { ruling, pack } = answer;
  if (ruling.failing.length === 0)
    return [`Relief may be had: ${ruling.path}, ${pack.title}; see its record`];
  return [`No relief for this flight: ${ruling.failing.join(", ")}. A special permit is a way of its own`];
}

/**
 * The verdict on one open discrepancy. It stops, except where it was measured and the book allows so much: then it is
 * a caution, because it may grow; and where a relief covers the flight.
 */
function discrepancyVerdict(
  discrepancy: Discrepancy,
  context: Context,
  flight: PlannedFlight | null,
): Finding {
  const { book, clock, index } = context;
  const about = aboutOf(discrepancy, context);
  const measured = discrepancy.measurements.at(-1)?.measured;
  const size = sized(about.fault, measured);
  const relief = reliefOnRecord(discrepancy);
  const standing =
    relief === undefined ? undefined : reliefStanding(relief, discrepancy, book, flight, clock);
  const title = titleOf(discrepancy, about);
  const raised_ms = recorded_ms(discrepancy.raised);
  const raised = `${momentText(raised_ms, clock)}, by ${discrepancy.raised.author.name}`;
  const told = [
    ...(about.point === undefined || title.startsWith(about.point) ? [] : [about.point]),
    ...(size === undefined ? [] : [size.says]),
    ...grown(discrepancy, clock),
    ...(title === discrepancy.words.replace(/[.]$/, "") ? [] : [discrepancy.words]),
    `raised ${raised}`,
    ...(relief === undefined ? [] : [reliefText(relief)]),
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
        ...(measured !== undefined && size === undefined
          ? [{ label: "Measured", value: readText(measured) }]
          : []),
        ...(relief === undefined ? [] : reliefLines(relief)),
        ...readingLines(about.check, context),
      ],
    },
    evidence: [discrepancy.raised.event, ...(relief === undefined ? [] : [relief.event])],
    sources: [
      sourceOf(book, about, discrepancy),
      ...(relief === undefined ? [] : [{ title: relief.basis, locator: "the relief on the record" }]),
    ],
    subject: { kind: "discrepancy" as const, id: discrepancy.id },
  };
  const verdict: Verdict =
    standing !== undefined
      ? underRelief(common, standing)
      : size !== undefined && !size.over
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
            wayOut: [...MEND, ...otherWays(discrepancy, context, flight)],
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
export const discrepancyVerdicts = (context: Context, flight: PlannedFlight | null): readonly Finding[] => [
  ...context.discrepancies.open.map((discrepancy) => discrepancyVerdict(discrepancy, context, flight)),
  ...context.discrepancies.contested.map((discrepancy) => contestedVerdict(discrepancy, context)),
];
