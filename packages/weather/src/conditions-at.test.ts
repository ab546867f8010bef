import { fromSI } from "@witnessmark/engine";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ASPECTS } from "./aspect.ts";
import { strength_mPerS } from "./conditions.ts";
import { type Conditions, changesOf, conditionsAt } from "./conditions-at.ts";
import { decodeReports } from "./decode.ts";
import { observedConditions } from "./observed-conditions.ts";
import { type PlacedForecast, placeReport } from "./placed.ts";
import { forecasts } from "./testing/reports.ts";

const HOUR_MS = 3_600_000;
const MIDNIGHT_MS = Date.UTC(2026, 10, 12);
const at = (hour: number): number => MIDNIGHT_MS + hour * HOUR_MS;

const placed = (text: string): PlacedForecast => {
  const [report] = decodeReports(text).reports;
  if (report === undefined) throw new Error("no report");
  const one = placeReport(report, at(11.5));
  if (one.kind !== "forecast") throw new Error(`not placed: ${text}`);
  return one;
};
// an invented forecast with one group of each kind
const TAF = placed(
  [
    "TAF ZZTW 121105Z 1212/1312 22010KT 9999 SCT030",
    "TEMPO 1214/1216 24018G32KT 3000 SHRA BKN012CB",
    "BECMG 1216/1218 28012KT BKN020",
    "PROB30 1219/1221 0800 FZDZ OVC002",
    "FM130000 33008KT P6SM SKC",
  ].join(" "),
);

const feet = ({ worst }: Conditions): number | string => {
  const ceiling = worst.ceiling?.value;
  return ceiling?.kind === "height" ? ceiling.height_ft : (ceiling?.kind ?? "nothing");
};
const kinds = ({ worst }: Conditions): readonly string[] =>
  worst.winds.map(({ value, source }) => `${value.from_degTrue ?? "VRB"} ${source.kind ?? ""}`);

describe("a span of a forecast takes the worst of each group that it touches", () => {
  it.each([
    { from: 12, to: 13, ceiling_ft: "none", visibility_m: 10_000, strongest_kt: 10, winds: ["220 initial"] },
    {
      from: 12,
      to: 14,
      ceiling_ft: 1200,
      visibility_m: 3000,
      strongest_kt: 32,
      winds: ["220 initial", "240 TEMPO"],
    },
    {
      from: 16,
      to: 16,
      ceiling_ft: 2000,
      visibility_m: 10_000,
      strongest_kt: 12,
      winds: ["220 initial", "280 BECMG"],
    },
    { from: 18, to: 18.5, ceiling_ft: 2000, visibility_m: 10_000, strongest_kt: 12, winds: ["280 BECMG"] },
    { from: 18.5, to: 20, ceiling_ft: 200, visibility_m: 800, strongest_kt: 12, winds: ["280 BECMG"] },
    { from: 24, to: 30, ceiling_ft: "none", visibility_m: 9656.064, strongest_kt: 8, winds: ["330 FM"] },
  ])("$from to $to", ({ from, to, ceiling_ft, visibility_m, strongest_kt, winds }) => {
    const conditions = conditionsAt(TAF, at(from), at(to));
    expect(conditions.covered).toBe("whole");
    expect(feet(conditions)).toBe(ceiling_ft);
    expect(conditions.worst.visibility?.value.visibility_m).toBe(visibility_m);
    expect(fromSI(conditions.worst.strongest?.value.speed_mPerS ?? 0, "kt")).toBeCloseTo(strongest_kt, 9);
    expect(kinds(conditions)).toEqual(winds);
    expect(conditions.open).toEqual([]);
  });

  it("each part says which group it comes from", () => {
    const { worst } = conditionsAt(TAF, at(12), at(24));
    expect(worst.ceiling?.source).toMatchObject({
      kind: "PROB",
      probability_percent: 30,
      text: "PROB30 1219/1221 0800 FZDZ OVC002",
    });
    expect(worst.strongest?.source).toMatchObject({ kind: "TEMPO", from_ms: at(14), to_ms: at(16) });
    expect(worst.hazards.map(({ value, source }) => `${value}: ${source.kind ?? ""}`)).toEqual([
      "cumulonimbus: TEMPO",
      "freezing precipitation: PROB",
    ]);
    expect(worst.category).toEqual({ category: "LIFR", atWorst: "LIFR" });
  });

  it("what prevails leaves out what comes and goes", () => {
    const { prevailing } = conditionsAt(TAF, at(14), at(15));
    expect(prevailing.visibility?.value.visibility_m).toBe(10_000);
    expect(prevailing.category.category).toBe("VFR");
  });

  it("the end of a group of passing change is outside it", () => {
    expect(feet(conditionsAt(TAF, at(21), at(22)))).toBe(2000);
    expect(feet(conditionsAt(TAF, at(20.99), at(22)))).toBe(200);
  });
});

