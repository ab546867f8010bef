import type { Book, TimedItem } from "@witnessmark/book";
import { toSI } from "@witnessmark/engine";
import {
  type AircraftState,
  type Done,
  emptyState,
  type FlightMade,
  type PlannedFlight,
} from "@witnessmark/ledger";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type DecodedCase, decodedCases } from "../rules/testing/decoded-cases.ts";
import { book as smallBook } from "../testing/small-book.ts";
import { type LimitLeft, type TimedFigure, timedFigures } from "./timed-figures.ts";
import { endsText } from "./timed-words.ts";

// Each case carries its source: 14 CFR and Regulation (EU) texts as published; dates worked there by hand and script.
const CASES = decodedCases("airworthiness-timed.json", 32);
const one = (id: string): DecodedCase => {
  const found = CASES.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no case ${id}`);
  tried.add(id);
  return found;
};
const tried = new Set<string>();
const group = (start: string): readonly DecodedCase[] => {
  const found = CASES.filter(({ id }) => id.startsWith(start));
  if (found.length === 0) throw new Error(`no case begins with ${start}`);
  for (const { id } of found) tried.add(id);
  return found;
};
const text = ({ inputs }: DecodedCase, name: string): string => String(inputs[name]);
const number = ({ inputs }: DecodedCase, name: string): number => Number(inputs[name]);

const ORIGIN = {
  event: "e",
  device: "d",
  deviceSeq: 1,
  author: { id: "pilot", name: "MK", role: "pilot" },
  hlc: "0",
  recordedAt: "2020-01-01T00:00:00Z",
} as const;

const COUNTERS: Book["counters"] = [
  { id: "hours", name: "Airframe hours", of: "airframe", unit: "h" },
  { id: "cycles", name: "Engine cycles", of: "engine", unit: "1" },
];

const item = (more: Partial<TimedItem> & Pick<TimedItem, "limits">): TimedItem => ({
  id: "thing",
  name: "Thing",
  about: "aircraft",
  combine: "first",
  recurring: true,
  endsLife: false,
  why: "It runs out.",
  ...more,
});

const done = (on: string, counters: Done["counters"] = {}): Done => ({
  ...ORIGIN,
  item: "thing",
  on,
  counters,
  by: "a licensed mechanic",
});

interface Setting {
  readonly item: TimedItem;
  readonly dones?: readonly Done[];
  readonly counters?: Readonly<Record<string, number>>;
  readonly flights?: readonly FlightMade[];
  /** Local day, noon; the clock stands at UTC. */
  readonly today: string;
  /** Of a flight that is planned; `null` of one that is named, and no more said of it. */
  readonly flightTime_h?: number | null;
  readonly rules?: "VFR" | "IFR";
}

function figureOf(setting: Setting): TimedFigure {
  const book: Book = { ...smallBook({ checks: [] }), counters: COUNTERS, timedItems: [setting.item] };
  const at = `${setting.today}T12:00:00Z`;
  const state: AircraftState = {
    ...emptyState("ZZ-SML"),
    timedDone: new Map([["thing", setting.dones ?? []]]),
    counters: new Map(
      Object.entries(setting.counters ?? {}).map(([id, shown]) => [
        id,
        [{ ...ORIGIN, at, at_ms: Date.parse(at), shown, total: shown, backwards: false }],
      ]),
    ),
    flightsMade: setting.flights ?? [],
  };
  const flight: PlannedFlight | null =
    setting.flightTime_h === undefined
      ? null
      : {
          from: "ZZQN",
          to: "ZZTW",
          offBlocks: at,
          ...(setting.flightTime_h === null
            ? {}
            : {
                plan: {
                  rulePack: "us-part-91",
                  flightRules: setting.rules ?? "VFR",
                  route: {
                    distance: { value: 50, unit: "NM" },
                    time: { value: setting.flightTime_h, unit: "h" },
                    level: { value: 3000, unit: "ft" },
                  },
                },
              }),
        };
  const [figure] = timedFigures({
    book,
    state,
    flight,
    clock: { now_ms: Date.parse(at), offset_min: 0 },
    pilot: "pilot",
  });
  if (figure === undefined) throw new Error("expected one figure");
  return figure;
}

const lastDay = (left: LimitLeft | undefined): string | undefined =>
  left?.by === "date" ? left.on : undefined;
const dueAt = (left: LimitLeft | undefined): number | undefined =>
  left?.by === "counter" ? left.at : undefined;
const legal = (figure: TimedFigure): boolean => figure.state === "good" || figure.state === "in-tolerance";
const months = (count: number): TimedItem["limits"] => [{ by: "calendar-months", months: count }];
const lastDate = ({ inputs }: DecodedCase): string =>
  String(Object.entries(inputs).find(([name]) => name.startsWith("last"))?.[1]);

describe("so many calendar months: to the last day of the month", () => {
  it.each(group("annual-"))("annual inspection: $id", (each) => {
    const figure = figureOf({
      item: item({ limits: months(12) }),
      dones: [done(lastDate(each))],
      today: text(each, "flight_date"),
    });
    expect(lastDay(figure.nearest)).toBe(each.expected["lastValid_date"]);
    expect(legal(figure)).toBe(each.expected["legal"]);
  });

  it("condition inspection of an amateur-built aircraft", () => {
    const each = one("condition-inspection-amateur-built");
    const figure = figureOf({
      item: item({ limits: months(12) }),
      dones: [done(lastDate(each))],
      today: text(each, "flight_date"),
    });
    expect([lastDay(figure.nearest), legal(figure)]).toEqual([each.expected["lastValid_date"], false]);
  });

  it.each([
    ["static-24-calendar-months", 24],
    ["transponder-24-calendar-months", 24],
    ["elt-inspection-12-calendar-months", 12],
  ] as const)("%s", (id, count) => {
    const each = one(id);
    const figure = figureOf({
      item: item({ limits: months(count) }),
      dones: [done(lastDate(each))],
      today: "2026-01-01",
    });
    expect(lastDay(figure.nearest)).toBe(each.expected["lastValid_date"]);
  });

  it.each(["static-lapsed-ifr-controlled", "static-lapsed-vfr"])(
    "counts against the flights that need it alone: %s",
    (id) => {
      const each = one(id);
      const rules = text(each, "flightRules") === "IFR" ? "IFR" : "VFR";
      const figure = figureOf({
        item: item({ limits: months(24), neededFor: ["ifr-day", "ifr-night"] }),
        dones: [done(lastDate(each))],
        today: text(each, "flight_date"),
        flightTime_h: 1,
        rules,
      });
      expect(figure.state).toBe("past");
      // whether it is by night is not known here, and does not matter
      expect(figure.needed).toBe(each.expected["legal"] === false);
    },
  );

  it.each(group("flight-review-"))("flight review: $id", (each) => {
    const figure = figureOf({
      item: item({ about: "pilot", limits: months(24) }),
      dones: [done(text(each, "flightReview_date"))],
      today: text(each, "flight_date"),
    });
    expect([lastDay(figure.nearest), legal(figure)]).toEqual([
      each.expected["lastValid_date"],
      each.expected["legal"],
    ]);
  });
});

const HUNDRED: TimedItem["limits"] = [{ by: "counter", counter: "hours", every: 100 }];
const TEN_HOURS = {
  hours: { value: 10, unit: "h", valueSI: toSI(10, "h") },
  countsFrom: "due",
  rule: "14 CFR 91.409(b)",
  onlyWhen: "to reach a place where it can be done",
} as const;

describe("the 100-hour inspection, 91.409(b): counted at the end of the flight", () => {
  it.each(["h100-would-run-past-limit", "h100-exactly-at-limit-ends-legal"])("%s", (id) => {
    const each = one(id);
    const figure = figureOf({
      item: item({ limits: HUNDRED, tolerance: TEN_HOURS }),
      dones: [done("2026-01-01", { hours: number(each, "last100hOrAnnual_h") })],
      counters: { hours: number(each, "timeInServiceNow_h") },
      today: "2026-06-01",
      flightTime_h: number(each, "plannedFlight_h"),
    });
    expect(dueAt(figure.nearest)).toBeCloseTo(Number(each.expected["due_h"]), 9);
    expect(figure.state === "good").toBe(each.expected["legal"]);
  });

  it.each(["h100-ferry-overfly-allowed", "h100-overfly-10-point-1"])(
    "ten hours may be flown over it on the way to the inspection, and no more: %s",
    (id) => {
      const each = one(id);
      const after_h = number(each, "timeInServiceNow_h") + number(each, "plannedFlight_h");
      const figure = figureOf({
        item: item({ limits: HUNDRED, tolerance: TEN_HOURS }),
        dones: [done("2026-01-01", { hours: number(each, "last100hOrAnnual_h") })],
        counters: { hours: after_h },
        today: "2026-06-01",
      });
      expect(legal(figure)).toBe(each.expected["legal"]);
    },
  );

  it.each(["h100-done-early-restarts", "h100-overrun-maximum"])("the next one: %s", (id) => {
    const each = one(id);
    const figure = figureOf({
      item: item({ limits: HUNDRED, tolerance: TEN_HOURS }),
      dones: [
        done("2026-01-01", { hours: number(each, "previousDue_h") - 100 }),
        done("2026-03-01", { hours: number(each, "inspectionDone_h") }),
      ],
      counters: { hours: number(each, "inspectionDone_h") },
      today: "2026-06-01",
    });
    expect(dueAt(figure.nearest)).toBeCloseTo(Number(each.expected["nextDue_h"]), 9);
  });

  it("where the tolerance counts from when it was done, nothing is taken off: mip-tolerance-used", () => {
    const each = one("mip-tolerance-used");
    const figure = figureOf({
      item: item({
        limits: HUNDRED,
        tolerance: { ...TEN_HOURS, countsFrom: "done", rule: "ML.A.302" },
      }),
      dones: [
        done("2025-04-30", { hours: number(each, "dueAt_h") - 100 }),
        done(text(each, "done_date"), { hours: number(each, "done_h") }),
      ],
      counters: { hours: number(each, "done_h") },
      today: "2026-06-01",
    });
    expect(dueAt(figure.nearest)).toBeCloseTo(Number(each.expected["nextDue_h"]), 9);
  });
});

describe("recurring directives: whichever comes first", () => {
  it.each(group("ad-"))("$id", (each) => {
    // the file's own shape
    const { last, interval, now } = each.inputs as unknown as Record<string, Record<string, number | string>>;
    const limits = [
      ...(interval?.["hours_h"] === undefined
        ? []
        : [{ by: "counter", counter: "hours", every: Number(interval["hours_h"]) } as const]),
      ...(interval?.["cycles_count"] === undefined
        ? []
        : [{ by: "counter", counter: "cycles", every: Number(interval["cycles_count"]) } as const]),
      ...(interval?.["months"] === undefined
        ? []
        : [{ by: "months", months: Number(interval["months"]) } as const]),
    ];
    const figure = figureOf({
      item: item({ limits }),
      dones: [
        done(String(last?.["date"]), {
          hours: Number(last?.["timeInService_h"]),
          cycles: Number(last?.["cycles_count"] ?? 0),
        }),
      ],
      counters: {
        hours: Number(now?.["timeInService_h"]),
        cycles: Number(now?.["cycles_count"] ?? 0),
      },
      today: String(now?.["date"]),
    });
    const of = (by: string, counter?: string) =>
      figure.limits.find((left) => left.by === by && (left.by !== "counter" || left.counter.id === counter));
    const { due_h, due_date, due_cycles, remaining_h, remaining_d, remaining_cycles } = each.expected;
    if (due_h !== undefined) expect(dueAt(of("counter", "hours"))).toBeCloseTo(Number(due_h), 9);
    if (due_date !== undefined) expect(lastDay(of("date"))).toBe(due_date);
    if (due_cycles !== undefined) expect(dueAt(of("counter", "cycles"))).toBe(due_cycles);
    const hours = of("counter", "hours");
    const date = of("date");
    const cycles = of("counter", "cycles");
    if (remaining_h !== undefined && hours?.by === "counter")
      expect(hours.left).toBeCloseTo(Number(remaining_h), 9);
    if (remaining_d !== undefined && date?.by === "date") expect(date.left_d).toBe(remaining_d);
    if (remaining_cycles !== undefined && cycles?.by === "counter")
      expect(cycles.left).toBe(remaining_cycles);
    expect(figure.state === "past").toBe(each.expected["overdue"]);
  });
});

it("a part that has a life goes by what it had run when it was fitted: life-limited-part-cycles", () => {
  const each = one("life-limited-part-cycles");
  const left = number(each, "limit_cycles") - number(each, "partCyclesAtInstall_count");
  const figure = figureOf({
    item: item({
      limits: [{ by: "counter", counter: "cycles", every: left }],
      recurring: false,
      endsLife: true,
    }),
    dones: [done("2020-01-01", { cycles: number(each, "aircraftCyclesAtInstall_count") })],
    counters: { cycles: number(each, "aircraftCyclesNow_count") },
    today: "2026-01-01",
  });
  expect(dueAt(figure.nearest)).toBe(each.expected["lastLegalAircraftCycles_count"]);
  expect(figure.nearest?.by === "counter" ? figure.nearest.left : undefined).toBe(
    each.expected["remaining_cycles"],
  );
});

const made = (date: string, landings: number, approaches = 0): FlightMade => ({
  ...ORIGIN,
  id: `${date}-${landings}`,
  from: "ZZQN",
  to: "ZZTW",
  takeOff: `${date}T10:00:00Z`,
  landing: `${date}T11:00:00Z`,
  landings: { day: landings, night: 0, nightFullStop: 0 },
  approaches,
  pilot: "pilot",
});

describe("a pilot's recency, 61.57", () => {
  it.each(group("recency-day-"))("$id", (each) => {
    const landings = each.inputs["landings"] as readonly { readonly date: string }[]; // the file's own shape
    const figure = figureOf({
      item: item({ about: "pilot", limits: [{ by: "days", days: 90 }], counts: "landings", atLeast: 3 }),
      flights: landings.map(({ date }) => made(date, 1)),
      today: text(each, "flight_date"),
    });
    expect(figure.recency?.have).toBe(each.expected["countWithin90Days"]);
    expect(legal(figure)).toBe(each.expected["legal"]);
    if (each.expected["legal"] === true)
      expect(lastDay(figure.nearest)).toBe(each.expected["lastValid_date"]);
  });

  it.each(group("ifr-"))("six approaches in the six calendar months before the month: $id", (each) => {
    const approaches = each.inputs["approaches_dates"] as readonly string[]; // the file's own shape
    const figure = figureOf({
      item: item({ about: "pilot", limits: months(6), counts: "approaches", atLeast: 6 }),
      flights: approaches.map((date) => made(date, 1, 1)),
      today: text(each, "flight_date"),
    });
    expect(legal(figure)).toBe(each.expected["current"]);
    if (each.expected["current"] === true)
      expect(lastDay(figure.nearest)).toBe(each.expected["lastValid_date"]);
  });
});

it("every case of the file was tried", () => {
  expect([...tried].toSorted()).toEqual(CASES.map(({ id }) => id).toSorted());
});

describe("what is not known is never good", () => {
  it.each([
    ["never done", { item: item({ limits: months(12) }), today: "2026-06-01" }],
    [
      "the counter was never read",
      { item: item({ limits: HUNDRED }), dones: [done("2026-01-01", { hours: 100 })], today: "2026-06-01" },
    ],
    [
      "what it showed when it was done was not said",
      {
        item: item({ limits: HUNDRED }),
        dones: [done("2026-01-01")],
        counters: { hours: 120 },
        today: "2026-06-01",
      },
    ],
    [
      "the counter was read before the last flight",
      {
        item: item({ limits: HUNDRED }),
        dones: [done("2026-01-01", { hours: 100 })],
        counters: { hours: 120 },
        flights: [{ ...made("2026-06-01", 1), landing: "2026-06-01T13:00:00Z" }],
        today: "2026-06-01",
      },
    ],
    [
      "nothing that counts was ever said",
      {
        item: item({ about: "pilot", limits: [{ by: "days", days: 90 }], counts: "landings", atLeast: 3 }),
        today: "2026-06-01",
      },
    ],
    [
      "a date thousands of years off",
      { item: item({ limits: months(12) }), dones: [done("9999-12-31")], today: "2026-06-01" },
    ],
  ] as const)("%s", (_why, setting) => {
    expect(figureOf(setting).state).toBe("unknown");
  });
});

describe("a flight that is named, and of which no time is said", () => {
  // twelve calendar months from 10 June end on 30 June; dates worked by hand
  it.each([
    ["2026-03-01", "good"],
    ["2026-06-28", "good"],
    ["2026-06-29", "unknown"],
    ["2026-06-30", "unknown"],
    ["2026-07-01", "past"],
  ] as const)("on %s leaves what is good to 30 June %s", (today, state) => {
    const dones = [done("2025-06-10")];
    expect(figureOf({ item: item({ limits: months(12) }), dones, today, flightTime_h: null }).state).toBe(
      state,
    );
  });

  it("leaves open what runs by hours", () => {
    const figure = figureOf({
      item: item({ limits: HUNDRED }),
      dones: [done("2026-01-01", { hours: 100 })],
      counters: { hours: 150 },
      today: "2026-06-01",
      flightTime_h: null,
    });
    expect(figure.state).toBe("unknown");
  });
});

it("what is over when it was read stays over, however much was flown since", () => {
  const figure = figureOf({
    item: item({ limits: HUNDRED }),
    dones: [done("2026-01-01", { hours: 100 })],
    counters: { hours: 201 },
    flights: [{ ...made("2026-06-01", 1), landing: "2026-06-01T13:00:00Z" }],
    today: "2026-06-01",
  });
  expect(figure.state).toBe("past");
});

describe("no tighter limit is better", () => {
  const RANK = { good: 0, unknown: 1, "in-tolerance": 2, "ends-in-flight": 3, past: 4 } as const;
  it("fewer hours or months between never improve an answer", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200 }),
        fc.integer({ min: 1, max: 199 }),
        fc.integer({ min: 0, max: 250 }),
        fc.option(fc.integer({ min: 1, max: 5 }), { nil: undefined }),
        (every, less, flown, flight_h) => {
          const state = (interval: number) =>
            figureOf({
              item: item({ limits: [{ by: "counter", counter: "hours", every: interval }] }),
              dones: [done("2026-01-01", { hours: 1000 })],
              counters: { hours: 1000 + flown },
              today: "2026-06-01",
              ...(flight_h === undefined ? {} : { flightTime_h: flight_h }),
            }).state;
          expect(RANK[state(Math.max(1, every - less))]).toBeGreaterThanOrEqual(RANK[state(every)]);
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe("what ends during a flight says by how much and when", () => {
  const NOON = { now_ms: Date.parse("2031-05-08T12:00:00Z"), offset_min: 0 };
  const ends = (setting: Partial<Setting>) => {
    const { nearest } = figureOf({ item: item({ limits: [] }), today: "2031-05-08", ...setting });
    return endsText(nearest, NOON)?.replaceAll("\u00A0", " ");
  };

  it("by the hour from take-off: off blocks at noon, ten minutes to taxi, 0.4 h left of 0.8 h in the air", () => {
    const hundred = item({ limits: [{ by: "counter", counter: "hours", every: 100 }] });
    const dones = [done("2031-01-01", { hours: 1200 })];
    const at = (hours: number, flightTime_h: number) =>
      ends({ item: hundred, dones, counters: { hours }, flightTime_h });
    // take-off 12:10, landing 12:58: 24 min after the one, and as long before the other
    expect(at(1299.6, 0.8)).toBe("0.4 h before this flight ends, about 12:34");
    expect(at(1299.6, 0.4)).toBeUndefined();
    // 0.02 h over is told as 0.1 h: never less than it is
    expect(at(1299.2, 0.82)).toBe("0.1 h before this flight ends, about 12:58");
  });

  it("by cycles, and by the day", () => {
    const cycles = item({ limits: [{ by: "counter", counter: "cycles", every: 10 }] });
    expect(
      ends({
        item: cycles,
        dones: [done("2031-01-01", { cycles: 0 })],
        counters: { cycles: 10 },
        flightTime_h: 1,
      }),
    ).toBe("this flight counts 1 engine cycles more than are left");
    const day = item({ limits: [{ by: "date", on: "2031-05-08" }] });
    expect(ends({ item: day, flightTime_h: 13 })).toMatch(
      /^with .*Thursday.*, and this flight ends on .*Friday/,
    );
  });
});
