import type { Limit } from "@witnessmark/book";
import { measure, toSI } from "@witnessmark/engine";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plain } from "../testing/plain.ts";
import {
  book,
  check,
  gauge,
  oilStick,
  reading,
  tyreGauge,
  tyreReading,
  voltmeter,
  voltsFrom,
} from "../testing/small-book.ts";
import { band, judge } from "./judge.ts";
import type { ReadingVerdict } from "./reading-verdict.ts";

const at4 = { value: 4, unit: "degC" } as const;
const tyre = check("tyre", "tyre", { reading: tyreReading });
const volts = check("volts", "battery", { reading: voltsFrom(24, 29) });
const theBook = book({ checks: [tyre, volts] });

const judgeTyre = (
  value: number,
  temperature: { value: number; unit: "degC" | "degF" } = at4,
): ReadingVerdict => judge(tyre, theBook, { read: { value, unit: "bar" }, temperature });
const judgeVolts = (value: number): ReadingVerdict => judge(volts, theBook, { read: { value, unit: "V" } });
const lines = (verdict: ReadingVerdict): readonly string[] =>
  verdict.working.lines.map(({ label, value }) => plain(`${label}: ${value}`));

describe("a count", () => {
  const counter = gauge("counter", "count", 0, 1, [0, 20]);
  const vests = check("vests", "battery", {
    reading: reading(counter, "life vests", { by: "fixed", low: measure(6, "count") }),
  });
  const gauges = new Map([["counter", counter]]);
  const counted = (value: number) => judge(vests, { gauges }, { read: { value, unit: "count" } }).status;

  it("is whole by nature: six of at least six is right, five is not", () => {
    expect([4, 5, 6, 7].map((value) => counted(value))).toEqual(["stop", "stop", "clear", "clear"]);
  });

  it("says how many more than needed there are, or how many too few", () => {
    const left = (value: number) => judge(vests, { gauges }, { read: { value, unit: "count" } }).margin?.text;
    expect([4, 6, 7].map(left)).toEqual(["2 too few", "just enough", "1 more than needed"]);
  });

  it("says the same of a limit that must not be passed", () => {
    const most = check("bags", "battery", {
      reading: reading(counter, "bags", { by: "fixed", high: measure(3, "count") }),
    });
    const left = (value: number) => judge(most, { gauges }, { read: { value, unit: "count" } }).margin?.text;
    expect([2, 3, 5].map(left)).toEqual(["1 fewer than may be", "no more may be", "2 too many"]);
  });
});

describe("a fixed limit", () => {
  // u = √(0.1² / 3 + 0.1² / 12) = 0.0645 V (GUM 4.3.7, F.2.2.1); Φ(1.645) = 0.95, so clear from 24 + 0.1062 V.
  it.each([
    { volts: 24.11, status: "clear" },
    { volts: 24.1, status: "caution" },
    { volts: 24, status: "caution" },
    { volts: 23.9999999, status: "stop" },
    { volts: 29, status: "caution" },
    { volts: 29.0000001, status: "stop" },
    { volts: 28.8, status: "clear" },
  ])("of 24 to 29 V makes $volts V $status", ({ volts: value, status }) => {
    expect(judgeVolts(value).status).toBe(status);
  });

  it("turns the sign of the margin exactly at the limit", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 40, noNaN: true }), (value) => {
        const verdict = judgeVolts(value);
        const isInside = value >= 24 && value <= 29;
        expect((verdict.margin?.value ?? Number.NaN) >= 0).toBe(isInside);
        expect(verdict.status === "stop").toBe(!isInside);
      }),
    );
  });

  it("rounds a margin down when inside, and away from zero when outside", () => {
    expect(judgeVolts(24.19).margin).toMatchObject({ value: 0.1, text: "0.1\u00A0V" });
    expect(plain(judgeVolts(23.99).margin?.text)).toBe("0.1 V under");
    expect(plain(judgeVolts(29.01).margin?.text)).toBe("0.1 V over");
  });

  it("of one end only is held against that end", () => {
    const low = check("low", "battery", { reading: voltsFrom(24) });
    const high = check("high", "battery", { reading: voltsFrom(undefined, 29) });
    const of = (each: typeof low, value: number): ReadingVerdict =>
      judge(each, theBook, { read: { value, unit: "V" } });
    expect(of(low, 39).status).toBe("clear");
    expect(of(high, 1).status).toBe("clear");
    expect(plain(of(low, 26).says)).toBe("26.0 V, 24.0 or more");
    expect(plain(of(high, 26).says)).toBe("26.0 V, at most 29.0");
    expect(of(high, 30).status).toBe("stop");
    expect(lines(of(low, 26))).toContain("Limit now, rounded up: 24.0 V");
    expect(lines(of(high, 26))).toContain("Limit now, rounded down: 29.0 V");
  });

  it("without an end is no limit, and gives open", () => {
    const none = check("none", "battery", { reading: voltsFrom() });
    expect(judge(none, theBook, { read: { value: 26, unit: "V" } })).toMatchObject({
      status: "open",
      missing: ["a limit in the book"],
    });
  });

  it("is what the book says it is outside: a caution with its advice", () => {
    const mild = check("mild", "battery", {
      reading: {
        ...voltsFrom(24),
        outside: { status: "caution", advice: "Charge it before the next flight." },
      },
    });
    const verdict = judge(mild, theBook, { read: { value: 23, unit: "V" } });
    expect(verdict.status).toBe("caution");
    expect(verdict.status === "caution" ? verdict.because.map(plain) : []).toEqual([
      "1.0 V under the low limit",
      "Charge it before the next flight.",
    ]);
  });

  it("is a stop with a way out where the book says nothing milder", () => {
    const verdict = judgeVolts(23);
    expect(verdict.status === "stop" ? verdict.wayOut : []).toEqual([
      "Put it right: licensed mechanic, then read again",
    ]);
  });
});

