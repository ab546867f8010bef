import type { Book, PerformanceTable } from "@witnessmark/book";
import type { FlightPlan, PlannedField, TypedConditions } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { fieldFigures } from "./field-figures.ts";
import {
  at,
  flightWith,
  line,
  MASSES,
  one,
  QUERN,
  reported,
  TARN,
  turboprop,
  verdictsOf,
} from "./testing/island.ts";

const landingAt = (destination: PlannedField, asked: Parameters<typeof verdictsOf>[1] = {}) =>
  verdictsOf(flightWith({ destination }), asked);
const withMetar = (text: string, received = "08:00"): PlannedField => ({
  ...QUERN,
  metar: reported(text, received),
});

const statuses = (all: ReturnType<typeof verdictsOf>): ReadonlySet<string> =>
  new Set(all.filter(({ id }) => id.includes("destination")).map(({ status }) => status));

describe("a field or runway that the book has not", () => {
  it("is told with those it has, once, and keeps all that waits for it from being clear", () => {
    const all = landingAt({ ...QUERN, code: "ZZXX" });
    expect(line(one(all, "runway:destination:field"))).toBe(
      "open: ZZXX: expected a field of the book (ZZTW, ZZQN, ZZPK), or one said for this flight (not in the book)",
    );
    expect(all.some(({ id }) => id === "wind:destination:crosswind")).toBe(false);
  });

  it("a runway too", () => {
    const all = landingAt({ ...QUERN, runway: "12" });
    expect(line(one(all, "runway:destination:runway"))).toBe(
      "open: runway 12: expected a runway of ZZQN (11, 29) (no such runway)",
    );
    const figures = fieldFigures(
      turboprop,
      flightWith({ destination: { ...QUERN, runway: "12" } }),
      "destination",
      at("08:05"),
    );
    expect(figures?.faults).toEqual([
      {
        where: { kind: "runway", role: "destination" },
        says: "runway 12: expected a runway of ZZQN (11, 29)",
      },
    ]);
  });

  it("a field that is not named at all is one open verdict", () => {
    const { destination, ...plan } = flightWith().plan as FlightPlan; // a flight of this file has a plan
    const all = verdictsOf({ ...flightWith(), plan });
    expect(destination).toBeDefined();
    expect(all.filter(({ id }) => id.includes("destination")).map(line)).toEqual([
      "open: No destination is named (not named)",
    ]);
  });
});

