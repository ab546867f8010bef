import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LedgerEvent } from "./event.ts";
import { tick } from "./hlc.ts";
import { compareEvents } from "./order.ts";
import { sortEvents } from "./sort-events.ts";
import { generateHistory } from "./testing/generate.ts";
import { Random } from "./testing/random.ts";

const shuffled = <T>(list: readonly T[], random: Random): readonly T[] =>
  list
    .map((part) => ({ part, key: random.next() }))
    .sort((a, b) => a.key - b.key)
    .map(({ part }) => part);

describe("ledger order", () => {
  it("of thousands of events is that of a plain sort, also when a clock ran wild", async () => {
    const history = await generateHistory({ years: 1, flightsPerYear: 40, seed: 3, seal: "none" });
    fc.assert(
      fc.property(fc.nat(), fc.array(fc.integer({ min: 0, max: 1e15 }), { maxLength: 3 }), (seed, wild) => {
        const random = new Random(seed);
        const events: LedgerEvent[] = history.map((event, at) => {
          // Some stamps equal in time and unlike in counter, the last of all among them, and some of a wild clock.
          if (at % 97 === 0)
            return {
              ...event,
              hlc: `${at % 2 === 0 ? "001935619200000" : "001999999999999"}-${String(random.whole(0, 99_999)).padStart(5, "0")}`,
            };
          const wild_ms = wild[at];
          return wild_ms === undefined ? event : { ...event, hlc: tick(null, wild_ms) };
        });
        const mixed = shuffled(events, random);
        expect(sortEvents(mixed)).toEqual(mixed.toSorted(compareEvents));
      }),
      { numRuns: 20 },
    );
  });

  it("is by stamp, then device, then deviceSeq, then id", () => {
    const key = { hlc: "001935619200000-00001", device: "b", deviceSeq: 2, id: "m" };
    expect(compareEvents(key, key)).toBe(0);
    expect(compareEvents({ ...key, hlc: "001935619200000-00000" }, key)).toBeLessThan(0);
    expect(compareEvents({ ...key, device: "c" }, key)).toBeGreaterThan(0);
    expect(compareEvents({ ...key, deviceSeq: 10 }, key)).toBeGreaterThan(0);
    expect(compareEvents({ ...key, id: "a" }, key)).toBeLessThan(0);
  });
});
