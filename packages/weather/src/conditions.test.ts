import { cloudBaseRule, fromSI, relativeHumidity, toSI } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { type Ceiling, heightCeiling } from "./ceiling.ts";
import type { State } from "./conditions.ts";
import { conditionsAt } from "./conditions-at.ts";
import { dayTimeOf } from "./day-time.ts";
import { decodeReports } from "./decode.ts";
import { flightCategory } from "./flight-category.ts";
import { reportedFrost } from "./frost.ts";
import { type Visibility, visibilityOf } from "./groups/visibility.ts";
import { type WeatherCode, weatherCodeOf } from "./groups/weather-code.ts";
import type { Wind } from "./groups/wind.ts";
import { freezingPrecipitation } from "./hazards.ts";
import { reportedIcing } from "./icing.ts";
import { instantNear } from "./instant.ts";
import { observedConditions } from "./observed-conditions.ts";
import { type PlacedForecast, placeReport } from "./placed.ts";
import type { Observation } from "./report.ts";
import { casesOf, listInput, type PublishedCase, textInput } from "./testing/published-cases.ts";

const cases = casesOf("conditions");
const tried = new Set<string>();
const starting = (start: string): readonly { readonly id: string; readonly one: PublishedCase }[] => {
  const some = cases.filter(({ id }) => id.startsWith(start));
  for (const { id } of some) tried.add(id);
  if (some.length === 0) throw new Error(`no case begins with ${start}`);
  return some.map((one) => ({ id: one.id, one }));
};
const number = ({ id, inputs }: PublishedCase, name: string): number => {
  const value = inputs[name];
  if (typeof value !== "number") throw new Error(`${id}: expected a number as ${name}`);
  return value;
};
const code = (text: unknown): WeatherCode => {
  const weather = weatherCodeOf(String(text));
  if (weather === undefined) throw new Error(`${String(text)} is no weather`);
  return weather;
};
const observation = (text: string): Observation => {
  const [report] = decodeReports(text).reports;
  if (report?.kind !== "observation") throw new Error(`not an observation: ${text}`);
  return report;
};
const seen = (value: number, unit: "mi" | "m"): Visibility =>
  visibilityOf({ value, unit, valueSI: toSI(value, unit) });

describe("the flight category is the worse of what ceiling and visibility give", () => {
  it.each(starting("category-").filter(({ id }) => id !== "category-words"))("$id", ({ one }) => {
    const { ceiling_ft, visibility_SM, visibility_m } = one.inputs;
    const ceiling: Ceiling = ceiling_ft === null ? { kind: "none" } : heightCeiling(Number(ceiling_ft));
    const visibility =
      visibility_SM === undefined ? seen(Number(visibility_m), "m") : seen(Number(visibility_SM), "mi");
    const answer = flightCategory(ceiling, visibility);
    expect(answer).toEqual({
      category: one.expected["flightCategory"],
      atWorst: one.expected["flightCategory"],
    });
  });

  it("category-words: it says nothing of the thunderstorm", () => {
    const one = starting("category-words")[0]?.one;
    if (one === undefined) throw new Error("no case category-words");
    const { hazards, category } = observedConditions(observation(textInput(one, "metar")));
    expect(category.category).toBe(one.expected["flightCategory"]);
    expect(hazards.map(({ value }) => value)).toEqual(one.expected["hazards"]);
  });
});

const JANUARY = 0;
const placed = (text: string): PlacedForecast => {
  const [report] = decodeReports(text).reports;
  const issued = report?.issued;
  if (report === undefined || issued === undefined) throw new Error(`no forecast: ${text}`);
  const received_ms = Date.UTC(2025, JANUARY, issued.day, issued.hour, issued.minute);
  const one = placeReport(report, received_ms);
  if (one.kind !== "forecast") throw new Error(`not placed: ${text}`);
  return one;
};
const atTime = (taf: PlacedForecast, digits: string): number => {
  const time = dayTimeOf(digits);
  const at = time === undefined ? undefined : instantNear(time, taf.from_ms);
  if (at === undefined) throw new Error(`no time: ${digits}`);
  return at;
};

const windWords = ({ kind, from_degTrue, coded }: Wind): string => {
  const from = kind === "variable" ? "VRB" : String(from_degTrue ?? 0).padStart(3, "0");
  return `${from}/${coded.speed.value}${coded.gust === undefined ? "" : `G${coded.gust.value}`}`;
};

