import { fromSI, toSI } from "@witnessmark/engine";
import type { FlightPlan, PlannedField } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { fieldFigures } from "./field-figures.ts";
import { hottestThatFits } from "./hottest.ts";
import { at, flightWith, MASSES, QUERN, TARN, turboprop } from "./testing/island.ts";

const hottest = (plan: Partial<FlightPlan>, role: "departure" | "destination", mass_kg = 2500) => {
  const flight = flightWith(plan);
  const masses = { ...MASSES, takeOff_kg: mass_kg, landing_kg: mass_kg };
  const figures = fieldFigures(turboprop, flight, role, at("08:05"), { masses });
  const answer = figures?.distance.value;
  if (figures === undefined || answer === undefined) throw new Error("expected a distance");
  return hottestThatFits(turboprop, figures, answer, flight.plan?.own);
};
const typedAt = (field: PlannedField, oat_degC: number): PlannedField => ({
  ...field,
  typed: { observedAt: "2026-11-12T08:00:00Z", oat: { value: oat_degC, unit: "degC" } },
});

describe("the temperature at which a distance is gone", () => {
  const full = { departure: TARN, own: { takeOffFactor_1: 1.32 } } as const;

  it("is where it is: a tenth of a degree below it fits, a tenth above it does not", () => {
    const found = hottest(full, "departure", 2700);
    if (found === undefined) throw new Error("expected a temperature");
    expect(found.isEndOfTable).toBe(false);
    const left_m = (oat_K: number): number | undefined => {
      const departure = typedAt(TARN, fromSI(oat_K, "degC"));
      const figures = fieldFigures(turboprop, flightWith({ ...full, departure }), "departure", at("08:05"), {
        masses: { takeOff_kg: 2700 },
      });
      return figures?.distance.value?.nearest.left_m;
    };
    expect(left_m(found.oat_K)).toBeGreaterThanOrEqual(0);
    expect(left_m(found.oat_K + 0.15)).toBeLessThan(0);
  });

  it("is the end of the table where it still fits there: 40 °C in this book", () => {
    const found = hottest({ destination: QUERN, own: {} }, "destination");
    expect(found?.isEndOfTable).toBe(true);
    expect(found?.oat_K).toBeCloseTo(toSI(40, "degC"), 0);
    expect(found?.oat_K).toBeLessThanOrEqual(toSI(40, "degC"));
  });

  it("is none where it does not fit as it is", () => {
    expect(hottest({ departure: TARN, own: { takeOffFactor_1: 3 } }, "departure")).toBeUndefined();
  });
});
