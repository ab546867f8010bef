import type { Assessment } from "@witnessmark/assess";
import type { AircraftState, CheckAnswer, Status, Walk } from "@witnessmark/ledger";
import { nextStep, type Step, type Stop, stepsOf, type WalkPlan } from "@witnessmark/planner";

/** One step as this walk sees it. */
export interface StepView {
  readonly step: Step;
  readonly stop: Stop;
  /** Open until it is answered in this walk; then what the assessment makes of it. */
  readonly status: Status;
  /** The last answer in this walk, also one that was "could not check". */
  readonly answer: CheckAnswer | undefined;
  /** An interruption asks for it again. */
  readonly askedAgain: boolean;
  /** What the assessment says of it, in one line. */
  readonly says: string | undefined;
}

/** A walk as its screens see it. */
export interface WalkView {
  readonly walk: Walk;
  readonly plan: WalkPlan;
  readonly steps: readonly StepView[];
  readonly byId: ReadonlyMap<string, StepView>;
  /** Status of every step, by stop. */
  readonly groups: readonly (readonly Status[])[];
  readonly left: number;
}

export function walkView(
  walk: Walk,
  plan: WalkPlan,
  state: AircraftState,
  assessment: Pick<Assessment, "verdicts">,
): WalkView {
  const answers = new Map<string, CheckAnswer>();
  for (const answer of state.answersByWalk.get(walk.id) ?? []) answers.set(answer.check, answer);
  const verdicts = new Map<string, Assessment["verdicts"][number]>();
  for (const verdict of assessment.verdicts) {
    if (verdict.subject === undefined) continue;
    const key = `${verdict.subject.kind} ${verdict.subject.id}`;
    // they come worst first
    if (!verdicts.has(key)) verdicts.set(key, verdict);
  }
  const steps = plan.stops.flatMap((stop) =>
    stop.steps.map((step): StepView => {
      const verdict = verdicts.get(`${step.kind} ${step.id}`);
      if (step.kind === "ground-gear") {
        return {
          step,
          stop,
          status: verdict?.status ?? "open",
          answer: undefined,
          askedAgain: false,
          says: verdict?.says,
        };
      }
      const answer = answers.get(step.id);
      return {
        step,
        stop,
        answer,
        status: checkStatus(answer, verdict?.status),
        says: verdict?.says,
        askedAgain: walk.askedAgain.includes(step.id),
      };
    }),
  );
  const byId = new Map(steps.map((view) => [view.step.id, view]));
  return {
    walk,
    plan,
    steps,
    byId,
    groups: plan.stops.map((stop) => stop.steps.map((step) => byId.get(step.id)?.status ?? "open")),
    left: steps.filter((view) => view.status === "open").length,
  };
}

function checkStatus(answer: CheckAnswer | undefined, verdict: Status | undefined): Status {
  if (answer === undefined || answer.askedAgainBy !== undefined) return "open";
  if (answer.answer === "could-not-check") return "open";
  return verdict ?? (answer.answer === "as-it-should-be" ? "clear" : "stop");
}

/** How many pieces of an item were counted off since the walk began. */
export function piecesOffCount(state: AircraftState, walk: Pick<Walk, "hlc">, item: string): number {
  const gear = state.groundGear.get(item);
  return (gear?.removals ?? [])
    .filter((removal) => removal.hlc > walk.hlc)
    .reduce((sum, removal) => sum + removal.count, 0);
}

/**
 * The step to put in hand: what an interruption asks for again, then onward from the last one answered. `undefined`
 * when nothing is left but what was put off; that is told by name at the end of the walk.
 *
 * @param putOff ids of steps that were skipped
 */
export function stepInHand(
  view: WalkView,
  fromStepId: string | null,
  putOff: ReadonlySet<string>,
): StepView | undefined {
  const again = view.walk.askedAgain
    .map((id) => view.byId.get(id))
    .find((step) => step?.status === "open" && !putOff.has(step.step.id));
  if (again !== undefined) return again;
  const isNext = (step: Step) =>
    view.byId.get(step.id)?.status === "open" && !isPutOff(view, step.id, putOff);
  const next = nextStep(view.plan, fromStepId, isNext);
  return next === undefined ? undefined : view.byId.get(next.id);
}

function isPutOff(view: WalkView, id: string, putOff: ReadonlySet<string>): boolean {
  const found = view.byId.get(id);
  return putOff.has(id) || found?.answer?.answer === "could-not-check" || waits(view, found);
}

/** It was looked at, and to look again changes nothing until what must come before it has been done. */
const waits = (view: WalkView, found: StepView | undefined): boolean =>
  found?.step.kind === "check" &&
  found.answer?.answer === "as-it-should-be" &&
  found.step.check.after.some((before) => view.byId.get(before)?.status === "open");

/** The step that a person answered last in this walk; from there the walk goes on. */
export function lastTouched(view: WalkView, state: AircraftState, personId: string): StepView | undefined {
  let latest: { hlc: string; id: string } | undefined;
  const consider = (hlc: string, id: string) => {
    if (latest === undefined || hlc > latest.hlc) latest = { hlc, id };
  };
  for (const answer of state.answersByWalk.get(view.walk.id) ?? []) {
    if (answer.author.id === personId) consider(answer.hlc, answer.check);
  }
  for (const step of stepsOf(view.plan)) {
    const gear = step.kind === "ground-gear" ? state.groundGear.get(step.id) : undefined;
    if (gear !== undefined && gear.last.author.id === personId && gear.last.hlc > view.walk.hlc) {
      consider(gear.last.hlc, step.id);
    }
  }
  return latest === undefined ? undefined : view.byId.get(latest.id);
}

/** The name of what a step looks at: the point of a check, the piece of gear. */
export function stepName(step: Step, points: ReadonlyMap<string, { readonly name: string }>): string {
  if (step.kind === "ground-gear") return step.item.name;
  return points.get(step.check.point)?.name ?? step.check.title;
}

/**
 * The same, and which of several checks of this walk at that point it is: "Left tyre, 2 of 3". Two answers in a row
 * then never read alike, so that each is seen to be kept.
 */
export function stepNameAmong(
  view: WalkView,
  step: Step,
  points: ReadonlyMap<string, { readonly name: string }>,
): string {
  const name = stepName(step, points);
  if (step.kind === "ground-gear") return name;
  const same = view.steps.filter(
    ({ step: each }) => each.kind === "check" && each.check.point === step.check.point,
  );
  if (same.length < 2) return name;
  return `${name}, ${same.findIndex(({ step: each }) => each.id === step.id) + 1} of ${same.length}`;
}

/** Where one stands for it: "crouch at stance 10", "inside, stance 1". */
export function postureText(stop: Stop): string {
  switch (stop.stance.posture) {
    case "crouch":
      return `crouch at stance ${stop.number}`;
    case "inside":
      return `inside, stance ${stop.number}`;
    case "stand":
      return `stance ${stop.number}`;
    default:
      return stop.stance.posture satisfies never;
  }
}
