import type { FieldFigures } from "@witnessmark/assess";
import { toSI } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import type { ConditionsUnits } from "./conditions-units.ts";
import { performanceCells } from "./performance-cells.ts";

const UNITS: ConditionsUnits = {
  speed: "kt",
  airspeed: "kt",
  distance: "m",
  height: "ft",
  temperature: "degC",
  pressure: "hPa",
  visibility: "m",
  gradient: "ftPerNM",
  climb: "ftPerMin",
};
const known = <T>(value: T) => ({ value, from: [], missing: [] });
const kt = (value: number) => toSI(value, "kt");

const climb = known({
  title: "Climb",
  gradientInAir_1: 0.1,
  calibrated_mPerS: kt(100),
  trueAirspeed_mPerS: kt(101),
  counted_mPerS: 0,
  groundSpeed_mPerS: kt(101),
  rate_mPerS: toSI(1027, "ftPerMin"),
  gradient_1: toSI(607.6, "ftPerNM"),
  status: "clear" as const,
});
const speeds = known({
  mass_kg: 2500,
  flaps: "35°",
  stall_mPerS: kt(58.2),
  stallTitle: "Stall speed, landing flap",
  approach: { factor_1: 1.3, steady_mPerS: kt(75.66), forGust_mPerS: kt(4) },
  status: "clear" as const,
});
/** The cells ask for these parts of the figures, and for nothing else. */
const given = (parts: Partial<FieldFigures>) => parts as FieldFigures;
const textOf = (parts: Partial<FieldFigures>, units = UNITS) =>
  performanceCells(given(parts), units).map(({ name, text }) => `${name}: ${text.replaceAll("\u00A0", " ")}`);

describe("climb and speeds in cells", () => {
  it("a climb is rounded down and a speed up, in the units that are chosen", () => {
    expect(textOf({ climb })).toEqual(["Climb, over the ground: 607 ft/NM", "Rate of climb: 1,020 ft/min"]);
    expect(textOf({ climb }, { ...UNITS, gradient: "percent" })[0]).toBe("Climb, over the ground: 9.9 %");
    expect(textOf({ speeds })).toEqual([
      "Stall, flaps 35°: 59 kt",
      "Approach: 76 kt",
      "Approach in the gust: 80 kt",
    ]);
  });

  it("what a book has no tables for has no cell, and what is missing is not known", () => {
    expect(textOf({})).toEqual([]);
    const missing = [{ what: "a figure of “Climb”" }];
    const cells = performanceCells(given({ climb: { from: [], missing } }), UNITS);
    expect(cells.map(({ text, isKnown }) => [text, isKnown])).toEqual([
      ["not known", false],
      ["not known", false],
    ]);
    expect(cells[0]?.missing).toEqual(["a figure of “Climb”"]);
  });
});