describe("a limit that moves with temperature", () => {
  const limits: Readonly<Record<string, Limit>> = {
    tyre: tyreReading.limit,
    "gas-law": { by: "gas-law", at: measure(20, "degC"), low: measure(5, "bar"), high: measure(6, "bar") },
    cylinder: { by: "cylinder", gas: "oxygen", at: measure(20, "degC"), low: measure(5, "bar") },
    table: {
      by: "table",
      rows: [
        { at: measure(0, "degC"), low: measure(4, "bar") },
        { at: measure(20, "degC"), low: measure(5, "bar") },
      ],
    },
  };

  it.each(Object.keys(limits))("is open without its temperature, which is named: %s", (kind) => {
    const limit = limits[kind];
    if (limit === undefined) throw new Error("no such kind");
    const one = check("one", "tyre", {
      reading: reading(tyreGauge, "pressure", limit, { temperatureOf: "gas" }),
    });
    const verdict = judge(one, theBook, { read: { value: 5.5, unit: "bar" } });
    expect(verdict).toMatchObject({ status: "open", missing: ["gas temperature"] });
    expect(band(one, theBook, undefined)).toBeUndefined();
  });

  it("needs no temperature where it is fixed, and takes no notice of one", () => {
    const warm = judge(volts, theBook, { read: { value: 26, unit: "V" }, temperature: at4 });
    expect(warm).toEqual(judgeVolts(26));
  });

  it("of a gas falls with the cold as the ideal gas law has it", () => {
    // 45 psi at 25 °C is 40.0 psi at 0 °C: ideal gas, constant volume, absolute pressure (common practice)
    const one = check("one", "tyre", {
      reading: reading(tyreGauge, "pressure", {
        by: "gas-law",
        at: measure(25, "degC"),
        low: measure(45, "psi"),
      }),
    });
    const low = band(one, theBook, { value: 0, unit: "degC" })?.low ?? Number.NaN;
    expect(Math.abs(low - toSI(40, "psi"))).toBeLessThan(toSI(0.05, "psi"));
  });

  it("of a cylinder follows the real gas, not the ideal one", () => {
    // Oxygen, 1600 psi at 20 °C, is 1237 psi at −30 °C (reference equation of state, CoolProp 8.0.0); ideal says 1325.
    const bottle = gauge("bottle", "psi", 25, 5, [0, 2200]);
    const one = check("one", "tyre", {
      reading: reading(bottle, "oxygen", {
        by: "cylinder",
        gas: "oxygen",
        at: measure(20, "degC"),
        low: measure(1600, "psi"),
      }),
    });
    const low = band(one, theBook, { value: -30, unit: "degC" })?.low ?? Number.NaN;
    expect(Math.abs(low / toSI(1, "psi") - 1237)).toBeLessThan(3);
  });

  it("is open where the gas equation ends, and names the nearest temperature that it covers", () => {
    const one = check("one", "tyre", {
      reading: reading(tyreGauge, "oxygen", {
        by: "cylinder",
        gas: "oxygen",
        at: measure(20, "degC"),
        low: measure(5, "bar"),
      }),
    });
    const verdict = judge(one, theBook, {
      read: { value: 5.5, unit: "bar" },
      temperature: { value: -60, unit: "degC" },
    });
    expect(verdict.status).toBe("open");
    expect(plain(verdict.says)).toBe("No limit at −60 °C: the formula ends at −45 °C");
  });

  it("takes the temperature in any unit", () => {
    const cold = judgeTyre(5.0, { value: 39.2, unit: "degF" }); // 4 °C
    expect(cold.status).toBe("caution");
    expect(cold.margin).toEqual(judgeTyre(5.0).margin);
  });

  it("shows a temperature to a tenth, whatever a stepper made of it", () => {
    expect(plain(judgeTyre(5.2, { value: 3.9999999999, unit: "degC" }).says)).toContain("at 4.0 °C");
  });

  it("refuses a temperature that is none", () => {
    const verdict = judge(tyre, theBook, {
      read: { value: 5, unit: "bar" },
      temperature: { value: 4, unit: "bar" },
    });
    expect(verdict).toMatchObject({ status: "open", missing: ["tyre temperature"] });
    expect(judgeTyre(5, { value: Number.NaN, unit: "degC" }).status).toBe("open");
  });
});