describe("nothing is stretched beyond the validity", () => {
  it.each([
    { from: 11, to: 13, covered: "part" },
    { from: 35, to: 37, covered: "part" },
    { from: 36, to: 36, covered: "none" },
    { from: 5, to: 11, covered: "none" },
    { from: 20, to: 13, covered: "none" },
    { from: Number.NaN, to: 13, covered: "none" },
  ])("$from to $to is covered: $covered", ({ from, to, covered }) => {
    const conditions = conditionsAt(TAF, at(from), at(to));
    expect(conditions.covered).toBe(covered);
    expect(conditions.open).toEqual(ASPECTS);
  });
});

describe("what a group leaves open is open where the group holds, and nowhere else", () => {
  const garbled = placed("TAF ZZTW 121105Z 1212/1312 22010KT 9999 SCT030 TEMPO 1214/1216 BKN8");
  it("a layer of unknown height", () => {
    expect(conditionsAt(garbled, at(12), at(13)).open).toEqual([]);
    const conditions = conditionsAt(garbled, at(13), at(14));
    expect(conditions.open).toEqual(["ceiling"]);
    expect(conditions.worst.ceiling?.value).toEqual({ kind: "unknown" });
    expect(conditions.worst.category).toEqual({ atWorst: "LIFR" });
  });

  it.each(["TEPMO 1214/1216", "TEMPO 1214-1216", "TEMPO1214/1216", "1214/1216", "TEMPO 1216/1214"])(
    "a change whose beginning is %s never becomes part of the group before, and may hold at any time",
    (head) => {
      const taf = placed(`TAF ZZTW 121105Z 1212/1312 22010KT 9999 SCT030 ${head} 0500 FG VV001`);
      const conditions = conditionsAt(taf, at(30), at(31));
      expect(conditions.prevailing.visibility?.value.visibility_m).toBe(10_000);
      expect(conditions.worst.visibility?.value.visibility_m).toBe(500);
      expect(conditions.open).toContain("visibility");
      expect(conditions.worst.visibility?.source.role).toBe("unclear");
    },
  );
});

