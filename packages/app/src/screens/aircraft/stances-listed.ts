import type { Book, Check } from "@witnessmark/book";
import type { WalkPlan } from "@witnessmark/planner";

/** A stance as the first walk of the day comes to it. */
export interface ListedStance {
  /** Its number on the walk, its drawing and its paper; `undefined` where that walk does not stop. */
  readonly number: number | undefined;
  readonly stance: string;
  readonly name: string;
  readonly checks: readonly Check[];
}

/**
 * Every check of a book at its stance, numbered and in the order in which the plan walks them; what the plan leaves out
 * follows without a number.
 */
export function stancesListed(book: Book, plan: WalkPlan): readonly ListedStance[] {
  const walked = plan.stops.map(({ number, stance, steps }) => ({
    number,
    stance: stance.id,
    name: stance.name,
    checks: steps.flatMap((step) => (step.kind === "check" ? [step.check] : [])),
  }));
  const ids = new Set(walked.flatMap(({ checks }) => checks.map(({ id }) => id)));
  const rest = book.stances.flatMap(({ id, name }): readonly ListedStance[] => {
    const checks = book.checks.filter((check) => check.stance === id && !ids.has(check.id));
    return checks.length === 0 ? [] : [{ number: undefined, stance: id, name, checks }];
  });
  return [...walked, ...rest];
}
