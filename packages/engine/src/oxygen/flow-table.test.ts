import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromSI, toSI } from "../units/convert.ts";
import { descentSupply, everyThousandFeet_m, meanFlowBetween } from "./descent-flow.ts";
import { type FlowRow, flowAt } from "./flow-table.ts";

const row = (altitude_ft: number, flow_LPerMin: number): FlowRow => ({
  cabinAltitude_m: toSI(altitude_ft, "ft"),
  flow_m3PerS: toSI(flow_LPerMin, "LPerMin"),
});

/**
 * US Army TM 1-1510-225-10, table 2-5: one crew mask, 100 % down to 20,000 ft and normal below.
 * 25,000 to 15,000 ft, printed for every thousand feet.
 */
const PRINTED_LPerMin = [5.9, 6.2, 6.6, 6.9, 7.2, 7.6, 3.9, 4.2, 4.5, 4.8, 5.1];
const TABLE = PRINTED_LPerMin.map((flow, at) => row(25_000 - 1000 * at, flow)).toReversed();

describe("a table of flows", () => {
  it("gives its own figures at its own altitudes", () => {
    for (const { cabinAltitude_m, flow_m3PerS } of TABLE)
      expect(flowAt(TABLE, cabinAltitude_m)).toEqual({ ok: true, flow_m3PerS });
  });

  it("is linear between two rows", () => {
    const found = flowAt(TABLE, toSI(15_500, "ft"));
    expect(found.ok && fromSI(found.flow_m3PerS, "LPerMin")).toBeCloseTo(4.95, 10); // half of 5.1 and 4.8
  });

  it("gives nothing beyond its ends and names the nearest altitude that it covers", () => {
    const over_m = toSI(25_001, "ft");
    const under_m = toSI(14_999, "ft");
    expect(flowAt(TABLE, over_m)).toEqual({
      ok: false,
      why: "off-the-table",
      asked_m: over_m,
      nearest_m: toSI(25_000, "ft"),
    });
    expect(flowAt(TABLE, under_m)).toEqual({
      ok: false,
      why: "off-the-table",
      asked_m: under_m,
      nearest_m: toSI(15_000, "ft"),
    });
  });

  it("stays between the figures of its neighbours", () => {
    const lowest_m = toSI(15_000, "ft");
    const highest_m = toSI(25_000, "ft");
    fc.assert(
      fc.property(fc.double({ min: lowest_m, max: highest_m, noNaN: true }), (altitude_m) => {
        const found = flowAt(TABLE, altitude_m);
        const near = TABLE.filter(
          (one) => Math.abs(one.cabinAltitude_m - altitude_m) <= toSI(1000, "ft") + 1e-9,
        );
        const flows = near.map((one) => one.flow_m3PerS);
        expect(found.ok).toBe(true);
        if (!found.ok) return;
        expect(found.flow_m3PerS).toBeGreaterThanOrEqual(Math.min(...flows) - 1e-15);
        expect(found.flow_m3PerS).toBeLessThanOrEqual(Math.max(...flows) + 1e-15);
      }),
    );
  });

  it.each([
    ["nothing in it", [], 5000, "no-table"],
    ["altitudes that do not ascend", [row(10_000, 1), row(10_000, 2)], 3048, "not-ascending"],
    ["a flow below nothing", [row(10_000, -1)], 3048, "not-a-number"],
    ["an altitude asked that is no number", [row(10_000, 1)], Number.NaN, "not-a-number"],
  ] as const)("says what is wrong: %s", (_what, table, altitude_m, why) => {
    expect(flowAt(table, altitude_m)).toEqual({ ok: false, why });
  });

  it("of one row holds at that altitude alone", () => {
    const one = [row(10_000, 2)];
    expect(flowAt(one, toSI(10_000, "ft"))).toEqual({ ok: true, flow_m3PerS: toSI(2, "LPerMin") });
    expect(flowAt(one, toSI(10_001, "ft")).ok).toBe(false);
  });
});

describe("the mean flow of a descent", () => {
  it("is the mean of every thousand feet: the printed 5.7 L/min, where the ends alone give 5.5", () => {
    const mean = meanFlowBetween(TABLE, toSI(25_000, "ft"), toSI(15_000, "ft"));
    expect(mean.ok && Math.abs(fromSI(mean.meanFlow_m3PerS, "LPerMin") - 5.7)).toBeLessThanOrEqual(0.05);
    expect(mean.ok && mean.flows.length).toBe(11);
  });

  it("takes the last, shorter step to the end of the way", () => {
    const feet = everyThousandFeet_m(toSI(12_500, "ft"), toSI(10_000, "ft")).map((m) => fromSI(m, "ft"));
    expect(feet.map(Math.round)).toEqual([12_500, 11_500, 10_500, 10_000]);
    expect(everyThousandFeet_m(1000, 1000)).toEqual([1000]);
    expect(everyThousandFeet_m(0, Number.POSITIVE_INFINITY)).toEqual([]);
  });

  it("is none where the table ends before the way does", () => {
    const mean = meanFlowBetween(TABLE, toSI(25_000, "ft"), toSI(14_000, "ft"));
    expect(mean).toMatchObject({ ok: false, why: "off-the-table", nearest_m: toSI(15_000, "ft") });
  });
});

describe("the supply for an emergency descent", () => {
  const descent = {
    from_m: toSI(25_000, "ft"),
    to_m: toSI(15_000, "ft"),
    rate_mPerS: toSI(2500, "ftPerMin"),
    recognition_s: 17,
  };

  it("is the first seconds at the top's flow and the way down at the mean flow", () => {
    const supply = descentSupply(TABLE, descent);
    expect(supply.ok).toBe(true);
    if (!supply.ok) return;
    expect(supply.time_s).toBeCloseTo(17 + 240, 9); // 10,000 ft at 2,500 ft/min is 4 min
    // by hand: 17/60 min × 5.9 + 4 min × 62.9/11 L/min
    expect(fromSI(supply.supply_m3, "L")).toBeCloseTo((17 / 60) * 5.9 + (4 * 62.9) / 11, 9);
  });

  it.each([
    ["a rate of nothing", { rate_mPerS: 0 }],
    ["a climb", { to_m: toSI(26_000, "ft") }],
    ["a rate that is no number", { rate_mPerS: Number.NaN }],
    ["a rate without end", { rate_mPerS: Number.POSITIVE_INFINITY }],
    ["time that runs backwards", { recognition_s: -1 }],
  ])("is none for %s", (_what, change) => {
    expect(descentSupply(TABLE, { ...descent, ...change })).toEqual({ ok: false, why: "no-descent" });
  });
});
