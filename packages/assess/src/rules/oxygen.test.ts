import { toSI } from "@witnessmark/engine";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CabinPoint, timeAbove_s, timeBetween_s } from "./cabin-profile.ts";
import { euPartNco as eu } from "./eu-part-nco/pack.ts";
import type { OxygenInput, OxygenNeed } from "./rule-pack.ts";
import type { Ruling } from "./ruling.ts";
import { type DecodedCase, decodedCases, numberOf } from "./testing/decoded-cases.ts";
import { maskWorn } from "./us-part-91/oxygen.ts";
import { usPart91 as us } from "./us-part-91/pack.ts";

const ft = (value: number): number => toSI(value, "ft");
const min = (value: number): number => toSI(value, "min");

const level = (altitude_ft: number, time_min: number): readonly CabinPoint[] => [
  { time_s: 0, cabinAltitude_m: ft(altitude_ft) },
  { time_s: min(time_min), cabinAltitude_m: ft(altitude_ft) },
];

const base: OxygenInput = {
  pressurised: false,
  highestLevel_m: ft(15_000),
  crew_count: 1,
  passengers_count: 3,
};

const known = (result: Ruling<OxygenNeed>): OxygenNeed => {
  if (!result.known) throw new Error(result.text);
  return result;
};
const personMinutes = (need: OxygenNeed, ids: readonly string[]): number =>
  need.parts
    .filter(({ id }) => ids.includes(id))
    .reduce((sum, { persons_count, time_s }) => sum + (persons_count * time_s) / 60, 0);

const CASES = decodedCases("rules-oxygen.json", 14);
const group = (start: string): readonly DecodedCase[] => CASES.filter(({ id }) => id.startsWith(start));
const faaLevels = [...group("o2rule-faa-1")];
const faaExtra = [...group("o2rule-faa-fl")];
const faaMasks = [...group("o2rule-faa-mask")];
const ncoUse = [...group("o2rule-nco-1")];
const ncoCarried = group("o2rule-nco150-1");
const ncoSlow = group("o2rule-nco150-fl");

it("takes up every case of the file", () => {
  const taken = [faaLevels, faaExtra, faaMasks, ncoUse, ncoCarried, ncoSlow].flat();
  expect(taken.map(({ id }) => id).toSorted()).toEqual(CASES.map(({ id }) => id).toSorted());
});

describe("oxygen by 14 CFR 91.211", () => {
  it.each(faaLevels)("$id", (one) => {
    const cabin = level(numberOf(one, "cabinPressureAltitude_ft"), numberOf(one, "timeAtAltitude_min"));
    const need = known(us.oxygen({ ...base, cabin }));
    expect(need.crewUse_s / 60).toBe(numberOf(one, "crewOxygenUse_min", "expected"));
    expect(need.everyoneProvided_s > 0).toBe(one.expected["oxygenProvidedEachOccupant"]);
  });

  it.each(faaExtra)("$id", (one) => {
    const occupants = numberOf(one, "occupants_count");
    const need = known(
      us.oxygen({
        ...base,
        cabin: level(8000, 120),
        pressurised: true,
        highestLevel_m: ft(numberOf(one, "flightLevel") * 100),
        passengers_count: occupants - 1,
      }),
    );
    expect(personMinutes(need, ["descent"])).toBe(numberOf(one, "extraSupply_personMin", "expected"));
  });

  it.each(faaMasks)("$id", (one) => {
    const need = known(
      us.oxygen({
        ...base,
        cabin: level(8000, 120),
        pressurised: true,
        highestLevel_m: ft(numberOf(one, "flightLevel") * 100),
        pilotsAtControls_count: numberOf(one, "pilotsAtControls_count"),
        quickDonningMasks: one.inputs["quickDonningMasks"] === true,
      }),
    );
    expect(need.maskWorn).toBe(one.expected["maskWornByOnePilot"]);
  });

  it("has a mask worn above FL350 unless the relief is known to hold, and always above FL410", () => {
    const two = { pressurised: true, pilotsAtControls_count: 2, quickDonningMasks: true } as const;
    expect(maskWorn({ pressurised: true }, ft(36_000))[0]).toBe(true);
    expect(maskWorn({ ...two, quickDonningMasks: undefined }, ft(36_000))[0]).toBe(true);
    expect(maskWorn(two, ft(41_000))[0]).toBe(false);
    expect(maskWorn(two, ft(41_100))[0]).toBe(true);
    expect(maskWorn({ pressurised: true }, ft(35_000))[0]).toBe(false);
  });

  it("sums the half hour over the flight: twice 20 minutes at 13,000 ft leave 10", () => {
    const cabin = [
      ...level(13_000, 20),
      { time_s: min(20), cabinAltitude_m: ft(9000) },
      { time_s: min(60), cabinAltitude_m: ft(9000) },
      { time_s: min(60), cabinAltitude_m: ft(13_000) },
      { time_s: min(80), cabinAltitude_m: ft(13_000) },
    ];
    expect(known(us.oxygen({ ...base, cabin })).crewUse_s / 60).toBeCloseTo(10, 9);
  });

  it("counts passengers above 15,000 ft: three for 25 minutes, and the pilot", () => {
    const need = known(us.oxygen({ ...base, cabin: level(16_000, 25), highestLevel_m: ft(16_000) }));
    expect(need.personTime_s / 60).toBe(100); // 4 × 25
  });
});

