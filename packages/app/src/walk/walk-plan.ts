import type { Assessment } from "@witnessmark/assess";
import type { Book, WalkKind } from "@witnessmark/book";
import type { AircraftState } from "@witnessmark/ledger";
import { planWalk, type WalkOrder, type WalkPlan, walkInOrder } from "@witnessmark/planner";
import { knownOrder } from "./order/known-orders.ts";
import { type MyOrder, myOrder } from "./order/my-orders.ts";
import { turnOf, type WalkTurn } from "./order/walk-turn.ts";

const plans = new WeakMap<Book, Map<string, { readonly order: unknown; readonly plan: WalkPlan }>>();

/**
 * The plan of a walk, in the order in which it is walked on this phone: how this walk is gone on with, else the order
 * made by hand, else the manual's or the planned one; the book's own as long as that is not known. A turnaround takes
 * in what has reopened of the first walk of the day, and keeps it once it was looked at, so that nothing falls out of
 * the walk while one walks it.
 *
 * @param walk id of the walk under way; `undefined` before it has begun
 */
export function planOf(
  book: Book,
  kind: WalkKind,
  walk: string | undefined,
  state: AircraftState,
  assessment: Pick<Assessment, "verdicts">,
): WalkPlan {
  const also = alsoOf(book, kind, walk, state, assessment);
  const order = orderFor(book, kind, walk, also);
  const key = `${kind} ${also.join(" ")}`;
  const known = plans.get(book) ?? new Map<string, { readonly order: unknown; readonly plan: WalkPlan }>();
  plans.set(book, known);
  const found = known.get(key);
  if (found !== undefined && found.order === order) return found.plan;
  const listed = planWalk(book, kind, new Set(also));
  const plan = order === undefined ? listed : walkInOrder(listed, book, order);
  known.set(key, { order, plan });
  return plan;
}

const byHand = new WeakMap<MyOrder | WalkTurn, Partial<WalkOrder> & Pick<WalkOrder, "stops">>();

function orderFor(book: Book, kind: WalkKind, walk: string | undefined, also: readonly string[]) {
  const mine = turnOf(walk) ?? myOrder(book.aircraft.registration, kind);
  // while what has reopened is being put in its place, it stands at its stance in the order without it
  if (mine === undefined) return knownOrder(book, kind, also) ?? knownOrder(book, kind, []);
  const order = byHand.get(mine) ?? { ...mine, follows: "by-hand" as const };
  byHand.set(mine, order);
  return order;
}

/** Checks that a walk asks besides those of its kind. */
export function alsoOf(
  book: Book,
  kind: WalkKind,
  walk: string | undefined,
  state: AircraftState,
  { verdicts }: Pick<Assessment, "verdicts">,
): readonly string[] {
  return kind === "turnaround" ? alsoWalked(book, walk, state, verdicts) : [];
}

function alsoWalked(
  book: Book,
  walk: string | undefined,
  state: AircraftState,
  verdicts: Assessment["verdicts"],
): readonly string[] {
  const answered = new Set((state.answersByWalk.get(walk ?? "") ?? []).map(({ check }) => check));
  const open = new Set(
    verdicts.flatMap(({ subject, status }) =>
      subject?.kind === "check" && status === "open" ? [subject.id] : [],
    ),
  );
  return book.checks
    .filter(
      ({ id, walks }) =>
        !walks.includes("turnaround") && walks.includes("first-of-day") && (open.has(id) || answered.has(id)),
    )
    .map(({ id }) => id);
}