describe("a limit from a table", () => {
  const table = (rows: Extract<Limit, { by: "table" }>["rows"]) =>
    check("oil", "oil", {
      reading: reading(oilStick, "oil", { by: "table", rows }, { temperatureOf: "oil" }),
    });
  const oil = table([
    { at: measure(20, "degC"), low: measure(5, "USqt"), high: measure(8, "USqt") },
    { at: measure(0, "degC"), low: measure(4, "USqt"), high: measure(7, "USqt") },
  ]);
  const at = (each: typeof oil, degC: number): ReadingVerdict =>
    judge(each, theBook, { read: { value: 6, unit: "USqt" }, temperature: { value: degC, unit: "degC" } });

  it("is joined by straight lines between rows, in whatever order they are written", () => {
    const half = band(oil, theBook, { value: 10, unit: "degC" });
    expect(half?.low).toBeCloseTo(toSI(4.5, "USqt"), 12);
    expect(half?.high).toBeCloseTo(toSI(7.5, "USqt"), 12);
    expect(band(oil, theBook, { value: 20, unit: "degC" })?.low).toBe(toSI(5, "USqt"));
    expect(band(oil, theBook, { value: 0, unit: "degC" })?.high).toBe(toSI(7, "USqt"));
  });

  it("is never extended: off its rows it is open, and the nearest covered temperature is named", () => {
    expect(at(oil, 20).status).toBe("clear");
    expect(at(oil, 21).status).toBe("open");
    expect(plain(at(oil, 21).says)).toBe("No limit at 21 °C: the book's table ends at 20 °C");
    expect(plain(at(oil, -1).says)).toBe("No limit at −1 °C: the book's table ends at 0 °C");
  });

  it("with an empty cell gives open beside it, and a limit on the full row", () => {
    const holed = table([
      { at: measure(0, "degC"), low: measure(4, "USqt") },
      { at: measure(20, "degC"), low: measure(5, "USqt"), high: measure(8, "USqt") },
    ]);
    expect(plain(at(holed, 10).says)).toBe("No limit at 10 °C: a cell of the book's table is empty");
    expect(at(holed, 20).status).toBe("clear");
    expect(at(holed, 0).status).toBe("clear");
  });
});

describe("what cannot be judged is open, never clear", () => {
  it("a gauge that the book has not", () => {
    const verdict = judge(volts, theBook, { read: { value: 26, unit: "V" }, gauge: "old-meter" });
    expect(verdict).toMatchObject({ status: "open", missing: ["a gauge in the book"] });
  });

  it("a unit of another kind, or a gauge of another kind", () => {
    expect(judge(volts, theBook, { read: { value: 26, unit: "bar" } })).toMatchObject({
      status: "open",
      missing: ["a voltage"],
    });
    expect(judge(volts, theBook, { read: { value: 26, unit: "V" }, gauge: "tyre-gauge" }).status).toBe(
      "open",
    );
  });

  it("a value that is no number", () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY]) expect(judgeVolts(value).status).toBe("open");
  });

  it("a check that asks for no reading", () => {
    expect(judge(check("look", "oil"), theBook, { read: { value: 1, unit: "V" } }).status).toBe("open");
    expect(band(check("look", "oil"), theBook, undefined)).toBeUndefined();
  });
});

