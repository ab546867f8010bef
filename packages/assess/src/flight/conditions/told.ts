import type { Status } from "@witnessmark/ledger";
import type { Flight, Margin, Source, Verdict, VerdictTopic, Working } from "../../assessment.ts";
import type { Context } from "../../context.ts";
import type { Finding } from "../../finding.ts";
import { findingLater, some } from "../finding-of.ts";
import type { FieldGround } from "./field-figures.ts";
import type { Figure, Missing } from "./figure.ts";

export type Plan = NonNullable<Flight["plan"]>;

/** What of a plan the verdicts of a field are made from, beside the field itself, its time and the masses. */
export type FieldPlan = Pick<Plan, "own" | "rulePack" | "flightRules" | "alternate">;

/** What the verdicts of one field are made from; only those of distances ask for what a mass moves. */
export interface FieldContext<Figures extends FieldGround = FieldGround> {
  readonly context: Context;
  readonly plan: FieldPlan;
  readonly figures: Figures;
  /** The event that planned the flight. */
  readonly evidence: readonly string[];
}

/** One verdict on its way: what it says whatever it is worth, and what it would say for each. */
export interface Draft {
  readonly id: string;
  readonly topic: VerdictTopic;
  readonly title: string;
  readonly says: string;
  readonly margin?: Margin | undefined;
  readonly lines?: Working["lines"];
  readonly formula?: { readonly id: string; readonly formula: string };
  readonly sources: readonly Source[];
  readonly because?: readonly string[];
  readonly wayOut?: readonly string[];
  /** Until when, and why it does not hold then. */
  readonly until?: { readonly at_ms: number; readonly because: string } | undefined;
}

/** What a verdict is worth that stops no flight. */
export type Warned = Exclude<Status, "stop">;

/** A finding, and the parts of the plan or the book that it only waits for. */
export interface Told<S extends Status = Status> {
  readonly finding: Finding;
  readonly status: S;
  /** Set when it is open for nothing but these, each told by a verdict of its own. */
  readonly waitsFor?: readonly Missing[];
}

export const NOT_KNOWN: Margin = { value: 0, unit: "", text: "not known" };

/**
 * What a status is worth with what is not known of it: a stop stays one whatever else comes; anything else is open
 * while something is missing.
 */
export const withMissing = <S extends Status>(
  status: S | undefined,
  missing: readonly Missing[],
): S | "open" => (status === "stop" ? status : missing.length > 0 || status === undefined ? "open" : status);

/** A draft that is written when somebody reads its verdict. */
export interface DraftLater {
  readonly id: string;
  readonly write: () => Omit<Draft, "id">;
}

/** Makes the verdict of a draft: its worth at once, its words when somebody reads them. */
export function told<S extends Status>(
  { evidence }: Pick<FieldContext, "evidence">,
  draft: Draft | DraftLater,
  status: S,
  missing: readonly Missing[] = [],
): Told<S> {
  const { id } = draft;
  const one = findingLater({ id, status }, () =>
    verdictOf("write" in draft ? { ...draft.write(), id } : draft, evidence, status, missing),
  );
  const waits = status === "open" && missing.length > 0 && missing.every(({ root }) => root !== undefined);
  return waits ? { finding: one, status, waitsFor: missing } : { finding: one, status };
}

function verdictOf(
  draft: Draft,
  evidence: readonly string[],
  status: Status,
  missing: readonly Missing[],
): Verdict {
  const {
    id,
    topic,
    title,
    says,
    margin,
    lines = [],
    formula,
    sources,
    because = [],
    wayOut = [],
    until,
  } = draft;
  const base = {
    id,
    topic,
    title,
    says,
    ...(margin === undefined ? {} : { margin }),
    working: {
      lines,
      ...(formula === undefined ? {} : { formula: { quantity: formula.id, text: formula.formula } }),
    },
    evidence,
    sources,
  };
  const ends = until === undefined ? {} : { holdsUntil_ms: until.at_ms, holdsBecause: until.because };
  switch (status) {
    case "clear":
      return { ...base, ...ends, status };
    case "caution":
      return { ...base, ...ends, status, because: some(because, says) };
    case "stop":
      return {
        ...base,
        status,
        because: some(because, says),
        wayOut: some(wayOut, "Wait, or go another way"),
      };
    case "open":
      return {
        ...base,
        status,
        missing: some(
          missing.map(({ what }) => what),
          says,
        ),
      };
    default:
      return status satisfies never;
  }
}

/** Until when a figure holds, in words. */
export const untilOf = (
  { holdsUntil_ms }: Pick<Figure<unknown>, "holdsUntil_ms">,
  code: string,
): Draft["until"] =>
  holdsUntil_ms === undefined
    ? undefined
    : { at_ms: holdsUntil_ms, because: `what is known of the weather at ${code} is then too old` };

export const openSays = (missing: readonly Missing[]): string => {
  const [first] = missing;
  if (first === undefined) return "Not known";
  const more = missing.length > 1 ? ", and more" : "";
  return `Not known: ${first.what}${more}`;
};
