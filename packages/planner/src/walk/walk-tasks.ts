import type { Book, WalkKind } from "@witnessmark/book";
import { type Ground, isInside, passesThrough, readyShape } from "../geometry/convex.ts";
import type { Obstacle } from "../geometry/obstacles.ts";
import type { Person } from "../geometry/person.ts";
import { reachOf } from "../geometry/reach.ts";
import { planWalk } from "../plan-walk.ts";
import { stepsOf } from "../steps.ts";
import type { Step } from "../walk-plan.ts";

/** One step of a walk and the steps it waits for, by their place in the list. */
export interface StepRules {
  readonly step: Step;
  /** Its stance in the book, by its place there. */
  readonly own: number;
  readonly after: readonly number[];
}

/** One step of a walk as the planner sees it. Stances and steps are named by their place in a list. */
export interface StepTask extends Pick<StepRules, "step" | "after"> {
  /** The stances of the book that serve it; its own first, where that is one of them. */
  readonly at: readonly number[];
}

/**
 * The steps of a walk, each with the steps it waits for: what the book says comes before, and the covers on what is to
 * be looked at; after a flight the covers come last. A piece that the book's own order takes off later than one looks
 * there, chocks say, hides nothing.
 *
 * @param isLeft steps for which this is false are done: nothing waits for them
 */
export function stepRules(
  book: Book,
  kind: WalkKind,
  also: ReadonlySet<string>,
  isLeft: (step: Step) => boolean,
): readonly StepRules[] {
  const plan = planWalk(book, kind, also);
  const own = new Map(
    plan.stops.flatMap((stop) => stop.steps.map((step) => [step, stop.stance.id] as const)),
  );
  const steps = stepsOf(plan).filter(isLeft);
  const numbers = new Map(steps.map((step, i) => [`${step.kind} ${step.id}`, i]));
  const byPoint = Map.groupBy(steps.keys(), (i) => pointIdOf(steps[i]));
  const ranks = new Map(book.stances.map(({ id }, i) => [id, i]));
  return steps.map((step, me) => ({
    step,
    own: ranks.get(own.get(step) ?? "") ?? 0,
    after: [...new Set(waitsFor(step, me))],
  }));

  function waitsFor(step: Step, me: number): readonly number[] {
    const isCovered = (step.kind === "check") === (kind !== "after-flight");
    const covers = isCovered
      ? (byPoint.get(pointIdOf(step)) ?? []).filter((i) => i < me && steps[i]?.kind !== step.kind)
      : [];
    if (step.kind === "ground-gear") return covers;
    const before = step.check.after.flatMap((id) => numbers.get(`check ${id}`) ?? []);
    return [...before, ...covers].filter((one) => one !== me);
  }
}

const pointIdOf = (step: Step | undefined): string =>
  step === undefined ? "" : step.kind === "check" ? step.check.point : step.item.point;

/**
 * The same, each with the stances of the book that serve it. Within the arc of a propeller, or where one is not to be,
 * a step is made only when it can be made nowhere else.
 *
 * @param isReached whether a way leads to a stance; one to which none leads serves only what has no other
 */
export function walkTasks(
  book: Book,
  rules: readonly StepRules[],
  from: { readonly obstacles: readonly Obstacle[]; readonly person: Person },
  isReached: (stance: number) => boolean,
): readonly StepTask[] {
  const keepOuts = from.obstacles.filter(({ kind }) => kind === "keep-out");
  const isFree = book.stances.map(
    ({ place, posture }) => posture === "inside" || !keepOuts.some(({ corners }) => isInside(corners, place)),
  );
  const mayBe = (stance: number): boolean => isFree[stance] === true && isReached(stance);
  const arcs = from.obstacles.flatMap(({ propeller, corners }) =>
    propeller === undefined ? [] : [readyShape(corners)],
  );
  const isThroughArc = (a: Ground, b: Ground): boolean => arcs.some((arc) => passesThrough(arc, a, b));
  return rules.map(({ step, own, after }) => {
    const others = otherStances(book, step, own, { person: from.person, mayBe, isThroughArc });
    return { step, after, at: mayBe(own) || others.length === 0 ? [own, ...others] : others };
  });
}

interface From {
  readonly person: Person;
  readonly mayBe: (stance: number) => boolean;
  /** Whether a straight line on the ground goes through where a propeller turns. */
  readonly isThroughArc: (a: Ground, b: Ground) => boolean;
}

/** So much further off than from its own stance, metres, a step is made just as well. From memory. */
const NO_FURTHER_m = 1;

/**
 * Other stances of the book, on the ground, from which a step can be made just as well: in the posture that the book
 * makes it in, from about as near, and not across the arc of a propeller where its own is not. What is low is not judged
 * standing, nor what is high crouching, nor one wheel from beside the other, though the eye would reach it.
 */
function otherStances(
  book: Book,
  step: Step,
  own: number,
  { person, mayBe, isThroughArc }: From,
): readonly number[] {
  const point = book.points.get(pointIdOf(step));
  const its = book.stances[own];
  if (point === undefined || step.kind !== "check" || its === undefined || its.posture === "inside")
    return [];
  const away_m = (from: Ground) => Math.hypot(point.place[0] - from[0], point.place[1] - from[1]);
  const most_m = away_m(its.place) + NO_FURTHER_m;
  const there: Ground = [point.place[0], point.place[1]];
  const isOwnThrough = isThroughArc(its.place, there);
  const target = { place: point.place, method: step.check.method };
  return book.stances.flatMap(({ place, posture }, i) => {
    if (i === own || posture === "inside" || posture !== its.posture || !mayBe(i)) return [];
    if (away_m(place) > most_m || (!isOwnThrough && isThroughArc(place, there))) return [];
    return reachOf(book.geometry, person, place, posture, target) === undefined ? [] : [i];
  });
}