describe("oxygen by NCO.OP.190(b)", () => {
  it.each(ncoUse)("$id", (one) => {
    const cabin = level(numberOf(one, "cabinPressureAltitude_ft"), numberOf(one, "timeAtAltitude_min"));
    const need = known(eu.oxygen({ ...base, cabin }));
    expect(need.crewUse_s / 60).toBe(numberOf(one, "crewOxygenUse_min", "expected"));
    expect(need.passengerUse_s > 0).toBe(one.expected["allOccupantsUse"]);
  });
});

describe("oxygen carried by NCO.IDE.A.150", () => {
  const pressurised: OxygenInput = { ...base, pressurised: true, cabin: level(7000, 90), downIn4Min: true };

  it.each(ncoCarried)("$id", (one) => {
    const altitude_ft = numberOf(one, "cabinPressureAltitude_ft");
    const need = known(
      eu.oxygen({
        ...pressurised,
        passengers_count: numberOf(one, "passengers_count"),
        highestLevel_m: ft(altitude_ft),
        afterLoss: level(altitude_ft, numberOf(one, "time_min")),
      }),
    );
    expect(personMinutes(need, ["passengers"])).toBe(numberOf(one, "passengerSupply_personMin", "expected"));
  });

  it.each(ncoSlow)("$id", (one) => {
    const need = known(
      eu.oxygen({
        ...pressurised,
        highestLevel_m: ft(numberOf(one, "flightLevel") * 100),
        downIn4Min: one.inputs["descendsTo13000ftWithin4min"] === true,
        afterLoss: level(9000, 10),
      }),
    );
    expect(one.expected["tenMinuteSupplyAllOccupants"]).toBe(true);
    expect(personMinutes(need, ["descent", "passengers", "crew"])).toBe(40); // four aboard, ten minutes each
  });

  it("asks nothing more of a flight that gets down in time, below 25,000 ft", () => {
    const need = known(eu.oxygen({ ...pressurised, highestLevel_m: ft(24_000), afterLoss: level(9000, 10) }));
    expect(need.personTime_s).toBe(0);
    const high = known(eu.oxygen({ ...pressurised, highestLevel_m: ft(25_001), afterLoss: level(9000, 10) }));
    expect(high.personTime_s / 60).toBe(40);
  });

  it("cannot be told without the profile after a loss, nor without the time to get down", () => {
    expect(eu.oxygen({ ...pressurised, highestLevel_m: ft(24_000) })).toMatchObject({
      known: false,
      missing: [{ input: "afterLoss" }],
    });
    const given = {
      ...pressurised,
      highestLevel_m: ft(24_000),
      afterLoss: level(9000, 10),
      downIn4Min: undefined,
    };
    expect(eu.oxygen(given)).toMatchObject({ known: false, missing: [{ input: "downIn4Min" }] });
  });
});

describe("the time of a cabin profile above an altitude", () => {
  it("is exact on a steady climb: 8,000 to 16,000 ft in 40 min is 17.5 min above 12,500 ft", () => {
    const climb = [
      { time_s: 0, cabinAltitude_m: ft(8000) },
      { time_s: min(40), cabinAltitude_m: ft(16_000) },
    ];
    expect(timeAbove_s(climb, ft(12_500)) / 60).toBeCloseTo(17.5, 9);
    expect(timeBetween_s(climb, ft(12_500), ft(14_000)) / 60).toBeCloseTo(7.5, 9);
  });

  it("does not count a level on the edge itself", () => {
    expect(timeAbove_s(level(14_000, 30), ft(14_000))).toBe(0);
    expect(timeBetween_s(level(14_000, 30), ft(12_500), ft(14_000))).toBe(min(30));
    expect(timeBetween_s(level(12_500, 30), ft(12_500), ft(14_000))).toBe(0);
  });

  it("never grows with the altitude asked, and never is more than the flight", () => {
    const point = fc.record({
      after_s: fc.double({ min: 0, max: 4000, noNaN: true }),
      cabinAltitude_m: fc.double({ min: 0, max: 12_000, noNaN: true }),
    });
    const edge_m = fc.double({ min: 0, max: 12_000, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 2, maxLength: 8 }),
        edge_m,
        edge_m,
        (points, one_m, other_m) => {
          let time_s = 0;
          const profile = points.map(({ after_s, cabinAltitude_m }) => {
            time_s += after_s;
            return { time_s, cabinAltitude_m };
          });
          const whole_s = time_s - (profile[0]?.time_s ?? 0);
          const low_s = timeAbove_s(profile, Math.min(one_m, other_m));
          const high_s = timeAbove_s(profile, Math.max(one_m, other_m));
          expect(high_s).toBeLessThanOrEqual(low_s + 1e-6);
          expect(low_s).toBeLessThanOrEqual(whole_s + 1e-6);
        },
      ),
    );
  });
});

describe("more of it never needs less oxygen", () => {
  it.each([us, eu])("$id: longer, or higher by a thousand feet", (pack) => {
    const altitude_ft = fc.integer({ min: 5000, max: 24_000 });
    fc.assert(
      fc.property(altitude_ft, fc.integer({ min: 1, max: 300 }), (cabin_ft, time_min) => {
        const need = (height_ft: number, span_min: number): number =>
          known(pack.oxygen({ ...base, highestLevel_m: ft(height_ft), cabin: level(height_ft, span_min) }))
            .personTime_s;
        expect(need(cabin_ft, time_min + 10)).toBeGreaterThanOrEqual(need(cabin_ft, time_min));
        expect(need(cabin_ft + 1000, time_min)).toBeGreaterThanOrEqual(need(cabin_ft, time_min));
      }),
    );
  });
});
