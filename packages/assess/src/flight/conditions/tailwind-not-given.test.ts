import type { Book } from "@witnessmark/book";
import type { PlannedField } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { plain } from "../../testing/plain.ts";
import { flightWith, one, turboprop, verdictsOf } from "./testing/island.ts";

/** ZZQN 29 heads 290° true. */
const RUNWAY_deg = 290;

const destination = (from_deg: number, speed_kt: number): PlannedField => ({
  code: "ZZQN",
  runway: "29",
  condition: "dry",
  typed: {
    observedAt: "2026-11-12T08:00:00Z",
    windFrom: { value: from_deg, unit: "deg" },
    windSpeed: { value: speed_kt, unit: "kt" },
    oat: { value: 5, unit: "degC" },
    dewPoint: { value: 2, unit: "degC" },
    qnh: { value: 1013, unit: "hPa" },
    visibility: { value: 10, unit: "km" },
    ceiling: { value: 2200, unit: "ft" },
  },
});

describe("a book that says that its manual gives no limit for the tailwind", () => {
  const { performance } = turboprop;
  if (performance === undefined) throw new Error("expected a book with performance");
  const { tailwindMax_mPerS: _, ...others } = performance;
  const without: Book = { ...turboprop, performance: others };
  const told = (from_deg: number, speed_kt: number) =>
    verdictsOf(flightWith({ destination: destination(from_deg, speed_kt) }), { book: without });

  it.each([1, 4, 30])("warns of %i kt from behind, whatever it is, and says why", (speed_kt) => {
    const verdict = one(told(RUNWAY_deg - 180, speed_kt), "wind:destination:tailwind");
    expect(verdict.status).toBe("caution");
    expect(plain(verdict.says)).toBe(`${speed_kt} kt, and the manual gives no limit`);
    expect(verdict.working.lines.map(({ label, value }) => `${label}: ${plain(value)}`)).toContain(
      "At most: none given by the manual; it counts in the distances",
    );
  });

  it("says nothing where there is none", () => {
    expect(told(RUNWAY_deg, 10).some(({ id }) => id === "wind:destination:tailwind")).toBe(false);
  });
});
