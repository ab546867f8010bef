import { differenceToSI, fromSI, relativeHumidity } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { decodeReports } from "./decode.ts";
import { visibilityCategory } from "./flight-category.ts";
import { weatherText } from "./groups/weather-text.ts";
import { readReport } from "./read-report.ts";
import type { Observation } from "./report.ts";
import { remarkShape, visibilityShape, windShape } from "./testing/as-case.ts";
import { casesOf, listInput, type PublishedCase, textInput } from "./testing/published-cases.ts";

const cases = new Map(casesOf("groups").map((one) => [one.id, one]));
const tried = new Set<string>();
const caseOf = (id: string): PublishedCase => {
  const one = cases.get(id);
  if (one === undefined) throw new Error(`no case ${id} in reference/decoded/weather-groups.json`);
  tried.add(id);
  return one;
};

/** A sound report with one place left for what is tried. */
interface Blanks {
  readonly time?: string;
  readonly wind?: string;
  readonly seen?: string;
  readonly sky?: string;
  readonly air?: string;
  readonly setting?: string;
  readonly remark?: string;
}
function observed(blanks: Blanks): Observation {
  const {
    time = "2055",
    wind = "22015KT",
    seen = "10SM",
    sky = "SKC",
    air = "18/16",
    setting = "A2992",
    remark,
  } = blanks;
  const text = `METAR KXXX 05${time}Z ${wind} ${seen} ${sky} ${air} ${setting}${remark === undefined ? "" : ` RMK ${remark}`}`;
  const [report] = decodeReports(text).reports;
  if (report?.kind !== "observation") throw new Error(`not an observation: ${text}`);
  return report;
}
const oneRemark = (remark: string, more: Blanks = {}): Record<string, unknown> => {
  const report = observed({ ...more, remark });
  expect(report.remarks.length, remark).toBe(1);
  return Object.assign({}, ...report.remarks.map((one) => remarkShape(one, report)));
};

