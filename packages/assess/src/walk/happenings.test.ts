import type { HappeningKind } from "@witnessmark/book";
import { type Happening, type Origin, wallTime } from "@witnessmark/ledger";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { happeningsSince, lastFlown } from "./happenings.ts";
import { earlier, isAfter, NOTHING, recorded_ms, wouldBeAfter } from "./moments.ts";
import { firstAfter } from "./staleness.ts";

const BASE_MS = Date.UTC(2031, 4, 8, 7);
const KINDS: readonly HappeningKind[] = ["fuelled", "rain", "flown"];

/** A fact recorded at a time of its device's clock, under a stamp that may stand ahead of it. */
const origin = (recorded_s: number, ahead_s: number, seq: number): Origin => ({
  event: `event-${seq}`,
  device: "device",
  deviceSeq: seq,
  author: { id: "a", name: "Ada", role: "pilot" },
  hlc: `${String(BASE_MS + (recorded_s + ahead_s) * 1000).padStart(15, "0")}-${String(seq).padStart(5, "0")}`,
  recordedAt: wallTime(BASE_MS + recorded_s * 1000, 60),
});

const happening = (
  at_s: number,
  recorded_s: number,
  ahead_s: number,
  seq: number,
  kind: HappeningKind,
): Happening => ({
  ...origin(recorded_s, ahead_s, seq),
  kind,
  at_ms: BASE_MS + at_s * 1000,
  at: wallTime(BASE_MS + at_s * 1000, 60),
});

const second = fc.integer({ min: -7200, max: 7200 });
const ahead = fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 10_000 }));
const looks = fc.array(fc.tuple(second, ahead), { minLength: 1, maxLength: 4 });
const told = fc.array(fc.tuple(second, second, ahead, fc.constantFrom(...KINDS)), { maxLength: 12 });

describe("whether a happening came after a look", () => {
  const look = origin(30, 0, 5); // half a minute past the full minute
  it.each([
    { at_s: 31, seq: 9, after: true, why: "it was later" },
    { at_s: 31, seq: 1, after: true, why: "it was later, though it was told before" },
    { at_s: 30, seq: 9, after: true, why: "it was in the same second and told after" },
    { at_s: 0, seq: 9, after: true, why: "it was in the same minute and told after" },
    { at_s: -1, seq: 9, after: false, why: "it was in the minute before" },
    { at_s: 30, seq: 1, after: false, why: "it was in the same second and told before" },
    { at_s: 0, seq: 1, after: false, why: "it was in the same minute and told before" },
  ])("$after: $why", ({ at_s, seq, after }) => {
    expect(isAfter(happening(at_s, 30, 0, seq, "fuelled"), look)).toBe(after);
  });

  it("is in doubt, and so it was, where the teller's clock stood behind by more than two minutes", () => {
    expect(isAfter(happening(-200, -90, 121, 9, "fuelled"), look)).toBe(false); // −200 + 121 is before 30
    expect(isAfter(happening(-91, -91, 121, 9, "fuelled"), look)).toBe(true); // −91 + 121 is 30
    expect(isAfter(happening(-90, -90, 120, 9, "fuelled"), look)).toBe(false); // two minutes are honest
    expect(isAfter(happening(-92, -91, 121, 9, "fuelled"), look)).toBe(false); // 29, a second before
  });

  it("would be, for one that nobody has told yet, from the look's minute on", () => {
    expect(wouldBeAfter(BASE_MS, look)).toBe(true);
    expect(wouldBeAfter(BASE_MS - 1, look)).toBe(false);
  });

  it("takes the stamp for the time where the text does not read", () => {
    expect(recorded_ms({ ...look, recordedAt: "noon" })).toBe(BASE_MS + 30_000);
  });
});

describe("the sieve over years of happenings", () => {
  const sieve = (
    rows: readonly [number, number, number, HappeningKind][],
    seen: readonly [number, number][],
  ) => {
    const all = rows
      .map(([at_s, recorded_s, ahead_s, kind], seq) => happening(at_s, recorded_s, ahead_s, seq, kind))
      .sort((a, b) => (a.hlc < b.hlc ? -1 : 1));
    const looked = seen.map(([recorded_s, ahead_s], seq) => origin(recorded_s, ahead_s, seq + 50));
    return { all, looked, kept: happeningsSince(all, looked.reduce(earlier, NOTHING)) };
  };

  it("keeps every happening that came after any of the looks", () => {
    fc.assert(
      fc.property(told, looks, (rows, seen) => {
        const { all, looked, kept } = sieve(rows, seen);
        for (const each of all) {
          if (looked.some((look) => isAfter(each, look))) expect(kept.get(each.kind)).toContain(each);
        }
      }),
      { numRuns: 500 },
    );
  });

  it("finds the same first happening after a look as a search through all of them", () => {
    fc.assert(
      fc.property(told, looks, (rows, seen) => {
        const { all, looked, kept } = sieve(rows, seen);
        for (const look of looked) {
          const times = all
            .filter((each) => each.kind !== "rain" && isAfter(each, look))
            .map(({ at_ms }) => at_ms);
          expect(firstAfter(kept, ["fuelled", "flown"], look)?.at_ms).toBe(
            times.length === 0 ? undefined : Math.min(...times),
          );
        }
      }),
      { numRuns: 500 },
    );
  });

  it("drops what cannot matter", () => {
    const { kept } = sieve([[-600, -600, 0, "fuelled"]], [[0, 0]]);
    expect(kept.get("fuelled")).toEqual([]);
  });

  it("knows the latest flight by when it was made, not by when it was told", () => {
    const { all } = sieve(
      [
        [100, 100, 0, "flown"],
        [50, 200, 0, "flown"],
        [300, 300, 0, "rain"],
      ],
      [[0, 0]],
    );
    expect(lastFlown(all)?.at_ms).toBe(BASE_MS + 100_000);
    expect(lastFlown([])).toBeUndefined();
  });
});
