import { fromSI } from "@witnessmark/engine";
import type { PlannedField } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { plain } from "../../testing/plain.ts";
import { fieldFigures } from "./field-figures.ts";
import { at, flightWith, line, MASSES, one, reported, turboprop, verdictsOf } from "./testing/island.ts";

// Runway 29 lies 290° true. Across by trigonometry, FAA-H-8083-25C chapter 11:
//  260° 16 kt: 16 sin 30° = 8.0 kt; 280° 22 G 34 kt: 34 sin 10° = 5.9 kt; 240° 22 G 34 kt: 34 sin 50° = 26.0 kt
const with29 = (tempo: string): PlannedField => ({
  code: "ZZQN",
  runway: "29",
  condition: "wet",
  metar: reported("METAR ZZQN 120750Z 26016KT 9999 SCT020 05/02 Q1008"),
  taf: reported(`TAF ZZQN 120500Z 1206/1218 26016KT 9999 SCT020 TEMPO 1209/1212 ${tempo}`),
});
const landing = (tempo: string) => ({
  all: verdictsOf(flightWith({ destination: with29(tempo) })),
  figures: fieldFigures(turboprop, flightWith({ destination: with29(tempo) }), "destination", at("08:05"), {
    masses: MASSES,
  }),
});

describe("a TEMPO over the landing", () => {
  it("that blows across more than what prevails is what the crosswind is judged by", () => {
    const { all, figures } = landing("24022G34KT 3000 SHRA BKN008");
    expect(fromSI(figures?.wind.value?.crosswind_mPerS ?? Number.NaN, "kt")).toBeCloseTo(26.046, 3);
    expect(figures?.wind.value?.worst.origin.group).toBe("TEMPO 1209/1212");
    expect(line(one(all, "wind:destination:crosswind"))).toBe(
      "stop: Gust 27 kt from the left, of 20 kt demonstrated (7 kt over)",
    );
  });

  it("that is stronger and blows across less is told beside it, with its group", () => {
    const { all, figures } = landing("28022G34KT 3000 SHRA BKN008");
    expect(fromSI(figures?.wind.value?.crosswind_mPerS ?? Number.NaN, "kt")).toBeCloseTo(8, 3);
    expect(fromSI(figures?.wind.value?.strongest.crosswind_mPerS ?? Number.NaN, "kt")).toBeCloseTo(5.904, 3);
    const crosswind = one(all, "wind:destination:crosswind");
    expect(plain(crosswind.says)).toMatch(
      /^8 kt from the left, of 20 kt demonstrated\..* Strongest 280° 22 G 34 kt \(TEMPO 1209\/1212\)$/,
    );
    expect(crosswind.working.lines.map(({ label }) => label)).toContain("Crosswind of that");
  });

  it("is named where it makes the visibility and the ceiling", () => {
    const { figures } = landing("28022G34KT 3000 SHRA BKN008");
    expect(figures?.weather.visibility_m.saidBy?.group).toBe("TEMPO 1209/1212");
    expect(figures?.weather.ceiling_m.saidBy?.group).toBe("TEMPO 1209/1212");
    // what prevails stands in no group of its own
    const calm = landing("28022G34KT");
    expect(calm.figures?.weather.visibility_m.saidBy?.kind).toBe("METAR");
    expect(calm.figures?.weather.visibility_m.saidBy?.group).toBeUndefined();
  });
});

