import type { Book, WalkKind } from "@witnessmark/book";
import { PERSON } from "../geometry/person.ts";
import { walkTasks } from "./walk-tasks.ts";

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
}

/** @param order ids of checks and ground gear, as they would be walked */
export function orderFaults(
  book: Book,
  kind: WalkKind,
  order: readonly string[],
  also: ReadonlySet<string> = new Set(),
): OrderFaults {
  const tasks = walkTasks(book, kind, also, () => true, { obstacles: [], person: PERSON });
  const ids = new Set(tasks.map(({ step }) => step.id));
  const first = new Map(order.toReversed().map((id, i) => [id, order.length - 1 - i]));
  const place = (id: string): number => first.get(id) ?? -1;
  return {
    missed: [...ids].filter((id) => !first.has(id)),
    twice: [...first.keys()].filter((id) => ids.has(id) && order.lastIndexOf(id) > place(id)).reverse(),
    unknown: [...new Set(order.filter((id) => !ids.has(id)))],
    tooEarly: tasks.flatMap(({ step, after }) =>
      after.flatMap((one) => {
        const earlier = tasks[one]?.step.id;
        const isBroken = earlier !== undefined && place(step.id) >= 0 && place(step.id) < place(earlier);
        return isBroken ? [{ id: step.id, after: earlier }] : [];
      }),
    ),
  };
}
