import { measure } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import { book, check, tyreGauge, tyreReading, voltsFrom } from "../testing/small-book.ts";
import { at, Story } from "../testing/story.ts";
import { oddWhileTyped } from "./expected.ts";
import { compareTrends, trendsOf } from "./trends.ts";

/*
 * The series here are invented: they show behaviour. The mathematics is held against published values in the engine.
 */

const TYRE = "tyre-pressure";
const theBook = book({
  checks: [
    check(TYRE, "tyre", { reading: tyreReading }),
    check("volts", "battery", { reading: voltsFrom(24, 30) }),
    check("fuel", "tank", { reading: voltsFrom(1), until: ["fuelled"] }),
  ],
});

const COLD = { value: 15, unit: "degC" } as const;

/** A walk on each of these days with one tyre reading. */
function told(
  days: readonly number[],
  bar: (day: number, at: number) => number,
  story = new Story(theBook, "06:00"),
) {
  for (const [place, day] of days.entries()) {
    story.at("07:00", day).ada.start();
    story.ada.read(TYRE, Math.round(bar(day, place) * 100) / 100, "bar", COLD);
    story.ada.finish();
  }
  return story;
}

const trendIn = (story: Story, day: number) => {
  const clock = { now_ms: at("08:00", day), offset_min: 60 };
  const found = trendsOf(theBook, story.state, null, clock).find(({ check: id }) => id === TYRE);
  if (found === undefined) throw new Error("expected a trend of the tyre");
  return found;
};

const everyOther = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i * 2);
/** What a gauge scatters, the same in each run. */
const wobble = (place: number): number => [0, 0.01, -0.01, 0.01, 0, -0.01, 0.01][place % 7] ?? 0;

