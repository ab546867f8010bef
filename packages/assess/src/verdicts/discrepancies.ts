import type { Book, Check, Fault } from "@witnessmark/book";
import type { Discrepancy, PlannedFlight } from "@witnessmark/ledger";
import type { Verdict, WorkingLine } from "../assessment.ts";
import { bookSource, NOWHERE, pointName } from "../book-index.ts";
import type { Context } from "../context.ts";
import { type Finding, severityOf } from "../finding.ts";
import { judge } from "../reading/judge.ts";
import { reliefOnRecord, reliefStanding } from "../relief/relief-in-force.ts";
import { recorded_ms } from "../walk/moments.ts";
import { inside, sentence } from "../words/count-words.ts";
import { type LocalClock, momentText, whenText } from "../words/local-time.ts";
import {
  type Common,
  reliefLines,
  reliefSources,
  reliefText,
  underRelief,
  type WaysOut,
} from "./discrepancy-relief.ts";
import { grown, measuredLines, readText, type Sized, sized } from "./discrepancy-size.ts";
import { MEND, otherWays } from "./discrepancy-ways.ts";

/** Words longer than this are told in the line, not as the title. */
const LONGEST_TITLE = 48;

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

/** `opened again Friday 08:12, by Ben: torn further` for each time. */
const reopened = ({ reopenings }: Discrepancy, clock: LocalClock): readonly string[] =>
  reopenings.map(
    (again) =>
      `opened again ${momentText(recorded_ms(again), clock)}, by ${again.author.name}: ${again.words}`,
  );

/** Without a relief: what was measured inside what the book allows is a caution, because it may grow. */
function bySize(common: Common, size: Sized | undefined, ways: WaysOut): Verdict {
  if (size === undefined)
    return { ...common, status: "stop", because: ["It is not as the book says"], wayOut: ways() };
  const { margin, over } = size;
  return over
    ? {
        ...common,
        margin,
        status: "stop",
        because: [`${margin.text} what the book allows`],
        wayOut: ways(),
      }
    : { ...common, margin, status: "caution", because: [`Inside what the book allows, ${margin.text}`] };
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
    relief === undefined
      ? undefined
      : reliefStanding({ relief, discrepancy, book, state: context.state, flight, clock });
  const title = titleOf(discrepancy, about);
  const raised_ms = recorded_ms(discrepancy.raised);
  const raised = `${momentText(raised_ms, clock)}, by ${discrepancy.raised.author.name}`;
  const told = [
    ...(about.point === undefined || title.startsWith(about.point) ? [] : [about.point]),
    ...(size === undefined ? [] : [size.says]),
    ...grown(discrepancy, clock),
    ...(title === discrepancy.words.replace(/[.]$/, "") ? [] : [discrepancy.words]),
    `raised ${raised}`,
    ...reopened(discrepancy, clock).slice(-1),
    ...(relief === undefined ? [] : [reliefText(relief, clock)]),
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
        ...measuredLines(discrepancy, clock),
        ...reopened(discrepancy, clock).map((value) => ({ label: "Again", value: sentence(value) })),
        ...(relief === undefined ? [] : reliefLines(relief, clock)),
        ...readingLines(about.check, context),
      ],
    },
    evidence: [
      discrepancy.raised.event,
      ...discrepancy.reopenings.map(({ event }) => event),
      ...(relief === undefined ? [] : [relief.event]),
    ],
    sources: [
      sourceOf(book, about, discrepancy),
      ...(relief === undefined || standing === undefined ? [] : reliefSources(relief, standing)),
    ],
    subject: { kind: "discrepancy" as const, id: discrepancy.id },
  };
  const ways: WaysOut = () => [...MEND, ...otherWays(discrepancy, context, flight)];
  const isCovered = size !== undefined && !size.over && standing?.holds !== true; // the book needs no relief for it
  const verdict =
    relief === undefined || standing === undefined || isCovered
      ? bySize(common, size, ways)
      : underRelief(common, { relief, standing, flight, clock, ways });
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
