import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LedgerEvent } from "./event.ts";
import { fold } from "./fold/fold.ts";
import { compareEvents } from "./order.ts";
import { Projection } from "./projection.ts";
import { arbitraryHistory } from "./testing/arbitrary.ts";
import { generateHistory } from "./testing/generate.ts";

/** Events dealt into batches, as pulls and taps bring them: in any order, some of them more than once. */
function dealt(
  events: readonly LedgerEvent[],
  hands: readonly number[],
): readonly (readonly LedgerEvent[])[] {
  const batches = new Map<number, LedgerEvent[]>();
  for (const [at, event] of events.entries()) {
    for (const turn of [0, 1]) {
      const hand = hands[(at + turn * 7) % hands.length] ?? 0;
      if (turn === 1 && hand % 4 !== 0) continue;
      batches.set(hand, [...(batches.get(hand) ?? []), event]);
    }
  }
  return [...batches].sort(([a], [b]) => a - b).map(([, batch]) => batch);
}

const hands = fc.array(fc.nat(12), { minLength: 1, maxLength: 30 });

describe("a projection", () => {
  it("is at every moment what a fold of everything so far is", () => {
    fc.assert(
      fc.property(arbitraryHistory, hands, ({ events }, figures) => {
        const projection = new Projection("ZZ-SKR");
        const soFar: LedgerEvent[] = [];
        for (const batch of dealt(events, figures)) {
          soFar.push(...batch);
          expect(projection.add(batch)).toStrictEqual(fold(soFar));
        }
        expect(projection.events).toEqual(events.toSorted(compareEvents));
      }),
      { numRuns: 300 },
    );
  });

  it("tells of two events with one id, whichever comes first", () => {
    fc.assert(
      fc.property(arbitraryHistory, hands, fc.nat(), fc.boolean(), ({ events }, figures, pick, isLower) => {
        const one = events[pick % events.length];
        fc.pre(one !== undefined);
        const other = { ...one, hash: (isLower ? "0" : "f").repeat(64), hlc: "001935619200000-00007" };
        const projection = new Projection("ZZ-SKR", events);
        projection.add([other]);
        for (const batch of dealt(events, figures)) projection.add(batch);
        expect(projection.state).toStrictEqual(fold([...events, other]));
      }),
      { numRuns: 100 },
    );
  });

  it("of two years takes in late events and corrections near its end without folding the years again", async () => {
    const events = await generateHistory({ years: 2, flightsPerYear: 60, seed: 5, seal: "none" });
    const late = new Set([events.length - 3, events.length - 40, events.length - 900]);
    const projection = new Projection(
      "ZZ-SKR",
      events.filter((_event, at) => !late.has(at)),
    );
    const oldWalk = events.find((event) => event.type === "walk.started");
    if (oldWalk?.type !== "walk.started") throw new Error("the history has no walk");
    const before = projection.state.answersByWalk.get(oldWalk.body.walk);
    for (const at of late) projection.add(events.slice(at, at + 1));
    expect(projection.state).toStrictEqual(fold(events));
    // The old walk's answers are the very same list: nothing before the late events was touched.
    expect(projection.state.answersByWalk.get(oldWalk.body.walk)).toBe(before);
  });

  it("refuses another aircraft's event by name, and keeps what it had", async () => {
    const events = await generateHistory({ years: 1, flightsPerYear: 1, seed: 5, seal: "none" });
    const projection = new Projection("ZZ-SKR", events);
    const state = projection.state;
    const [first] = events;
    if (first === undefined) throw new Error("the history is empty");
    const foreign = { ...first, aircraft: "ZZ-DUN", hash: "0".repeat(64) };
    expect(() => projection.add([foreign])).toThrow(
      `expected events of ZZ-SKR, received ${first.id} of ZZ-DUN`,
    );
    expect(projection.state).toBe(state);
  });
});
