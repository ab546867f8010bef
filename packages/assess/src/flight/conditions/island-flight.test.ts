import { fromSI } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { fieldFigures } from "./field-figures.ts";
import {
  at,
  flightWith,
  line,
  MASSES,
  one,
  reported,
  TARN,
  turboprop,
  verdictsOf,
} from "./testing/island.ts";

// Worked by hand from the printed cells of the demo turboprop's book (invented, books/zz-skr.yaml) and from:
//  - wind by trigonometry, FAA-H-8083-25C chapter 11; half of a headwind by CAT.POL.A.330(c)(2)
//  - standard altitude of a pressure, ICAO Doc 7488: 44,330.77 m × (1 − (p / 1013.25)^0.190263)
//  - density altitude from the same atmosphere: 44,330.77 m × (1 − (rho / 1.225)^0.234969)

const between = (low: number, high: number, share: number): number => low + (high - low) * share;
const pressureAltitude_ft = (elevation_ft: number, qnh_hPa: number): number =>
  elevation_ft + (44_330.77 / 0.3048) * (1 - (qnh_hPa / 1013.25) ** 0.190263);

const destination = fieldFigures(turboprop, flightWith(), "destination", at("08:05"), { masses: MASSES });
const departure = fieldFigures(turboprop, flightWith(), "departure", at("08:05"), { masses: MASSES });
const all = verdictsOf(flightWith());

describe("the island flight's landing at ZZQN, runway 29 (290° true), wind 240° 14 G 22 kt", () => {
  it("has the crosswind of the gust and the headwind of the steady wind", () => {
    // 50° off: 22 sin 50° = 16.853 kt; 14 cos 50° = 8.999 kt
    expect(fromSI(destination?.wind.value?.crosswind_mPerS ?? Number.NaN, "kt")).toBeCloseTo(16.853, 3);
    expect(fromSI(destination?.wind.value?.headwind_mPerS ?? Number.NaN, "kt")).toBeCloseTo(8.999, 3);
    expect(destination?.wind.value?.crosswindFrom).toBe("left");
  });

  it("leaves 3 kt to the 20 kt demonstrated, full at a gust of 26 kt", () => {
    // 20 − 16.853 = 3.147, down to 3; 20 / sin 50° = 26.108, down to 26
    expect(line(one(all, "wind:destination:crosswind"))).toBe(
      "caution: Gust 17 kt from the left, of 20 kt demonstrated. Full at a gust of 26 kt (3 kt)",
    );
  });

  it("is at a pressure altitude of 168 ft", () => {
    const expected_ft = pressureAltitude_ft(24, 1008);
    expect(expected_ft).toBeCloseTo(168.1, 0);
    const computed_m = destination?.air.value?.pressureAltitude_m.value ?? Number.NaN;
    expect(Math.abs(fromSI(computed_m, "ft") - expected_ft)).toBeLessThan(0.5);
  });

  // “Landing over 50 ft”, 2500 kg, at 0 and 10 kt of headwind; 4.4995 kt are counted, half of 8.999
  const counted = 8.999 / 2 / 10;
  const sea = between(between(625, 490, counted), between(655, 515, counted), 5 / 20);
  const high = between(between(655, 515, counted), between(680, 545, counted), 5 / 20);
  const table_m = between(sea, high, pressureAltitude_ft(24, 1008) / 2000);

  it("reads 573.5 m from the cells around", () => {
    expect(table_m).toBeCloseTo(573.5, 1);
    expect(Math.abs((destination?.distance.value?.start.total_m ?? Number.NaN) - table_m)).toBeLessThan(0.05);
  });

  it("multiplies by 1.15 for wet (the book) and 1.15 (the pilot's own), each kept as a step", () => {
    const steps = destination?.distance.value?.steps ?? [];
    expect(steps.map(({ factor }) => [factor.id, factor.factor_1])).toEqual([
      ["wet-landing", 1.15],
      ["own", 1.15],
    ]);
    expect(Math.abs((steps[0]?.after.total_m ?? 0) - table_m * 1.15)).toBeLessThan(0.1);
    expect(Math.abs((steps[1]?.after.total_m ?? 0) - table_m * 1.15 * 1.15)).toBeLessThan(0.1);
  });

  it("needs 759 of 870 m, 111 m left: up and down to the safe side", () => {
    expect(Math.ceil(table_m * 1.15 * 1.15)).toBe(759);
    expect(line(one(all, "runway:destination:landing"))).toBe(
      "clear: 759 of 870 m, wet, 5 °C, both factors in (111 m)",
    );
  });

  it("has 1,200 ft of cloud left over the pilot's own 1,000 ft, and counts 75 min from 07:50", () => {
    expect(line(one(all, "weather:destination:ceiling"))).toBe(
      "clear: Ceiling 2,200 ft, you asked for 1,000 ft (1,200 ft)",
    );
    const report = one(all, "weather:destination:report");
    expect(line(report)).toBe("clear: Observed 07:50, 15 min ago. Counts until 09:05");
    expect(report.holdsUntil_ms).toBe(at("09:05"));
  });

  it("freezes from 2,524 ft by the rule of 2 °C in 1,000 ft: 5 °C is 2,500 ft above the field's 24", () => {
    expect(fromSI(destination?.air.value?.freezingLevel_m.value ?? Number.NaN, "ft")).toBeCloseTo(2524, 6);
  });

  it("has the density altitude of its pressure and temperature", () => {
    const p_Pa = 101_325 * (1 - (pressureAltitude_ft(24, 1008) * 0.3048) / 44_330.77) ** 5.25588;
    const rho = p_Pa / (287.053 * 278.15);
    const expected_ft = (44_330.77 / 0.3048) * (1 - (rho / 1.225) ** 0.234969);
    const computed_m = destination?.air.value?.densityAltitude_m.value ?? Number.NaN;
    expect(Math.abs(fromSI(computed_m, "ft") - expected_ft)).toBeLessThan(2);
    // the rule of thumb, 120 ft for each degree off standard: 168 + 120 (5 − 14.7) = −996 ft
    expect(Math.abs(expected_ft + 996)).toBeLessThan(10);
  });

  it("calls −RA at 5 °C icing conditions, a caution with ice protection for known icing", () => {
    expect(line(one(all, "ice:destination:icing"))).toBe("caution: Icing conditions: -RA at 5 °C");
  });
});

