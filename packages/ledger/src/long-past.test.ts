import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LedgerEvent } from "./event.ts";
import { fold } from "./fold/fold.ts";
import { isKnownEvent } from "./known.ts";
import { LongPast } from "./long-past.ts";
import { compareEvents } from "./order.ts";
import type { AircraftState } from "./state.ts";
import { arbitraryHistory } from "./testing/arbitrary.ts";
import { generateHistory } from "./testing/generate.ts";

function seen(events: readonly LedgerEvent[], last: number): LongPast {
  const past = new LongPast(last);
  for (const event of events) past.see(event);
  return past;
}

/** Everything of a state but what was answered on walks long past, and where those were interrupted. */
function withoutLongPast(state: AircraftState, whole: ReadonlySet<string>) {
  const { answersByWalk, checks, walks, eventCount: _count, ...rest } = state;
  return {
    ...rest,
    answersByWalk: new Map([...answersByWalk].filter(([walk]) => whole.has(walk))),
    checks: new Map(
      [...checks].map(([check, { answers, readings }]) => [check, { last: answers.at(-1), readings }]),
    ),
    walks: [...walks.values()].map((walk) =>
      whole.has(walk.id) ? walk : { ...walk, interruptions: [], askedAgain: [] },
    ),
  };
}

/** The walks of which every answer and interruption is needed. */
function wholeWalks(events: readonly LedgerEvent[], past: LongPast): ReadonlySet<string> {
  const walks = new Map<string, boolean>();
  for (const event of events) {
    if (!isKnownEvent(event)) continue;
    if (event.type !== "check.answered" && event.type !== "walk.interrupted") continue;
    walks.set(event.body.walk, (walks.get(event.body.walk) ?? true) && past.isNeeded(event));
  }
  return new Set([...walks].filter(([, isWhole]) => isWhole).map(([walk]) => walk));
}

/** Whether some check has only withdrawn ones among its last answers: what was said before them is left out then. */
function isLostFromSight(events: readonly LedgerEvent[], withdrawn: ReadonlySet<string>, last: number) {
  const answers = Map.groupBy(
    events
      .toSorted(compareEvents)
      .flatMap((event) => (isKnownEvent(event) && event.type === "check.answered" ? [event] : [])),
    ({ body }) => body.check,
  );
  return [...answers.values()].some(
    (list) => list.length > last && list.slice(-last).every(({ id }) => withdrawn.has(id)),
  );
}

describe("what is long past", () => {
  it("can be left out, and everything that verdicts rest on stays the same", () => {
    let leftOut = 0;
    fc.assert(
      fc.property(arbitraryHistory, fc.integer({ min: 1, max: 3 }), ({ events }, last) => {
        const past = seen(events, last);
        const needed = events.filter((event) => past.isNeeded(event));
        const all = fold(events);
        fc.pre(!isLostFromSight(events, all.withdrawn, last));
        leftOut += events.length - needed.length;
        const whole = wholeWalks(events, past);
        expect(withoutLongPast(fold(needed), whole)).toEqual(withoutLongPast(all, whole));
      }),
      { numRuns: 300 },
    );
    expect(leftOut).toBeGreaterThan(0);
  });

  it("is as right with more than is needed", () => {
    fc.assert(
      fc.property(arbitraryHistory, fc.array(fc.boolean(), { minLength: 1 }), ({ events }, more) => {
        const past = seen(events, 2);
        const all = fold(events);
        fc.pre(!isLostFromSight(events, all.withdrawn, 2));
        const whole = wholeWalks(events, past);
        const some = events.filter((event, at) => past.isNeeded(event) || more[at % more.length]);
        const state = withoutLongPast(fold(some), whole);
        expect(state).toEqual(withoutLongPast(all, whole));
      }),
      { numRuns: 200 },
    );
  });

  it("is most of a ledger of some years, and every reading, decision and discrepancy is still there", async () => {
    const history = await generateHistory({ years: 1, flightsPerYear: 60, seed: 7, seal: "none" });
    const past = seen(history, 16);
    const needed = history.filter((event) => past.isNeeded(event));
    expect(needed.length).toBeLessThan(0.6 * history.length);
    const types = (events: readonly LedgerEvent[]) =>
      new Set(events.filter(({ type }) => type !== "check.answered" && type !== "walk.interrupted"));
    expect(types(needed)).toEqual(types(history));
    const whole = wholeWalks(history, past);
    expect(withoutLongPast(fold(needed), whole)).toEqual(withoutLongPast(fold(history), whole));
  });

  it("counts a walk whose ending was taken back as not ended", async () => {
    const history = await generateHistory({ years: 1, flightsPerYear: 40, seed: 9, seal: "none" });
    const [ended] = history.filter(({ type }) => type === "walk.finished");
    const [answer] = history.filter(({ type }) => type === "check.answered");
    if (ended === undefined || answer === undefined) throw new Error("expected a walk with answers");
    expect(seen(history, 4).isNeeded(answer)).toBe(false);
    const back: LedgerEvent = {
      ...ended,
      id: `${ended.id.slice(0, -4)}ffff`,
      type: "event.withdrawn",
      body: { event: ended.id, why: "not yet" },
    };
    expect(seen([...history, back], 4).isNeeded(answer)).toBe(true);
  });
});
