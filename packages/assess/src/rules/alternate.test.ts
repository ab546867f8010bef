import { toSI } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { euPartNco as eu } from "./eu-part-nco/pack.ts";
import type { ApproachKind, PublishedMinima } from "./rule-pack.ts";
import { type DecodedCase, decodedCases, numberOf } from "./testing/decoded-cases.ts";
import { STANDARD_MINIMA } from "./us-part-91/alternate.ts";
import { usPart91 as us } from "./us-part-91/pack.ts";

const CASES = decodedCases("rules-alternate.json", 12);
const ft = (value: number): number => toSI(value, "ft");
const mi = (value: number): number => toSI(value, "mi");

const needed = (input: Parameters<typeof us.alternateNeeded>[0]): boolean | "open" => {
  const result = us.alternateNeeded({ flightRules: "IFR", ...input });
  return result.known ? result.needed : "open";
};

const byForecast = CASES.filter(({ lowestInWindow }) => lowestInWindow !== undefined);
const byFigures = CASES.filter(({ id }) => id.startsWith("alternate-91-169"));
const usableOnes = CASES.filter(({ id }) => id.startsWith("alternate-min-"));
const standards = CASES.filter(({ id }) => id === "alternate-minima-91-169c");

const isApproach = (value: unknown): value is ApproachKind =>
  value === "precision" || value === "non-precision" || value === "none";

function publishedOf(one: DecodedCase): PublishedMinima | undefined {
  const given = one.inputs["published"];
  if (given === undefined) return undefined;
  const { ceiling_ft, visibility_SM } = given as { ceiling_ft: number; visibility_SM: number }; // one case has it
  return { ceiling_m: ft(ceiling_ft), visibility_m: mi(visibility_SM) };
}

it("takes up every case of the file", () => {
  expect(byForecast.length + byFigures.length + usableOnes.length + standards.length).toBe(CASES.length);
});

describe("whether an alternate must be filed by 14 CFR 91.169", () => {
  it.each(byFigures)("$id", (one) => {
    expect(
      needed({
        ceiling_m: ft(numberOf(one, "lowestCeilingEtaPlusMinus1h_ft")),
        visibility_m: mi(numberOf(one, "lowestVisibilityEtaPlusMinus1h_sm")),
        approach: one.inputs["instrumentApproachAtDestination"] === true,
      }),
    ).toBe(one.expected["alternateRequired"]);
  });

  it.each(byForecast)("$id", ({ lowestInWindow, expected }) => {
    const at = (weather: { readonly ceiling_ft: number; readonly visibility_SM: number }): boolean | "open" =>
      needed({ ceiling_m: ft(weather.ceiling_ft), visibility_m: mi(weather.visibility_SM), approach: true });
    if (lowestInWindow === undefined) throw new Error("no weather read off");
    expect(at(lowestInWindow.prevailing)).toBe(expected["alternateRequired_prevailing"]);
    expect(at(lowestInWindow.withTemporary)).toBe(expected["alternateRequired_withTemporary"]);
  });

  it("is settled by one thing that fails, whatever is not known", () => {
    expect(needed({ approach: false })).toBe(true);
    expect(needed({ ceiling_m: ft(1999) })).toBe(true);
    expect(needed({ visibility_m: mi(2.99), approach: true })).toBe(true);
  });

  it("is not settled while something is missing that could fail, and names it", () => {
    expect(needed({ ceiling_m: "none", visibility_m: mi(10) })).toBe("open");
    expect(us.alternateNeeded({ flightRules: "IFR", approach: true, ceiling_m: ft(5000) }).text).toBe(
      "Cannot tell. Not known: the lowest visibility from one hour before to one hour after the arrival.",
    );
    expect(us.alternateNeeded({}).text).toBe("Cannot tell. Not known: visual or instrument flight rules.");
  });
});