describe("the trend of a check", () => {
  it("claims nothing from two readings", () => {
    const trend = trendIn(
      told([0, 2], (day) => 5.4 - 0.05 * day),
      3,
    );
    expect(trend.fit.kind).toBe("too-few");
    expect(trend.sentence).toBe("Too few readings to say: 2 of 5.");
    expect(trend.status).toBe("open");
    expect(trend.forecast).toBeUndefined();
  });

  it("is steady within what the gauge can tell, though every reading is another", () => {
    const trend = trendIn(
      told(everyOther(12), (_day, place) => 5.4 + wobble(place)),
      23,
    );
    expect(trend.fit.kind).toBe("steady");
    expect(trend.sentence).toMatch(/^Steady within what the gauge can tell since 8 May\./);
    expect(trend.status).toBe("clear");
  });

  it("finds a slow leak before the limit is met, and says when it will be", () => {
    const story = told(everyOther(10), (day, place) => 5.42 - 0.01 * day + wobble(place));
    const trend = trendIn(story, 18);
    const last = trend.points.at(-1)?.shown ?? 0;
    expect(last).toBeGreaterThan(5.2);
    expect(trend.sentence).toMatch(/^A slow leak: 0\.0[12] bar a day\. Below 5\.20 in /);
    expect(trend.status).toBe("caution");
    const { earliest_ms = 0, expected_ms = 0, latest_ms = 0 } = trend.forecast ?? {};
    // 5.42 − 0.01 a day is at 5.20 on day 22
    expect(earliest_ms).toBeLessThanOrEqual(at("07:00", 22));
    expect(latest_ms).toBeGreaterThanOrEqual(at("07:00", 22));
    expect(Math.abs(expected_ms - at("07:00", 22)) / 86_400_000).toBeLessThan(4);
  });

  it("begins anew when the tyre was filled, and does not fit across it", () => {
    const story = told(everyOther(8), (day) => 5.42 - 0.01 * day);
    story.at("09:00", 15).ada.tell({
      type: "servicing.recorded",
      body: { at: "2031-05-23T09:00:00+01:00", what: "refilled", of: "tyre", check: TYRE },
    });
    told([16, 18], () => 5.4, story);
    const few = trendIn(story, 19);
    expect(few.fit).toMatchObject({ kind: "too-few", n: 2 });
    told([20, 22, 24, 26, 28], (_day, place) => 5.4 + wobble(place), story);
    const trend = trendIn(story, 30);
    expect(trend.fit.kind).toBe("steady");
    expect(trend.sentence).toMatch(
      /^Steady within what the gauge can tell since it was refilled on 23 May\./,
    );
  });

  it("refers each reading to the temperature of the limit", () => {
    const story = new Story(theBook, "06:00");
    for (const [day, celsius] of [30, 5, 20, -10, 15, 25].entries()) {
      story.at("07:00", day).ada.start();
      // the same gas: 5.40 bar at 15 °C, with the air outside at 1.01325 bar
      const bar = (5.4 + 1.01325) * ((celsius + 273.15) / 288.15) - 1.01325;
      story.ada.read(TYRE, Math.round(bar * 100) / 100, "bar", { value: celsius, unit: "degC" });
    }
    const trend = trendIn(story, 6);
    for (const { shown } of trend.points) expect(Math.abs(shown - 5.4)).toBeLessThanOrEqual(0.01);
    expect(trend.fit.kind).toBe("steady");
    expect(trend.unit.symbol).toBe("bar at 15\u00A0°C");
  });

  it("leaves out what has no temperature, and says so", () => {
    const story = told(everyOther(6), () => 5.4);
    story.at("07:00", 13).ada.start();
    story.ada.read(TYRE, 5.1, "bar");
    const trend = trendIn(story, 14);
    expect(trend.points).toHaveLength(6);
    expect(trend.more.join(" ")).toContain("One of the latest has no temperature");
  });

  it("is not made of what a fuelling changes", () => {
    const story = new Story(theBook, "06:00");
    for (const day of everyOther(6)) {
      story.at("07:00", day).ada.start();
      story.ada.read("fuel", 20 - day, "V");
    }
    const clock = { now_ms: at("08:00", 12), offset_min: 60 };
    expect(trendsOf(theBook, story.state, null, clock)).toEqual([]);
  });

  it("is said between which two dates it changed", () => {
    const story = told(everyOther(20), (day, place) => (day < 20 ? 5.45 : 5.3) + wobble(place) / 2);
    const trend = trendIn(story, 40);
    expect(trend.sentence).toContain("Changed between 26 May and 28 May.");
    expect(trend.fit.kind).toBe("steady");
  });

  it("puts what moves before what is steady", () => {
    const story = told(everyOther(10), (day) => 5.42 - 0.01 * day);
    for (const day of everyOther(10)) {
      story.at("07:10", day).ada.start();
      story.ada.read("volts", 25, "V");
    }
    const clock = { now_ms: at("08:00", 20), offset_min: 60 };
    const trends = trendsOf(theBook, story.state, null, clock);
    expect(trends.map(({ check: id }) => id)).toEqual([TYRE, "volts"]);
    expect(trends.toReversed().sort(compareTrends)).toEqual(trends);
  });
});

describe("an assessment", () => {
  const findings = (story: Story, day: number) =>
    assess(theBook, story.state, null, at("08:00", day)).verdicts.filter(({ topic }) => topic === "trend");

  it("cautions of a limit that is met within a fortnight", () => {
    const [found] = findings(
      told(everyOther(10), (day) => 5.42 - 0.01 * day),
      18,
    );
    expect(found).toMatchObject({
      status: "caution",
      title: "Right main tyre",
      subject: { kind: "trend", id: TYRE },
    });
    expect(found?.says).toMatch(/^A slow leak/);
    expect(found?.evidence.length).toBeGreaterThanOrEqual(5);
  });

  it("says nothing of a series that is steady, and nothing of two points however far apart", () => {
    expect(
      findings(
        told(everyOther(12), (_day, place) => 5.4 + wobble(place)),
        23,
      ),
    ).toEqual([]);
    expect(
      findings(
        told([0, 2], (day) => 5.45 - 0.1 * day),
        3,
      ),
    ).toEqual([]);
  });

  it("cautions of a reading that does not go on from those before it", () => {
    const story = told(everyOther(12), (_day, place) => 5.4 + wobble(place));
    expect(
      findings(
        told([24], () => 5.22, story),
        24,
      ),
    ).toMatchObject([
      { status: "caution", says: "Tyre pressure at 15\u00A0°C: 0.18 bar less than expected since Friday" },
    ]);
  });
});