/** A state in the words of the cases, only what the case asks. */
function stateWords(state: State, asked: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const { wind, visibility, ceiling, weather, category, clouds, source } = state;
  const all: Record<string, unknown> = {
    kind: source.kind,
    wind: wind === undefined ? undefined : windWords(wind.value),
    wind_mps: wind === undefined ? undefined : windWords(wind.value),
    visibility_SM: visibility?.value.coded.unit === "mi" ? visibility.value.coded.value : undefined,
    visibility_m: visibility?.value.coded.unit === "m" ? visibility.value.coded.value : undefined,
    visibility:
      visibility?.value.bound === undefined
        ? undefined
        : `${visibility.value.bound} ${visibility.value.coded.value} SM`,
    weather: weather.value.map((one) => one.code),
    ceiling_ft:
      ceiling?.value.kind === "height"
        ? ceiling.value.height_ft
        : ceiling?.value.kind === "none"
          ? null
          : "unknown",
    category: category.category,
    clouds: clouds.value.map(
      ({ amount, base_ft, type }) =>
        `${amount ?? ""}${String((base_ft ?? 0) / 100).padStart(3, "0")}${type ?? ""}`,
    ),
    complete_ddhhmm:
      source.to_ms === undefined
        ? undefined
        : new Date(source.to_ms).toISOString().replace(/^\d{4}-\d{2}-(\d{2})T(\d{2}):(\d{2}).*$/u, "$1$2$3"),
  };
  return Object.fromEntries(Object.keys(asked).map((name) => [name, all[name]]));
}

type Words = Readonly<Record<string, unknown>>;

describe("a forecast at a time: what prevails, what may come and go, the worst of both", () => {
  it.each(starting("taf-at-"))("$id", ({ one }) => {
    const taf = placed(textInput(one, "taf"));
    const at_ms = atTime(taf, textInput(one, "at_ddhhmm"));
    const conditions = conditionsAt(taf, at_ms, at_ms);
    const { covered, prevailing, becoming, temporary, worstCategory, hazards, lowLevelWindShear } =
      one.expected;
    if (covered === false) {
      expect(conditions).toMatchObject({ covered: "none", slices: [] });
      expect(conditions.open).toContain("ceiling");
      return;
    }
    const [slice, ...more] = conditions.slices;
    if (slice === undefined) throw new Error("expected one slice");
    expect(more).toEqual([]);
    expect(stateWords(slice.prevailing, prevailing as Words)).toEqual(prevailing); // the cases hold objects here
    if (becoming !== undefined)
      expect(slice.becoming.map((state) => stateWords(state, becoming as Words))).toEqual([becoming]);
    if (temporary !== undefined) {
      const expected = temporary as readonly Words[];
      expect(slice.temporary.map((state, index) => stateWords(state, expected[index] ?? {}))).toEqual(
        expected,
      );
    }
    expect(conditions.worst.category.category).toBe(worstCategory);
    const found: readonly string[] = conditions.worst.hazards.map(({ value }) => value);
    for (const hazard of (hazards ?? []) as readonly string[]) expect(found).toContain(hazard);
    const shear = slice.prevailing.shear?.value;
    const words = (lowLevelWindShear ?? {}) as Words;
    expect(shear?.layerTop_ft).toBe(words["layerTop_ft"]);
    expect(shear === undefined ? undefined : `${shear.from_degTrue}/${shear.coded.speed.value}`).toBe(
      words["wind"],
    );
    expect(conditions.open).toEqual([]);
  });
});

describe("icing conditions: visible moisture, and air at or below the threshold", () => {
  it.each(starting("icing-flag-"))("$id", ({ one }) => {
    const weather = listInput(one, "weather").map(code);
    const body = one.inputs["body"];
    const coldest_C = Math.min(number(one, "oat_C"), body === undefined ? Infinity : Number(body));
    const answer = reportedIcing({
      oat_K: toSI(coldest_C, "degC"),
      weather,
      ...(one.inputs["visibility_SM"] === undefined
        ? {}
        : { visibility: seen(number(one, "visibility_SM"), "mi") }),
      clouds: [],
      threshold_K: toSI(number(one, "threshold_C"), "degC"),
    });
    expect(answer.icing).toBe(one.expected["icingConditions"] === true ? "yes" : "no");
    const fog = weather.some(({ descriptor, phenomena }) => descriptor === "FZ" && phenomena.includes("FG"));
    expect(fog).toBe(one.expected["freezingFog"] ?? false);
  });

  it("icing-flag-tenths: a report gives the colder of body and tenths", () => {
    const report = observation("METAR KXXX 051256Z 22015KT 4SM -RA OVC010 05/04 A2992 RMK AO2 T00540040");
    expect(observedConditions(report).oat).toEqual({
      coldest_K: toSI(5, "degC"),
      hottest_K: toSI(5.4, "degC"),
      belowZero: false,
    });
  });

  it("without a temperature or without the weather it is open", () => {
    const threshold_K = toSI(5, "degC");
    expect(reportedIcing({ weather: [code("RA")], threshold_K })).toEqual({
      icing: "open",
      missing: ["temperature"],
    });
    expect(reportedIcing({ oat_K: 270, threshold_K })).toEqual({
      icing: "open",
      missing: ["weather"],
    });
  });
});

