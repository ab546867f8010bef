import type { Book, WalkKind } from "@witnessmark/book";
import { planWalk } from "../plan-walk.ts";

/**
 * The manual's order as ids of checks and ground gear, for a walk for which the book has one.
 *
 * A stance stands for all that is done there and is not named by itself, as `planWalk` puts it: covers first, and after
 * a flight last. What the manual does not name is not in it.
 */
export function manualOrder(
  book: Book,
  kind: WalkKind,
  also: ReadonlySet<string> = new Set(),
): readonly string[] | undefined {
  const { order } = book;
  if (order === undefined || !order.walks.includes(kind)) return undefined;
  const atStance = new Map(planWalk(book, kind, also).stops.map(({ stance, steps }) => [stance.id, steps]));
  const key = (of: string, id: string): string => `${of} ${id}`;
  const all = new Set(
    [...atStance.values()].flatMap((steps) => steps.map((step) => key(step.kind, step.id))),
  );
  const named = new Set(order.steps.map((step) => key(step.kind, step.id)));
  return order.steps.flatMap((step) => {
    if (step.kind !== "stance") return all.has(key(step.kind, step.id)) ? [step.id] : [];
    const here = atStance.get(step.id) ?? [];
    return here.filter((each) => !named.has(key(each.kind, each.id))).map(({ id }) => id);
  });
}
