import type { CounterReading } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { dueForecast } from "./due-forecast.ts";
import type { LimitLeft } from "./timed-figures.ts";

const DAY_MS = 86_400_000;
const NOW_MS = Date.parse("2026-11-12T12:00:00Z");
const left = (hours: number): Extract<LimitLeft, { by: "counter" }> => ({
  by: "counter",
  counter: { id: "hours", name: "Airframe hours", of: "airframe", unit: "h" },
  at: 100,
  from: 0,
  now: 100 - hours,
  left: hours,
  past: hours < 0,
  pastAfterFlight: undefined,
});
const read = (daysAgo: number, total: number): CounterReading => ({
  event: `e${daysAgo}`,
  device: "d",
  deviceSeq: 1,
  author: { id: "p", name: "MK", role: "pilot" },
  hlc: "0",
  recordedAt: "2026-01-01T00:00:00Z",
  at: "2026-01-01T00:00:00Z",
  at_ms: NOW_MS - daysAgo * DAY_MS,
  shown: total,
  total,
  backwards: false,
});
const of = (hours: number, readings: readonly CounterReading[]) =>
  dueForecast(left(hours), readings, "2026-11-12", NOW_MS);

// worked by hand: so many hours at so many hours for each day
describe("the day on which what is left is used up", () => {
  it("at an even third of an hour a day, 10 h last 30 days, and the range is that day alone", () => {
    const even = [read(360, 0), read(0, 120)];
    expect(of(10, even)).toEqual({
      expected: "2026-12-12",
      earliest: "2026-12-12",
      latest: "2026-12-12",
      spans: 12,
    });
  });

  it("after a busy and a quiet half year lies between what each would give", () => {
    // 1 h a day for 180 days, then 0.1 h a day for 180: mean 0.55 h a day, so 55 h are used in 100 days
    const uneven = [read(360, 0), read(180, 180), read(0, 198)];
    const found = of(55, uneven);
    expect(found?.expected).toBe("2027-02-20");
    expect(found?.earliest).toBe("2027-01-06"); // 55 days at 1 h
    expect(found?.latest).toBe("2028-05-15"); // 550 days at 0.1 h
  });

  it("has no latest day where the quietest spans stood still", () => {
    const parked = [read(360, 0), read(180, 180), read(0, 180)];
    expect(of(10, parked)?.latest).toBeUndefined();
    expect(of(10, parked)?.earliest).toBe("2026-11-22");
  });

  it("is not told from less than three spans, from none used, nor of what is over", () => {
    expect(of(10, [read(80, 0), read(0, 30)])).toBeUndefined();
    expect(of(10, [read(360, 50), read(0, 50)])).toBeUndefined();
    expect(of(0, [read(360, 0), read(0, 120)])).toBeUndefined();
    expect(of(10, [])).toBeUndefined();
  });
});
