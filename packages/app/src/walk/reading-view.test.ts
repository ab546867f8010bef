import type { Book, Check } from "@witnessmark/book";
import { measure } from "@witnessmark/engine";
import { beforeAll, describe, expect, it } from "vitest";
import { demoBook } from "../testing/told-ledger.ts";
import { carriedValue, entryUnit, readingView } from "./reading-view.ts";

let book: Book;
let check: Check;
beforeAll(async () => {
  book = await demoBook("zz-skr");
  const found = book.checks.find((each) => each.reading?.limit.by === "tyre");
  if (found === undefined) throw new Error("expected a tyre in the book");
  check = found;
});

const parts = () => {
  const { reading } = check;
  const gauge = reading === undefined ? undefined : book.gauges.get(reading.gauge);
  if (reading === undefined || gauge === undefined) throw new Error("expected a reading with a gauge");
  return { reading, gauge };
};

describe("the unit that a reading is entered in", () => {
  it("is the gauge's own, in the book's steps", () => {
    const { reading, gauge } = parts();
    expect(entryUnit(reading, gauge, undefined)).toEqual({ unit: "bar", step: 0.05, decimals: 2 });
  });

  it("has round steps in another unit, no coarser than the book's", () => {
    const { reading, gauge } = parts();
    // 0.05 bar is 0.725 psi
    expect(entryUnit(reading, gauge, "psi")).toEqual({ unit: "psi", step: 0.5, decimals: 1 });
  });
});

describe("last time's value at today's temperature", () => {
  const last = { read: { value: 5.2, unit: "bar" }, temperature: { value: 11, unit: "degC" } } as const;

  it("falls with the cold as an ideal gas does", () => {
    const { reading } = parts();
    // (5.2 + 1.01325) × 277.15 / 284.15 − 1.01325 bar, worked by hand
    expect(carriedValue(reading, last, { value: 4, unit: "degC" })).toBeCloseTo(504_693, -2);
  });

  it("is not compared when a temperature is missing", () => {
    const { reading } = parts();
    expect(carriedValue(reading, last, undefined)).toBeUndefined();
    expect(carriedValue(reading, { read: last.read }, { value: 4, unit: "degC" })).toBeUndefined();
  });
});

describe("the rule of a reading", () => {
  const view = (now: number | null, temperature = measureRead(4)) => {
    const { reading, gauge } = parts();
    return readingView({
      book,
      check,
      reading,
      gauge,
      entry: entryUnit(reading, gauge, undefined),
      now,
      temperature,
      last: undefined,
    });
  };

  it("names no limit more lenient than the limit: low up, high down", () => {
    const { values, texts } = view(5);
    expect(Number(texts.low)).toBeGreaterThanOrEqual(values.low ?? Number.NaN);
    expect(Number(texts.high)).toBeLessThanOrEqual(values.high ?? Number.NaN);
  });

  it("keeps what is read on the rule, however far out", () => {
    for (const now of [3.9, 5, 6.2, 8]) {
      const { values } = view(now);
      expect(values.min).toBeLessThanOrEqual(now);
      expect(values.max).toBeGreaterThanOrEqual(now);
    }
  });

  it("has no band, and says what it waits for, without a temperature", () => {
    const { reading, gauge } = parts();
    const waiting = readingView({
      book,
      check,
      reading,
      gauge,
      entry: entryUnit(reading, gauge, undefined),
      now: 5,
      temperature: undefined,
      last: undefined,
    });
    expect(waiting.values.low).toBeUndefined();
    expect(waiting.texts.band).toBe("the band waits for its temperature");
  });
});

const measureRead = (value: number) => ({ value: measure(value, "degC").value, unit: "degC" as const });
