import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LedgerEvent } from "../event.ts";
import { compareEvents } from "../order.ts";
import type { AircraftState } from "../state.ts";
import { arbitraryHistory } from "../testing/arbitrary.ts";
import { advance, emptyState, fold } from "./fold.ts";
import { isCounted } from "./withdrawals.ts";

/** The events in another order, some of them several times: each taken from its place as the figures say. */
function rearranged(events: readonly LedgerEvent[], places: readonly number[]): readonly LedgerEvent[] {
  const doubled = [...events, ...events.filter((_event, at) => (places[at % places.length] ?? 0) % 3 === 0)];
  return doubled
    .map((event, at) => ({ event, key: Math.sin((places[at % places.length] ?? 0) * 7919 + at * 104_729) }))
    .sort((a, b) => a.key - b.key)
    .map(({ event }) => event);
}

const places = fc.array(fc.nat(1000), { minLength: 1, maxLength: 40 });

/** All ids of events that a state tells of, in whatever part of it. */
function toldOf(state: AircraftState): Set<string> {
  const ids = new Set<string>();
  const visit = (value: unknown): void => {
    if (value instanceof Map || value instanceof Set) for (const part of value.values()) visit(part);
    else if (Array.isArray(value)) for (const part of value) visit(part);
    else if (typeof value === "object" && value !== null) {
      if ("event" in value && typeof value.event === "string") ids.add(value.event);
      if ("id" in value && typeof value.id === "string" && "body" in value) ids.add(value.id);
      for (const part of Object.values(value)) visit(part);
    }
  };
  visit(state);
  return ids;
}

describe("fold, over generated histories", () => {
  it("gives one state for any order of arrival and any duplication", () => {
    fc.assert(
      fc.property(arbitraryHistory, places, ({ events }, figures) => {
        expect(fold(rearranged(events, figures))).toStrictEqual(fold(events));
      }),
      { numRuns: 300 },
    );
  });

  it("gives one state however events with one id and two contents arrive, and tells of them", () => {
    fc.assert(
      fc.property(arbitraryHistory, places, fc.nat(), ({ events }, figures, pick) => {
        const one = events[pick % Math.max(events.length, 1)];
        fc.pre(one !== undefined);
        const changed = { ...one, hash: "f".repeat(64), recordedAt: "2031-05-05T00:00:00.000+00:00" };
        const both = [...events, changed];
        const state = fold(both);
        expect(fold(rearranged(both, figures))).toStrictEqual(state);
        expect(state.conflicts).toEqual([{ event: one.id, keptHash: one.hash, droppedHash: "f".repeat(64) }]);
      }),
      { numRuns: 100 },
    );
  });

  it("advances, over any split in time, to the state of a full fold, and changes nothing of the state before", () => {
    let advanced = 0;
    fc.assert(
      fc.property(arbitraryHistory, fc.array(fc.nat(60), { maxLength: 6 }), ({ events }, cuts) => {
        const inOrder = events.toSorted(compareEvents);
        const stops = [...cuts.map((cut) => cut % (inOrder.length + 1)), inOrder.length].sort(
          (a, b) => a - b,
        );
        let state = emptyState(inOrder[0]?.aircraft ?? "");
        let from = 0;
        for (const stop of stops) {
          const before = structuredClone(state);
          const next = advance(state, inOrder.slice(from, stop));
          expect(state).toStrictEqual(before);
          const whole = fold(inOrder.slice(0, stop));
          if (next === undefined) {
            expect(inOrder.slice(from, stop).some(({ type }) => type === "event.withdrawn")).toBe(true);
          } else if (stop > from) {
            expect(next).toStrictEqual(whole);
            advanced += 1;
          }
          if (stop > 0) state = next ?? whole;
          from = stop;
        }
      }),
      { numRuns: 300 },
    );
    expect(advanced).toBeGreaterThan(300);
  });

  it("asks for a full fold when an event is not after everything folded", () => {
    fc.assert(
      fc.property(arbitraryHistory, fc.nat(), ({ events }, pick) => {
        fc.pre(events.length > 1);
        const late = events.toSorted(compareEvents)[pick % (events.length - 1)];
        fc.pre(late !== undefined);
        const rest = events.filter((event) => event !== late);
        expect(advance(fold(rest), [late])).toBeUndefined();
        expect(advance(fold(events), [late])).toBeUndefined();
      }),
    );
  });

  it("loses nothing, however wrong the clocks: every event that counts is told of, and the others are named", () => {
    // Events that leave one figure, not a fact with its origin: the latest says it all.
    const leavesNoTrace = new Set(["aircraft.archived", "aircraft.restored", "event.withdrawn"]);
    // Fitting takes from what was removed, a walk ends once, and a reading that came twice counts once; the event stays
    // in the ledger.
    const mayBeOverlaid = new Set([
      "reading.imported",
      "groundGear.removed",
      "groundGear.fitted",
      "walk.finished",
      "walk.abandoned",
    ]);
    fc.assert(
      fc.property(arbitraryHistory, ({ events }) => {
        const state = fold(events);
        const told = toldOf(state);
        for (const event of events) {
          if (!isCounted(event, state.withdrawn)) continue;
          if (leavesNoTrace.has(event.type) || mayBeOverlaid.has(event.type)) continue;
          expect(told, `${event.type} ${event.id}`).toContain(event.id);
        }
        expect(state.eventCount).toBe(events.length);
      }),
      { numRuns: 300 },
    );
  });

  it("keeps cause before effect, whenever the clock rules let a phone follow what it saw", () => {
    let pairs = 0;
    fc.assert(
      fc.property(arbitraryHistory, ({ events, causes }) => {
        const byId = new Map(events.map((event) => [event.id, event]));
        for (const [cause, effect] of causes) {
          const first = byId.get(cause);
          const second = byId.get(effect);
          if (first === undefined || second === undefined) throw new Error("a pair names no event");
          expect(compareEvents(first, second)).toBeLessThan(0);
          pairs += 1;
        }
      }),
      { numRuns: 300 },
    );
    expect(pairs).toBeGreaterThan(1000);
  });

  it("asks again, of each walk, for exactly the checks whose answers are marked so", () => {
    let asked = 0;
    fc.assert(
      fc.property(arbitraryHistory, ({ events }) => {
        const state = fold(events);
        for (const walk of state.walks.values()) {
          const answers = state.answersByWalk.get(walk.id) ?? [];
          const marked = new Set(
            answers.filter((answer) => answer.askedAgainBy !== undefined).map(({ check }) => check),
          );
          expect(new Set(walk.askedAgain)).toEqual(marked);
          asked += marked.size;
          for (const interruption of walk.interruptions) {
            expect(interruption.asksAgain.length).toBeLessThanOrEqual(3);
          }
        }
        for (const [check, history] of state.checks) {
          for (const answer of history.answers) {
            expect(state.answersByWalk.get(answer.walk)).toContain(answer);
            expect(answer.check).toBe(check);
          }
        }
      }),
      { numRuns: 300 },
    );
    expect(asked).toBeGreaterThan(20);
  });
});
