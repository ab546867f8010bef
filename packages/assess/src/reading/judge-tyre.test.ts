import { measure } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { plain } from "../testing/plain.ts";
import { book, check, reading, tyreGauge, tyreReading } from "../testing/small-book.ts";
import { judge } from "./judge.ts";
import type { ReadingVerdict } from "./reading-verdict.ts";

const at4 = { value: 4, unit: "degC" } as const;
const tyre = check("tyre", "tyre", { reading: tyreReading });
const theBook = book({ checks: [tyre] });

const judgeTyre = (
  value: number,
  temperature: { value: number; unit: "degC" | "degF" } = at4,
): ReadingVerdict => judge(tyre, theBook, { read: { value, unit: "bar" }, temperature });
const lines = (verdict: ReadingVerdict): readonly string[] =>
  verdict.working.lines.map(({ label, value }) => plain(`${label}: ${value}`));

describe("a tyre on a cold morning", () => {
  // By hand from the gas law at constant volume (the tyre-care guidance's own correction): the limit (5.2 + 1.01325) × 277.15 /
  // 288.15 − 1.01325 = 4.9628 bar, and Φ((5.00 − 4.9628) / (0.05 / √3)) = Φ(1.29) = 0.90 (normal table, common practice).
  const verdict = judgeTyre(5.0);

  it("is too close to call at 5.00 bar and 4 °C", () => {
    expect(verdict.status).toBe("caution");
    expect(plain(verdict.margin?.text)).toBe("0.03 bar");
    expect(verdict.margin?.value).toBe(0.03);
  });

  it("shows its working line by line, the limit rounded up and the margin down", () => {
    expect(lines(verdict)).toEqual([
      "Book, at 15 °C: 5.20 bar",
      "Air outside, taken as: 1013 hPa",
      "Tyre temperature: 4 °C",
      "Low limit now, rounded up: 4.97 bar",
      "High limit now, rounded down: 5.21 bar",
      "Read, gauge ±0.05: 5.00 bar",
      "Chance it is inside: 90 %, needs 95",
    ]);
    expect(verdict.working.formula?.quantity).toBe("gauge-pressure-at-temperature");
  });

  it("says so in one line, and names what it rests on", () => {
    expect(plain(verdict.says)).toBe("5.00 bar, 4.97 to 5.21 at 4 °C");
    const titles = verdict.sources.map(({ title }) => title).join(" ");
    expect(titles).toContain("JCGM 106:2012");
    expect(titles).toContain("Tire Care");
    expect(verdict.sources.map(({ locator }) => locator)).toEqual([
      "7.2 to 7.4",
      "common practice",
      "10/04 and later; recommended action, row 100 to 105 %",
    ]);
  });
});

describe("a tyre by what it has lost", () => {
  // At 15 °C the service pressure is the book's 5.20 bar. Bands: Goodyear, Aircraft Tire Care and Maintenance, cold
  // service pressure action table; the row 100 to 105 % published, the others from memory.
  const at15 = { value: 15, unit: "degC" } as const;
  it.each([
    { bar: 5.46, status: "caution", says: "Too close to call" }, // 105 %, on the upper edge
    { bar: 5.33, status: "clear", says: "" }, // 102.5 %
    { bar: 5.2, status: "caution", says: "Too close to call" }, // 100 %, on the lower edge
    { bar: 5.19, status: "caution", says: "95 to under 100 %" },
    { bar: 4.94, status: "caution", says: "95 to under 100 %" }, // 95 % exactly
    { bar: 4.93, status: "stop", says: "90 to under 95 %" },
    { bar: 4.68, status: "stop", says: "90 to under 95 %" }, // 90 % exactly
    { bar: 4.67, status: "stop", says: "80 to under 90 %" },
    { bar: 4.16, status: "stop", says: "80 to under 90 %" }, // 80 % exactly
    { bar: 4.15, status: "stop", says: "Under 80 %" },
    { bar: 0, status: "stop", says: "Flat" },
    { bar: 5.47, status: "caution", says: "Over 105 %" },
    { bar: 10, status: "caution", says: "Over 105 %" }, // 192 %
  ])("$bar bar of 5.20 is $status ($says)", ({ bar, status, says }) => {
    const verdict = judgeTyre(bar, at15);
    expect(verdict.status).toBe(status);
    const because = verdict.status === "caution" || verdict.status === "stop" ? verdict.because[0] : "";
    expect(plain(because).slice(0, says.length)).toBe(says);
  });

  it("is a stop, not a caution, at more than twice its service pressure", () => {
    const small = check("tyre", "tyre", {
      reading: reading(tyreGauge, "tyre pressure", {
        by: "tyre",
        service: measure(2, "bar"),
        at: measure(15, "degC"),
      }),
    });
    expect(judge(small, theBook, { read: { value: 4.01, unit: "bar" }, temperature: at15 }).status).toBe(
      "stop",
    );
    expect(judge(small, theBook, { read: { value: 4, unit: "bar" }, temperature: at15 }).status).toBe(
      "caution",
    );
  });

  it("says what to do, and up to what, rounded up", () => {
    expect(plain(judgeTyre(4.9).says)).toBe("4.90 bar, 4.97 to 5.21 at 4 °C: pump it up to 4.97 bar");
    expect(plain(judgeTyre(5.5).says)).toContain("let it down when it is cold, never bleed a hot tyre");
    const stop = judgeTyre(4.6);
    expect(stop.status === "stop" ? plain(stop.wayOut[0]) : "").toBe(
      "Find the cause, pump it up to 4.97 bar and record it: licensed mechanic, then read again",
    );
  });

  it("tells how much of its service pressure it has, rounded down", () => {
    expect(lines(judgeTyre(4.9)).at(-1)).toBe("Of the service pressure now: 98 %"); // 4.90 / 4.9628 = 98.7 %
  });
});