describe("a report", () => {
  it("older than 75 min is too old, and one verdict says so", () => {
    const all = landingAt(QUERN, { now: "09:06" });
    expect(line(one(all, "weather:destination:report"))).toBe(
      "open: Report of 07:50. A newer one is needed before you go (too old)",
    );
    expect(all.some(({ id }) => id === "runway:destination:landing")).toBe(false);
    expect(statuses(landingAt(QUERN, { now: "09:05" })).has("open")).toBe(false);
  });

  it("that is too old and stops still stops", () => {
    const all = landingAt(withMetar("METAR ZZQN 120750Z 20030KT 9999 BKN022 05/03 Q1008"), { now: "09:06" });
    expect(one(all, "wind:destination:crosswind").status).toBe("stop");
  });

  it.each([
    [
      "of another place",
      "METAR ZZPK 120750Z 24004KT 9999 BKN022 05/03 Q1008",
      "no METAR or SPECI of ZZQN in the text",
    ],
    ["of another day", "METAR ZZQN 140750Z 24004KT 9999 BKN022 05/03 Q1008", "after it was received"],
    ["that is missing", "METAR ZZQN 120750Z NIL", "the report is missing"],
    ["without a time", "METAR ZZQN 24004KT 9999 BKN022 05/03 Q1008", "no time group"],
    ["that is none", "the wind is light and it is fine", "Cannot be used"],
  ])("%s cannot be used, and nothing of it is clear", (_, text, words) => {
    const all = landingAt(withMetar(text));
    const report = one(all, "weather:destination:report");
    expect(report.status).toBe("open");
    expect(line(report)).toContain(words);
    const clear = all.filter(({ id, status }) => id.includes("destination") && status === "clear");
    expect(clear.map(({ id }) => id)).toEqual(["light:destination"]);
  });

  it("of yesterday is too old, by its day", () => {
    const report = one(
      landingAt(withMetar("METAR ZZQN 110750Z 24004KT 9999 BKN022 05/03 Q1008")),
      "weather:destination:report",
    );
    expect(line(report)).toBe(
      "open: Report of Wednesday 07:50. A newer one is needed before you go (too old)",
    );
  });

  it("with an altimeter setting in the wrong unit opens the distance, and says what is probably meant", () => {
    const all = landingAt(withMetar("METAR ZZQN 120750Z 24014G22KT 9999 BKN022 05/03 Q2992"));
    expect(line(one(all, "runway:destination:landing"))).toBe(
      "open: Not known: the altimeter setting at ZZQN (not known)",
    );
    expect(line(one(all, "weather:destination:report"))).toContain("2992 hPa is impossible; probably A2992");
    // and nothing else: the wind and the cloud are as they were
    expect(one(all, "wind:destination:crosswind").status).toBe("caution");
    expect(one(all, "weather:destination:ceiling").status).toBe("clear");
  });

  it("with a token that is not understood opens what depends on it, and no more", () => {
    const all = landingAt(withMetar("METAR ZZQN 120750Z 24014G22KT 9999 BKN0Z2 05/03 Q1008"));
    expect(one(all, "weather:destination:ceiling").status).toBe("open");
    expect(one(all, "runway:destination:landing").status).toBe("clear");
    expect(one(all, "weather:destination:visibility").status).toBe("clear");
  });

  it("with a variable wind counts all of it as crosswind and as tailwind, and is never clear", () => {
    const all = landingAt(withMetar("METAR ZZQN 120750Z VRB04KT 9999 BKN022 05/03 Q1008"));
    expect(line(one(all, "wind:destination:crosswind"))).toBe(
      "caution: 4 kt from either side, of 20 kt demonstrated. Variable: all of it counts as crosswind and as tailwind (16 kt)",
    );
    expect(line(one(all, "wind:destination:tailwind"))).toBe("caution: 4 of 10 kt (6 kt)");
    const figures = fieldFigures(
      turboprop,
      flightWith({ destination: withMetar("METAR ZZQN 120750Z VRB04KT 9999 BKN022 05/03 Q1008") }),
      "destination",
      at("08:05"),
      { masses: MASSES },
    );
    // 150 % of a tailwind: CAT.POL.A.330(c)(2)
    expect(figures?.distance.value?.counted_mPerS).toBeCloseTo((-1.5 * 4 * 1852) / 3600, 9);
  });
});

describe("a forecast", () => {
  const withTaf = (text: string, received = "08:00"): PlannedField => ({
    ...QUERN,
    taf: reported(text, received),
  });

  it("that has ended is told, and open", () => {
    const all = landingAt({
      ...QUERN,
      taf: { text: "TAF ZZQN 110500Z 1106/1206 24010KT 9999 SCT030", receivedAt: "2026-11-11T06:00:00Z" },
    });
    expect(line(one(all, "weather:destination:forecast"))).toBe(
      "open: It ended 06:00. A newer one is needed before you go (ended)",
    );
  });

  it("counts with its worst group around the landing", () => {
    const all = landingAt(
      withTaf("TAF ZZQN 120500Z 1206/1306 24010KT 9999 SCT030 TEMPO 1210/1212 20035KT 2000 BKN004"),
    );
    expect(one(all, "wind:destination:crosswind").status).toBe("stop");
    expect(line(one(all, "weather:destination:ceiling"))).toBe(
      "stop: Ceiling 400 ft, you asked for 1,000 ft (600 ft short)",
    );
    expect(line(one(all, "weather:destination:visibility"))).toContain("Visibility 2,000 m");
    // an hour after the landing at 09:58 is 10:58; a group from 11 is too late to count
    const later = landingAt(
      withTaf("TAF ZZQN 120500Z 1206/1306 24010KT 9999 SCT030 TEMPO 1211/1212 20035KT 2000 BKN004"),
    );
    expect(one(later, "wind:destination:crosswind").status).toBe("caution");
  });

  it("is needed for a landing more than three hours after the report", () => {
    const flight = flightWith({}, "10:30");
    expect(line(one(verdictsOf(flight), "weather:destination:forecast"))).toBe(
      "open: No forecast, and no report that reaches so far (no forecast)",
    );
  });
});