describe("for every forecast", () => {
  it("a longer span is never better than a part of it", () => {
    fc.assert(
      fc.property(
        forecasts,
        fc.array(fc.integer({ min: 12, max: 35 }), { minLength: 4, maxLength: 4 }),
        ({ text }, hours) => {
          const [report] = decodeReports(text).reports;
          if (report === undefined) throw new Error("no report");
          const start_ms = Date.UTC(2026, 10, 5);
          const taf = placeReport(report, start_ms + 12 * HOUR_MS);
          if (taf.kind !== "forecast") throw new Error("not placed");
          const [a = 0, b = 0, c = 0, d = 0] = hours
            .toSorted((one, other) => one - other)
            .map((hour) => start_ms + hour * HOUR_MS);
          const [long, short] = [conditionsAt(taf, a, d), conditionsAt(taf, b, c)];
          const low = ({ worst }: Conditions): number =>
            worst.ceiling?.value.kind === "height" ? worst.ceiling.value.height_m : Infinity;
          const seen = ({ worst }: Conditions): number => worst.visibility?.value.visibility_m ?? 0;
          const strong = ({ worst }: Conditions): number =>
            Math.max(...worst.winds.map(({ value }) => strength_mPerS(value)));
          expect(low(long)).toBeLessThanOrEqual(low(short));
          expect(seen(long)).toBeLessThanOrEqual(seen(short));
          expect(strong(long)).toBeGreaterThanOrEqual(strong(short));
          const hazards = new Set(long.worst.hazards.map(({ value }) => value));
          for (const { value } of short.worst.hazards) expect(hazards).toContain(value);
        },
      ),
      { numRuns: 200 },
    );
  });

  it("nothing changes between two of its changes", () => {
    const changes = changesOf(TAF);
    expect(changes[0]).toBe(TAF.from_ms);
    expect(changes.at(-1)).toBe(TAF.to_ms);
    for (const [index, start] of changes.slice(0, -1).entries()) {
      const end = changes[index + 1] ?? start;
      const [first, last] = [conditionsAt(TAF, start, start), conditionsAt(TAF, end - 1, end - 1)];
      expect(first.worst).toEqual(last.worst);
    }
  });
});

describe("an observation at its worst", () => {
  const observed = (text: string) => {
    const [report] = decodeReports(text).reports;
    if (report?.kind !== "observation") throw new Error("no observation");
    return observedConditions(report);
  };

  it("counts the lower ceiling and visibility of body, sectors and remarks, and the strongest wind", () => {
    const conditions = observed(
      "METAR ZZTW 121150Z 22015G25KT 180V250 5SM RA BKN011 12/11 A2992 RMK AO2 PK WND 23045/1130 TWR VIS 3/4 CIG 005V010",
    );
    expect(conditions.ceiling).toMatchObject({ value: { height_ft: 500 }, source: { role: "remark" } });
    expect(conditions.visibility?.value.coded).toMatchObject({ value: 0.75, unit: "mi" });
    expect(fromSI(conditions.strongest?.value.speed_mPerS ?? 0, "kt")).toBeCloseTo(45, 9);
    expect(conditions.category.category).toBe("LIFR");
    expect(conditions.body.category.category).toBe("MVFR");
    expect(conditions.winds.map(({ value }) => value.from_degTrue)).toEqual([220, 230]);
  });

  it("counts the direction in which one sees least, and what the trend expects", () => {
    const conditions = observed(
      "METAR ZZTW 121150Z 22005KT 6000 2000NW SCT030 12/11 Q1012 TEMPO 0900 FG BKN002",
    );
    expect(conditions.visibility).toMatchObject({ value: { visibility_m: 900 }, source: { role: "trend" } });
    expect(conditions.ceiling?.value).toMatchObject({ kind: "height", height_ft: 200 });
  });

  it("a layer that varies to broken is a ceiling", () => {
    expect(
      observed("METAR ZZTW 121150Z 22005KT 10SM SCT008 12/11 A2992 RMK SCT008 V BKN").ceiling?.value,
    ).toMatchObject({
      height_ft: 800,
    });
  });

  it("unknown precipitation near freezing may be freezing rain, and a station says what it cannot tell", () => {
    const conditions = observed(
      "METAR ZZTW 121150Z AUTO 22005KT 3SM UP BKN014 01/M00 A2990 RMK AO2 TSNO FZRANO",
    );
    expect(conditions.hazards.map(({ value }) => value)).toEqual(["possible freezing precipitation"]);
    expect(conditions.blindTo).toEqual(["thunderstorm", "freezing rain"]);
  });

  it("NIL says nothing", () => {
    expect(observed("METAR ZZTW 121150Z NIL")).toMatchObject({
      winds: [],
      category: { atWorst: "LIFR" },
      open: ASPECTS,
    });
  });
});
