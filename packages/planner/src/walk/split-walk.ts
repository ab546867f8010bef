import type { Visit } from "../cover/cover-problem.ts";
import { below, chanceOf } from "../random.ts";
import type { Step, Stop } from "../walk-plan.ts";
import { type PosedWalk, stopsOf } from "./plan-order.ts";

/** The walk of two people who begin together at the door. */
export interface SplitWalk {
  readonly people: readonly [Share, Share];
  /** When the later of the two is back. */
  readonly time_s: number;
}

export interface Share {
  readonly stops: readonly Stop[];
  /** When this person is back at the door, waiting for the other counted. */
  readonly time_s: number;
}

export interface SplitOptions {
  /** How long a step takes. */
  readonly step_s: (step: Step) => number;
  readonly seed?: number;
  readonly rounds?: number;
  /** Each of the two walks what is theirs in the order in which it was given: a manual's, say. */
  readonly keepsOrder?: boolean;
}

type Rows = readonly [readonly number[], readonly number[]];
const ROUNDS = 3000;

/**
 * Two people share a walk so that the later is back as soon as can be found. Each stop of the walk that one person would
 * make goes to one of the two, whole; where a step waits for one of the other's, its person waits there.
 *
 * @param visits the walk that one person would make (`planOrder` gives it)
 */
export function splitWalk(posed: PosedWalk, visits: readonly Visit[], options: SplitOptions): SplitWalk {
  const chance = chanceOf(options.seed ?? 1);
  const timed = timing(posed, visits, options.step_s);
  const all = visits.map((_, visit) => visit);
  let rows = firstSplit(all, timed);
  let best = timed(rows);
  for (let round = 0; round < (options.rounds ?? ROUNDS) && all.length > 0; round += 1) {
    const freely = moved(rows, below(chance, all.length), chance() < 0.7, chance());
    const next = options.keepsOrder === true ? inOrder(freely) : freely;
    const times = timed(next);
    if (times === undefined || best === undefined) continue;
    if (worth(times) <= worth(best)) [rows, best] = [next, times];
  }
  const [one_s, two_s] = best ?? [0, 0];
  const share = (row: readonly number[], time_s: number): Share => ({
    stops: stopsOf(
      posed,
      row.flatMap((visit) => visits[visit] ?? []),
    ),
    time_s,
  });
  return { people: [share(rows[0], one_s), share(rows[1], two_s)], time_s: Math.max(one_s, two_s) };
}

/** The later of the two counts; of equals, that in which both together walk less. */
const worth = ([one_s, two_s]: readonly [number, number]): number =>
  Math.max(one_s, two_s) + 1e-3 * Math.min(one_s, two_s);

/** One goes on from where the other ends: cut where that leaves the later back soonest. */
function firstSplit(all: readonly number[], timed: ReturnType<typeof timing>): Rows {
  let best: { readonly rows: Rows; readonly time_s: number } = {
    rows: [all, []],
    time_s: Number.POSITIVE_INFINITY,
  };
  for (let cut = 0; cut <= all.length; cut += 1) {
    const rows: Rows = [all.slice(0, cut), all.slice(cut)];
    const times = timed(rows);
    if (times !== undefined && worth(times) < best.time_s) best = { rows, time_s: worth(times) };
  }
  return best.rows;
}

/** One visit somewhere else: with the other person, or elsewhere in the same row. */
function moved([one, two]: Rows, visit: number, toOther: boolean, place_1: number): Rows {
  const isMine = one.includes(visit);
  const [without, other] = [
    one.filter((each) => each !== visit),
    two.filter((each) => each !== visit),
  ] as const;
  const put = (row: readonly number[]): readonly number[] =>
    row.toSpliced(Math.floor(place_1 * (row.length + 1)), 0, visit);
  return isMine === toOther ? [without, put(other)] : [put(without), other];
}

const inOrder = ([one, two]: Rows): Rows => [one.toSorted((a, b) => a - b), two.toSorted((a, b) => a - b)];

/** When each of two is back; nothing where each would wait for the other for ever. */
function timing({ tasks, problem }: PosedWalk, visits: readonly Visit[], step_s: SplitOptions["step_s"]) {
  const visitOf = new Map(visits.flatMap(({ tasks: here }, i) => here.map((task) => [task, i] as const)));
  const waitsFor = visits.map(({ tasks: here }, me) => {
    const earlier = here.flatMap((task) =>
      (tasks[task]?.after ?? []).flatMap((one) => visitOf.get(one) ?? []),
    );
    return [...new Set(earlier)].filter((visit) => visit !== me);
  });
  const service_s = visits.map(({ tasks: here }) =>
    here.reduce((sum_s, task) => {
      const step = tasks[task]?.step;
      return sum_s + (step === undefined ? 0 : step_s(step));
    }, 0),
  );
  const arc = (from: number, to: number): number => problem.cost[from * problem.stances + to] ?? 0;
  return (rows: Rows): readonly [number, number] | undefined => {
    const doneAt_s = new Map<number, number>();
    const people = rows.map((row) => ({ row, next: 0, at: 0, time_s: 0 }));
    // each goes on until waiting for what the other has not done
    const goOn = (person: (typeof people)[number]): boolean => {
      const began = person.next;
      for (let visit = person.row[began]; visit !== undefined; visit = person.row[person.next]) {
        const waits = (waitsFor[visit] ?? []).map((one) => doneAt_s.get(one) ?? Number.POSITIVE_INFINITY);
        const ready_s = Math.max(0, ...waits);
        if (ready_s === Number.POSITIVE_INFINITY) break;
        const stance = visits[visit]?.stance ?? 0;
        person.time_s = Math.max(person.time_s + arc(person.at, stance), ready_s) + (service_s[visit] ?? 0);
        person.at = stance;
        person.next += 1;
        doneAt_s.set(visit, person.time_s);
      }
      return person.next > began;
    };
    while (people.map(goOn).includes(true));
    if (people.some(({ row, next }) => next < row.length)) return undefined;
    const [one, two] = people.map(({ at, time_s, row }) =>
      row.length === 0 ? 0 : time_s + arc(at, problem.stances - 1),
    );
    return [one ?? 0, two ?? 0];
  };
}