describe("a reading in another unit than the gauge's", () => {
  it("is worth the same, and shows what was typed", () => {
    // 5.33 bar is 77.305 psi (1 psi = 6894.757 Pa, NIST SP 811)
    const verdict = judge(tyre, theBook, {
      read: { value: 77.3, unit: "psi" },
      temperature: { value: 15, unit: "degC" },
    });
    expect(verdict.status).toBe("clear");
    expect(lines(verdict)).toContain("Read, gauge ±0.05: 5.33 bar, typed as 77.3 psi");
  });
});

const RANK = { clear: 0, caution: 1, stop: 2, open: 3 } as const;

describe("whatever the reading and the limit", () => {
  const value = fc.double({ min: 0, max: 40, noNaN: true });
  const ends = fc.tuple(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 0, max: 200 }));
  const judged = (read: number, low: number, high: number): number =>
    RANK[
      judge(check("v", "battery", { reading: voltsFrom(low, high) }), theBook, {
        read: { value: read, unit: "V" },
      }).status
    ];

  it("no verdict improves when the limit is tightened", () => {
    fc.assert(
      fc.property(
        value,
        ends,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (read, [low, width], up, down) => {
          const [a, b] = [low / 10, (low + width) / 10];
          const tightLow = a + (up * (b - a)) / 2;
          const tightHigh = b - (down * (b - a)) / 2;
          fc.pre(tightLow <= tightHigh);
          expect(judged(read, tightLow, tightHigh)).toBeGreaterThanOrEqual(judged(read, a, b));
        },
      ),
    );
  });

  it("no verdict improves when the gauge is worse", () => {
    fc.assert(
      fc.property(value, ends, fc.double({ min: 1, max: 20, noNaN: true }), (read, [low, width], times) => {
        const reads = voltsFrom(low / 10, (low + width) / 10);
        const worse = book({ checks: [], gauges: [gauge("voltmeter", "V", 0.1 * times, 0.1, [0, 40])] });
        const one = check("v", "battery", { reading: reads });
        const given = { read: { value: read, unit: "V" } } as const;
        expect(RANK[judge(one, worse, given).status]).toBeGreaterThanOrEqual(
          RANK[judge(one, theBook, given).status],
        );
      }),
    );
  });

  it("the limit that is shown is never more lenient than the limit itself", () => {
    fc.assert(
      fc.property(fc.double({ min: -30, max: 50, noNaN: true }), (degC) => {
        const warmth = { value: degC, unit: "degC" } as const;
        const now = band(tyre, theBook, warmth);
        const shown = judge(tyre, theBook, { read: { value: 5.2, unit: "bar" }, temperature: warmth }).working
          .lines;
        const figure = (label: string): number =>
          Number(shown.find((line) => line.label.startsWith(label))?.value.replace(/[^\d.]/g, ""));
        expect(figure("Low limit now")).toBeGreaterThanOrEqual((now?.low ?? Number.NaN) / 1e5 - 1e-9);
        expect(figure("High limit now")).toBeLessThanOrEqual((now?.high ?? Number.NaN) / 1e5 + 1e-9);
      }),
    );
  });

  it("the chance that is shown never claims the 95 % that it lacks", () => {
    fc.assert(
      fc.property(value, (read) => {
        const verdict = judgeVolts(read);
        const percent = Number(
          /(\d+)/.exec(lines(verdict).find((line) => line.startsWith("Chance")) ?? "")?.[1],
        );
        if (verdict.status === "caution") expect(percent).toBeLessThan(95);
        if (verdict.status === "clear") expect(percent).toBeGreaterThanOrEqual(95);
      }),
    );
  });

  it("takes volts as they are read, to the digit of the gauge", () => {
    expect(plain(judgeVolts(25.04).says)).toBe("25.0 V, 24.0 to 29.0");
    expect(voltmeter.unit).toBe("V");
  });
});
