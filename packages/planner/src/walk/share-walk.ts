import type { Book, WalkKind } from "@witnessmark/book";
import { solveCover } from "../cover/solve-cover.ts";
import { step_s } from "../estimate.ts";
import { inGivenOrder } from "./given-order.ts";
import { manualOrder } from "./manual-order.ts";
import { bookRow, poseWalk, rowCost, stopsOf } from "./plan-order.ts";
import { splitWalk } from "./split-walk.ts";
import { type OrderedStop, orderedStops } from "./walk-order.ts";

/** One of two who share a walk: what is walked first, and then what of the other's is still to do. */
export interface SharedWalk {
  readonly mine: readonly OrderedStop[];
  /** The other's, from its end: whoever is done first meets the other half-way, and nothing is left to nobody. */
  readonly others: readonly OrderedStop[];
  /** When this person is back at the door, waiting counted. */
  readonly time_s: number;
}

const ROUNDS = 20;
const SPLIT_ROUNDS = 1500;

/**
 * A whole walk shared by two, balanced in time; the same two halves on every phone. Where the book has its manual's
 * order, each half is walked in it.
 *
 * @param by an order that the person on this phone has made by hand: what is theirs they walk in it. Whose a step is
 *   does not change with it, since the other's phone knows nothing of it.
 */
export function shareWalk(
  book: Book,
  kind: WalkKind,
  also: ReadonlySet<string> = new Set(),
  by?: readonly string[],
): readonly [SharedWalk, SharedWalk] {
  const posed = poseWalk(book, kind, { also });
  const manual = manualOrder(book, kind, also);
  const visits =
    manual === undefined
      ? solveCover(posed.problem, { seed: 1, rounds: ROUNDS, from: bookRow(posed) }).visits
      : inGivenOrder(posed, manual);
  const { people } = splitWalk(posed, visits, {
    step_s,
    rounds: SPLIT_ROUNDS,
    keepsOrder: manual !== undefined,
  });
  const after = new Map(
    posed.tasks.map(({ step, after: waits }) => [
      step.id,
      waits.flatMap((one) => posed.tasks[one]?.step.id ?? []),
    ]),
  );
  const [one, two] = people.map(({ stops }) => orderedStops(stops));
  const shared = (planned = one ?? [], others = two ?? [], time_s = 0): SharedWalk => ({
    ...(by === undefined ? { mine: planned, time_s } : byHand(planned, time_s)),
    others: fromItsEnd(others, after),
  });
  return [shared(one, two, people[0].time_s), shared(two, one, people[1].time_s)];

  /** One half in the order made by hand, with stances chosen for it. */
  function byHand(planned: readonly OrderedStop[], time_s: number): Pick<SharedWalk, "mine" | "time_s"> {
    const half = new Set(planned.flatMap(({ steps }) => steps));
    const own = poseWalk(book, kind, { also, isLeft: ({ id }) => half.has(id) });
    const visits = inGivenOrder(own, by ?? []);
    const looking_s = own.tasks.reduce((sum_s, { step }) => sum_s + step_s(step), 0);
    return {
      mine: orderedStops(stopsOf(own, visits)),
      time_s: Math.max(time_s, rowCost(own.problem, visits) + looking_s),
    };
  }
}

/** The stops from the last to the first, except that what waits for another step still comes after it. */
function fromItsEnd(
  stops: readonly OrderedStop[],
  after: ReadonlyMap<string, readonly string[]>,
): readonly OrderedStop[] {
  const left = new Set(stops.flatMap(({ steps }) => steps));
  const row: OrderedStop[] = [];
  while (left.size > 0) {
    const before = left.size;
    for (const { stance, steps } of stops.toReversed()) {
      const now: string[] = [];
      for (const id of steps) {
        if (!left.has(id) || after.get(id)?.some((one) => left.has(one))) continue;
        left.delete(id);
        now.push(id);
      }
      if (now.length > 0) row.push({ stance, steps: now });
    }
    if (left.size === before) return stops; // steps that wait for each other: told where the walk is posed
  }
  return row;
}
