import { compareEvents, fold, type LedgerEvent, newId } from "@witnessmark/ledger";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  addEvents,
  emptyMemory,
  type LedgerMemory,
  memoryOf,
  shorten,
  withdrawnBy,
} from "./ledger-memory.ts";

const author = { id: newId(), name: "Ida Holm", role: "pilot" } as const;
const NOW_MS = 1_000_000;

/** An event as one of three phones makes it: an answer, or the withdrawal of an earlier or later event. */
function event(at: number, { device, time_ms, takesBack }: Spec, ids: readonly string[]): LedgerEvent {
  const target = takesBack === null ? undefined : ids[takesBack % ids.length];
  const id = ids[at] ?? "";
  return {
    id,
    operator: "isles",
    aircraft: "ZZ-SKR",
    device: `device-${device}`,
    deviceSeq: at + 1,
    author,
    hlc: `${String(time_ms).padStart(15, "0")}-00000`,
    recordedAt: "2026-11-12T06:00:00.000+00:00",
    schemaVersion: 1,
    previousHash: null,
    hash: id,
    ...(target === undefined || target === id
      ? {
          type: "check.answered" as const,
          body: { walk: "walk", check: `check-${at % 3}`, answer: "as-it-should-be" as const },
        }
      : { type: "event.withdrawn" as const, body: { event: target, why: "tapped by mistake" } }),
  };
}

interface Spec {
  readonly device: number;
  readonly time_ms: number;
  readonly takesBack: number | null;
}

const histories = fc
  .array(
    fc.record({
      device: fc.nat(2),
      // Now and then beyond the present, as a phone with a wrong clock makes them.
      time_ms: fc.oneof(
        { weight: 9, arbitrary: fc.nat(60) },
        { weight: 1, arbitrary: fc.constant(NOW_MS * 10) },
      ),
      takesBack: fc.option(fc.nat(40), { freq: 4 }),
    }),
    { maxLength: 40 },
  )
  .map((specs) => {
    const ids = specs.map((_, at) => `event-${String(at).padStart(3, "0")}`);
    return specs.map((spec, at) => event(at, spec, ids));
  })
  .chain((events) =>
    fc.record({
      events: fc.constant(events),
      arrival: fc.shuffledSubarray(events, { minLength: events.length }),
      batch: fc.integer({ min: 1, max: 7 }),
    }),
  );

/** As the keeper does it: take in, or else start again from everything that is there. */
function takeIn(
  memory: LedgerMemory,
  batch: readonly LedgerEvent[],
  all: readonly LedgerEvent[],
): LedgerMemory {
  const withdrawals = all.filter((one) => one.type === "event.withdrawn");
  const again = () =>
    memoryOf({ ...emptyMemory("ZZ-SKR").base, withdrawn: withdrawnBy(withdrawals) }, all, withdrawals);
  return shorten(addEvents(memory, batch) ?? again(), NOW_MS, 4);
}

describe("the ledger in memory", () => {
  it("is the fold of everything that has arrived, in whatever order and however much is folded for good", () => {
    fc.assert(
      fc.property(histories, ({ arrival, batch }) => {
        let memory = emptyMemory("ZZ-SKR");
        for (let from = 0; from < arrival.length; from += batch) {
          const all = arrival.slice(0, from + batch);
          memory = takeIn(memory, arrival.slice(from, from + batch), all);
          expect(memory.state).toEqual(fold(all));
        }
      }),
    );
  });

  it("keeps a late event's place without a new start while the place is among the loose ones", () => {
    const ids = ["a", "b", "c"];
    const [first, second, third] = [10, 20, 30].map((time_ms, at) =>
      event(at, { device: at, time_ms, takesBack: null }, ids),
    ) as [LedgerEvent, LedgerEvent, LedgerEvent]; // three were made
    const before = addEvents(emptyMemory("ZZ-SKR"), [first, third]);
    const after = before && addEvents(before, [second]);
    expect(after?.tail.map((one) => one.id)).toEqual(["a", "b", "c"]);
    expect(after?.state).toEqual(fold([first, second, third]));
  });

  it("asks for a new start when an event belongs before what is folded for good", () => {
    const ids = Array.from({ length: 20 }, (_, at) => `event-${at}`);
    const events = ids.map((_, at) => event(at, { device: 0, time_ms: 100 + at, takesBack: null }, ids));
    const memory = shorten(memoryOf(emptyMemory("ZZ-SKR").base, events, []), NOW_MS, 4);
    expect(memory.tail).toHaveLength(4);
    expect(memory.base.eventCount).toBe(16);
    expect(
      addEvents(memory, [event(0, { device: 1, time_ms: 50, takesBack: null }, ["late"])]),
    ).toBeUndefined();
  });

  it("leaves events of the future loose, since what is made until then sorts before them", () => {
    const ids = Array.from({ length: 20 }, (_, at) => `event-${at}`);
    const events = ids.map((_, at) =>
      event(at, { device: 0, time_ms: NOW_MS + at - 5, takesBack: null }, ids),
    );
    const memory = shorten(memoryOf(emptyMemory("ZZ-SKR").base, events, []), NOW_MS, 4);
    expect(memory.base.upTo?.hlc).toBe(`${String(NOW_MS).padStart(15, "0")}-00000`);
    expect([...memory.tail].sort(compareEvents)).toEqual(memory.tail);
  });
});
