import type { AircraftState, Walk } from "@witnessmark/ledger";
import type { Draft } from "../keep/contract.ts";

/** The last thing a person said in a walk, and every event that said it. */
export interface LastSaid {
  readonly kind: "check" | "ground-gear";
  /** The check's or the item's id. */
  readonly id: string;
  readonly events: readonly string[];
  readonly at_ms: number;
}

/** What Undo takes back: the last answer or count of this person in this walk, with its reading and discrepancy. */
export function lastSaid(state: AircraftState, walk: Walk, personId: string): LastSaid | undefined {
  const mine = (state.answersByWalk.get(walk.id) ?? []).filter((answer) => answer.author.id === personId);
  const answer = mine.at(-1);
  const gear = [...state.groundGear]
    .filter(([, { last }]) => last.author.id === personId && last.hlc > walk.hlc)
    .sort(([, a], [, b]) => (a.last.hlc < b.last.hlc ? -1 : 1))
    .at(-1);
  if (gear !== undefined && (answer === undefined || gear[1].last.hlc > answer.hlc)) {
    const [id, { last }] = gear;
    return { kind: "ground-gear", id, events: [last.event], at_ms: Date.parse(last.recordedAt) };
  }
  if (answer === undefined) return undefined;
  const before =
    mine.findLast((other) => other.check === answer.check && other.hlc < answer.hlc)?.hlc ?? walk.hlc;
  const same = (said: { hlc: string; author: { id: string } }) =>
    said.author.id === personId && said.hlc > before;
  const readings = (state.checks.get(answer.check)?.readings ?? []).filter(
    (reading) => reading.walk === walk.id && same(reading),
  );
  const discrepancies = [...state.discrepancies.values()].filter(
    (found) => found.walk === walk.id && found.check === answer.check && found.isOpen && same(found.raised),
  );
  const declined = state.evidenceDeclined.filter(
    (found) => found.walk === walk.id && found.check === answer.check && same(found),
  );
  return {
    kind: "check",
    id: answer.check,
    events: [
      answer.event,
      ...readings.map((reading) => reading.event),
      ...discrepancies.map((found) => found.raised.event),
      ...declined.map((found) => found.event),
    ],
    at_ms: Date.parse(answer.recordedAt),
  };
}

/** The facts that take it back: nothing is erased, each event is named as no longer counting. */
export const withdrawals = (said: LastSaid): readonly Draft[] =>
  said.events.map((event) => ({
    type: "event.withdrawn",
    body: { event, why: "Undone by the one who said it" },
  }));
