import { toSI } from "@witnessmark/engine";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ADVISORY_FACTORS } from "./advisory-factors.ts";
import { finalReserve, requiredFuel } from "./fuel.ts";
import { NIGHT_DEFINITIONS, nightAt } from "./night.ts";
import type { RulePack } from "./rule-pack.ts";
import { rulePacks } from "./rule-packs.ts";
import type { Ruling } from "./ruling.ts";

/** Fixed where a test also asserts what the inputs tried have reached. */
const SEED = 20_261_112;

const PACKS = [...rulePacks.values()];

/** Mostly figures that a flight could have, and some that a careless caller could hand over. */
const figure = fc.option(
  fc.oneof(
    { weight: 10, arbitrary: fc.double({ min: 0, max: 20_000, noNaN: true }) },
    { weight: 1, arbitrary: fc.double({ min: -1000, max: 0 }) },
    {
      weight: 1,
      arbitrary: fc.constantFrom(Number.NaN, Infinity, -Infinity, Number.MAX_VALUE, -Number.MAX_VALUE),
    },
  ),
  { freq: 12, nil: undefined },
);
const flag = fc.option(fc.boolean(), { freq: 8, nil: undefined });
const ceiling = fc.oneof(figure, fc.constant("none" as const));
const pick = <Word extends string>(...words: readonly Word[]): fc.Arbitrary<Word | undefined> =>
  fc.option(fc.constantFrom(...words), { nil: undefined });
const date = pick("2020-01-01", "2022-10-30", "2026-11-12", "never");
const rules = pick("VFR", "IFR");
const airspace = pick("A", "B", "C", "D", "E", "F", "G");
const absurdProfile = fc.array(fc.record({ time_s: fc.double(), cabinAltitude_m: fc.double() }), {
  maxLength: 4,
});
const soundProfile = fc
  .array(fc.double({ min: -300, max: 12_000, noNaN: true }), { minLength: 2, maxLength: 6 })
  .map((altitudes) => altitudes.map((cabinAltitude_m, at) => ({ time_s: at * 1200, cabinAltitude_m })));
const profile = fc.option(fc.oneof(absurdProfile, soundProfile, soundProfile, soundProfile), {
  nil: undefined,
});
const persons = fc.oneof(
  { weight: 8, arbitrary: fc.integer({ min: 1, max: 6 }) },
  { weight: 1, arbitrary: figure },
);

const anything = fc.record({
  flightRules: rules,
  night: flag,
  local: flag,
  on: date,
  approach: flag,
  ceiling_m: ceiling,
  visibility_m: figure,
  approachMinimum_m: figure,
  approachVisibility_m: figure,
  visualConditions: flag,
  visualFromEnRoute: flag,
  safeHeight_m: figure,
  cabin: profile,
  afterLoss: profile,
  pressurised: flag,
  highestLevel_m: figure,
  crew_count: persons,
  passengers_count: persons,
  pilotsAtControls_count: figure,
  quickDonningMasks: flag,
  downIn4Min: flag,
  airspace,
  altitude_m: figure,
  height_m: figure,
  transitionAltitude_m: figure,
  pressureAltitude_m: figure,
  polished: flag,
  underWingAllowed: flag,
  trip_kg: figure,
  taxi_kg: figure,
  contingency_kg: figure,
  alternate_kg: figure,
  extra_kg: figure,
  alternateNeeded: flag,
  burns: fc.option(
    fc.record({ cruise_kgPerS: figure, holding_kgPerS: figure, maxContinuousCruise_kgPerS: figure }),
    { nil: undefined },
  ),
});
type Anything = typeof anything extends fc.Arbitrary<infer Value> ? Value : never;

const rulingsOf = (pack: RulePack, given: Anything): readonly Ruling<object>[] => [
  pack.finalReserveTime(given),
  pack.alternateNeeded(given),
  ...(["precision", "non-precision", "none"] as const).map((approach) =>
    pack.alternateUsable({ ...given, approach }),
  ),
  pack.oxygen(given),
  pack.visualMinima(given),
  pack.visualAtField(given),
  pack.takeOffWithDeposits(given),
  pack.distanceFactor(),
  finalReserve(pack, given),
  requiredFuel(pack, given),
];

const everyNumber = (value: unknown): readonly number[] => {
  if (typeof value === "number") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(everyNumber);
};

