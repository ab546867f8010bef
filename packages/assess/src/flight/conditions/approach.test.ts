import type { FlightPlan, PlannedApproach, PlannedField, Status } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { fieldFigures } from "./field-figures.ts";
import { at, flightWith, line, one, QUERN, reported, TARN, turboprop, verdictsOf } from "./testing/island.ts";

const APPROACH: PlannedApproach = {
  name: "RNP 15",
  kind: "non-precision",
  minimum: { value: 460, unit: "ft" },
  visibility: { value: 1800, unit: "m" },
};

const PEAK = (weather: string, approach: PlannedApproach | undefined = APPROACH): PlannedField => ({
  code: "ZZPK",
  runway: "15",
  condition: "dry",
  metar: reported(`METAR ZZPK 120750Z 15008KT ${weather} 05/03 Q1008`),
  ...(approach === undefined ? {} : { approach }),
});

const to = (destination: PlannedField, more: Partial<FlightPlan> = {}) =>
  verdictsOf(flightWith({ flightRules: "IFR", own: {}, destination, ...more }));

describe("the minima of the approach that is planned", () => {
  it("are enough on the edge, and stop below it", () => {
    // BKN005 is 500 ft, of 460; OVC004 is 400
    expect(line(one(to(PEAK("3000 BKN005")), "weather:destination:ceiling"))).toBe(
      "clear: Ceiling 500 ft, the approach asks for 460 ft (40 ft)",
    );
    const on = { ...APPROACH, minimum: { value: 500, unit: "ft" } } as const;
    expect(one(to(PEAK("3000 BKN005", on)), "weather:destination:ceiling").status).toBe("clear");
    expect(line(one(to(PEAK("3000 OVC004")), "weather:destination:ceiling"))).toBe(
      "stop: Ceiling 400 ft, the approach asks for 460 ft (60 ft short)",
    );
    expect(line(one(to(PEAK("1500 BKN005")), "weather:destination:visibility"))).toBe(
      "stop: Visibility 1,500 m, the approach asks for 1,800 m (300 m short)",
    );
  });

  it("with an alternate are a caution: NCO.OP.160(b) asks for one of the two", () => {
    const verdict = one(to(PEAK("3000 OVC004"), { alternate: TARN }), "weather:destination:ceiling");
    expect(verdict.status).toBe("caution");
    expect(verdict.status === "caution" ? verdict.because : []).toEqual([
      expect.stringContaining("It may end at the alternate, ZZTW"),
    ]);
  });

  it("never take the place of the pilot's own, where those are higher", () => {
    const own = { ceiling: { value: 800, unit: "ft" } } as const;
    expect(line(one(to(PEAK("3000 BKN005"), { own, alternate: TARN }), "weather:destination:ceiling"))).toBe(
      "stop: Ceiling 500 ft, you asked for 800 ft (300 ft short)",
    );
  });

  it("not said leave ceiling and visibility open", () => {
    const { approach: _, ...without } = PEAK("9999 BKN022");
    const all = to(without);
    expect(line(one(all, "weather:destination:ceiling"))).toContain("the approach that is planned at ZZPK");
    expect(one(all, "weather:destination:visibility").status).toBe("open");
  });

  it.each([
    [
      "minimum",
      { value: 60, unit: "ft" },
      "minimum of the approach, above the field: expected 200 ft to 5000 ft, received 60 ft",
    ],
    [
      "visibility",
      { value: 1, unit: "m" },
      "visibility of the approach: expected 300 m to 20000 m, received 1 m",
    ],
    [
      "minimum",
      { value: 460, unit: "kt" },
      "minimum of the approach, above the field: expected a length, received 460 kt, a speed",
    ],
  ] as const)("that cannot be are told at their place, and clear nothing: %s", (part, read, says) => {
    const destination = PEAK("9999 BKN022", { ...APPROACH, [part]: read });
    const figures = fieldFigures(
      turboprop,
      flightWith({ flightRules: "IFR", destination }),
      "destination",
      at("08:05"),
    );
    const fault = figures?.faults.find(({ where }) => where.kind === "approach");
    expect([fault?.where.part, fault?.says.replaceAll("\u00A0", " ")]).toEqual([
      part,
      expect.stringContaining(says.slice(0, 40)),
    ]);
    const id = part === "minimum" ? "ceiling" : "visibility";
    expect(one(to(destination), `weather:destination:${id}`).status).not.toBe("clear");
  });

  it("settle for the European rules whether an alternate is needed and can be named", () => {
    // NCO.OP.140: 1,000 ft above the minimum and 5 km; 460 + 1000 = 1460 ft. NCO.OP.143: 460 + 400 = 860 ft and 3 km
    const eu = { rulePack: "eu-part-nco" } as const;
    const high = one(to(PEAK("9999 BKN022"), eu), "weather:alternate:needed");
    expect(line(high)).toContain("clear: No alternate is needed");
    const low = one(to(PEAK("9999 BKN014"), eu), "weather:alternate:needed");
    expect(low.status).toBe("stop");
    const alternate = (weather: string) =>
      one(
        to(PEAK("9999 BKN014"), {
          ...eu,
          alternate: PEAK(weather),
          route: {
            distance: { value: 150, unit: "NM" },
            time: { value: 38, unit: "min" },
            level: { value: 6000, unit: "ft" },
            alternateTime: { value: 20, unit: "min" },
          },
        }),
        "weather:alternate:usable",
      ).status;
    expect(alternate("9999 BKN022 ")).toBe("clear");
    expect(alternate("9999 BKN008")).toBe("stop");
  });
});