describe("the island flight's take-off at ZZTW, runway 24 (237° true), wind 250° 8 kt", () => {
  // 8 cos 13° = 7.7950 kt, of which 3.8975 count; “Take-off over 50 ft”, 2500 kg, 4 °C, 38 ft, QNH 1010
  const counted = 7.795 / 2 / 10;
  const sea = between(between(560, 440, counted), between(660, 525, counted), 4 / 20);
  const high = between(between(665, 530, counted), between(795, 635, counted), 4 / 20);
  const table_m = between(sea, high, pressureAltitude_ft(38, 1010) / 2000);

  it("needs what the cells give: no factor for dry, paved and downhill", () => {
    expect(Math.abs((departure?.distance.value?.start.total_m ?? Number.NaN) - table_m)).toBeLessThan(0.05);
    expect(departure?.distance.value?.steps).toEqual([]);
    const { exact_m, ...nearest } = departure?.distance.value?.nearest ?? { exact_m: Number.NaN };
    expect(Math.abs(exact_m - table_m)).toBeLessThan(0.05);
    expect(nearest).toEqual({
      name: "over 50 ft",
      needed_m: Math.ceil(table_m),
      available_m: 960,
      availableName: "TODA",
      left_m: 960 - Math.ceil(table_m),
    });
  });

  it("takes the next worse cell when asked: 2500 kg, 2000 ft, 20 °C, no wind is 795 m", () => {
    const worse = fieldFigures(turboprop, flightWith(), "departure", at("08:05"), {
      masses: MASSES,
      mode: "next-worse",
    });
    expect(worse?.distance.value?.start).toEqual({ groundRoll_m: 405, total_m: 795 });
  });

  it("adds what wet does to the ground roll to the whole: 5 % of the roll", () => {
    const wet = fieldFigures(
      turboprop,
      flightWith({ departure: { ...TARN, condition: "wet" } }),
      "departure",
      at("08:05"),
      { masses: MASSES },
    );
    const start = wet?.distance.value?.start;
    const added_m = 0.05 * (start?.groundRoll_m ?? Number.NaN);
    expect(wet?.distance.value?.steps[0]?.after.total_m).toBeCloseTo((start?.total_m ?? 0) + added_m, 9);
  });

  it("adds 5 % for each 1 % uphill: 0.2 % on runway 06 is 1 %", () => {
    const up = fieldFigures(
      turboprop,
      flightWith({
        departure: {
          code: "ZZTW",
          runway: "06",
          condition: "dry",
          typed: {
            observedAt: "2026-11-12T08:00:00Z",
            windFrom: { value: 57, unit: "deg" },
            windSpeed: { value: 0, unit: "kt" },
            oat: { value: 0, unit: "degC" },
            qnh: { value: 1014.6, unit: "hPa" },
          },
        },
      }),
      "departure",
      at("08:05"),
      { masses: MASSES },
    );
    const [step] = up?.distance.value?.steps ?? [];
    expect(step?.factor.id).toBe("slope");
    expect(step?.factor.factor_1).toBeCloseTo(1.01, 9);
  });
});

