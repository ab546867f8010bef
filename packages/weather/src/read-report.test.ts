import { describe, expect, it } from "vitest";
import { ASPECTS } from "./aspect.ts";
import { decodeReports } from "./decode.ts";
import { instantNear } from "./instant.ts";
import { readReport } from "./read-report.ts";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const METAR = "METAR ZZTW 121150Z 22015KT 9999 FEW030 12/08 Q1013";
const TAF = "TAF ZZTW 121105Z 1212/1312 22015KT 9999 FEW030";
const NOON_MS = Date.UTC(2026, 10, 12, 12);

const observation = (text: string, now_ms = NOON_MS, received_ms = now_ms, station = "ZZTW") =>
  readReport(text, { kind: "observation", station, received_ms, now_ms });
const forecast = (text: string, now_ms = NOON_MS, received_ms = now_ms, station = "ZZTW") =>
  readReport(text, { kind: "forecast", station, received_ms, now_ms });
const says = ({
  problems,
}: {
  readonly problems: readonly { readonly group: string; readonly says: string }[];
}) => problems.map((problem) => `${problem.group}: ${problem.says}`);

describe("an observation says how old it is", () => {
  it("and nothing else is told of a sound one", () => {
    const read = observation(METAR);
    expect(read).toMatchObject({
      age_ms: 10 * MINUTE_MS,
      ageText: "10 min old",
      stale: false,
      problems: [],
      open: [],
    });
    expect(read.placed?.observed_ms).toBe(NOON_MS - 10 * MINUTE_MS);
  });

  it.each([
    { age_min: 65, stale: false },
    { age_min: 66, stale: true },
  ])("$age_min min: stale $stale", ({ age_min, stale }) => {
    const read = observation(METAR, NOON_MS + (age_min - 10) * MINUTE_MS);
    expect(read.stale).toBe(stale);
    expect(read.open).toEqual(stale ? ["validity"] : []);
    expect(says(read)).toEqual(stale ? [": 1 h 6 min old: a later report should be there"] : []);
  });

  it("keeps its date when it is looked at months later", () => {
    const read = observation(METAR, NOON_MS + 100 * 24 * HOUR_MS, NOON_MS);
    expect(read.placed?.observed_ms).toBe(NOON_MS - 10 * MINUTE_MS);
    expect(says(read)).toEqual([": 100 days 0 h old: a later report should be there"]);
  });

  it("a clock five minutes slow is no report of the future; six minutes are", () => {
    expect(observation(METAR, NOON_MS - 15 * MINUTE_MS)).toMatchObject({
      age_ms: -5 * MINUTE_MS,
      ageText: "0 min old",
      open: [],
    });
    const read = observation(METAR, NOON_MS - 16 * MINUTE_MS);
    expect(read.placed).toBeUndefined();
    expect(read.open).toEqual(ASPECTS);
    expect(says(read)).toEqual([
      "121150Z: its time, 2026-11-12 11:50 UTC, lies 6 min after it was received: the day, the month or the clock is wrong",
    ]);
  });

  it("a day that the month does not have is not turned into another", () => {
    const text = METAR.replace("121150Z", "301150Z");
    const read = observation(text, Date.UTC(2026, 2, 1, 12));
    expect(read.placed).toBeUndefined();
    expect(says(read)).toEqual([
      "301150Z: no such day lies near 2026-03-01 12:00 UTC, when it was received: its date is not known",
    ]);
  });
});

describe("a day of the month finds its date", () => {
  it.each([
    { day: 29, hour: 23, near: "2024-03-01T00:10Z", is: "2024-02-29T23:00Z" },
    { day: 31, hour: 23, near: "2026-01-01T01:00Z", is: "2025-12-31T23:00Z" },
    { day: 1, hour: 0, near: "2025-12-31T23:50Z", is: "2026-01-01T00:00Z" },
    { day: 30, hour: 24, near: "2026-04-30T20:00Z", is: "2026-05-01T00:00Z" },
    { day: 28, hour: 6, near: "2025-03-01T06:00Z", is: "2025-02-28T06:00Z" },
  ])("$day at $hour near $near", ({ day, hour, near, is }) => {
    expect(instantNear({ day, hour, minute: 0 }, Date.parse(near))).toBe(Date.parse(is));
  });

  it("29 February of a year without one is none", () => {
    expect(instantNear({ day: 29, hour: 23, minute: 0 }, Date.UTC(2025, 2, 1))).toBeUndefined();
    expect(instantNear({ day: 1, hour: 0, minute: 0 }, Number.NaN)).toBeUndefined();
  });
});

