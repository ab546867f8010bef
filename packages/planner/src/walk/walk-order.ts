import type { Book, WalkKind } from "@witnessmark/book";
import { type CoverProblem, coverCost, type Visit } from "../cover/cover-problem.ts";
import { solveCover } from "../cover/solve-cover.ts";
import { planWalk } from "../plan-walk.ts";
import type { WalkPlan } from "../walk-plan.ts";
import { inGivenOrder } from "./given-order.ts";
import { manualOrder } from "./manual-order.ts";
import { bookRow, type OrderOptions, poseWalk, rowCost, stopsOf, walked } from "./plan-order.ts";
import { walkInOrder } from "./walk-in-order.ts";

/** A stance of the book, and what is done there, by ids. */
export interface OrderedStop {
  readonly stance: string;
  readonly steps: readonly string[];
}

/** An order in which a walk is walked, as it is kept and sent: no object of a book in it. */
export interface WalkOrder {
  readonly follows: "manual" | "planned" | "by-hand";
  readonly stops: readonly OrderedStop[];
  /** For walking, stops and postures, not for looking. */
  readonly walking_s: number;
  readonly walking_m: number;
  /** What another order would save, where a manual's or a person's is followed; else what this one saves. */
  readonly saves_s: number;
  /** Stances to which no way leads on the drawing: something is in the way, or the drawing is wrong there. */
  readonly noWay: readonly string[];
}

/** Changes whenever the same book may be given another order; part of the name under which an order is kept. */
export const ORDER_VERSION = 3;

/**
 * How long is searched for the order that counts: a number of rounds and not a time, so that the same book gives the
 * same order on every phone, however slow.
 */
const COUNTED_ROUNDS = 8;

/**
 * The order in which a walk is walked: the manual's, where the book has one, else a planned one. The same book gives
 * the same order everywhere; how good it is, `planOrder` finds out when there is time.
 *
 * @param by ids of checks and ground gear in an order that a person has chosen: it goes before the manual's
 */
export function orderOf(
  book: Book,
  kind: WalkKind,
  also: ReadonlySet<string> = new Set(),
  by?: readonly string[],
): WalkOrder {
  const posed = poseWalk(book, kind, { also });
  const { problem } = posed;
  const given = bookRow(posed);
  const planned = solveCover(problem, { seed: 1, rounds: COUNTED_ROUNDS, from: given });
  const chosen = by ?? manualOrder(book, kind, also);
  const visits = chosen === undefined ? planned.visits : inGivenOrder(posed, chosen);
  const cost_s = rowCost(problem, visits);
  const other_s = chosen === undefined ? coverCost(problem, given) : cost_s;
  return {
    follows: by !== undefined ? "by-hand" : chosen === undefined ? "planned" : "manual",
    ...told(posed, visits),
    saves_s: Math.max(0, other_s - planned.cost),
  };
}

type Posed = ReturnType<typeof poseWalk>;

/** Visits as they are kept and sent. */
export function told(posed: Posed, visits: readonly Visit[]): Omit<WalkOrder, "follows" | "saves_s"> {
  const { costs, stances, problem } = posed;
  const numbers = new Set(visits.map(({ stance }) => stance));
  return {
    stops: orderedStops(stopsOf(posed, visits)),
    walking_s: rowCost(problem satisfies CoverProblem, visits),
    walking_m: walked(posed, visits).distance_m,
    noWay: [...numbers].filter((one) => !costs.isReached(one)).flatMap((one) => stances[one - 1]?.id ?? []),
  };
}

export const orderedStops = (stops: ReturnType<typeof stopsOf>): readonly OrderedStop[] =>
  stops.map(({ stance, steps }) => ({ stance: stance.id, steps: steps.map(({ id }) => id) }));

/** The walk as it is walked, in the order that counts. Takes a tenth of a second or more: an app asks a worker. */
export const orderedWalk = (book: Book, kind: WalkKind, also: ReadonlySet<string> = new Set()): WalkPlan =>
  walkInOrder(planWalk(book, kind, also), book, orderOf(book, kind, also));

/** What is left, the shortest way from where the pilot stands: only the steps for which `isLeft` holds. */
export function orderLeft(
  book: Book,
  kind: WalkKind,
  options: Pick<OrderOptions, "also" | "isLeft" | "from">,
): WalkOrder {
  const posed = poseWalk(book, kind, options);
  const given = bookRow(posed);
  const { visits, cost } = solveCover(posed.problem, { seed: 1, rounds: COUNTED_ROUNDS, from: given });
  const saves_s = Math.max(0, coverCost(posed.problem, given) - cost);
  return { follows: "planned", ...told(posed, visits), saves_s };
}
