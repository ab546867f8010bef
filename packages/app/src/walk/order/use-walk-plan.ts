import type { WalkKind } from "@witnessmark/book";
import type { WalkPlan } from "@witnessmark/planner";
import { useEffect, useMemo, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { alsoOf, planOf } from "../walk-plan.ts";
import { knownOrder, plannedOrder, useKnownOrders } from "./known-orders.ts";
import { myOrder, useMyOrders } from "./my-orders.ts";
import { turnOf, useTurn } from "./walk-turn.ts";

export interface PlanOnScreen {
  readonly plan: WalkPlan;
  /** False for the moment in which the order is still being planned: the plan is in the book's order until then. */
  readonly isPlanned: boolean;
}

/** The plans of walks in their orders, drawn again when an order comes or is changed. */
export function useWalkPlans(
  { book, state, assessment, registration }: OpenAircraft,
  kinds: readonly WalkKind[],
  walk: string | undefined,
): readonly PlanOnScreen[] {
  const [known, mine, turn] = [useKnownOrders(), useMyOrders(), useTurn()];
  const wanted = useMemo(
    () => kinds.map((kind) => ({ kind, also: alsoOf(book, kind, walk, state, assessment) })),
    [book, kinds, walk, state, assessment],
  );
  const [gaveUp, setGaveUp] = useState(false);
  useEffect(() => {
    // a walk that cannot be planned is walked in the book's order
    const orBookOrder = (): void => setGaveUp(true);
    for (const { kind, also } of wanted) {
      plannedOrder(book, kind, []).catch(orBookOrder);
      if (also.length > 0) plannedOrder(book, kind, also).catch(orBookOrder);
    }
  }, [book, wanted]);
  return useMemo(() => {
    void [known, mine, turn]; // what `planOf` reads
    return wanted.map(({ kind }) => ({
      plan: planOf(book, kind, walk, state, assessment),
      isPlanned:
        gaveUp || (turnOf(walk) ?? myOrder(registration, kind) ?? knownOrder(book, kind, [])) !== undefined,
    }));
  }, [book, wanted, walk, state, assessment, registration, known, mine, turn, gaveUp]);
}

/** The plan of one kind of walk that has not begun. */
export function useWalkPlan(open: OpenAircraft, kind: WalkKind): WalkPlan {
  const kinds = useMemo(() => [kind], [kind]);
  const [found] = useWalkPlans(open, kinds, undefined);
  return found?.plan ?? planOf(open.book, kind, undefined, open.state, open.assessment);
}