describe("the report that was asked for, or none", () => {
  it("a report of another place is told and not used", () => {
    const read = observation(METAR, NOON_MS, NOON_MS, "ZZQN");
    expect(read.placed).toBeUndefined();
    expect(read.open).toEqual(ASPECTS);
    expect(says(read)).toEqual([
      "ZZTW: a report of another place; ZZQN was asked for",
      ": no METAR or SPECI of ZZQN in the text",
    ]);
  });

  it("of several places the one that was asked for is found, in any order and without words of type", () => {
    const other = "ZZQN 121150Z 18005KT 1500 BR OVC003 10/10 Q1012";
    for (const text of [`${METAR}= ${other}`, `${other}\n${METAR}`, `${TAF} ${METAR} METAR ${other}`]) {
      expect(
        observation(text, NOON_MS, NOON_MS, "zzqn ").placed?.report.elements.visibility?.visibility_m,
      ).toBe(1500);
      expect(observation(text).placed?.report.elements.visibility?.visibility_m).toBe(10_000);
    }
  });

  it("of two of one place the later one is used, and that is told", () => {
    const speci = "SPECI ZZTW 121158Z 22025G40KT 3000 RA BKN008 12/11 Q1011";
    for (const text of [`${METAR} ${speci}`, `${speci} ${METAR}`]) {
      const read = observation(text);
      expect(read.placed?.report.type).toBe("SPECI");
      expect(says(read)).toEqual(["ZZTW: 2 reports of the same place; the latest is used"]);
      expect(read.open).toEqual([]);
    }
  });

  it("two of one place, one of which has no time that can be read, leave everything open", () => {
    expect(observation(`${METAR} METAR ZZTW 1211Z5 22025KT 3000 OVC002 12/11 Q1011`).open).toEqual(ASPECTS);
  });

  it("an observation where a forecast was asked for is none", () => {
    expect(says(forecast(METAR))).toEqual([": no TAF of ZZTW in the text"]);
    expect(forecast("").open).toEqual(ASPECTS);
  });
});

describe("a forecast stands for its time only", () => {
  it("is current until its end, and over from there", () => {
    const end_ms = Date.UTC(2026, 10, 13, 12);
    expect(forecast(TAF, end_ms - 1, NOON_MS).open).toEqual([]);
    const read = forecast(TAF, end_ms, NOON_MS);
    expect(read).toMatchObject({ stale: true, open: ASPECTS });
    expect(says(read)).toEqual([
      ": the forecast ended at 2026-11-13 12:00 UTC; nothing of it is stretched beyond",
    ]);
  });

  it("crosses the end of a year, with hour 24", () => {
    const now_ms = Date.UTC(2025, 11, 31, 23, 30);
    const text = "TAF ZZTW 312305Z 3124/0124 22015KT 9999 FEW030 TEMPO 0102/0106 3000 RA BKN008";
    expect(forecast(text, now_ms).placed).toBeUndefined(); // hour 24 begins nothing
    const { placed } = forecast(text.replace("3124/", "0100/"), now_ms);
    expect(placed?.from_ms).toBe(Date.UTC(2026, 0, 1));
    expect(placed?.to_ms).toBe(Date.UTC(2026, 0, 2));
    expect(placed?.periods[1]?.from_ms).toBe(Date.UTC(2026, 0, 1, 2));
  });

  it("a change outside its validity may hold at any time", () => {
    const { placed, open } = forecast(`${TAF} TEMPO 1400/1404 0500 FG VV001`);
    expect(placed?.periods[1]).toMatchObject({
      kind: "unclear",
      from_ms: placed?.from_ms,
      to_ms: placed?.to_ms,
    });
    expect(open).toContain("visibility");
  });

  it("beginnings that are out of order may hold at any time", () => {
    const text = `${TAF} FM121800 24012KT 9999 SCT020 FM121500 28020KT 2000 RA BKN006`;
    expect(forecast(text).placed?.periods.map(({ kind }) => kind)).toEqual(["initial", "unclear", "unclear"]);
    expect(forecast(text).open).toContain("visibility");
  });

  it("that was issued after it was received is of the future", () => {
    expect(forecast(TAF, NOON_MS - 2 * HOUR_MS).placed).toBeUndefined();
  });

  it("cancelled or missing says nothing", () => {
    for (const text of ["TAF AMD ZZTW 121105Z 1212/1312 CNL", "TAF ZZTW 121105Z NIL"])
      expect(forecast(text).open).toEqual(ASPECTS);
  });
});

