import type { KindOfOperation } from "@witnessmark/book";
import type { AircraftState, PlannedFlight, Walk } from "@witnessmark/ledger";
import type { Margin, Source, Verdict, WorkingLine } from "../assessment.ts";
import { bookSource } from "../book-index.ts";
import type { Context } from "../context.ts";
import type { Finding } from "../finding.ts";
import { finding } from "../flight/finding-of.ts";
import { KIND_WORDS } from "../flight/kinds-of-flight.ts";
import { sentence } from "../words/count-words.ts";
import { componentRan } from "./component-aboard.ts";
import { toleranceOf } from "./due.ts";
import { endOfLocalDay_ms } from "./local-day.ts";
import { type LimitLeft, type TimedFigure, timedFigures } from "./timed-figures.ts";
import { dateText, endsText, leftText, untilText } from "./timed-words.ts";

const WAY_OUT_AIRCRAFT =
  "Have it done and released by whom the rules ask for, then write down when it was done";
const WAY_OUT_PILOT = "Have it renewed, or do what is missing, then write down when it was done";

/** Whose own items count: the pilot of the walk in hand. */
export const pilotOf = (walk: Walk | null, state: AircraftState): string | undefined =>
  walk?.author.id ?? [...state.walks.values()].at(-1)?.author.id;

function marginOf({ nearest, recency }: TimedFigure): Margin {
  const text =
    nearest === undefined && recency !== undefined ? `${recency.have} of ${recency.need}` : leftText(nearest);
  if (nearest === undefined || nearest.by === "unknown") return { value: 0, unit: "", text };
  return nearest.by === "date"
    ? { value: nearest.left_d, unit: "d", text }
    : { value: nearest.left, unit: nearest.counter.unit === "h" ? "h" : "", text };
}

function kindsText(kinds: readonly KindOfOperation[]): string {
  return kinds.map((kind) => KIND_WORDS[kind]).join(", ");
}

/** Which one is there, and what it has run by the counters that the item runs by. */
function aboardLines({ item, aboard }: TimedFigure, { book, state, clock }: Context): readonly WorkingLine[] {
  if (aboard === undefined) return [];
  const day = dateText(aboard.on, clock);
  const counters = book.counters.filter(({ id }) =>
    item.limits.some((limit) => limit.by === "counter" && limit.counter === id),
  );
  return [
    {
      label: aboard.isFitted ? "Fitted" : "Removed",
      value: `Number ${aboard.serial}, on ${day}`,
    },
    ...counters.flatMap(({ id, name, unit }): readonly WorkingLine[] => {
      const then = aboard.ran[id];
      const now = aboard.isFitted ? componentRan(state, aboard, id) : undefined;
      const text = (value: number | undefined): string =>
        value === undefined
          ? "not known"
          : `${value.toLocaleString("en", { maximumFractionDigits: 1 })}${unit === "h" ? " h" : ""}`;
      return [
        { label: `It had run then, ${name.toLowerCase()}`, value: text(then) },
        ...(aboard.isFitted ? [{ label: "It has run now", value: text(now) }] : []),
      ];
    }),
  ];
}

function workingOf(figure: TimedFigure, context: Context): readonly WorkingLine[] {
  const { clock } = context;
  const { item, last, limits, recency } = figure;
  const tolerance = toleranceOf(item);
  return [
    ...(item.rule === undefined ? [] : [{ label: "Asked by", value: item.rule }]),
    ...(recency === undefined
      ? []
      : [
          { label: "Counted", value: `${recency.have}, ${recency.need} needed` },
          ...(recency.unsure === 0
            ? []
            : [{ label: "Not counted", value: `${recency.unsure}, of a class that was not said` }]),
        ]),
    ...(last === undefined
      ? []
      : [
          {
            label: "Last done",
            value: `${dateText(last.on, clock)}, by ${last.by}${lastReference(last.reference)}`,
          },
        ]),
    ...aboardLines(figure, context),
    ...limits.flatMap((left): readonly WorkingLine[] => [
      {
        label:
          limits.length === 1
            ? "Limit"
            : item.combine === "first"
              ? "Whichever is first"
              : "Whichever is later",
        value: untilText(left, clock),
      },
      ...(left.by === "counter" ? [{ label: `${left.counter.name} now`, value: nowText(left) }] : []),
    ]),
    ...(item.neededFor === undefined ? [] : [{ label: "Needed", value: kindsText(item.neededFor) }]),
    ...(tolerance === undefined
      ? []
      : [
          {
            label: "Tolerance",
            value: `${tolerance.rule}${tolerance.onlyWhen === undefined ? "" : `; ${tolerance.onlyWhen}`}`,
          },
        ]),
  ];
}

const lastReference = (reference: string | undefined): string =>
  reference === undefined ? "" : `, ${reference}`;

function nowText(left: Extract<LimitLeft, { by: "counter" }>): string {
  const now = left.now.toLocaleString("en", { maximumFractionDigits: 1 });
  const proxy = left.counter.proxyFor === undefined ? "" : `, for ${left.counter.proxyFor.toLowerCase()}`;
  return `${now}${left.counter.unit === "h" ? " h" : ""}${proxy}`;
}

const sourcesOf = (figure: TimedFigure, { book }: Context): readonly Source[] =>
  figure.isInBook
    ? [bookSource(book, `timed item ${figure.item.id}`)]
    : [{ title: "Added by a person to the record of this aircraft", locator: figure.item.id }];

function warns(item: TimedFigure["item"], nearest: LimitLeft | undefined): boolean {
  if (!("warn" in item) || item.warn === undefined || nearest === undefined) return false;
  if (nearest.by === "date") return item.warn.days !== undefined && nearest.left_d <= item.warn.days;
  return (
    nearest.by === "counter" &&
    nearest.counter.unit === "h" &&
    item.warn.hours !== undefined &&
    nearest.left * 3600 <= item.warn.hours.valueSI
  );
}

