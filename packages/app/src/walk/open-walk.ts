import type { Assessment } from "@witnessmark/assess";
import type { WalkKind } from "@witnessmark/book";
import type { AircraftState, Walk } from "@witnessmark/ledger";
import { isSameDay } from "../words/dates.ts";

/** The walk in hand: the one begun last and not given up; `undefined` before the first. */
export function latestWalk(state: AircraftState): Walk | undefined {
  let latest: Walk | undefined;
  for (const walk of state.walks.values()) {
    if (walk.abandoned !== undefined) continue;
    if (latest === undefined || walk.hlc > latest.hlc) latest = walk;
  }
  return latest;
}

/** The walk that is still being walked. */
export function openWalk(state: AircraftState): Walk | undefined {
  const latest = latestWalk(state);
  return latest === undefined || latest.finished !== undefined ? undefined : latest;
}

/** Whether the walk that was begun last is the one to go on with: it is not finished, and its day is not past. */
export const goesOn = (state: AircraftState, assessment: Pick<Assessment, "walk">): boolean =>
  openWalk(state) !== undefined && assessment.walk?.isOver !== true;

/** Which walk a person most likely means to start now. */
export function likelyKind(state: AircraftState, now_ms: number): WalkKind {
  const today = [...state.walks.values()].filter(
    (walk) => walk.abandoned === undefined && isSameDay(Date.parse(walk.recordedAt), now_ms),
  );
  if (!today.some((walk) => walk.kind === "first-of-day" && walk.finished !== undefined))
    return "first-of-day";
  const flown = state.happenings.filter((happening) => happening.kind === "flown").at(-1);
  const last = today.at(-1);
  const flownSince = flown !== undefined && last !== undefined && flown.at_ms > Date.parse(last.recordedAt);
  return flownSince ? "after-flight" : "turnaround";
}

export const WALK_NAMES: Readonly<Record<WalkKind, string>> = {
  "first-of-day": "First of the day",
  turnaround: "Turnaround",
  "after-flight": "After flight",
};

/** What the button on the Apron says; a walk whose day is past is not gone on with. */
export function walkButton(
  state: AircraftState,
  assessment: Pick<Assessment, "walk">,
  now_ms: number,
): string {
  if (goesOn(state, assessment)) return "Go on walking";
  return START_WORDS[likelyKind(state, now_ms)];
}

const START_WORDS: Readonly<Record<WalkKind, string>> = {
  "first-of-day": "Start the walk",
  turnaround: "Turnaround walk",
  "after-flight": "After-flight walk",
};