describe("masses", () => {
  it("that are not known leave the distances open, by name", () => {
    const open = verdictsOf(flightWith(), { masses: {} });
    expect(line(one(open, "runway:departure:take-off"))).toBe(
      "open: Not known: the take-off mass (not known)",
    );
    expect(line(one(open, "runway:destination:landing"))).toBe(
      "open: Not known: the landing mass (not known)",
    );
  });

  it("below the table take its lightest column; above it there is no figure, and its end is named", () => {
    const light = fieldFigures(turboprop, flightWith(), "destination", at("08:05"), {
      masses: { landing_kg: 1900 },
    });
    expect(light?.distance.value?.read.total.answer.edges).toEqual([
      { axis: "mass_kg", asked: 1900, used: 2100 },
    ]);
    const heavy = one(
      verdictsOf(flightWith(), { masses: { landing_kg: 2800 } }),
      "runway:destination:landing",
    );
    expect(heavy.status).toBe("open");
    expect(line(heavy)).toContain("mass 2800 kg is beyond the table; the nearest it has is mass 2740 kg");
  });
});

describe("daylight", () => {
  const light = (offBlocks: string, role: "departure" | "destination") =>
    one(
      verdictsOf(flightWith({}, offBlocks)),
      role === "departure" ? "light:departure" : "light:destination",
    );

  it("is counted from the landing to sunset, and ends 48 min before it off blocks", () => {
    const verdict = light("09:10", "destination");
    expect(line(verdict)).toMatch(/^clear: Sunset 16:\d\d, no lights at ZZQN \(6 h \d\d\)$/);
    const sunset_ms = destination?.daylight.value?.sunset_ms ?? Number.NaN;
    // 10 min of taxi and 38 of flight
    expect(verdict.holdsUntil_ms).toBe(sunset_ms - 48 * 60_000);
  });

  it("without lights makes twilight a caution and night a stop; with lights neither", () => {
    // civil twilight lasts some 38 min at 56° north in November
    expect(light("16:00", "destination").status).toBe("caution");
    expect(light("17:30", "destination").status).toBe("stop");
    expect(light("18:00", "departure").status).toBe("clear");
    const early = verdictsOf(flightWith({}, "04:00"), { now: "03:30" });
    expect(line(one(early, "light:destination"))).toMatch(
      /^stop: Sunrise 08:\d\d, landing by night at 04:48/,
    );
  });

  it("moves on with the clock when off blocks is past", () => {
    const late = verdictsOf(flightWith(), { now: "17:30" });
    expect(one(late, "light:destination").status).toBe("stop");
  });
});

describe("a flight by instrument rules", () => {
  const ifr = { flightRules: "IFR" } as const;

  it("to a field without an approach needs an alternate, and stops without one", () => {
    const verdict = one(verdictsOf(flightWith(ifr)), "weather:alternate:needed");
    expect(line(verdict)).toBe("stop: An alternate must be filed. None is named.");
  });

  it("is open at a field with an approach whose minimum nobody gave", () => {
    const verdict = one(verdictsOf(flightWith(ifr)), "weather:departure:visibility");
    expect(verdict.status).toBe("open");
  });

  it("is told what to add in cold air where an approach is flown: −10 °C, 1,000 ft: 100 ft (AIM, table 7-3-1)", () => {
    const metar = reported("METAR ZZTW 120750Z 25008KT 9999 SCT030 M10/M14 Q1010");
    const flight = flightWith({ ...ifr, departure: { ...TARN, metar } });
    expect(line(one(verdictsOf(flight), "weather:departure:cold-altimeter"))).toBe(
      "caution: Add 100 ft to 1,000 ft above the field, at −10 °C",
    );
  });
});