describe("freezing precipitation is told in each of its forms", () => {
  it.each(starting("freezing-precipitation"))("$id", ({ one }) => {
    const answers = listInput(one, "weather").map((text) => {
      const [group, ...rest] = String(text).split(" ");
      const unknown = rest.join(" ") === "at 0 C with FZRANO";
      return freezingPrecipitation({
        weather: [code(group)],
        ...(unknown ? { oat_K: 273.15, freezingRainSensorOut: true } : { oat_K: 272 }),
      });
    });
    expect(answers).toEqual(["present", "present", "present", "possible"]);
  });

  it("rain that is no freezing rain is none", () => {
    expect(freezingPrecipitation({ weather: [code("RA")], oat_K: 280 })).toBe("not reported");
    expect(freezingPrecipitation({ weather: [code("RA")], oat_K: 272 })).toBe("possible");
    expect(freezingPrecipitation({ weather: [code("FZFG")], oat_K: 270 })).toBe("not reported");
  });
});

describe("frost, from a report", () => {
  it.each(starting("frost-risk"))("$id", ({ one }) => {
    const report = observation(textInput(one, "metar"));
    const { oat, dewPoint_K, winds } = observedConditions(report);
    const answer = reportedFrost({
      ...(oat === undefined ? {} : { oat_K: oat.coldest_K }),
      ...(dewPoint_K === undefined ? {} : { dewPoint_K }),
      sky: report.elements,
      wind_mPerS: winds[0]?.value.speed_mPerS ?? 0,
    });
    expect(answer.frost).toBe(one.expected["frostRisk"] === true ? "expected" : "not expected");
  });

  it("is open without a dew point, and beyond the formulas", () => {
    expect(reportedFrost({ oat_K: 272 })).toEqual({ frost: "open", missing: ["dew point"] });
    expect(reportedFrost({ dewPoint_K: 200, oat_K: 210 }).frost).toBe("open");
  });

  it.each([
    { sky: "OVC020", frost: "not expected" },
    { sky: "VV002", frost: "not expected" },
    { sky: "BKN020", frost: "expected" },
    { sky: "OVC200", frost: "expected" },
    { sky: "//////", frost: "expected" },
  ])("air at 2 °C with a dew point of 0 °C under $sky: $frost", ({ sky, frost }) => {
    const { elements } = observation(`METAR ZZTW 120250Z 00000KT 9999 ${sky} 02/00 Q1020`);
    expect(reportedFrost({ oat_K: 275.15, dewPoint_K: 273.15, sky: elements, wind_mPerS: 0 }).frost).toBe(
      frost,
    );
  });
});

describe("figures from a report go into the quantities of the registry", () => {
  it.each(starting("rh-printed"))("$id", ({ one }) => {
    const [temperature_K, dewPoint_K] = [number(one, "temperature_C"), number(one, "dewpoint_C")].map(
      (value) => toSI(value, "degC"),
    );
    const humidity =
      relativeHumidity.compute({ temperature_K: temperature_K ?? 0, dewPoint_K: dewPoint_K ?? 0 }) * 100;
    expect(Math.abs(humidity - Number(one.expected["relativeHumidity_pct"]))).toBeLessThanOrEqual(1);
  });

  it.each(starting("cloud-base-spread"))("$id", ({ one }) => {
    const [temperature_K, dewPoint_K] = [number(one, "temperature_C"), number(one, "dewpoint_C")].map(
      (value) => toSI(value, "degC"),
    );
    const base_ft = fromSI(
      cloudBaseRule.compute({ elevation_m: 0, oat_K: temperature_K ?? 0, dewPoint_K: dewPoint_K ?? 0 }),
      "ft",
    );
    expect(Math.abs(base_ft - Number(one.expected["cloudBase_ftAGL"]))).toBeLessThanOrEqual(100);
  });

  it.each(starting("peak-wind"))("$id: the strongest wind of body and remarks counts", ({ one }) => {
    const text = `METAR KXXX 162256Z ${textInput(one, "body")} 10SM SKC 18/16 A2992 RMK ${textInput(one, "remark")}`;
    const { strongest } = observedConditions(observation(text));
    const wind_kt = fromSI(strongest?.value.speed_mPerS ?? 0, "kt");
    expect(wind_kt).toBeCloseTo(Number(one.expected["windForLimit_kt"]), 9);
    expect(wind_kt > number(one, "limit_kt")).toBe(one.expected["exceeds"]);
    expect(strongest?.source.role).toBe("remark");
  });
});

it("every case of the file is tried, and there are 27 of them", () => {
  expect([...tried].toSorted()).toEqual(cases.map(({ id }) => id).toSorted());
  expect(cases.length).toBe(27);
});
