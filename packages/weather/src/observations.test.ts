import { describe, expect, it } from "vitest";
import { decodeReports } from "./decode.ts";
import { flightCategory } from "./flight-category.ts";
import type { Forecast, Observation } from "./report.ts";
import { forecastShape, observationShape } from "./testing/as-case.ts";
import { casesOf, type PublishedCase, textInput } from "./testing/published-cases.ts";

const only = <Kind extends "observation" | "forecast">(
  one: PublishedCase,
  kind: Kind,
): Kind extends "observation" ? Observation : Forecast => {
  const decoded = decodeReports(textInput(one, "report"));
  expect(decoded.problems).toEqual([]);
  const [report, ...more] = decoded.reports;
  expect(more).toEqual([]);
  if (report?.kind !== kind)
    throw new Error(`${one.id}: expected ${kind}, received ${report?.kind ?? "nothing"}`);
  return report as Kind extends "observation" ? Observation : Forecast; // by the line above
};

/** What each of these reports still has told, by the notes of its case; every other has nothing. */
const TOLD: Readonly<Record<string, readonly string[]>> = {
  "metar-knpa-navy": ["FG: fog with 5/8 SM or more, which is coded as mist (BR) today"],
  "metar-yudo-nil": ["NIL: the report is missing; nothing was observed"],
  "metar-kmem-auto": [
    "A3008 / SLP117: 1011.7 hPa at sea level and a setting of 1018.6 hPa are 7 hPa apart; unlikely unless the station lies high",
  ],
  "metar-kewr-rvr-variable": [
    "RAB20E51: the order of its times does not fit what the body of the report says",
  ],
  "metar-kbil-wshft": [
    "A2961 / SLP205: 1020.5 hPa at sea level and a setting of 1002.7 hPa are 18 hPa apart; unlikely unless the station lies high",
  ],
  "speci-kgtf-snow": [": no temperature group"],
  "metar-kabq-dry-ts": [
    "A2999 / SLP085: 1008.5 hPa at sea level and a setting of 1015.6 hPa are 7 hPa apart; unlikely unless the station lies high",
  ],
  "metar-uuee-runway-state": ["R06L/590330: runway state inside the trend, where it does not belong"],
  "metar-unknown-precip-sensors": ["PWINO: present weather identifier not available"],
  "metar-remarks-distant-lightning": [
    "A2990 / SLP982: 998.2 hPa at sea level and a setting of 1012.5 hPa are 14 hPa apart; unlikely unless the station lies high",
  ],
  "metar-auto-unknown-cloud": [
    "//: present weather not observed",
    "///015///: a layer whose amount the station cannot tell: it may be a ceiling",
  ],
  "metar-many-icao-groups": ["VV///: sky hidden, and how far up one sees is not known"],
  "metar-layer-below-station": ["BKN///: a BROKEN layer whose height is not known"],
  "taf-yudo-cnl": [
    "CNL: the forecast is cancelled: the earlier one may no longer be used, and there is none in its place",
  ],
};

/** Remarks that we read and the cases leave out. */
const MORE_REMARKS: Readonly<Record<string, Record<string, unknown>>> = {
  "metar-knpa-navy": { other: "tops of the broken layer at 2,700 ft" },
};

type Remarks = Readonly<Record<string, unknown>>;

/** The cases word the beginning of a thunderstorm in two ways; both give its last digits. */
function expectedRemarks(one: PublishedCase): Remarks | undefined {
  const remarks = one.expected["remarks"] as Remarks | undefined; // the cases hold an object here, or nothing
  if (remarks === undefined) return undefined;
  const { thunderstorm, ...rest } = { ...remarks, ...MORE_REMARKS[one.id] } as Remarks;
  if (thunderstorm === undefined) return rest;
  const digits = /\d+/u.exec(String(thunderstorm))?.[0] ?? "none";
  const began = { event: "began", at_UTC: expect.stringMatching(new RegExp(`${digits}$`, "u")) };
  return { ...rest, thunderstormTimes: [began] };
}

describe("a published report is decoded whole, and to nothing else", () => {
  it.each(casesOf("observations").map((one) => ({ id: one.id, one })))("$id", ({ one }) => {
    const observation = only(one, "observation");
    const shape = observationShape(observation);
    const { worstCaseFlightCategory, ...expected } = one.expected;
    const remarks = expectedRemarks(one);
    expect(shape).toEqual({ ...expected, ...(remarks === undefined ? {} : { remarks }) });
    if (worstCaseFlightCategory !== undefined)
      expect(
        flightCategory(observation.elements.ceiling ?? { kind: "unknown" }, observation.elements.visibility)
          .atWorst,
      ).toBe(worstCaseFlightCategory);
    expect(observation.problems.map(({ group, says }) => `${group}: ${says}`)).toEqual(TOLD[one.id] ?? []);
  });

  it.each(casesOf("forecasts").map((one) => ({ id: one.id, one })))("$id", ({ one }) => {
    const forecast = only(one, "forecast");
    expect(forecastShape(forecast)).toEqual(one.expected);
    expect(forecast.problems.map(({ group, says }) => `${group}: ${says}`)).toEqual(TOLD[one.id] ?? []);
  });

  it("takes every case of both files: 33 and 13", () => {
    expect([casesOf("observations").length, casesOf("forecasts").length]).toEqual([33, 13]);
  });
});