describe("what was typed", () => {
  const TYPED: TypedConditions = {
    observedAt: "2026-11-12T08:00:00Z",
    windFrom: { value: 290, unit: "deg" },
    windSpeed: { value: 10, unit: "kt" },
    oat: { value: 5, unit: "degC" },
    dewPoint: { value: 1, unit: "degC" },
    qnh: { value: 1008, unit: "hPa" },
    visibility: { value: 10, unit: "km" },
    ceiling: { value: 2200, unit: "ft" },
  };
  const typed = (more: Partial<TypedConditions>): PlannedField => ({
    code: "ZZQN",
    runway: "29",
    condition: "wet",
    typed: { ...TYPED, ...more },
  });

  it("does without a report", () => {
    const all = landingAt(typed({}));
    expect(line(one(all, "wind:destination:crosswind"))).toBe("clear: 0 kt, of 20 kt demonstrated (20 kt)");
    expect(one(all, "runway:destination:landing").status).toBe("clear");
    expect(one(all, "runway:destination:landing").holdsUntil_ms).toBe(at("09:00"));
  });

  it.each([
    ["said to be variable", { windVariable: true }],
    [
      "said to be variable, with a direction left in",
      { windVariable: true, windFrom: { value: 290, unit: "deg" } },
    ],
    ["of no direction", {}],
  ] as const)("a wind %s is worked out for the worst of all directions, and is never clear", (_, more) => {
    const { windFrom, ...rest } = TYPED;
    expect(windFrom).toBeDefined();
    const windy: TypedConditions = { ...rest, windSpeed: { value: 6, unit: "kt" }, ...more };
    const all = landingAt({ code: "ZZQN", runway: "29", condition: "wet", typed: windy });
    expect(line(one(all, "wind:destination:crosswind"))).toBe(
      "caution: 6 kt from either side, of 20 kt demonstrated. Variable: all of it counts as crosswind and as tailwind (14 kt)",
    );
    expect(line(one(all, "wind:destination:tailwind"))).toBe("caution: 6 of 10 kt (4 kt)");
  });

  it("takes the place of what the report says, element by element", () => {
    const all = landingAt({
      ...QUERN,
      typed: { observedAt: TYPED.observedAt, ceiling: { value: 900, unit: "ft" } },
    });
    expect(line(one(all, "weather:destination:ceiling"))).toContain("Ceiling 900 ft");
    expect(line(one(all, "wind:destination:crosswind"))).toContain("Gust 17 kt from the left, of 20 kt");
  });

  it("is too old after 60 min; the report then counts again where there is one", () => {
    expect(line(one(landingAt(typed({}), { now: "09:01" }), "weather:destination:report"))).toBe(
      "open: Typed 08:00. A newer one is needed before you go (too old)",
    );
    const both = landingAt({ ...QUERN, typed: { ...TYPED, observedAt: "2026-11-12T06:30:00Z" } });
    expect(line(one(both, "wind:destination:crosswind"))).toContain("Gust 17 kt from the left, of 20 kt");
  });

  it.each([
    [
      "qnh",
      { qnh: { value: 29.92, unit: "hPa" } },
      "altimeter setting: expected 850 hPa to 1090 hPa, received 29.92 hPa; was that 29.92 inHg?",
    ],
    [
      "qnh",
      { qnh: { value: 1008, unit: "kt" } },
      "altimeter setting: expected a pressure, received 1008 kt, a speed",
    ],
    [
      "windSpeed",
      { windSpeed: { value: -4, unit: "kt" } },
      "wind speed: expected 0 kt to 120 kt, received -4 kt",
    ],
    ["windSpeed", { windGust: { value: 5, unit: "kt" } }, "gust: expected at least the steady wind"],
    [
      "windFrom",
      { windFrom: { value: 400, unit: "deg" } },
      "wind direction: expected 0° to 360°, received 400 °",
    ],
    [
      "oat",
      { oat: { value: 278, unit: "degC" } },
      "temperature: expected −70 °C to 58 °C, received 278 °C; was that 278 K?",
    ],
  ] as const)("that cannot be is told at its place: %s", (part, more, says) => {
    const all = landingAt(typed(more));
    const figures = fieldFigures(
      turboprop,
      flightWith({ destination: typed(more) }),
      "destination",
      at("08:05"),
    );
    expect(
      figures?.faults.map(({ where, says: words }) => [where.part, words.replaceAll("\u00A0", " ")]),
    ).toEqual([[part, says]]);
    expect(one(all, "weather:destination:typed").status).toBe("open");
    expect(one(all, "runway:destination:landing").status).toBe("open");
  });

  it("ahead of now is not used", () => {
    const all = landingAt(typed({ observedAt: "2026-11-12T09:00:00Z" }));
    expect(one(all, "weather:destination:typed").status).toBe("open");
    expect(one(all, "weather:destination:report").status).toBe("open");
  });
});