describe("an altimeter setting in the wrong unit is not used", () => {
  it.each([
    { group: "Q2992", says: "2992 hPa is impossible; probably A2992; not used without confirmation" },
    { group: "A1013", says: "10.13 inHg is impossible; probably Q1013; not used without confirmation" },
    { group: "Q0849", says: "849 hPa is impossible; not used without confirmation" },
    { group: "A3201", says: "32.01 inHg is impossible; not used without confirmation" },
  ])("$group", (expected) => {
    const [report] = decodeReports(METAR.replace("Q1013", expected.group)).reports;
    expect(report?.problems.map(({ group, says: text }) => ({ group, says: text }))).toEqual([expected]);
    expect(report?.open).toEqual(["pressure"]);
    expect(report?.kind === "observation" ? report.elements.pressure : "none").toBeUndefined();
  });

  it.each(["Q0850", "Q1090", "A2500", "A3200"])("%s is just possible", (group) => {
    expect(decodeReports(METAR.replace("Q1013", group)).reports[0]?.problems).toEqual([]);
  });
});

describe("what is not understood opens all that it may have been about", () => {
  const openOf = (text: string): readonly string[] => decodeReports(text).reports[0]?.open ?? [];
  it.each([
    { group: "XYZZY", open: ["visibility", "ceiling", "weather"] },
    { group: "2Z0I5KX", open: ["visibility", "ceiling", "weather"] },
    { group: "24O15KT", open: ["wind", "gust"] },
    { group: "R2X/1200", open: ["visibility", "ceiling", "weather", "runway"] },
    { group: "1Z/08X", open: ["visibility", "ceiling", "weather"] },
    { group: "QN13", open: ["visibility", "ceiling", "weather", "pressure"] },
    { group: "-RASX", open: ["visibility", "ceiling", "weather"] },
  ])("$group", ({ group, open }) => {
    expect(openOf(METAR.replace("FEW030", `${group} FEW030`))).toEqual(open);
  });

  it.each(["QFE745", "QFE745/0994", "SC6SC2", "1CU030 5SC040", "A2992"])(
    "the remark %s of other States opens nothing",
    (remark) => {
      expect(openOf(`${METAR} RMK ${remark}`)).toEqual([]);
    },
  );

  it("a remark that nobody understands opens the remarks alone, or what it names", () => {
    expect(openOf(`${METAR} RMK HELLO`)).toEqual(["remarks"]);
    expect(openOf(`${METAR} RMK CIG LWR N`)).toEqual(["ceiling", "remarks"]);
  });
});

describe("two groups that say the same thing must agree", () => {
  const open = (group: string): readonly string[] =>
    decodeReports(METAR.replace("Q1013", group)).reports[0]?.open ?? [];
  it.each([
    { group: "Q1013 A2992", is: [] },
    { group: "A2992 Q1010", is: ["pressure"] },
    { group: "Q1013 Q1031", is: ["pressure"] },
    { group: "Q1013 22015KT", is: [] },
    { group: "Q1013 22051KT", is: ["wind", "gust"] },
    { group: "Q1013 13/08", is: ["temperature", "dew point"] },
  ])("$group leaves open: $is", ({ group, is }) => {
    expect(open(group)).toEqual(is);
  });

  it("of two that differ no temperature and no setting is given", () => {
    const [report] = decodeReports(METAR.replace("Q1013", "13/08 A2992 Q1010")).reports;
    const { temperature, dewPoint, pressure } = report?.kind === "observation" ? report.elements : {};
    expect([temperature, dewPoint, pressure]).toEqual([undefined, undefined, undefined]);
  });
});