describe("single groups are read as they are printed", () => {
  it.each(["groups-wind-28b", "groups-taf-wind-28b"])("%s", (id) => {
    const one = caseOf(id);
    const decoded = listInput(one, "groups").map((group) => {
      const { wind } = observed({ wind: String(group) }).elements;
      return wind === undefined ? undefined : windShape(wind);
    });
    expect(decoded).toEqual(one.expected["decoded"]);
  });

  it("groups-visibility-28b", () => {
    const one = caseOf("groups-visibility-28b");
    const decoded = listInput(one, "groups").map((group) => {
      const { visibility } = observed({ seen: String(group) }).elements;
      return visibility === undefined ? undefined : visibilityShape(visibility);
    });
    expect(decoded).toEqual(one.expected["decoded"]);
  });

  it("groups-weather-28b, in words", () => {
    const one = caseOf("groups-weather-28b");
    const decoded = listInput(one, "groups").map((group) =>
      observed({ seen: `1/2SM ${String(group)}` })
        .elements.weather.map(weatherText)
        .join("; "),
    );
    expect(decoded).toEqual(one.expected["decoded"]);
  });

  it.each(["groups-sky-28b", "ceiling-layer-summation"])("%s", (id) => {
    const one = caseOf(id);
    const skies =
      id === "groups-sky-28b" ? listInput(one, "groups").map(String) : [listInput(one, "groups").join(" ")];
    const ceilings = skies.map((sky) => {
      const { ceiling } = observed({ sky }).elements;
      expect(ceiling?.kind).not.toBe("unknown");
      return ceiling?.kind === "height" ? ceiling.height_ft : null;
    });
    expect(id === "groups-sky-28b" ? ceilings : ceilings[0]).toEqual(one.expected["ceiling_ft"]);
  });

  it("groups-temperature-28b", () => {
    const one = caseOf("groups-temperature-28b");
    const decoded = listInput(one, "groups").map((group) => {
      const { temperature, dewPoint } = observed({ air: String(group) }).elements;
      return { temperature_C: temperature?.coded_degC ?? null, dewpoint_C: dewPoint?.coded_degC ?? null };
    });
    expect(decoded).toEqual(one.expected["decoded"]);
  });

  it("M00 is below zero though its figure is nought, and the figure is no negative nought", () => {
    const { temperature } = observed({ air: "M00/M01" }).elements;
    expect(temperature).toEqual({ coded_degC: 0, temperature_K: 273.15, belowZero: true });
    expect(Object.is(temperature?.coded_degC, -0)).toBe(false);
  });

  it("tgroup-28b: tenths, and the body that they round to", () => {
    const { inputs, expected } = caseOf("tgroup-28b");
    const { bodyTemperature_C, bodyDewpoint_C, ...tenths } = expected;
    expect([bodyTemperature_C, bodyDewpoint_C]).toEqual([3, -1]);
    const report = observed({ air: "03/M01", remark: String(inputs["group"]) });
    expect(report.remarks.map((remark) => remarkShape(remark))).toEqual([tenths]);
    expect(report.problems).toEqual([]);
  });

  it("slp-decode-28b", () => {
    const one = caseOf("slp-decode-28b");
    const settings = ["A2948", "A2992", "A2966", "A2992"]; // near the pressure that is printed
    const decoded = listInput(one, "groups").map(
      (group, index) => oneRemark(String(group), { setting: settings[index] ?? "" })["slp_hPa"],
    );
    expect(decoded).toEqual(one.expected["slp_hPa"]);
  });

  it("slp-decode-28b without a setting: 10 below 500 and 9 from 500 on", () => {
    const one = caseOf("slp-decode-28b");
    const decoded = listInput(one, "groups").map(
      (group) => oneRemark(String(group), { setting: "" })["slp_hPa"],
    );
    expect(decoded).toEqual(one.expected["slp_hPa"]);
  });

  it("slp-deep-low", () => {
    const { inputs, expected } = caseOf("slp-deep-low");
    const setting = `A${(Number(inputs["altimeter_inHg"]) * 100).toFixed(0)}`;
    expect(oneRemark(String(inputs["group"]), { setting })).toEqual(expected);
  });

  it("altimeter-inhg-to-hpa", () => {
    const one = caseOf("altimeter-inhg-to-hpa");
    const settings = listInput(one, "altimeter_inHg").map((value) => {
      const { pressure } = observed({ setting: `A${(Number(value) * 100).toFixed(0)}` }).elements;
      return fromSI(pressure?.valueSI ?? 0, "hPa");
    });
    const expected = one.expected["qnh_hPa"] as readonly number[]; // the case lists figures
    for (const [index, value] of expected.entries())
      expect(Math.abs((settings[index] ?? 0) - value)).toBeLessThanOrEqual(one.tolerance?.["qnh_hPa"] ?? 0);
  });

  it("metar-kpns-conversions", () => {
    const { expected, tolerance = {} } = caseOf("metar-kpns-conversions");
    const report = observed({ wind: "36005KT", air: "30/23", setting: "A2992", remark: "T03000233" });
    const tenths = report.remarks.find((remark) => remark.is === "tenths");
    const [temperature_K, dewPoint_K] = [tenths?.temperature_K ?? 0, tenths?.dewPoint_K ?? 0];
    const wind_mPerS = report.elements.wind?.speed_mPerS ?? 0;
    const computed: Record<string, number> = {
      temperature_F: fromSI(temperature_K, "degF"),
      dewpoint_F: fromSI(dewPoint_K, "degF"),
      relativeHumidity_pct: relativeHumidity.compute({ temperature_K, dewPoint_K }) * 100,
      altimeter_hPa: fromSI(report.elements.pressure?.valueSI ?? 0, "hPa"),
      windSpeed_mph: fromSI(wind_mPerS, "mph"),
      windSpeed_mps: wind_mPerS,
    };
    expect(Object.keys(computed).toSorted()).toEqual(Object.keys(expected).toSorted());
    for (const [name, value] of Object.entries(expected))
      expect(Math.abs((computed[name] ?? 0) - Number(value)), name).toBeLessThanOrEqual(tolerance[name] ?? 0);
  });

  it("sm-metre-coding-equivalents: metres that stand for miles give the category of the miles", () => {
    const one = caseOf("sm-metre-coding-equivalents");
    const metres = one.expected["visibility_m"] as readonly number[]; // the case lists figures
    const category = (seen: string): unknown => {
      const { visibility } = observed({ seen }).elements;
      return visibility === undefined ? undefined : visibilityCategory(visibility);
    };
    const coded = ["1/2SM", "1 1/2SM", "2SM", "3SM", "4SM"];
    expect(listInput(one, "visibility_SM")).toEqual([0.5, 1.5, 2, 3, 4]);
    for (const [index, value] of metres.entries())
      expect(category(String(value).padStart(4, "0")), `${value} m`).toBe(category(coded[index] ?? ""));
    expect(differenceToSI(3, "mi")).toBeGreaterThan(4800);
  });

  it("fog-mist-limit: fog with mist's visibility is told, and mist with fog's", () => {
    const one = caseOf("fog-mist-limit");
    const codes = one.expected["code"] as readonly string[]; // the case lists codes
    const seen = ["1/2SM", "5/8SM", "3SM", "6SM"];
    const told = (visibility: string, code: string): number =>
      observed({ seen: `${visibility} ${code}` }).problems.length;
    for (const [index, code] of codes.entries()) {
      const other = code === "FG" ? "BR" : "FG";
      expect(told(seen[index] ?? "", code), `${code} at ${seen[index] ?? ""}`).toBe(0);
      expect(told(seen[index] ?? "", other), `${other} at ${seen[index] ?? ""}`).toBe(1);
    }
  });

  it("gust-definition: a gust 4 kt above the mean is legal, since it is 10 kt above the lulls", () => {
    expect(caseOf("gust-definition").expected["variationPeaksToLulls_kt"]).toBe(10);
    const report = observed({ wind: "18014G18KT" });
    expect(report.problems).toEqual([]);
    expect(report.elements.wind?.coded.gust?.value).toBe(18);
  });
});

