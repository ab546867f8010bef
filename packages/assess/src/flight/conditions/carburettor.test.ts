import type { Book } from "@witnessmark/book";
import { describe, expect, it } from "vitest";
import { flightWith, line, reported, TARN, turboprop, verdictsOf } from "./testing/island.ts";

/** The demo's turboprop with a piston engine in it: its fields and tables are those of the reports. */
const piston = (carburettor?: boolean): Book => ({
  ...turboprop,
  aircraft: {
    ...turboprop.aircraft,
    engine: "piston",
    ...(carburettor === undefined ? {} : { carburettor }),
  },
});
const found = (air: string, book: Book) =>
  verdictsOf(
    flightWith({
      departure: { ...TARN, metar: reported(`METAR ZZTW 120750Z 24008KT 9999 SCT030 ${air} Q1010`) },
    }),
    { book },
  ).find(({ id }) => id === "ice:departure:carburettor");

// US Department of the Interior, SA 11-01: severe from 50 to 70 °F (10 to 21 °C) above 60 % humidity; rare below 25 %
describe("ice in the carburettor", () => {
  it("is a caution where it is likely to be severe, and names its rule", () => {
    const verdict = found("15/12", piston(true));
    expect(verdict?.status).toBe("caution");
    expect(verdict === undefined ? "" : line(verdict)).toMatch(
      /Severe ice in the carburettor is likely, humidity 8\d/,
    );
    expect(verdict?.sources.map(({ locator }) => locator).join()).toContain("19 November 2010");
  });

  it("is told where it is possible or rare", () => {
    expect(found("04/01", piston(true))).toMatchObject({
      status: "clear",
      says: expect.stringContaining("is possible"),
    });
    expect(found("28/02", piston(true))?.says).toContain("is rare");
  });

  it("is open without the dew point, and in air hotter than the rule speaks of", () => {
    expect(found("15///", piston(true))?.status).toBe("open");
    expect(found("40/25", piston(true))?.status).toBe("open");
  });

  it("is asked of a piston engine of which the book does not say that it has none, and of no other", () => {
    expect(found("15/12", piston())?.status).toBe("caution");
    expect(found("15/12", piston(false))).toBeUndefined();
    expect(found("15/12", turboprop)).toBeUndefined();
  });
});
