import { isLocalDate, type UnitId } from "@witnessmark/engine";
import type { LocalDate } from "@witnessmark/ledger";
import type { RuledStep } from "../relief.ts";
import type { RuledSteps } from "../ruled-steps.ts";
import type { Citations } from "../ruling.ts";

/** One thing that a rule wants to know of the person, by yes or no, out of a list, as a day or as a figure. */
export type Ask = YesNo | Choice | DayAsk | FigureAsk;

interface YesNo {
  readonly kind: "yes-no";
  readonly words: string;
}

interface Choice<Value extends string = string> {
  readonly kind: "choice";
  readonly words: string;
  readonly options: readonly { readonly value: Value; readonly label: string }[];
}

interface DayAsk {
  readonly kind: "date";
  readonly words: string;
}

interface FigureAsk {
  readonly kind: "figure";
  readonly words: string;
  /** What the figure is held in; the name of the ask ends in it. */
  readonly unit: UnitId;
  /** What it is asked in, as the trade reads it. */
  readonly askedIn: UnitId;
  /** Lowest and highest that is taken, in `unit`. */
  readonly range: readonly [low: number, high: number];
}

type Value<A extends Ask> = A extends YesNo
  ? boolean
  : A extends Choice<infer Option>
    ? Option
    : A extends DayAsk
      ? LocalDate
      : number;

/** What was said, by the name of the ask; what is not there is not known. */
export type Said = Readonly<Record<string, boolean | number | string | undefined>>;

type SaidOf<Asks extends Readonly<Record<string, Ask>>> = {
  readonly [Name in keyof Asks]?: Value<Asks[Name]> | undefined;
};

export interface RuleAnswer {
  readonly steps: readonly RuledStep[];
  /** One step that does not hold settles it; one that is not known permits nothing. */
  readonly holds: boolean | "unknown";
  /** One plain line. */
  readonly says: string;
  readonly citations: Citations;
}

/** What a rule of the air says, as questions to a person. */
export interface RuleQuestion {
  /** `after-maintenance` */
  readonly id: string;
  /** What is asked, as a person would: "May it fly after work on it?" */
  readonly title: string;
  readonly subject: Subject;
  /** The id of the rule pack: `us-part-91`. */
  readonly pack: string;
  /** What it is for and whom it binds, where the title does not say. */
  readonly about?: string;
  readonly asks: readonly (Ask & { readonly name: string })[];
  /** Anything may be given; what the ask does not take is not known. */
  readonly answer: (said: Said) => RuleAnswer;
}

export const SUBJECTS = [
  "Work on the aircraft",
  "What does not work",
  "Papers",
  "The pilot",
  "Before and during flight",
  "Ice and water",
  "Entries and signatures",
] as const;
export type Subject = (typeof SUBJECTS)[number];

export const yesNo = (words: string): YesNo => ({ kind: "yes-no", words });
export const day = (words: string): DayAsk => ({ kind: "date", words });
export const figureOf = (
  words: string,
  unit: UnitId,
  askedIn: UnitId,
  range: readonly [number, number],
): FigureAsk => ({ kind: "figure", words, unit, askedIn, range });
/** @param labels what is offered for each value */
export const choice = <Option extends string>(
  words: string,
  labels: Readonly<Record<Option, string>>,
): Choice<Option> => ({
  kind: "choice",
  words,
  // the keys of a record are its own names
  options: (Object.keys(labels) as Option[]).map((value) => ({ value, label: labels[value] })),
});

interface Defined<Asks extends Readonly<Record<string, Ask>>>
  extends Pick<RuleQuestion, "id" | "title" | "subject" | "pack" | "about"> {
  readonly asks: Asks;
  readonly rule: (said: SaidOf<Asks>) => Pick<RuledSteps, "steps" | "citations">;
  /** What is said when every step holds, and when one does not. */
  readonly says: readonly [holds: string, not: string];
  /** What else is worth saying: a last day, the exception that was used. */
  readonly adds?: (said: SaidOf<Asks>) => string | undefined;
}

export function defineQuestion<const Asks extends Readonly<Record<string, Ask>>>({
  asks,
  rule,
  says,
  adds,
  ...question
}: Defined<Asks>): RuleQuestion {
  return {
    ...question,
    asks: Object.entries(asks).map(([name, ask]) => ({ ...ask, name })),
    answer: (given) => {
      const said = readSaid(asks, given);
      const { steps, citations } = rule(said);
      const holds = holdsAll(steps);
      return { steps, holds, says: wordsOf(steps, holds, says, adds?.(said)), citations };
    },
  };
}

function holdsAll(steps: readonly RuledStep[]): boolean | "unknown" {
  if (steps.some(({ holds }) => holds === false)) return false;
  return steps.length > 0 && steps.every(({ holds }) => holds === true) ? true : "unknown";
}

function wordsOf(
  steps: readonly RuledStep[],
  holds: boolean | "unknown",
  [whenHolds, whenNot]: readonly [string, string],
  more: string | undefined,
): string {
  const rulesOf = (wanted: RuledStep["holds"]) => [
    ...new Set(steps.flatMap((step) => (step.holds === wanted ? [step.rule] : []))),
  ];
  const first =
    holds === true
      ? `${whenHolds}.`
      : holds === false
        ? `${whenNot}: ${rulesOf(false).join(", ")}.`
        : `Not known yet: ${rulesOf("unknown").join(", ")}. Not known is no permission.`;
  return more === undefined ? first : `${first} ${more}.`;
}

function readSaid<Asks extends Readonly<Record<string, Ask>>>(asks: Asks, given: Said): SaidOf<Asks> {
  const read = Object.entries(asks).map(([name, ask]) => [name, takes(ask, given[name])]);
  // each value was just held against its own ask
  return Object.fromEntries(read) as SaidOf<Asks>;
}

/** The value, where the ask takes it. */
function takes(ask: Ask, value: Said[string]): Said[string] {
  switch (ask.kind) {
    case "yes-no":
      return typeof value === "boolean" ? value : undefined;
    case "choice":
      return ask.options.some((option) => option.value === value) ? value : undefined;
    case "date":
      return typeof value === "string" && isDay(value) ? value : undefined;
    case "figure":
      // this form refuses NaN too
      return typeof value === "number" && value >= ask.range[0] && value <= ask.range[1] ? value : undefined;
    default:
      return ask satisfies never;
  }
}

/** Days of this and the centuries beside it: sums with them stay within the calendar. */
const isDay = (text: string): boolean => isLocalDate(text) && text >= "1900-01-01" && text <= "2199-12-31";