describe("whether an airport may be filed as an alternate by 14 CFR 91.169(c)", () => {
  it.each(usableOnes)("$id", (one) => {
    const approach = one.inputs["approach"];
    if (!isApproach(approach)) throw new Error(`${one.id}: no approach`);
    const result = us.alternateUsable({
      approach,
      ceiling_m: ft(numberOf(one, "ceiling_ft")),
      visibility_m: mi(numberOf(one, "visibility_SM")),
      published: publishedOf(one),
    });
    expect(result.known && result.usable).toBe(one.expected["usable"]);
  });

  it.each(standards)("$id", (one) => {
    const expected = (name: string): number => numberOf(one, name, "expected");
    expect(STANDARD_MINIMA).toEqual({
      precision: {
        ceiling_m: ft(expected("precisionCeiling_ft")),
        visibility_m: mi(expected("precisionVisibility_sm")),
      },
      "non-precision": {
        ceiling_m: ft(expected("nonPrecisionCeiling_ft")),
        visibility_m: mi(expected("nonPrecisionVisibility_sm")),
      },
    });
  });

  it("not where the field prints that it is not authorised, in the best of weather", () => {
    const result = us.alternateUsable({
      approach: "precision",
      published: "not-authorised",
      ceiling_m: "none",
      visibility_m: mi(10),
    });
    expect(result.known && result.usable).toBe(false);
  });

  it("without an approach only by basic VFR from the en-route altitude, and not told unless said", () => {
    expect(us.alternateUsable({ approach: "none", ceiling_m: "none", visibility_m: mi(10) }).known).toBe(
      false,
    );
    expect(us.alternateUsable({ approach: "none", visualFromEnRoute: false })).toMatchObject({
      usable: false,
    });
    expect(us.alternateUsable({ approach: "none", visualFromEnRoute: true })).toMatchObject({ usable: true });
  });
});

describe("alternates by Part-NCO", () => {
  const good = {
    flightRules: "IFR",
    on: "2026-11-12",
    approach: true,
    approachMinimum_m: ft(300),
    ceiling_m: ft(1300),
    visibility_m: 5000,
  } as const;
  const is = (change: object): boolean | "open" => {
    const result = eu.alternateNeeded({ ...good, ...change });
    return result.known ? result.needed : "open";
  };

  // NCO.OP.140 as amended by (EU) 2021/2237, from memory: 1,000 ft above the minimum and 5,000 m
  it("since 30 October 2022 needs none with 1,000 ft above the minimum and 5 km", () => {
    expect(is({})).toBe(false);
    expect(is({ ceiling_m: ft(1299) })).toBe(true);
    expect(is({ visibility_m: 4999 })).toBe(true);
    expect(is({ approach: false })).toBe(true);
    expect(is({ approachMinimum_m: undefined })).toBe("open");
    expect(is({ approachMinimum_m: undefined, ceiling_m: ft(900) })).toBe(true);
    expect(is({ on: undefined })).toBe("open");
  });

  // NCO.OP.140(a), UK consolidated text of 2021
  it("before that needs none when approach and landing can be made in visual conditions", () => {
    expect(is({ on: "2022-10-29" })).toBe("open");
    expect(is({ on: "2022-10-29", visualConditions: true })).toBe(false);
    expect(is({ on: "2022-10-29", visualConditions: false })).toBe(true);
  });

  // NCO.OP.143, from memory
  it.each([
    ["DH 200 ft", { approachMinimum_m: ft(200), approachVisibility_m: 550 }, 400, 1500],
    ["DH 250 ft", { approachMinimum_m: ft(250), approachVisibility_m: 800 }, 650, 3000],
    [
      "an approach that itself asks more",
      { approachMinimum_m: ft(600), approachVisibility_m: 3600 },
      1000,
      3600,
    ],
  ])("%s: the ceiling and visibility asked of an alternate", (_what, minima, ceiling_ft, visibility_m) => {
    const at = (ceiling: number, seen_m: number): unknown => {
      const given = { on: "2026-11-12", approach: "precision", ...minima } as const;
      const result = eu.alternateUsable({ ...given, ceiling_m: ft(ceiling), visibility_m: seen_m });
      return result.known && result.usable;
    };
    expect(at(ceiling_ft, visibility_m)).toBe(true);
    expect(at(ceiling_ft - 1, visibility_m)).toBe(false);
    expect(at(ceiling_ft, visibility_m - 1)).toBe(false);
  });

  it("without an approach asks 2,000 ft or the safe height, whichever is more, and 5 km", () => {
    const at = (safe_ft: number, ceiling_ft: number): unknown => {
      const result = eu.alternateUsable({
        on: "2026-11-12",
        approach: "none",
        safeHeight_m: ft(safe_ft),
        ceiling_m: ft(ceiling_ft),
        visibility_m: 5000,
      });
      return result.known && result.usable;
    };
    expect(at(1500, 2000)).toBe(true);
    expect(at(1500, 1999)).toBe(false);
    expect(at(2500, 2400)).toBe(false);
  });
});
