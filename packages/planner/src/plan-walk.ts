import type { Book, GroundGearItem, WalkKind } from "@witnessmark/book";
import { estimate_s, walkingDistance_m } from "./estimate.ts";
import type { Step, Stop, WalkPlan } from "./walk-plan.ts";

/** The stance from which an item is taken off or fitted: its own, or its point's. */
export const gearStance = (book: Book, item: GroundGearItem): string | undefined =>
  item.stance ?? book.points.get(item.point)?.stance;

function grouped<T>(items: readonly T[], key: (item: T) => string | undefined): ReadonlyMap<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const name = key(item);
    if (name === undefined) continue;
    const group = groups.get(name);
    if (group === undefined) groups.set(name, [item]);
    else group.push(item);
  }
  return groups;
}

/**
 * The walk of one kind: the book's stances in its order, each with what is done from it.
 *
 * Ground gear comes first at its stance, so that a cover is off before what it hides is looked at; after a flight it
 * comes last, because then it is fitted over what has been looked at. A stance without a step is left out, and the
 * stops are numbered as they are walked.
 *
 * @param also ids of checks that are walked as well, though the book does not ask them on this kind of walk: what a
 *   turnaround rests on and a happening has reopened
 */
export function planWalk(book: Book, kind: WalkKind, also: ReadonlySet<string> = new Set()): WalkPlan {
  const checks = grouped(
    book.checks.filter((check) => check.walks.includes(kind) || also.has(check.id)),
    (check) => check.stance,
  );
  const gear = grouped(book.groundGear, (item) => gearStance(book, item));
  const stops: Stop[] = [];
  for (const stance of book.stances) {
    const looks = (checks.get(stance.id) ?? []).map(
      (check): Step => ({ kind: "check", id: check.id, check }),
    );
    const pieces = (gear.get(stance.id) ?? []).map(
      (item): Step => ({ kind: "ground-gear", id: item.id, item }),
    );
    const [first, ...rest] = kind === "after-flight" ? [...looks, ...pieces] : [...pieces, ...looks];
    if (first !== undefined) stops.push({ number: stops.length + 1, stance, steps: [first, ...rest] });
  }
  return {
    kind,
    stops,
    stepCount: stops.reduce((count, stop) => count + stop.steps.length, 0),
    distance_m: walkingDistance_m(stops),
    estimate_s: estimate_s(stops),
  };
}
