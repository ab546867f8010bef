import { toSI } from "@witnessmark/engine";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { finalReserve, type RequiredFuelInput, requiredFuel } from "./fuel.ts";
import type { RulePack } from "./rule-pack.ts";
import { rulePacks } from "./rule-packs.ts";
import { type DecodedCase, decodedCases, numberOf, optionalNumber } from "./testing/decoded-cases.ts";

const packOf = (id: string): RulePack => {
  const pack = rulePacks.get(id);
  if (pack === undefined) throw new Error(`no rule pack ${id}`);
  return pack;
};
const us = packOf("us-part-91");
const eu = packOf("eu-part-nco");

/** The cases are in gallons or litres; what one weighs cancels out. */
const KG_PER_UNIT = 2.7;

/** What each case stands for, in the words of the rule packs. */
const SITUATIONS: Readonly<Record<string, readonly [pack: RulePack, input: RequiredFuelInput]>> = {
  "fuel-91-151-day": [us, { flightRules: "VFR", night: false }],
  "fuel-91-151-odd-minutes": [us, { flightRules: "VFR", night: false }],
  "fuel-91-167-with-alternate": [us, { flightRules: "IFR", alternateNeeded: true }],
  "fuel-nco-night": [eu, { flightRules: "VFR", night: true, on: "2021-01-15" }],
  "fuel-nco-day": [eu, { flightRules: "VFR", night: false, on: "2022-10-29" }],
};

function required_units(one: DecodedCase): number {
  const [pack, situation] = SITUATIONS[one.id] ?? [];
  if (pack === undefined || situation === undefined) throw new Error(`${one.id}: no situation for it`);
  const burn_perH = numberOf(one, "burnCruise_galPerH");
  const trip_h = optionalNumber(one, "trip_h") ?? numberOf(one, "trip_min") / 60;
  const alternate_h = optionalNumber(one, "alternate_h");
  const result = requiredFuel(pack, {
    ...situation,
    burns: { cruise_kgPerS: (burn_perH * KG_PER_UNIT) / 3600 },
    trip_kg: trip_h * burn_perH * KG_PER_UNIT,
    taxi_kg: (optionalNumber(one, "taxi_gal") ?? 0) * KG_PER_UNIT,
    alternate_kg: alternate_h === undefined ? undefined : alternate_h * burn_perH * KG_PER_UNIT,
  });
  if (!result.known) throw new Error(result.text);
  expect(result.reserve.time_s / 60).toBe(numberOf(one, "reserve_min"));
  return result.required_kg / KG_PER_UNIT;
}

const CASES = decodedCases("rules-fuel.json", 6);

describe("the fuel that a rule asks", () => {
  it.each(CASES.filter(({ id }) => id in SITUATIONS))("$id", (one) => {
    const expected = numberOf(one, "requiredFuel_gal", "expected");
    expect(Math.abs(required_units(one) - expected)).toBeLessThanOrEqual(
      one.tolerance["requiredFuel_gal"] ?? 0,
    );
  });

  it.each(CASES.filter(({ id }) => !(id in SITUATIONS)))("$id", (one) => {
    const burns = {
      maxContinuousCruise_kgPerS: (numberOf(one, "burnMaxContinuous_lPerH") * KG_PER_UNIT) / 3600,
      holding_kgPerS: (numberOf(one, "burnHolding_lPerH") * KG_PER_UNIT) / 3600,
    };
    const litres = (input: RequiredFuelInput): number => {
      const result = finalReserve(eu, { ...input, burns, on: "2022-10-30" });
      if (!result.known) throw new Error(result.text);
      return result.fuel_kg / KG_PER_UNIT;
    };
    const expected = (name: string): number => numberOf(one, name, "expected");
    expect(litres({ flightRules: "VFR", night: false, local: true })).toBeCloseTo(
      expected("localDayVfr_L"),
      9,
    );
    expect(litres({ flightRules: "VFR", night: false })).toBeCloseTo(expected("dayVfr_L"), 9);
    expect(litres({ flightRules: "VFR", night: true })).toBeCloseTo(expected("nightVfrOrIfr_L"), 9);
    expect(litres({ flightRules: "IFR" })).toBeCloseTo(expected("nightVfrOrIfr_L"), 9);
  });
});

