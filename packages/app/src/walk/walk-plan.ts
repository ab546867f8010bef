import type { Assessment } from "@witnessmark/assess";
import type { Book, WalkKind } from "@witnessmark/book";
import type { AircraftState } from "@witnessmark/ledger";
import { planWalk, type WalkPlan } from "@witnessmark/planner";

const plans = new WeakMap<Book, Map<string, WalkPlan>>();

/**
 * The plan of a walk. A turnaround takes in what has reopened of the first walk of the day, and keeps it once it was
 * looked at, so that nothing falls out of the walk while one walks it.
 *
 * @param walk id of the walk under way; `undefined` before it has begun
 */
export function planOf(
  book: Book,
  kind: WalkKind,
  walk: string | undefined,
  state: AircraftState,
  { verdicts }: Pick<Assessment, "verdicts">,
): WalkPlan {
  const also = kind === "turnaround" ? alsoWalked(book, walk, state, verdicts) : [];
  const key = `${kind} ${also.join(" ")}`;
  const known = plans.get(book) ?? new Map<string, WalkPlan>();
  plans.set(book, known);
  const found = known.get(key) ?? planWalk(book, kind, new Set(also));
  known.set(key, found);
  return found;
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
