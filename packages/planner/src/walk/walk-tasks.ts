import type { Book, WalkKind } from "@witnessmark/book";
import { isInside } from "../geometry/convex.ts";
import type { Obstacle } from "../geometry/obstacles.ts";
import type { Person } from "../geometry/person.ts";
import { reachOf } from "../geometry/reach.ts";
import { planWalk } from "../plan-walk.ts";
import { stepsOf } from "../steps.ts";
import type { Step } from "../walk-plan.ts";

/** One step of a walk as the planner sees it. Stances and steps are named by their place in a list. */
export interface StepTask {
  readonly step: Step;
  readonly at: readonly number[];
  readonly after: readonly number[];
}

/**
 * The steps of a walk, each with the stances of the book that serve it (its own first) and the steps it waits for:
 * what the book says comes before, and the covers on what is to be looked at; after a flight the covers come last.
 *
 * @param isLeft steps for which this is false are done: nothing waits for them
 */
export function walkTasks(
  book: Book,
  kind: WalkKind,
  also: ReadonlySet<string>,
  isLeft: (step: Step) => boolean,
  from: { readonly obstacles: readonly Obstacle[]; readonly person: Person },
): readonly StepTask[] {
  const plan = planWalk(book, kind, also);
  const own = new Map(
    plan.stops.flatMap((stop) => stop.steps.map((step) => [step, stop.stance.id] as const)),
  );
  const steps = stepsOf(plan).filter(isLeft);
  const numbers = new Map(steps.map((step, i) => [`${step.kind} ${step.id}`, i]));
  return steps.map((step, me) => {
    const stance = book.stances.findIndex(({ id }) => id === own.get(step));
    return {
      step,
      at: [stance, ...otherStances(book, step, stance, from)],
      after: [...new Set(waitsFor(step, me))],
    };
  });

  function waitsFor(step: Step, me: number): readonly number[] {
    const isAtItsPoint = (other: Step): boolean => pointIdOf(other) === pointIdOf(step);
    const ofOtherKind = steps.flatMap((other, i) =>
      other.kind !== step.kind && isAtItsPoint(other) ? [i] : [],
    );
    const covers = (step.kind === "check") === (kind !== "after-flight") ? ofOtherKind : [];
    if (step.kind === "ground-gear") return covers;
    const before = step.check.after.flatMap((id) => numbers.get(`check ${id}`) ?? []);
    return [...before, ...covers].filter((one) => one !== me);
  }
}

const pointIdOf = (step: Step): string => (step.kind === "check" ? step.check.point : step.item.point);

/** Other stances of the book, on the ground, from which a step can be made just as well. */
function otherStances(
  book: Book,
  step: Step,
  own: number,
  { obstacles, person }: { readonly obstacles: readonly Obstacle[]; readonly person: Person },
): readonly number[] {
  const point = book.points.get(pointIdOf(step));
  if (point === undefined || step.kind !== "check" || book.stances[own]?.posture === "inside") return [];
  const target = { place: point.place, method: step.check.method };
  return book.stances.flatMap(({ place, posture }, i) => {
    if (i === own || posture === "inside") return [];
    if (obstacles.some(({ kind, corners }) => kind === "keep-out" && isInside(corners, place))) return [];
    return reachOf(book.geometry, person, place, posture, target) === undefined ? [] : [i];
  });
}
