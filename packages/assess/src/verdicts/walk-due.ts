import type { AircraftState, Walk } from "@witnessmark/ledger";
import { compareOrder } from "@witnessmark/ledger";
import type { Verdict } from "../assessment.ts";
import type { Context } from "../context.ts";
import type { Finding } from "../finding.ts";
import { lastFlown } from "../walk/happenings.ts";
import { recorded_ms } from "../walk/moments.ts";
import {
  dayText,
  endOfDay_ms,
  isToday,
  type LocalClock,
  momentText,
  offsetOf_min,
  whenText,
} from "../words/local-time.ts";

const SOURCES = [
  {
    title: "Witnessmark's own rule",
    locator: "a first walk counts for its day, and at least 12 hours; common practice",
  },
];

/** A walk late in the evening counts into the morning. */
const AT_LEAST_MS = 12 * 3_600_000;

/** Until when a first walk of the day counts: the end of its own local day, and at least twelve hours. */
export function firstWalkHolds_ms(walk: Walk, now_ms: number): number {
  const started_ms = recorded_ms(walk);
  const clock: LocalClock = { now_ms, offset_min: offsetOf_min(walk.recordedAt) };
  return Math.max(endOfDay_ms(started_ms, clock), started_ms + AT_LEAST_MS);
}

/** The first walk of the day that the walk in hand rests on: itself, or the latest before it. */
export function firstWalkOf(state: AircraftState, walk: Walk): Walk | undefined {
  if (walk.kind === "first-of-day") return walk;
  return [...state.walks.values()].findLast(
    (other) =>
      other.kind === "first-of-day" && other.abandoned === undefined && compareOrder(other, walk) < 0,
  );
}

/**
 * Whether the walk in hand belongs to the past: its day is over, or it was finished and the aircraft has flown since.
 * Going on with it would not make it count.
 */
export function isOver({ walk, state, clock }: Context): boolean {
  if (walk === null) return false;
  const { finished, kind } = walk;
  const flown = lastFlown(state.happenings);
  if (finished !== undefined && kind === "after-flight") return true;
  if (finished !== undefined && flown !== undefined && flown.at_ms > recorded_ms(finished)) return true;
  const first = kind === "turnaround" ? (firstWalkOf(state, walk) ?? walk) : walk;
  return clock.now_ms > firstWalkHolds_ms(first, clock.now_ms);
}

/**
 * `Not looked at since Sunday’s last flight`, today’s on the same day, or since the walk after it when nobody told of
 * the flight.
 */
export function sinceFlight(state: AircraftState, walk: Walk, clock: LocalClock): string {
  const flown = lastFlown(state.happenings);
  const at_ms = flown?.at_ms ?? recorded_ms(walk);
  const day = isToday(at_ms, clock) ? "today" : dayText(at_ms, clock);
  return /^\d/.test(day)
    ? `Not looked at since the flight of ${day}`
    : `Not looked at since ${day}’s last flight`;
}

function due(
  verdict: Pick<Verdict, "id" | "title" | "says" | "evidence">,
  missing: string,
  walk: Walk,
  at_ms: number,
  words: string,
): Finding {
  return {
    verdict: {
      ...verdict,
      topic: "record",
      status: "open",
      margin: { value: 0, unit: "", text: "not walked" },
      missing: [missing],
      working: { lines: [] },
      sources: SOURCES,
      subject: { kind: "walk", id: walk.id },
    },
    severity: 0,
    place: -1,
    cause: { key: verdict.id, at_ms, words, reopens: false },
  };
}

/** What a walk leaves open by being the walk that it is: after a flight comes another; and a first walk has its day. */
export function walkDue({ walk, state, clock }: Context): readonly Finding[] {
  if (walk === null) return [];
  const started_ms = recorded_ms(walk);
  if (walk.kind === "after-flight") {
    const words = `A walk after the flight began ${whenText(started_ms, clock)}`;
    const says = `${sinceFlight(state, walk, clock)}: a walk after a flight does not clear the next`;
    const verdict = {
      id: "walk:next",
      title: "The walk before the next flight",
      says,
      evidence: [walk.event],
    };
    return [due(verdict, "a first walk of the day", walk, started_ms, words)];
  }
  const first = firstWalkOf(state, walk);
  const title = "First walk of the day";
  if (first === undefined) {
    const verdict = {
      id: "walk:first-of-day",
      title,
      says: "None was made before this turnaround",
      evidence: [],
    };
    return [due(verdict, "a first walk of the day", walk, started_ms, "There was no first walk of the day")];
  }
  const until_ms = firstWalkHolds_ms(first, clock.now_ms);
  if (clock.now_ms <= until_ms) return [];
  const began = momentText(recorded_ms(first), clock);
  const verdict = {
    id: "walk:first-of-day",
    title,
    says: `The last one began ${began} and counted for its day`,
    evidence: [first.event],
  };
  return [
    due(
      verdict,
      "a first walk of the day",
      walk,
      until_ms,
      `The first walk of the day counted until ${momentText(until_ms, clock)}`,
    ),
  ];
}
