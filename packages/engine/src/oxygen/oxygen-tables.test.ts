import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromSI, toSI } from "../units/convert.ts";
import { crewOxygenEquipment } from "./crew-equipment.ts";
import { trachealTarget } from "./tracheal-target.ts";
import { USEFUL_CONSCIOUSNESS, usefulConsciousness } from "./useful-consciousness.ts";

interface OxygenCase {
  readonly id: string;
  readonly inputs: Readonly<Record<string, number>>;
  readonly expected: Readonly<Record<string, number | string>>;
}

const FILE = join(import.meta.dirname, "../../../../reference/decoded/oxygen.json");
// Read as it was written; the tests fail on any other shape.
const { cases } = JSON.parse(readFileSync(FILE, "utf8")) as { readonly cases: readonly OxygenCase[] };
const casesOf = (start: string): readonly OxygenCase[] => cases.filter(({ id }) => id.startsWith(start));

describe("time of useful consciousness", () => {
  it("has its five published cases", () => {
    expect(casesOf("o2phys-tuc")).toHaveLength(5);
  });

  it.each(casesOf("o2phys-tuc"))("$id", ({ inputs, expected }) => {
    const found = usefulConsciousness(toSI(inputs["altitude_ft"] ?? Number.NaN, "ft"));
    expect(found.ok).toBe(true);
    if (!found.ok) return;
    const { gradual, rapid } = found.row;
    expect({
      tucMin_s: gradual.shortest_s,
      tucMax_s: gradual.longest_s,
      tucRapidMin_s: rapid.shortest_s,
      tucRapidMax_s: rapid.longest_s,
    }).toEqual(expected);
  });

  it("between two rows is that of the higher one", () => {
    const found = usefulConsciousness(toSI(26_000, "ft"));
    expect(found.ok && Math.round(fromSI(found.row.altitude_m, "ft"))).toBe(28_000);
  });

  it("never grows with altitude", () => {
    const altitude_m = fc.double({ min: toSI(18_000, "ft"), max: toSI(50_000, "ft"), noNaN: true });
    fc.assert(
      fc.property(altitude_m, altitude_m, (one_m, other_m) => {
        const low = usefulConsciousness(Math.min(one_m, other_m));
        const high = usefulConsciousness(Math.max(one_m, other_m));
        expect(low.ok && high.ok).toBe(true);
        if (!low.ok || !high.ok) return;
        expect(high.row.gradual.longest_s).toBeLessThanOrEqual(low.row.gradual.longest_s);
        expect(high.row.rapid.shortest_s).toBeLessThanOrEqual(low.row.rapid.shortest_s);
      }),
    );
  });

  it("is never longer after a rapid loss than in a climb", () => {
    for (const { gradual, rapid } of USEFUL_CONSCIOUSNESS) {
      expect(rapid.shortest_s).toBeLessThanOrEqual(gradual.shortest_s);
      expect(rapid.longest_s).toBeLessThanOrEqual(gradual.longest_s);
    }
  });

  it("is not given off the table", () => {
    expect(usefulConsciousness(toSI(17_999, "ft"))).toEqual({ ok: false, why: "below-the-table" });
    expect(usefulConsciousness(toSI(50_001, "ft"))).toEqual({ ok: false, why: "above-the-table" });
    expect(usefulConsciousness(Number.NaN)).toEqual({ ok: false, why: "not-a-number" });
  });
});

describe("the kind of crew equipment", () => {
  it.each(casesOf("o2rule-part23"))("$id", ({ inputs, expected }) => {
    const altitude_m = toSI(inputs["certifiedMaxAltitude_ft"] ?? Number.NaN, "ft");
    expect(crewOxygenEquipment(altitude_m)).toBe(expected["crewEquipment"]);
  });

  it("becomes pressure demand above 40,000 ft, and is not told for no number", () => {
    expect(crewOxygenEquipment(toSI(40_000, "ft"))).toBe("demand");
    expect(crewOxygenEquipment(toSI(40_001, "ft"))).toBe("pressure demand");
    expect(crewOxygenEquipment(Number.NaN)).toBeUndefined();
  });
});

describe("the target in the windpipe", () => {
  // CS 25.1443 (a), (b), (c): the figures as printed
  it.each([
    ["crew-continuous-flow", 20_000, 149, 15],
    ["crew-demand", 35_000, 122, 20],
    ["passenger", 18_500, 100, 15],
    ["passenger", 18_501, 83.8, 30],
    ["passenger", 40_000, 83.8, 30],
  ] as const)(
    "for %s at %i ft is %d mmHg at %i L/min",
    (person, altitude_ft, pressure_mmHg, volume_LPerMin) => {
      const found = trachealTarget(person, toSI(altitude_ft, "ft"));
      expect(found.ok).toBe(true);
      if (!found.ok) return;
      expect(fromSI(found.target.oxygenPressure_Pa, "mmHg")).toBeCloseTo(pressure_mmHg, 9);
      expect(fromSI(found.target.minuteVolume_m3PerS, "LPerMin")).toBeCloseTo(volume_LPerMin, 9);
    },
  );

  it("is none outside the rule's bands", () => {
    expect(trachealTarget("passenger", toSI(10_000, "ft"))).toEqual({ ok: false, why: "below-the-bands" });
    expect(trachealTarget("passenger", toSI(40_001, "ft"))).toEqual({ ok: false, why: "above-the-bands" });
    expect(trachealTarget("crew-demand", toSI(36_000, "ft"))).toEqual({ ok: false, why: "above-the-bands" });
    expect(trachealTarget("passenger", Number.NaN)).toEqual({ ok: false, why: "not-a-number" });
  });
});
