import { describe, expect, it } from "vitest";
import { fold } from "../fold/fold.ts";
import { parseEvent } from "../parse-event.ts";
import { verifyLedger } from "../verify/verify-ledger.ts";
import { generateHistory } from "./generate.ts";

describe("a generated history", () => {
  it("is the same for the same seed, and another for another", async () => {
    const options = { years: 1, flightsPerYear: 3, seal: "hashed" } as const;
    const one = await generateHistory({ ...options, seed: 1 });
    expect(await generateHistory({ ...options, seed: 1 })).toStrictEqual(one);
    expect(await generateHistory({ ...options, seed: 2 })).not.toEqual(one);
  });

  it.each(["hashed", "signed"] as const)(
    "sealed as %s is sound, and every event passes the boundary",
    async (seal) => {
      const events = await generateHistory({ years: 1, flightsPerYear: 6, seed: 8, seal });
      expect((await verifyLedger(events)).sound).toBe(true);
      for (const event of events) expect(parseEvent(event).ok).toBe(true);
    },
  );

  it("holds what years of flying leave, and nothing that has no place", async () => {
    const state = fold(await generateHistory({ years: 2, flightsPerYear: 100, seed: 3, seal: "none" }));
    expect(state.decisions).toHaveLength(200);
    expect(state.walks.size).toBe(200);
    expect(state.checks.size).toBe(90);
    expect(state.discrepancies.size).toBeGreaterThan(10);
    expect([...state.walks.values()].some(({ interruptions }) => interruptions.length > 0)).toBe(true);
    expect(state.withdrawn.size).toBeGreaterThan(5);
    expect(state.devices.size).toBe(2);
    expect(state.unplaced.size).toBe(0);
    expect(state.conflicts).toEqual([]);
    expect([...state.groundGear.values()].map(({ removals }) => removals)).toEqual([[], [], [], [], []]);
  });
});
