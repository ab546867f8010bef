import type { Status } from "@witnessmark/ledger";
import type { Step, Stop, WalkPlan } from "./walk-plan.ts";

/** As much of an assessment as says what is still open. */
export interface Answered {
  readonly verdicts: readonly {
    readonly status: Status;
    readonly subject?: { readonly kind: string; readonly id: string };
  }[];
}

/** Every step of a walk, in order. */
export const stepsOf = (plan: WalkPlan): readonly Step[] => plan.stops.flatMap((stop) => stop.steps);

const key = (kind: string, id: string): string => `${kind} ${id}`;

/**
 * The steps still to do, in the order of the walk.
 *
 * @param seen the ids of the steps that are done; or an assessment, of which every open verdict leaves its step open
 */
export function stepsLeft(plan: WalkPlan, seen: ReadonlySet<string> | Answered): readonly Step[] {
  if (!("verdicts" in seen)) return stepsOf(plan).filter((step) => !seen.has(step.id));
  const open = new Set<string>();
  for (const { status, subject } of seen.verdicts) {
    if (status === "open" && subject !== undefined) open.add(key(subject.kind, subject.id));
  }
  return stepsOf(plan).filter((step) => open.has(key(step.kind, step.id)));
}

/**
 * The next open step onward from one, wrapping round to the start of the walk; the step itself comes last.
 *
 * @param fromStepId where one stands; from the start when null or when the plan has no such step
 * @returns undefined when nothing is open
 */
export function nextStep(
  plan: WalkPlan,
  fromStepId: string | null,
  isOpen: (step: Step) => boolean,
): Step | undefined {
  const steps = stepsOf(plan);
  const here = steps.findIndex((step) => step.id === fromStepId);
  return [...steps.slice(here + 1), ...steps.slice(0, here + 1)].find(isOpen);
}

/** The stop at which a step is done, or undefined when the plan has no such step. */
export const stopOf = (plan: WalkPlan, stepId: string): Stop | undefined =>
  plan.stops.find((stop) => stop.steps.some((step) => step.id === stepId));