describe("what was not said of the place", () => {
  const { runway: _runway, condition: _condition, ...nowhere } = with29("28022G34KT");

  it("leaves the landing open for the surface, told once", () => {
    const all = verdictsOf(flightWith({ destination: { ...nowhere, runway: "29" } }));
    expect(line(one(all, "runway:destination:surface"))).toBe(
      "open: Not known: how the surface of ZZQN 29 is (not said)",
    );
    expect(all.filter(({ id }) => id === "runway:destination:landing")).toEqual([]);
    // the wind needs no surface
    expect(one(all, "wind:destination:crosswind").status).toBe("clear");
  });

  it("is asked for once, in the same words, where a factor of the climb waits for it too", () => {
    const { performance } = turboprop;
    if (performance === undefined) throw new Error("expected a book with performance");
    const [any] = performance.factors;
    if (any === undefined) throw new Error("expected a factor");
    const onWet = {
      ...any,
      id: "climb-wet",
      quantities: ["climb-gradient" as const],
      when: { condition: "wet" as const },
    };
    const book = { ...turboprop, performance: { ...performance, factors: [...performance.factors, onWet] } };
    const metar = reported("METAR ZZTW 120750Z 25010KT 9999 SCT030 04/01 Q1010");
    const departure: PlannedField = { code: "ZZTW", runway: "24", metar };
    const all = verdictsOf(flightWith({ departure }), { book });
    expect(all.filter(({ id }) => id === "runway:departure:climb")).toEqual([]);
    const surface = one(all, "runway:departure:surface");
    expect(surface.status === "open" ? surface.missing : []).toEqual(["how the surface of ZZTW 24 is"]);
  });

  it("leaves the wind open for the runway, and judges the sky as reported", () => {
    const all = verdictsOf(flightWith({ destination: { ...nowhere, condition: "dry" } }));
    expect(line(one(all, "runway:destination:runway"))).toBe(
      "open: Not known: which runway of ZZQN (not chosen)",
    );
    expect(all.filter(({ id }) => id === "wind:destination:crosswind")).toEqual([]);
    expect(one(all, "weather:destination:visibility").status).toBe("clear");
  });

  it("asks of a freezing surface how it is, where wet would be ice", () => {
    const frozen = {
      ...nowhere,
      runway: "29",
      metar: reported("METAR ZZQN 120750Z 26016KT 9999 SCT020 M01/M09 Q1008"),
    };
    const of = (destination: PlannedField) => verdictsOf(flightWith({ destination }));
    expect(one(of({ ...frozen, condition: "dry" }), "ice:destination:icing").status).toBe("clear");
    const unsaid = of(frozen);
    expect(unsaid.filter(({ id }) => id === "ice:destination:icing")).toEqual([]);
    expect(one(unsaid, "runway:destination:surface").status).toBe("open");
  });
});

describe("the working of a distance", () => {
  const lines = new Map(
    one(landing("28022G34KT").all, "runway:destination:landing").working.lines.map(({ label, value }) => [
      label,
      plain(value),
    ]),
  );

  it("states the share of the headwind that counts", () => {
    // 16 cos 30° = 13.856 kt, of which half is 6.928
    expect(lines.get("Wind along the runway")).toBe("headwind 13.8 kt");
    expect(lines.get("Wind that is counted")).toBe("50 % of it, headwind 6.9 kt");
    const { formula } = one(landing("28022G34KT").all, "runway:destination:landing").working;
    expect(plain(formula?.text)).toBe("credit × headwind, or charge × tailwind: 0.5 × 13.8 kt");
  });

  it("can be done again by hand, step by step", () => {
    const chain = [...lines.values()].flatMap((value) => {
      const found = /^([\d,.]+) m × ([\d.]+) = ([\d,.]+) m$/.exec(value);
      return found === null ? [] : [found.slice(1).map((figure) => Number(figure.replace(",", "")))];
    });
    // wet, and the pilot's own
    expect(chain).toHaveLength(2);
    for (const [from = 0, factor = 0, to = 0] of chain)
      expect(Math.abs(from * factor - to)).toBeLessThan(0.25);
    expect(chain[1]?.[0]).toBe(chain[0]?.[2]);
    expect(lines.get("over 50 ft against LDA")).toMatch(
      new RegExp(`^${chain[1]?.[2]?.toFixed(1)} m, so ${Math.ceil(chain[1]?.[2] ?? 0)} of 870 m$`),
    );
  });
});