describe("remarks are read as they are printed", () => {
  it("remark-times", () => {
    const one = caseOf("remark-times");
    const time = textInput(one, "reportTime_UTC");
    const decoded = listInput(one, "remarks").map((remark) => {
      const shape = oneRemark(String(remark), { time });
      return shape["peakWind"] ?? shape["windShift"];
    });
    expect(decoded).toEqual(one.expected["decoded"]);
  });

  it("remark-visibility-ceiling", () => {
    const one = caseOf("remark-visibility-ceiling");
    const decoded = listInput(one, "remarks").map((text) => {
      const [remark, ...more] = observed({ remark: String(text) }).remarks;
      expect(more, String(text)).toEqual([]);
      if (remark?.is === "visibility" && remark.kind === "sector")
        return { sector: remark.where, visibility_SM: remark.lowest.coded.value };
      if (remark?.is === "visibility" && remark.kind === "location")
        return { location: remark.where, visibility_SM: remark.lowest.coded.value };
      if (remark?.is === "ceiling" && remark.where !== undefined)
        return { location: remark.where, ceiling_ft: remark.lowest_ft };
      if (remark?.is === "variable sky") return { layer_ft: remark.base_ft, amounts: remark.amounts };
      if (remark?.is === "obscuration")
        return { obscuration: remark.code, amount: remark.layer.amount, base_ft: remark.layer.base_ft };
      return remark === undefined ? undefined : remarkShape(remark);
    });
    expect(decoded).toEqual(one.expected["decoded"]);
  });

  it("remark-ts-begin-end", () => {
    const one = caseOf("remark-ts-begin-end");
    const report = observed({ time: textInput(one, "reportTime_UTC"), remark: textInput(one, "remark") });
    const [remark] = report.remarks;
    if (remark?.is !== "begun and ended") throw new Error("expected times of weather");
    const at = (event: string): string | undefined =>
      remark.events.find((one) => one.event === event)?.at_UTC;
    expect({ began_UTC: at("began"), ended_UTC: at("ended") }).toEqual(one.expected);
  });
});

describe("days and hours become times", () => {
  it("taf-validity-groups", () => {
    const one = caseOf("taf-validity-groups");
    const durations = listInput(one, "groups").map((group) => {
      const day = String(group).slice(0, 2);
      const hour = String(group).slice(2, 4);
      const issued = Date.UTC(2025, 2, Number(day), Number(hour));
      const text = `TAF KXXX ${day}${hour}00Z ${String(group)} 18008KT P6SM SKC`;
      const { placed } = readReport(text, {
        kind: "forecast",
        station: "KXXX",
        received_ms: issued,
        now_ms: issued,
      });
      return placed === undefined ? undefined : (placed.to_ms - placed.from_ms) / 3_600_000;
    });
    expect(durations).toEqual(one.expected["duration_h"]);
  });

  it.each(["age-same-day", "age-leap-year", "age-new-year"])("%s", (id) => {
    const one = caseOf(id);
    const now_ms = Date.parse(textInput(one, "now_UTC"));
    const read = readReport(`METAR ${textInput(one, "report")} 22015KT 10SM CLR 18/16 A2992`, {
      kind: "observation",
      station: "KXXX",
      received_ms: now_ms,
      now_ms,
    });
    expect({
      observed_UTC: new Date(read.placed?.observed_ms ?? 0).toISOString().replace(".000Z", "Z"),
      age_min: (read.age_ms ?? 0) / 60_000,
    }).toEqual(one.expected);
    expect(read.stale).toBe(id === "age-new-year");
  });
});

it("every case of the file is tried, and there are 22 of them", () => {
  expect([...tried].toSorted()).toEqual([...cases.keys()].toSorted());
  expect(cases.size).toBe(22);
});
