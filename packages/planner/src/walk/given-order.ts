import type { Visit } from "../cover/cover-problem.ts";
import { PlannerError } from "../planner-error.ts";
import type { PosedWalk } from "./plan-order.ts";

/**
 * The steps in an order that is not to be changed, each at the stance that makes the whole way shortest (a shortest
 * path through layers of stances). Steps that the order does not name are put before the first step at their stance,
 * or else at the end.
 *
 * @param order ids of checks and ground gear; those that are not in this walk, or are done, are passed over
 */
export function inGivenOrder({ tasks, problem }: PosedWalk, order: readonly string[]): readonly Visit[] {
  const row = wholeOrder(tasks, order);
  const { stances, cost } = problem;
  let reached = new Map([[0, { paid: 0, before: undefined as Trail | undefined }]]);
  for (const task of row) {
    const next: typeof reached = new Map();
    for (const stance of problem.tasks[task]?.at ?? []) {
      for (const [from, trail] of reached) {
        const paid = trail.paid + (cost[from * stances + stance] ?? 0);
        const known = next.get(stance);
        if (known === undefined || paid < known.paid) {
          next.set(stance, { paid, before: { stance, task, before: trail.before } });
        }
      }
    }
    reached = next;
  }
  let best: { readonly paid: number; readonly trail: Trail | undefined } | undefined;
  for (const [stance, { paid, before }] of reached) {
    const whole = paid + (cost[stance * stances + stances - 1] ?? 0);
    if (best === undefined || whole < best.paid) best = { paid: whole, trail: before };
  }
  return visitsAlong(best?.trail);
}

interface Trail {
  readonly stance: number;
  readonly task: number;
  readonly before: Trail | undefined;
}

function visitsAlong(end: Trail | undefined): readonly Visit[] {
  const visits: { stance: number; tasks: number[] }[] = [];
  for (let trail = end; trail !== undefined; trail = trail.before) {
    const first = visits[0];
    if (first?.stance === trail.stance) first.tasks.unshift(trail.task);
    else visits.unshift({ stance: trail.stance, tasks: [trail.task] });
  }
  return visits;
}

function wholeOrder(tasks: PosedWalk["tasks"], order: readonly string[]): readonly number[] {
  const numbers = new Map(tasks.map(({ step }, i) => [step.id, i]));
  const row = order.flatMap((id) => numbers.get(id) ?? []);
  if (new Set(row).size < row.length) {
    throw new PlannerError("bad-input", "manualOrder", {
      expected: "each step once",
      found: order.filter((id, i) => order.indexOf(id) < i).join(", "),
      remedy: "take out what is named twice",
    });
  }
  const named = new Set(row);
  for (const task of tasks.keys()) {
    if (named.has(task)) continue;
    const at = row.findIndex((other) => tasks[other]?.at[0] === tasks[task]?.at[0]);
    row.splice(at < 0 ? row.length : at, 0, task);
  }
  return row;
}
