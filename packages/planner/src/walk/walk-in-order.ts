import type { Book } from "@witnessmark/book";
import { estimate_s, walkingDistance_m } from "../estimate.ts";
import { stepsOf } from "../steps.ts";
import type { Step, Stop, WalkPlan } from "../walk-plan.ts";
import type { OrderedStop, WalkOrder } from "./walk-order.ts";

/**
 * A walk in an order that was kept. Whatever the order says, the walk has every step of the plan once: what the order
 * does not name, or names at a stance that the book no longer has, is done at the step's own stance; what it names and
 * the plan does not have is passed over.
 */
export function walkInOrder(
  plan: WalkPlan,
  book: Pick<Book, "stancesById">,
  order: Pick<WalkOrder, "stops"> & Partial<WalkOrder>,
): WalkPlan {
  const left = new Map(stepsOf(plan).map((step) => [step.id, step]));
  const stops: { stance: Stop["stance"]; steps: Step[] }[] = [];
  const add = ({ stance, steps }: OrderedStop): void => {
    const found = book.stancesById.get(stance);
    if (found === undefined) return;
    const here = [...new Set(steps)].flatMap((id) => left.get(id) ?? []);
    for (const { id } of here) left.delete(id);
    const before = stops.at(-1);
    if (before?.stance.id === stance) before.steps.push(...here);
    else if (here.length > 0) stops.push({ stance: found, steps: here });
  };
  for (const stop of order.stops) add(stop);
  for (const { stance, steps } of plan.stops) {
    const missing = steps.filter(({ id }) => left.has(id));
    const [first] = missing;
    if (first === undefined) continue;
    for (const { id } of missing) left.delete(id);
    const there = stops.find((stop) => stop.stance.id === stance.id);
    if (there === undefined) stops.push({ stance, steps: missing });
    else if (first.kind === "ground-gear" && plan.kind !== "after-flight") there.steps.unshift(...missing);
    else there.steps.push(...missing);
  }
  const whole = stops.flatMap(({ stance, steps: [first, ...rest] }, i): readonly Stop[] =>
    first === undefined ? [] : [{ number: i + 1, stance, steps: [first, ...rest] }],
  );
  const noWay = new Set(order.noWay);
  return {
    kind: plan.kind,
    stops: whole.map((stop) => (noWay.has(stop.stance.id) ? { ...stop, noWay: true } : stop)),
    stepCount: plan.stepCount,
    distance_m: order.walking_m ?? walkingDistance_m(whole),
    estimate_s: estimate_s(whole, { walking_s: order.walking_s }),
    ...(order.walking_s === undefined ? {} : { walking_s: order.walking_s }),
    ...(order.follows === undefined ? {} : { follows: order.follows }),
  };
}
