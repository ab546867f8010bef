import { measure } from "@witnessmark/engine";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plain } from "../testing/plain.ts";
import { book, check, gauge, reading, tyreReading, voltsFrom } from "../testing/small-book.ts";
import { checkReading } from "./check-reading.ts";

const tyre = check("tyre", "tyre", { reading: tyreReading });
const volts = check("volts", "battery", { reading: voltsFrom(24) });
const theBook = book({ checks: [tyre, volts] });

const type = (text: string): string => {
  const checked = checkReading(tyre, theBook, text, "bar");
  return checked.ok ? `${checked.read.value} ${checked.read.unit}` : plain(checked.message);
};

describe("what is typed for a reading", () => {
  it.each([
    ["5.2", "5.2 bar"],
    ["5,2", "5.2 bar"],
    ["  5.20 ", "5.2 bar"],
    ["+5", "5 bar"],
    ["0", "0 bar"],
    ["10", "10 bar"],
    ["5.2 bar", "5.2 bar"],
    ["75 psi", "75 psi"],
    ["75psi", "75 psi"],
  ])("%j is read as %s", (text, read) => {
    expect(type(text)).toBe(read);
  });

  it.each([
    ["", "Type what the gauge shows, in bar"],
    ["   ", "Type what the gauge shows, in bar"],
    ["about five", '"about five" is not a number; type what the gauge shows, such as 5.00 bar'],
    ["bar", '"bar" is not a number; type what the gauge shows, such as 5.00 bar'],
    ["NaN", '"NaN" is not a number; type what the gauge shows, such as 5.00 bar'],
    ["Infinity", '"Infinity" is not a number; type what the gauge shows, such as 5.00 bar'],
    [".", '"." is not a number; type what the gauge shows, such as 5.00 bar'],
    ["5.2.1", '"5.2.1" has more than one decimal mark; type it such as 5.00 bar'],
    ["1,234.5", '"1,234.5" has more than one decimal mark; type it such as 5.00 bar'],
    ["5e3", '"e3" is no unit of a pressure; type a number, in bar'],
    ["5.2 volts", '"volts" is no unit of a pressure; type a number, in bar'],
    ["5.2 V", "V is a unit of voltage; this is a pressure, type it, in bar"],
    ["52", "The gauge shows 0 to 10 bar; was that 5.2 bar?"],
    ["520", "The gauge shows 0 to 10 bar; was that 5.2 bar?"],
    ["5200", "The gauge shows 0 to 10 bar; was that 5.2 bar?"],
    ["72", "The gauge shows 0 to 10 bar; was that 72 psi?"],
    ["-5.2", "The gauge shows 0 to 10 bar; was that 5.2 bar?"],
    ["−5.2", "The gauge shows 0 to 10 bar; was that 5.2 bar?"],
    ["10.01", "The gauge shows 0 to 10 bar"],
    ["99999", "The gauge shows 0 to 10 bar"],
    ["-0.01", "The gauge shows 0 to 10 bar"],
  ])("%j is refused: %s", (text, message) => {
    expect(type(text)).toBe(message);
  });

  it("is refused in a unit of another kind that was chosen", () => {
    const checked = checkReading(tyre, theBook, "5.2", "V");
    expect(checked.ok ? "" : checked.message).toBe("V is a unit of voltage; this is a pressure");
  });

  it("may be below zero where the gauge goes there", () => {
    const thermometer = gauge("oat", "degC", 1, 1, [-60, 60]);
    const air = check("air", "oil", {
      reading: reading(thermometer, "air temperature", { by: "fixed", low: measure(-50, "degC") }),
    });
    const checked = checkReading(air, book({ checks: [air], gauges: [thermometer] }), "−12", "degC");
    expect(checked).toEqual({ ok: true, read: { value: -12, unit: "degC" } });
  });

  it("has no unit in the message where the figure is plain", () => {
    const counter = gauge("count", "count", 0, 1, [0, 20]);
    const wicks = check("wicks", "oil", {
      reading: reading(counter, "wicks", { by: "fixed", low: measure(5.5, "count") }),
    });
    const checked = checkReading(wicks, book({ checks: [wicks], gauges: [counter] }), "", "count");
    expect(checked.ok ? "" : checked.message).toBe("Type what the gauge shows");
  });

  it("is never kept when the gauge cannot show it, whatever is typed", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.double().map(String),
          fc.integer().map((n) => `${n} psi`),
        ),
        (text) => {
          const checked = checkReading(tyre, theBook, text, "bar");
          if (!checked.ok) {
            expect(checked.message.length).toBeGreaterThan(10);
            return;
          }
          const bar =
            checked.read.unit === "psi" ? (checked.read.value * 6894.757) / 1e5 : checked.read.value;
          if (checked.read.unit === "bar" || checked.read.unit === "psi") {
            expect(bar).toBeGreaterThanOrEqual(0);
            expect(bar).toBeLessThanOrEqual(10.000001);
          }
          expect(Object.is(checked.read.value, -0)).toBe(false);
        },
      ),
    );
  });

  it("says so where the check asks for none", () => {
    expect(checkReading(check("look", "oil"), theBook, "5", "bar")).toEqual({
      ok: false,
      message: "This check asks for no reading",
    });
  });
});

describe("a gauge of which the book does not say what it shows", () => {
  const { range: _, ...unsaid } = gauge("stick", "psi", 1, 1, [0, 60]);
  const tyres = check("tyre", "tyre", {
    reading: reading(
      unsaid,
      "tyre pressure",
      { by: "fixed", low: measure(22, "psi") },
      {
        scale: [measure(15, "psi"), measure(35, "psi")],
      },
    ),
  });
  const itsBook = book({ checks: [tyres], gauges: [unsaid] });
  const read = (text: string) => {
    const checked = checkReading(tyres, itsBook, text, "psi");
    return checked.ok ? checked.read.value : plain(checked.message);
  };

  it("takes what is on the rule, near it, or nothing at all: a flat tyre is no slip", () => {
    expect(["24", "0", "8", "54"].map(read)).toEqual([24, 0, 8, 54]);
  });

  it("refuses a slip, which a limit on one side only would pass", () => {
    expect(read("240")).toBe("It is likely 0 to 55 psi; was that 24 psi?");
    expect(read("-24")).toBe("It is likely 0 to 55 psi; was that 24 psi?");
  });
});