describe.each(PACKS)("$id", (pack) => {
  it("answers anything: known with finite figures, or cannot tell and says what for", () => {
    const told = new Set<number>();
    const untold = new Set<number>();
    fc.assert(
      fc.property(anything, (given) => {
        for (const [at, ruling] of rulingsOf(pack, given).entries()) {
          (ruling.known ? told : untold).add(at);
          expect(ruling.citations.length).toBeGreaterThan(0);
          expect(ruling.text).toMatch(/\.$/);
          expect(ruling.text).not.toContain("\n");
          if (!ruling.known) expect(ruling.missing.length).toBeGreaterThan(0);
          if (!ruling.known) expect(ruling.text).toContain("Cannot tell");
          expect(everyNumber(ruling).filter((value) => !Number.isFinite(value))).toEqual([]);
        }
      }),
      { numRuns: 500, seed: SEED },
    );
    // The inputs tried reach both sides of each function; only the factor on distances is always told.
    expect(told.size).toBe(12);
    expect(untold.size).toBe(11);
  });

  it("of nothing at all tells nothing but that no factor is asked", () => {
    const nothing = fc
      .sample(anything, 1)
      .map((one) => Object.fromEntries(Object.keys(one).map((key) => [key, undefined])));
    const rulings = rulingsOf(pack, nothing[0] as Anything); // every key of it, each undefined
    const told = rulings.filter(({ known }) => known).map(({ text }) => text);
    expect(told).toEqual([expect.stringContaining("no factor")]);
  });

  it("never permits more for knowing less", () => {
    const permits = (given: Anything): readonly (boolean | undefined)[] => {
      const alternate = pack.alternateNeeded(given);
      const field = pack.visualAtField(given);
      const usable = pack.alternateUsable({ ...given, approach: "precision" });
      return [
        alternate.known ? !alternate.needed : undefined,
        field.known ? field.permitted : undefined,
        usable.known ? usable.usable : undefined,
      ];
    };
    // Whose absence says less, and nothing else: a date, a class or the rules choose another paragraph.
    const names = [
      "ceiling_m",
      "visibility_m",
      "approach",
      "night",
      "approachMinimum_m",
      "visualConditions",
    ] as const;
    fc.assert(
      fc.property(anything, fc.constantFrom(...names), (given, name) => {
        const with_ = permits(given);
        const without = permits({ ...given, [name]: undefined });
        without.forEach((permitted, at) => {
          if (permitted === true) expect(with_[at]).toBe(true);
        });
      }),
      { numRuns: 500 },
    );
  });

  it("names for each use of night a definition that there is", () => {
    for (const id of Object.values(pack.nights)) expect(NIGHT_DEFINITIONS[id].id).toBe(id);
  });

  it("asks no factor on distances, and offers the published advice", () => {
    const ruling = pack.distanceFactor();
    expect(ruling.known && ruling.compulsory).toBe(false);
    expect(ruling.steps).toHaveLength(ADVISORY_FACTORS.length);
  });
});

describe("rule packs", () => {
  it("are found by their ids", () => {
    expect([...rulePacks.keys()]).toEqual(["us-part-91", "eu-part-nco"]);
  });
});

describe("night", () => {
  const at = (hour: number, minute = 0): number => Date.UTC(2026, 10, 12, hour, minute);
  const sun = {
    morningCivilTwilight_ms: at(7),
    sunrise_ms: at(7, 30),
    sunset_ms: at(16, 30),
    eveningCivilTwilight_ms: at(17),
  };
  const is = (id: Parameters<typeof nightAt>[0], at_ms: number): boolean | "open" => {
    const ruling = nightAt(id, at_ms, sun);
    return ruling.known ? ruling.night : "open";
  };

  it("is three different nights half an hour after sunset", () => {
    const moment = at(17, 10);
    expect(is("sunset-to-sunrise", moment)).toBe(true);
    expect(is("civil-twilight-us", moment)).toBe(true);
    expect(is("hour-after-sunset", moment)).toBe(false);
    expect(is("civil-twilight-us", at(16, 45))).toBe(false);
  });

  it("begins and ends on the minute of each definition", () => {
    expect(is("hour-after-sunset", at(17, 30))).toBe(true);
    expect(is("hour-after-sunset", at(6, 29))).toBe(true);
    expect(is("hour-after-sunset", at(6, 30))).toBe(false);
    expect(is("civil-twilight-europe", at(6, 59))).toBe(true);
    expect(is("civil-twilight-europe", at(7))).toBe(false);
  });

  it("is not told without the sun's times", () => {
    expect(nightAt("civil-twilight-us", at(12), { sunrise_ms: at(7), sunset_ms: at(16) })).toMatchObject({
      known: false,
      missing: [{ input: "morning" }, { input: "evening" }],
    });
    expect(nightAt("sunset-to-sunrise", Number.NaN, sun).known).toBe(false);
  });
});

describe("advisory factors", () => {
  it("are all above one, each with its source", () => {
    for (const { factor_1, citation } of ADVISORY_FACTORS) {
      expect(factor_1).toBeGreaterThan(1);
      expect(citation.title).not.toBe("");
    }
  });

  it("hold the 70 % rule: 500 m need 714.3 m", () => {
    // CAT.POL.A.330, and the reference case landing-70pct-lda: 500 / 0.7 = 714.29
    const found = ADVISORY_FACTORS.find(({ id }) => id === "seventy-percent-landing");
    expect(toSI(500, "m") * (found?.factor_1 ?? Number.NaN)).toBeCloseTo(714.29, 2);
  });
});