function saysOf(figure: TimedFigure, context: Context): string {
  const { item, nearest, recency, limits } = figure;
  const told = [
    ...(recency === undefined ? [] : [`${recency.have} of ${recency.need} that count`]),
    ...(nearest === undefined ? [] : [tail(untilText(nearest, context.clock), recency !== undefined)]),
    ...(limits.length > 1 && item.combine === "first" ? ["whichever is first"] : []),
    ...(item.instead === undefined ? [] : [`without it: ${item.instead}`]),
  ];
  return sentence(told.join(", "));
}

/** What follows in a sentence begins small. */
const tail = (words: string, follows: boolean): string =>
  follows ? words.charAt(0).toLowerCase() + words.slice(1) : words;

/** Of the limits that end during the flight, how the first does. */
const endingOf = ({ limits }: TimedFigure, { clock }: Context): string | undefined =>
  limits
    .filter((left) => left.by !== "unknown" && !left.past && left.pastAfterFlight === true)
    .map((left) => endsText(left, clock))
    .find((ends) => ends !== undefined);

/** When it stops being good by its date alone, in the past never. */
function holds(figure: TimedFigure, context: Context): Pick<Verdict, "holdsUntil_ms" | "holdsBecause"> {
  const dates = figure.limits.flatMap((left) => (left.by === "date" && !left.past ? [left.on] : []));
  const [first] = dates.toSorted();
  if (first === undefined || (figure.item.combine === "later" && dates.length < figure.limits.length))
    return {};
  const last = figure.item.combine === "first" ? first : (dates.toSorted().at(-1) ?? first);
  return {
    holdsUntil_ms: endOfLocalDay_ms(last, context.clock.offset_min),
    holdsBecause: `${figure.item.name} runs out`,
  };
}

/** What every verdict on something that runs out says, whatever it comes to. */
type Common = Omit<Extract<Verdict, { status: "clear" }>, "status">;

/** What has run out, or does so before the planned flight is over: by how much and when. */
function runOut(figure: TimedFigure, context: Context, common: Common): Verdict {
  const { item, state, needed, recency } = figure;
  const ends = state === "past" ? undefined : endingOf(figure, context);
  const isPast = recency === undefined ? "It has run out" : "Too few count";
  const during = `It runs out during this flight${ends === undefined ? "" : `: ${ends}`}`;
  const because = state === "past" ? isPast : during;
  // needed by some kinds of flight, and nobody has said whether this is one
  if (needed === undefined && item.neededFor !== undefined)
    return {
      ...common,
      status: "caution",
      because: [`${because}; not for a flight ${kindsText(item.neededFor)}`],
    };
  const wayOut = item.about === "pilot" ? WAY_OUT_PILOT : WAY_OUT_AIRCRAFT;
  return {
    ...common,
    ...(ends === undefined ? {} : { says: `Runs out during this flight: ${ends}. ${common.says}` }),
    status: "stop",
    because: [because],
    wayOut: item.instead === undefined ? [wayOut] : [wayOut, `Or without it: ${item.instead}`],
  };
}

/** The verdict on one thing that runs out. */
export function timedVerdict(figure: TimedFigure, context: Context): Verdict {
  const { item, state, needed, last } = figure;
  const common = {
    id: `timed:${item.id}`,
    topic: "timed" as const,
    title: item.name,
    says: saysOf(figure, context),
    margin: marginOf(figure),
    working: { lines: workingOf(figure, context) },
    evidence: [
      ...(last === undefined ? [] : [last.event]),
      ...(figure.aboard === undefined ? [] : [figure.aboard.event]),
      ...(figure.recency?.evidence ?? []),
    ],
    sources: sourcesOf(figure, context),
    subject: { kind: "timed" as const, id: item.id },
  };
  const notFor = item.neededFor === undefined ? "" : kindsText(item.neededFor);
  // a flight that does not need it: told as what it is good for, and never a stop
  if (needed === false && state !== "good") {
    return {
      ...common,
      status: "clear",
      says: sentence(`Not needed for this flight, only ${notFor}. ${common.says}`),
    };
  }
  switch (state) {
    case "good":
      return warns(item, figure.nearest)
        ? {
            ...common,
            ...holds(figure, context),
            status: "caution",
            because: [`Runs out soon: ${common.margin.text} left`],
          }
        : { ...common, ...holds(figure, context), status: "clear" };
    case "unknown":
      return {
        ...common,
        status: "open",
        missing: some(figure.limits.flatMap((left) => (left.by === "unknown" ? [left.lacks] : []))),
      };
    case "in-tolerance":
      return {
        ...common,
        status: "caution",
        because: [
          `Past its limit, within a tolerance: ${toleranceOf(item)?.onlyWhen ?? toleranceOf(item)?.rule ?? ""}`,
        ],
      };
    case "past":
    case "ends-in-flight":
      return runOut(figure, context, common);
    default:
      return state satisfies never;
  }
}

const some = (lacks: readonly string[]): readonly [string, ...string[]] => {
  const [first, ...more] = [...new Set(lacks)];
  return first === undefined ? ["how long the flight takes"] : [first, ...more];
};

/** A verdict for everything that runs out: whether it has, and whether it does during the planned flight. */
export function timedVerdicts(context: Context, flight: PlannedFlight | null): readonly Finding[] {
  const { book, state, clock, walk } = context;
  return timedFigures({ book, state, flight, clock, pilot: pilotOf(walk, state) }).map((figure) =>
    finding(timedVerdict(figure, context)),
  );
}
