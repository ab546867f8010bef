import { fromSI, toSI } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { euPartNco as eu } from "./eu-part-nco/pack.ts";
import type { AirspaceClass, VisualMinima } from "./rule-pack.ts";
import type { Ruling } from "./ruling.ts";
import { type DecodedCase, decodedCases, numberOf, optionalNumber } from "./testing/decoded-cases.ts";
import { usPart91 as us } from "./us-part-91/pack.ts";

const ft = (value: number): number => toSI(value, "ft");
const mi = (value: number): number => toSI(value, "mi");
const metresOf = (value_ft: number | undefined): number | undefined =>
  value_ft === undefined ? undefined : ft(value_ft);

const CASES = decodedCases("rules-minima.json", 12);
const group = (start: string): readonly DecodedCase[] => CASES.filter(({ id }) => id.startsWith(start));
const usMinima = group("vfr-class");
const usField = group("vfr-surface");
const transition = group("sera-transition");
const sera = group("sera-").filter(({ id }) => id !== "sera-transition-altitude");

it("takes up every case of the file", () => {
  expect([usMinima, usField, transition, sera].flat()).toHaveLength(CASES.length);
});

const classOf = (one: DecodedCase): AirspaceClass => {
  const letter = String(one.inputs["airspace"]);
  // "C to G": all of them have the same row.
  const known = ["A", "B", "C", "D", "E", "F", "G"].find((name) => letter.startsWith(name));
  return known as AirspaceClass; // one of the seven just listed
};

type Permitted = Extract<VisualMinima, { readonly permitted: true }>;
const permitted = (result: Ruling<VisualMinima>): Permitted => {
  if (!result.known) throw new Error(result.text);
  if (!result.permitted) throw new Error("not permitted");
  return result;
};

/** As the cases of 14 CFR 91.155 write it. */
function inFeet({ visibility_m, cloud }: Permitted): Record<string, unknown> {
  const visibility = { visibility_SM: Number(fromSI(visibility_m, "mi").toFixed(6)) };
  if (cloud.kind === "clear-of-cloud") return { ...visibility, cloud: "clear of clouds" };
  const wide = cloud.horizontal_m === mi(1);
  return {
    ...visibility,
    cloudBelow_ft: Math.round(fromSI(cloud.below_m, "ft")),
    cloudAbove_ft: Math.round(fromSI(cloud.above_m, "ft")),
    ...(wide
      ? { cloudHorizontal_SM: 1 }
      : { cloudHorizontal_ft: Math.round(fromSI(cloud.horizontal_m, "ft")) }),
  };
}

/** As the cases of SERA.5001 write it. */
function inMetres({ visibility_m, cloud, surfaceInSight }: Permitted): Record<string, unknown> {
  const visibility = { visibility_km: visibility_m / 1000 };
  if (cloud.kind === "clear-of-cloud")
    return { ...visibility, cloud: `clear of cloud${surfaceInSight ? " with the surface in sight" : ""}` };
  return {
    ...visibility,
    horizontal_m: cloud.horizontal_m,
    vertical_ft: Math.round(fromSI(cloud.above_m, "ft")),
  };
}

describe("visual minima by 14 CFR 91.155", () => {
  it.each(usMinima)("$id", (one) => {
    const result = us.visualMinima({
      airspace: classOf(one),
      altitude_m: metresOf(optionalNumber(one, "altitude_ftMSL")),
      height_m: metresOf(optionalNumber(one, "height_ftAGL")),
      night: one.inputs["period"] === undefined ? undefined : one.inputs["period"] === "night",
    });
    expect(inFeet(permitted(result))).toEqual(one.expected);
  });

  // 14 CFR 91.155(a), table, 1 January 2024 edition
  it.each([
    ["G low by night", { airspace: "G", height_m: ft(1200), night: true }, 3, 500],
    ["G middle by night", { airspace: "G", height_m: ft(1201), altitude_m: ft(9999), night: true }, 3, 500],
    ["E at 10,000 ft", { airspace: "E", altitude_m: ft(10_000) }, 5, 1000],
    ["C", { airspace: "C" }, 3, 500],
  ] as const)("%s", (_what, input, visibility_SM, below_ft) => {
    const found = inFeet(permitted(us.visualMinima(input)));
    expect(found["visibility_SM"]).toBe(visibility_SM);
    expect(found["cloudBelow_ft"]).toBe(below_ft);
  });

  it("permits no visual flight in class A, and tells nothing of class F, which it has not", () => {
    expect(us.visualMinima({ airspace: "A" })).toMatchObject({ known: true, permitted: false });
    expect(us.visualMinima({ airspace: "F" }).known).toBe(false);
  });

  it.each([
    [{}, "airspace"],
    [{ airspace: "E" }, "altitude_m"],
    [{ airspace: "G", night: false }, "height_m"],
    [{ airspace: "G", height_m: 100 }, "night"],
    [{ airspace: "G", height_m: 1000, night: false }, "altitude_m"],
    [{ airspace: "G", height_m: Number.NaN, night: false }, "height_m"],
  ] as const)("of %o cannot be told without %s", (input, missing) => {
    expect(us.visualMinima(input)).toMatchObject({ known: false, missing: [{ input: missing }] });
  });
});

