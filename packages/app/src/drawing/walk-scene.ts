import { BADNESS } from "@witnessmark/assess";
import type { Book, Stance } from "@witnessmark/book";
import type { Status } from "@witnessmark/ledger";
import type { WalkPlan } from "@witnessmark/planner";

/** A point as a walk sees it: where it is, and how its steps stand. */
export interface ScenePoint {
  readonly id: string;
  readonly name: string;
  readonly x_m: number;
  readonly y_m: number;
  readonly z_m: number;
  readonly status: Status;
  readonly inHand: boolean;
  /** Whether it is done from the stance in hand: drawn larger. */
  readonly near: boolean;
  /** Done from inside the aircraft, where many points lie close together: drawn smaller. */
  readonly inside: boolean;
}

export interface SceneStop {
  readonly number: number;
  readonly stance: Stance;
  readonly state: "done" | "here" | "ahead";
}

/** What a drawing of a walk shows, besides the aircraft. */
export interface WalkScene {
  readonly points: readonly ScenePoint[];
  readonly stops: readonly SceneStop[];
  readonly here: SceneStop | undefined;
  readonly inHand: ScenePoint | undefined;
}

/** The worse of two: stop, caution, open, clear. */
export const worse = (a: Status, b: Status): Status => (BADNESS[a] <= BADNESS[b] ? a : b);

/** The worst of many; clear when there is nothing. */
export const worst = (all: Iterable<Status>): Status => {
  let found: Status = "clear";
  for (const status of all) found = worse(found, status);
  return found;
};

/** The steps of a walk laid out on the aircraft. */
export function walkScene(
  book: Book,
  plan: WalkPlan,
  statusOf: (stepId: string) => Status,
  stepInHand: string | undefined,
): WalkScene {
  const hereStop = plan.stops.find((stop) => stop.steps.some((step) => step.id === stepInHand));
  const pointOf = (step: WalkPlan["stops"][number]["steps"][number]) =>
    step.kind === "check" ? step.check.point : step.item.point;
  const statuses = new Map<string, Status>();
  const near = new Set<string>();
  const inside = new Set<string>();
  let inHandId: string | undefined;
  for (const stop of plan.stops) {
    for (const step of stop.steps) {
      const id = pointOf(step);
      const before = statuses.get(id);
      const status = statusOf(step.id);
      statuses.set(id, before === undefined ? status : worse(before, status));
      if (stop === hereStop) near.add(id);
      if (stop.stance.posture === "inside") inside.add(id);
      if (step.id === stepInHand) inHandId = id;
    }
  }
  const points: ScenePoint[] = [];
  for (const [id, status] of statuses) {
    const point = book.points.get(id);
    if (point === undefined) continue;
    const [x_m, y_m, z_m] = point.place;
    points.push({
      id,
      name: point.name,
      x_m,
      y_m,
      z_m,
      status,
      inHand: id === inHandId,
      near: near.has(id),
      inside: inside.has(id),
    });
  }
  const stops = plan.stops.map((stop): SceneStop => {
    const open = stop.steps.some((step) => statusOf(step.id) === "open");
    return {
      number: stop.number,
      stance: stop.stance,
      state: stop === hereStop ? "here" : open ? "ahead" : "done",
    };
  });
  return {
    points,
    stops,
    here: stops.find((stop) => stop.state === "here"),
    inHand: points.find((point) => point.inHand),
  };
}
