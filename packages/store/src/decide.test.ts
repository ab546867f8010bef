import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decide, type Known } from "./decide.ts";
import type { Arrival } from "./store.ts";
import { sound, unsound } from "./testing/arrivals.ts";

/** Arrivals that often share ids, places and texts. */
const arrival: fc.Arbitrary<Arrival> = fc.oneof(
  fc
    .record({
      id: fc.constantFrom("i", "j", "k", "l"),
      device: fc.constantFrom("a", "b"),
      deviceSeq: fc.integer({ min: 1, max: 3 }),
      words: fc.constantFrom("", "other"),
    })
    .map(({ id, device, deviceSeq, words }) => sound(device, deviceSeq, words, id)),
  fc.constantFrom("x", "y").map((text) => unsound(text)),
);

/** Feeds batches one after the other, as a database would. */
function feed(batches: readonly (readonly Arrival[])[]) {
  const ledger: Known[] = [];
  const answers = batches.map((batch) => {
    const decided = decide(ledger.length, batch, ledger);
    ledger.push(...decided.numbered);
    return decided;
  });
  return { ledger, answers };
}

describe("decide", () => {
  it("numbers on from the head without a hole, whatever comes", () => {
    fc.assert(
      fc.property(fc.array(fc.array(arrival, { maxLength: 8 }), { maxLength: 8 }), (batches) => {
        const { ledger } = feed(batches);
        expect(ledger.map(({ ledgerSeq }) => ledgerSeq)).toEqual(ledger.map((_, index) => index + 1));
      }),
    );
  });

  it("never numbers two events with one id, or with one place on a device", () => {
    fc.assert(
      fc.property(fc.array(fc.array(arrival, { maxLength: 8 }), { maxLength: 8 }), (batches) => {
        const { ledger } = feed(batches);
        expect(new Set(ledger.map(({ id }) => id)).size).toBe(ledger.length);
        expect(new Set(ledger.map(({ device, deviceSeq }) => `${device} ${deviceSeq}`)).size).toBe(
          ledger.length,
        );
      }),
    );
  });

  it("answers every arrival, in order, and loses the text of none", () => {
    fc.assert(
      fc.property(fc.array(arrival, { maxLength: 12 }), (batch) => {
        const { ledger, answers } = feed([batch]);
        const [decided] = answers;
        expect(decided?.results.map(({ id }) => id)).toEqual(batch.map(({ id }) => id));
        const kept = new Set([...ledger, ...(decided?.setAside ?? [])].map(({ text }) => text));
        expect(batch.every(({ text }) => kept.has(text))).toBe(true);
      }),
    );
  });

  it("comes to the same ledger in one batch as in many", () => {
    fc.assert(
      fc.property(fc.array(arrival, { maxLength: 12 }), (arrivals) => {
        expect(feed([arrivals]).ledger).toEqual(feed(arrivals.map((one) => [one])).ledger);
      }),
    );
  });

  it("answers a second push of the same as duplicates, conflicts and what is set aside, and numbers nothing", () => {
    fc.assert(
      fc.property(fc.array(arrival, { maxLength: 12 }), (batch) => {
        const { answers } = feed([batch, batch]);
        expect(answers[1]?.numbered).toEqual([]);
        expect(answers[1]?.results.some(({ outcome }) => outcome === "accepted")).toBe(false);
      }),
    );
  });

  it("says what is in the way of a conflict, and that the first stays", () => {
    const known: Known = { ...sound("a", 1), ledgerSeq: 12 };
    expect(decide(12, [sound("a", 1, "other")], [known]).results).toEqual([
      {
        id: "a-1",
        outcome: "conflict",
        reason:
          "Event a-1 is already in the ledger as number 12, with other contents or another signature. The first one stays; this one is set aside.",
      },
    ]);
    expect(decide(12, [sound("a", 1, "", "z")], [known]).results).toEqual([
      {
        id: "z",
        outcome: "conflict",
        reason:
          "Device a has already sent another event as its number 1 (a-1, number 12 of the ledger). The first one stays; this one is set aside. A phone put back to an older copy does this.",
      },
    ]);
  });
});