describe("a book", () => {
  const withTables = (change: (table: PerformanceTable) => PerformanceTable): Book => {
    const { performance } = turboprop;
    if (performance === undefined) throw new Error("the demo book has tables");
    return { ...turboprop, performance: { ...performance, tables: performance.tables.map(change) } };
  };

  it("whose table has a hole where it is asked has no figure, and names the nearest that there is", () => {
    const holed = withTables((table) =>
      table.id === "landing-total"
        ? { ...table, cells: table.cells.map((cell) => (cell === 515 ? null : cell)) }
        : table,
    );
    const verdict = one(landingAt(QUERN, { book: holed }), "runway:destination:landing");
    expect(verdict.status).toBe("open");
    expect(line(verdict)).toContain("is where the table has no figure");
  });

  it("without what the aircraft can do leaves one open verdict a field for it", () => {
    const { performance, ...book } = turboprop;
    expect(performance).toBeDefined();
    const all = landingAt(QUERN, { book });
    expect(line(one(all, "runway:destination:performance"))).toContain(
      "what the aircraft can do, in the book",
    );
    expect(all.some(({ id }) => id === "wind:destination:crosswind")).toBe(false);
  });

  it("without a factor for what lies on the runway has no figure", () => {
    const verdict = one(landingAt({ ...QUERN, condition: "slush" }), "runway:destination:landing");
    expect(line(verdict)).toContain("a surface factor of the book for landing on slush paved");
  });

  it("without ice protection leaves icing conditions open; with none for known icing they stop from 0 °C", () => {
    const { iceProtection, ...without } = turboprop;
    expect(one(landingAt(QUERN, { book: without }), "ice:destination:icing").status).toBe("open");
    const bare = { ...turboprop, iceProtection: { known: false, parts: [], conditions: "Keep out of ice." } };
    expect(iceProtection?.known).toBe(true);
    const cold = withMetar("METAR ZZQN 120750Z 24014G22KT 9999 SN BKN022 M01/M02 Q1008");
    expect(one(landingAt(cold, { book: bare }), "ice:destination:icing").status).toBe("stop");
    expect(one(landingAt(QUERN, { book: bare }), "ice:destination:icing").status).toBe("caution");
    const freezing = withMetar("METAR ZZQN 120750Z 24014G22KT 9999 FZRA BKN022 M01/M02 Q1008");
    expect(one(landingAt(freezing), "ice:destination:icing").status).toBe("stop");
  });
});

describe("a flight", () => {
  it("by rules that are not there is open, by their name", () => {
    const all = verdictsOf(flightWith({ rulePack: "nowhere", own: {} }));
    expect(line(one(all, "weather:destination:rules"))).toContain("there are us-part-91, eu-part-nco");
  });

  it("with an alternate that no rule asks for is not stopped by it", () => {
    const windy: PlannedField = {
      code: "ZZPK",
      runway: "33",
      condition: "dry",
      metar: reported("METAR ZZPK 120750Z 24040KT 9999 SCT030 05/03 Q1008"),
    };
    const route = {
      ...flightWith().plan?.route,
      alternateTime: { value: 20, unit: "min" },
    } as FlightPlan["route"]; // there is one
    const all = verdictsOf(flightWith({ alternate: windy, ...(route === undefined ? {} : { route }) }));
    expect(one(all, "wind:alternate:crosswind").status).toBe("caution");
    expect(all.filter(({ status }) => status === "stop")).toEqual([]);
  });

  it("whose alternate has no time to it leaves that open", () => {
    const all = verdictsOf(flightWith({ alternate: { ...TARN, runway: "06" } }));
    expect(line(one(all, "weather:alternate:time"))).toBe(
      "open: Not known: the time from the destination to the alternate (no time)",
    );
  });
});