describe("the text of NCO.OP.125", () => {
  it("changes on 30 October 2022: cruise before, holding from then on", () => {
    const at = (on: string): string => {
      const result = eu.finalReserveTime({ flightRules: "IFR", on });
      return result.known ? result.burn : result.text;
    };
    expect(at("2022-10-29")).toBe("normal-cruise");
    expect(at("2022-10-30")).toBe("holding");
    expect(at("2026-11-12")).toBe("holding");
  });

  it.each([undefined, "", "12 Nov 2026", "2026-13-01", "1999-01-01"])(
    "is not known for the date %s",
    (on) => {
      expect(eu.finalReserveTime({ flightRules: "IFR", on })).toMatchObject({
        known: false,
        missing: [{ input: "on" }],
      });
    },
  );
});

describe("required fuel", () => {
  const whole: RequiredFuelInput = {
    flightRules: "IFR",
    night: false,
    on: "2026-11-12",
    alternateNeeded: true,
    burns: { cruise_kgPerS: 0.03, holding_kgPerS: 0.02, maxContinuousCruise_kgPerS: 0.04 },
    trip_kg: 100,
    taxi_kg: 5,
    contingency_kg: 5,
    alternate_kg: 30,
    extra_kg: 10,
  };

  it("names each part and what asked for it", () => {
    const result = requiredFuel(eu, whole);
    expect(result.known && result.parts.map(({ id, askedBy }) => `${id} ${askedBy}`)).toEqual([
      "trip rule",
      "final-reserve rule",
      "taxi plan",
      "contingency plan",
      "extra plan",
      "alternate rule",
    ]);
    // 100 + 45 min × 60 × 0.02 + 5 + 5 + 10 + 30, by hand
    expect(result.known && result.required_kg).toBeCloseTo(204, 9);
    expect(result.known && result.byRule_kg).toBeCloseTo(184, 9);
  });

  it.each([
    ["trip_kg", "the trip fuel"],
    ["alternate_kg", "the fuel to the alternate"],
    ["alternateNeeded", "whether an alternate is needed"],
    ["flightRules", "visual or instrument flight rules"],
    ["burns", "the burn at holding speed, 1,500 ft above the field"],
    ["on", "the date of the flight, as 2026-11-12, on which it depends which text applies"],
  ])("cannot be told without %s, and says so", (input, what) => {
    const result = requiredFuel(eu, { ...whole, [input]: undefined });
    expect(result.known).toBe(false);
    expect(result.text).toContain(what);
  });

  it("takes no figure for nothing: a taxi fuel that is none is named", () => {
    expect(requiredFuel(us, { ...whole, taxi_kg: Number.NaN })).toMatchObject({
      known: false,
      missing: [{ input: "taxi_kg", what: "the taxi fuel (NaN is no figure)" }],
    });
    expect(requiredFuel(us, { ...whole, extra_kg: -1 }).known).toBe(false);
  });

  it("asks no alternate of a flight under visual rules, and counts one that is planned all the same", () => {
    const visual = { ...whole, flightRules: "VFR", alternateNeeded: undefined } as const;
    const result = requiredFuel(us, visual);
    expect(result.known && result.parts.find(({ id }) => id === "alternate")?.askedBy).toBe("plan");
  });

  it("never falls when the flight turns to night, or any part grows", () => {
    const kg = fc.double({ min: 0, max: 500, noNaN: true });
    fc.assert(
      fc.property(kg, kg, kg, (trip_kg, extra_kg, more_kg) => {
        const fuel = (change: RequiredFuelInput): number => {
          const result = requiredFuel(us, { ...whole, flightRules: "VFR", trip_kg, extra_kg, ...change });
          if (!result.known) throw new Error(result.text);
          return result.required_kg;
        };
        expect(fuel({ night: true })).toBeGreaterThan(fuel({ night: false }));
        expect(fuel({ trip_kg: trip_kg + more_kg })).toBeGreaterThanOrEqual(fuel({}));
        expect(fuel({ extra_kg: extra_kg + more_kg })).toBeGreaterThanOrEqual(fuel({}));
      }),
    );
  });

  it("reserves 45 minutes under instrument rules by both packs", () => {
    for (const pack of rulePacks.values()) {
      const result = pack.finalReserveTime({ flightRules: "IFR", on: "2026-11-12" });
      expect(result.known && result.time_s).toBe(toSI(45, "min"));
    }
  });
});