describe("a reading that is being typed", () => {
  const story = told(everyOther(12), (_day, place) => 5.4 + wobble(place));
  const of = theBook.checksById.get(TYRE);
  const words = (value: number, temperature: number = COLD.value) =>
    of === undefined
      ? "no such check"
      : oddWhileTyped(
          theBook,
          story.state,
          of,
          {
            walk: "another",
            read: { value, unit: "bar" },
            temperature: { value: temperature, unit: "degC" },
          },
          { now_ms: at("07:00", 24), offset_min: 60 },
        );

  it("is told to be less than expected, by how much and since when", () => {
    expect(words(5.31)).toBe("0.09 bar less than expected since Friday");
    expect(words(5.52)).toBe("0.12 bar more than expected since Friday");
  });

  it("is passed over in silence when it goes on as before, in the cold as well", () => {
    expect(words(5.4)).toBeUndefined();
    // (5.40 + 1.01325) × 268.15 / 288.15 − 1.01325
    expect(words(4.95, -5)).toBeUndefined();
  });
});

describe("oil use", () => {
  const oilBook = {
    ...book({ checks: [], gauges: [tyreGauge] }),
    counters: [{ id: "airframe-hours", name: "Airframe hours", of: "airframe", unit: "h" }] as const,
  };
  /** A litre or so each ten hours. */
  function flown(litres: (count: number) => number, times: number): Story {
    const story = new Story(oilBook, "06:00");
    for (let count = 0; count <= times; count += 1) {
      story.at("16:00", count * 3).ada.tell({
        type: "counters.read",
        body: { at: wall(count * 3, "16:00"), counters: { "airframe-hours": 100 + 10 * count } },
      });
      story.at("16:10", count * 3).ada.tell({
        type: "servicing.recorded",
        body: {
          at: wall(count * 3, "16:10"),
          what: "refilled",
          of: "oil",
          amount: { value: litres(count), unit: "L" },
        },
      });
    }
    return story;
  }
  const wall = (days: number, time: string): string =>
    `${new Date(at(time, days) + 3_600_000).toISOString().slice(0, 19)}+01:00`;
  const trendAfter = (story: Story, day: number) =>
    trendsOf(oilBook, story.state, null, { now_ms: at("18:00", day), offset_min: 60 })[0];

  it("is what was added for the hours flown since the last time", () => {
    const trend = trendAfter(
      flown(() => 0.3, 6),
      20,
    );
    expect(trend?.unit.symbol).toBe("L in 10 h");
    expect(trend?.points.map(({ shown }) => shown)).toEqual([0.3, 0.3, 0.3, 0.3, 0.3, 0.3]);
    expect(trend?.fit.kind).toBe("steady");
  });

  it("is told when it rises, which has no limit in the book", () => {
    const story = flown((count) => 0.3 + 0.05 * count, 10);
    expect(trendAfter(story, 31)?.sentence).toMatch(/^Oil use rises by 0\.\d\d L in 10 h each day\./);
    expect(trendAfter(story, 31)?.status).toBe("caution");
    const found = assess(oilBook, story.state, null, at("18:00", 31)).verdicts.find(
      ({ topic }) => topic === "trend",
    );
    expect(found?.title).toBe("Engine oil used");
    expect(found?.status).toBe("caution");
  });

  it("is not known of a refill without the hours flown", () => {
    const story = new Story(oilBook, "06:00");
    story.ada.tell({
      type: "servicing.recorded",
      body: { at: wall(0, "16:00"), what: "refilled", of: "oil", amount: { value: 1, unit: "L" } },
    });
    expect(trendAfter(story, 1)).toBeUndefined();
  });
});

describe("the units of a series", () => {
  it("are those of the gauge", () => {
    expect(measure(5.2, "bar").valueSI).toBe(520_000);
    const trend = trendIn(
      told([0], () => 5.2),
      1,
    );
    expect(trend.points[0]).toMatchObject({
      valueSI: 520_000,
      shown: 5.2,
      asRead: "5.20\u00A0bar at 15\u00A0°C",
      by: "Ada",
    });
    expect(trend.limits).toMatchObject({ low: 520_000 });
  });
});
