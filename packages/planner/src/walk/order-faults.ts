import type { Book, WalkKind } from "@witnessmark/book";
import { type StepRules, stepRules } from "./walk-tasks.ts";

/** What is wrong with an order that was edited by hand; all empty when nothing is. */
export interface OrderFaults {
  /** Steps of the walk that the order leaves out. */
  readonly missed: readonly string[];
  /** Steps that it names more than once. */
  readonly twice: readonly string[];
  /** Names that are no step of this walk. */
  readonly unknown: readonly string[];
  /** Steps that stand before what they must come after. */
  readonly tooEarly: readonly { readonly id: string; readonly after: string }[];
  /** Steps that come after a look which the book wants last, though nothing makes them wait for it. */
  readonly afterLast: readonly string[];
}

export const hasFaults = (faults: OrderFaults): boolean =>
  Object.values(faults).some((list: readonly unknown[]) => list.length > 0);

/** @param order ids of checks and ground gear, as they would be walked */
export function orderFaults(
  book: Book,
  kind: WalkKind,
  order: readonly string[],
  also: ReadonlySet<string> = new Set(),
): OrderFaults {
  const rules = stepRules(book, kind, also, () => true);
  const ids = new Set(rules.map(({ step }) => step.id));
  const first = new Map(order.toReversed().map((id, i) => [id, order.length - 1 - i]));
  const place = (id: string): number => first.get(id) ?? -1;
  const { lasts, late } = lateOf(rules, lastStances(book));
  const lastsAt = lasts.map((one) => place(rules[one]?.step.id ?? "")).filter((at) => at >= 0);
  return {
    missed: [...ids].filter((id) => !first.has(id)),
    twice: [...first.keys()].filter((id) => ids.has(id) && order.lastIndexOf(id) > place(id)).reverse(),
    unknown: [...new Set(order.filter((id) => !ids.has(id)))],
    tooEarly: rules.flatMap(({ step, after }) =>
      after.flatMap((one) => {
        const earlier = rules[one]?.step.id;
        const isBroken = earlier !== undefined && place(step.id) >= 0 && place(step.id) < place(earlier);
        return isBroken ? [{ id: step.id, after: earlier }] : [];
      }),
    ),
    afterLast: rules.flatMap(({ step: { id } }, i) =>
      !late.has(i) && lastsAt.some((at) => at < place(id)) ? [id] : [],
    ),
  };
}

/** The book's stances at which one looks last, by their place in it. */
export const lastStances = (book: Book, ids: readonly string[] = book.last ?? []): ReadonlySet<number> =>
  new Set(ids.map((id) => book.stances.findIndex((stance) => stance.id === id)));

/** The steps that are done last, and with them (`late`) those that wait for one of them. */
export function lateOf(
  rules: readonly Pick<StepRules, "own" | "after">[],
  stances: ReadonlySet<number>,
): { readonly lasts: readonly number[]; readonly late: ReadonlySet<number> } {
  const lasts = rules.flatMap(({ own }, i) => (stances.has(own) ? [i] : []));
  const late = new Set(lasts);
  for (let count = -1; count !== late.size; ) {
    count = late.size;
    for (const [i, { after }] of rules.entries()) if (after.some((one) => late.has(one))) late.add(i);
  }
  return { lasts, late };
}