describe("the class of the airspace at a field", () => {
  const seen = (weather: string, more: Partial<PlannedField> = {}, plan: Partial<FlightPlan> = {}) =>
    verdictsOf(
      flightWith({
        own: {},
        ...plan,
        destination: {
          ...QUERN,
          metar: reported(`METAR ZZQN 120750Z 24014KT ${weather} 05/03 Q1008`),
          ...more,
        },
      }),
    );
  const status = (...given: Parameters<typeof seen>): readonly Status[] => {
    const all = seen(...given);
    return [
      one(all, "weather:destination:ceiling").status,
      one(all, "weather:destination:visibility").status,
    ];
  };

  it("says how much is asked: 14 CFR 91.155", () => {
    // class G by day: 1 statute mile, and no ceiling; class D: 1,000 ft and 3 statute miles, (c) and (d)
    expect(status("2000 BKN008")).toEqual(["clear", "clear"]);
    expect(status("1500 BKN008")).toEqual(["clear", "stop"]);
    expect(status("2000 BKN008", { airspace: "D" })).toEqual(["stop", "stop"]);
    expect(status("5000 BKN010", { airspace: "D" })).toEqual(["clear", "clear"]);
  });

  it("says how much is asked: SERA.5001, SERA.5005", () => {
    const eu = { rulePack: "eu-part-nco" } as const;
    // outside a control zone by day 5 km; in one 1,500 ft and 5 km
    expect(status("5000 BKN008", {}, eu)).toEqual(["clear", "clear"]);
    expect(status("4000 BKN008", {}, eu)).toEqual(["clear", "stop"]);
    expect(status("6000 BKN014", { airspace: "D" }, eu)).toEqual(["stop", "clear"]);
  });

  it("not known stops only what every class forbids, and leaves open what some forbid", () => {
    const fields = turboprop.fields?.map(({ airspace: _, ...field }) => field);
    const book = { ...turboprop, ...(fields === undefined ? {} : { fields }) };
    const metar = reported("METAR ZZQN 120750Z 24014KT 2000 BKN008 05/03 Q1008");
    const all = verdictsOf(flightWith({ own: {}, destination: { ...QUERN, metar } }), { book });
    expect(one(all, "weather:destination:ceiling").status).toBe("open");
    expect(one(all, "weather:destination:visibility").status).toBe("open");
  });

  it("in which nobody flies by sight clears nothing", () => {
    expect(status("9999 BKN022", { airspace: "A" })).toEqual(["open", "open"]);
  });
});