describe("visual flight at a field by 14 CFR 91.155(c) and (d)", () => {
  it.each(usField)("$id", (one) => {
    const result = us.visualAtField({
      airspace: "D",
      ceiling_m: ft(numberOf(one, "ceiling_ft")),
      visibility_m: mi(numberOf(one, "visibility_SM")),
    });
    expect(result.known && result.permitted).toBe(one.expected["vfrAllowed"]);
    // the case's reason is "ceiling below 1,000 ft"
    if (one.expected["reason"] !== undefined) expect(result.text).toContain("ceiling below 1,000");
  });

  it("in class G asks 1 mile by day and 3 by night", () => {
    const at = (night: boolean | undefined, visibility_SM: number): unknown => {
      const result = us.visualAtField({ airspace: "G", night, visibility_m: mi(visibility_SM) });
      return result.known ? result.permitted : "open";
    };
    expect(at(false, 1)).toBe(true);
    expect(at(false, 0.99)).toBe(false);
    expect(at(true, 2)).toBe(false);
    expect(at(undefined, 10)).toBe("open");
  });

  it("is refused for a ceiling that is too low though the visibility is not known", () => {
    expect(us.visualAtField({ airspace: "D", ceiling_m: ft(900) })).toMatchObject({ permitted: false });
    expect(us.visualAtField({ airspace: "D", ceiling_m: ft(1000) }).known).toBe(false);
  });
});

describe("visual minima by SERA.5001", () => {
  it.each(sera)("$id", (one) => {
    const altitude_m = ft(numberOf(one, "altitude_ftAMSL"));
    const result = eu.visualMinima({ airspace: classOf(one), altitude_m, night: false });
    expect(inMetres(permitted(result))).toEqual(one.expected);
  });

  it.each(transition)("$id", (one) => {
    expect(one.expected["useInsteadOf10000ft"]).toBe("FL 100");
    const given = {
      airspace: "E",
      night: false,
      transitionAltitude_m: ft(numberOf(one, "transitionAltitude_ft")),
    } as const;
    // High pressure: 10,100 ft altitude is still below FL100.
    const under = { ...given, altitude_m: ft(10_100), height_m: ft(5000), pressureAltitude_m: ft(9900) };
    expect(permitted(eu.visualMinima(under)).visibility_m).toBe(5000);
    expect(permitted(eu.visualMinima({ ...under, pressureAltitude_m: ft(10_000) })).visibility_m).toBe(8000);
    expect(eu.visualMinima({ ...given, altitude_m: ft(10_100) })).toMatchObject({
      known: false,
      missing: [{ input: "pressureAltitude_m" }],
    });
  });

  it("takes the stricter of altitude and level where the transition altitude is not known", () => {
    const at = { airspace: "E", night: false, altitude_m: ft(9900), height_m: ft(5000) } as const;
    expect(permitted(eu.visualMinima({ ...at, pressureAltitude_m: ft(10_050) })).visibility_m).toBe(8000);
    expect(permitted(eu.visualMinima(at)).visibility_m).toBe(5000);
  });

  it("is low at 3,000 ft, and above it only within 1,000 ft of terrain", () => {
    const at = (altitude_ft: number, height_ft: number | undefined): unknown => {
      const result = eu.visualMinima({
        airspace: "G",
        night: false,
        altitude_m: ft(altitude_ft),
        height_m: metresOf(height_ft),
      });
      return result.known && result.permitted ? result.cloud.kind : "open";
    };
    expect(at(3000, undefined)).toBe("clear-of-cloud");
    expect(at(3001, 1000)).toBe("clear-of-cloud");
    expect(at(3001, 1001)).toBe("distance");
    expect(at(3001, undefined)).toBe("open");
  });

  // SERA.5005(c)(3), from memory
  it("by night asks a ceiling of 1,500 ft and keeps the surface in sight low down", () => {
    const low = permitted(eu.visualMinima({ airspace: "D", night: true, altitude_m: ft(2000) }));
    expect(low.surfaceInSight).toBe(true);
    expect(low.ceiling_m).toBe(ft(1500));
    expect(eu.visualMinima({ airspace: "D", altitude_m: ft(2000) })).toMatchObject({
      missing: [{ input: "night" }],
    });
  });

  // SERA.5005(b), from memory
  it("in a control zone asks 1,500 ft and 5 km for taking off and landing", () => {
    const at = (ceiling_ft: number, visibility_m: number): unknown => {
      const result = eu.visualAtField({ airspace: "D", ceiling_m: ft(ceiling_ft), visibility_m });
      return result.known && result.permitted;
    };
    expect(at(1500, 5000)).toBe(true);
    expect(at(1499, 5000)).toBe(false);
    expect(at(1500, 4999)).toBe(false);
  });

  it("outside one asks 5 km by day and the ceiling too by night", () => {
    const at = (night: boolean | undefined): unknown => {
      const result = eu.visualAtField({ airspace: "G", night, ceiling_m: ft(900), visibility_m: 6000 });
      return result.known ? result.permitted : "open";
    };
    expect([at(false), at(true), at(undefined)]).toEqual([true, false, "open"]);
    expect(
      eu.visualAtField({ airspace: "G", night: true, ceiling_m: ft(900), visibility_m: 6000 }).text,
    ).toBe("Not by sight: ceiling too low.");
  });
});
