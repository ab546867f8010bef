import type { Book } from "@witnessmark/book";
import { type AircraftState, type Experience, emptyState, type PlannedFlight } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { book as smallBook } from "../../testing/small-book.ts";
import { type TimedFigure, timedFigures } from "../../timed/timed-figures.ts";
import { rulePacks } from "../rule-packs.ts";
import { type DecodedCase, decodedCases } from "../testing/decoded-cases.ts";
import { type Medical, medicalUntil } from "./medical.ts";
import { PILOT_ITEMS, pilotItemsFor } from "./pilot-items.ts";

// Each case carries its source in the file; the dates of the European medical are from memory, as it says there.
const CALENDAR = decodedCases("calendar.json", 65);
const CASES = decodedCases("airworthiness-pilot.json", 6);
const tried = new Set<string>();
const one = (id: string, among = CASES): DecodedCase => {
  const found = among.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no case ${id}`);
  tried.add(id);
  return found;
};
const group = (start: string, among = CASES): readonly DecodedCase[] => {
  const found = among.filter(({ id }) => id.startsWith(start));
  if (found.length === 0) throw new Error(`no case begins with ${start}`);
  for (const { id } of found) tried.add(id);
  return found;
};
const text = ({ inputs }: DecodedCase, name: string): string => String(inputs[name]);

const ORIGIN = {
  event: "e",
  device: "d",
  deviceSeq: 1,
  author: { id: "pilot", name: "MK", role: "pilot" },
  hlc: "0",
  recordedAt: "2020-01-01T00:00:00Z",
} as const;

const flown = (on: string, more: Partial<Experience>): Experience => ({
  ...ORIGIN,
  person: "pilot",
  on,
  dayLandings: 0,
  nightLandings: 0,
  nightFullStop: 0,
  approaches: 0,
  tailwheel: false,
  class: "single-engine piston, land",
  ...more,
});

interface Asked {
  readonly id: string;
  readonly gear: Book["aircraft"]["gear"];
  readonly aircraft?: Partial<Book["aircraft"]>;
  readonly today: string;
  readonly state: Partial<AircraftState>;
  readonly flight?: PlannedFlight;
}

/** The item as its rule pack offers it, followed by one pilot. */
function figureOf({ id, gear, aircraft, today, state, flight }: Asked): TimedFigure {
  const small = smallBook({ checks: [] });
  const book = {
    ...small,
    aircraft: { ...small.aircraft, engine: "piston", gear, ...aircraft } as const,
    timedItems: [],
  };
  const offered = [...PILOT_ITEMS.keys()].flatMap((pack) => pilotItemsFor(pack, book));
  const item = offered.find((each) => each.item.id === id)?.item;
  if (item === undefined) throw new Error(`no pack offers ${id}`);
  const [figure] = timedFigures({
    book,
    state: { ...emptyState("ZZ-SML"), ...state, timedAdded: new Map([[id, { ...ORIGIN, item }]]) },
    flight: flight ?? null,
    clock: { now_ms: Date.parse(`${today}T12:00:00Z`), offset_min: 0 },
    pilot: "pilot",
  });
  if (figure === undefined) throw new Error("expected one figure");
  return figure;
}

const legal = ({ state }: TimedFigure): boolean => state === "good";
const done = (item: string, on: string, until?: string): Partial<AircraftState> => ({
  timedDone: new Map([
    [
      item,
      [
        {
          ...ORIGIN,
          item,
          on,
          counters: {},
          by: "An examiner",
          holder: "pilot",
          ...(until === undefined ? {} : { until }),
        },
      ],
    ],
  ]),
});

describe("every pack that there is offers the pilot's own items", () => {
  it.each([...rulePacks.keys()])("%s", (pack) => {
    const items = PILOT_ITEMS.get(pack) ?? [];
    expect(items.length).toBeGreaterThan(3);
    for (const { item } of items) {
      expect(item.about).toBe("pilot");
      expect(item.rule).toBeDefined();
      expect(item.why).toMatch(/^[A-Z].*\.$/);
    }
  });

  it("no two items share an id, and an item of an aircraft with a tail-wheel is offered for no other", () => {
    const ids = [...PILOT_ITEMS.values()].flatMap((items) => items.map(({ item }) => item.id));
    expect(new Set(ids).size).toBe(ids.length);
    const offered = (gear: "nose-wheel" | "tail-wheel") => {
      const small = smallBook({ checks: [] });
      return pilotItemsFor("us-part-91", { aircraft: { ...small.aircraft, gear } }).map(
        ({ item }) => item.id,
      );
    };
    expect(offered("tail-wheel")).toContain("us-recency-tailwheel");
    expect(offered("nose-wheel")).not.toContain("us-recency-tailwheel");
  });
});

describe("what is not said is open, and what is said is answered", () => {
  it.each(
    [...PILOT_ITEMS.values()].flat().map(({ item, gear, classes }) => [item.id, gear, classes] as const),
  )("%s", (id, gear, classes) => {
    const aircraft = classes === undefined ? {} : { class: classes[0] ?? "glider" };
    const figure = figureOf({ id, gear: gear ?? "nose-wheel", aircraft, today: "2026-06-01", state: {} });
    expect(figure.state).toBe("unknown");
    if (figure.item.counts !== undefined) return;
    const after = figureOf({
      id,
      gear: gear ?? "nose-wheel",
      aircraft,
      today: "2026-06-01",
      state: done(id, "2026-05-01", "2027-05-01"),
    });
    expect(after.state).toBe("good");
  });

  it("a paper with its own last day is good on it and not the day after", () => {
    const on = (today: string) =>
      figureOf({
        id: "eu-medical",
        gear: "nose-wheel",
        today,
        state: done("eu-medical", "2026-01-10", "2026-06-01"),
      });
    expect(on("2026-06-01").state).toBe("good");
    expect(on("2026-06-02").state).toBe("past");
  });

  it("a paper without its last day is not known", () => {
    const figure = figureOf({
      id: "eu-medical",
      gear: "nose-wheel",
      today: "2026-06-01",
      state: done("eu-medical", "2026-01-10"),
    });
    expect(figure.state).toBe("unknown");
  });
});

describe("recency by class, tail-wheel and night", () => {
  it("a touch-and-go with a tail-wheel, and a full stop without one, do not count: recency-tailwheel-touch-and-go", () => {
    const each = one("recency-tailwheel-touch-and-go");
    // the file's own shape
    const landings = each.inputs["landings"] as readonly {
      readonly date: string;
      readonly tailwheel: boolean;
      readonly fullStop: boolean;
    }[];
    const figure = figureOf({
      id: "us-recency-tailwheel",
      gear: "tail-wheel",
      today: text(each, "flight_date"),
      state: {
        experiences: landings.map(({ date, tailwheel, fullStop }) =>
          flown(date, { dayLandings: 1, dayFullStop: fullStop ? 1 : 0, tailwheel }),
        ),
      },
    });
    expect(figure.recency?.have).toBe(each.expected["countWithin90Days"]);
    expect(legal(figure)).toBe(each.expected["legal"]);
  });

  it("landings with one engine do not count for two: recency-wrong-class", () => {
    const each = one("recency-wrong-class");
    // the file's own shape
    const landings = each.inputs["landings"] as readonly { readonly date: string; readonly class: string }[];
    const figure = figureOf({
      id: "us-recency-day",
      gear: "nose-wheel",
      aircraft: { engines: 2 },
      today: text(each, "flight_date"),
      state: {
        experiences: landings.map(({ date, class: kind }) => flown(date, { dayLandings: 1, class: kind })),
      },
    });
    expect(figure.recency?.have).toBe(each.expected["countWithin90Days"]);
    expect(legal(figure)).toBe(each.expected["legal"]);
    expect(figure.state).toBe("past");
  });

  const three = (id: string, kind: string, aircraft: Partial<Book["aircraft"]>) =>
    figureOf({
      id,
      gear: "nose-wheel",
      aircraft,
      today: "2026-06-01",
      state: { experiences: [flown("2026-05-01", { dayLandings: 3, class: kind })] },
    }).state;

  // 14 CFR 61.57(a)(1)(ii): category, class, and type where a rating is required; FCL.060(b)(1): type or class
  it.each([
    ["us-recency-day", "ASEL", {}, "good"],
    ["us-recency-day", "single-engine turboprop, land", {}, "good"],
    ["us-recency-day", "single-engine, sea", {}, "unknown"],
    ["us-recency-day", "single-engine, sea", { class: "single-engine-sea" }, "good"],
    ["us-recency-day", "single-engine, land", { class: "single-engine-sea" }, "unknown"],
    ["us-recency-day", "the club's machine", {}, "unknown"],
    ["us-recency-day", "single-engine, land", { typeRating: "Skerry 460T" }, "unknown"],
    ["us-recency-day", "single-engine, land, SKERRY 460T", { typeRating: "Skerry 460T" }, "good"],
    ["eu-recency-day", "SEP (land)", {}, "good"],
    ["eu-recency-day", "SEP (land)", { engine: "turboprop" }, "unknown"],
    ["eu-recency-day", "SET (land)", { engine: "turboprop" }, "good"],
    ["eu-recency-day", "single-engine, land", {}, "unknown"],
    ["eu-sailplane-passengers", "TMG", { class: "touring-motor-glider" }, "good"],
    ["eu-sailplane-passengers", "glider", { class: "touring-motor-glider" }, "unknown"],
  ] as const)("%s: three landings on %s for %o are %s", (id, kind, aircraft, state) => {
    expect(three(id, kind, aircraft)).toBe(state);
  });

  it("an item of a class is offered for no other", () => {
    const small = smallBook({ checks: [] });
    const offered = (kind: Book["aircraft"]["class"]) =>
      pilotItemsFor("eu-part-nco", { aircraft: { ...small.aircraft, class: kind } }).map(
        ({ item }) => item.id,
      );
    expect(offered("touring-motor-glider")).toContain("eu-tmg-landings");
    expect(offered(undefined)).not.toContain("eu-tmg-landings");
    expect(offered("glider")).not.toContain("eu-glider-tow");
  });

  it.each(group("recency-night-"))("$id", (each) => {
    // the file's own shape: the pilot counts as a night landing what was made in the hours of the rule
    const landings = each.inputs["landings"] as readonly {
      readonly date: string;
      readonly fullStop: boolean;
    }[];
    const figure = figureOf({
      id: "us-recency-night",
      gear: "nose-wheel",
      today: text(each, "flight_date"),
      state: {
        experiences: landings.map(({ date, fullStop }) =>
          flown(date, { nightLandings: 1, nightFullStop: fullStop ? 1 : 0 }),
        ),
      },
    });
    expect(figure.recency?.have).toBe(each.expected["countNight"]);
    expect(legal(figure)).toBe(each.expected["legal"]);
  });

  it.each(group("fcl060-"))("$id", (each) => {
    const on = "2026-05-01";
    const [all, night] = [
      Number(each.inputs["dayOrNightLandings90d_count"]),
      Number(each.inputs["nightLandings90d_count"]),
    ];
    const experiences = [flown(on, { dayLandings: all - night, nightLandings: night, nightFullStop: night })];
    const state = { experiences };
    const asked = { gear: "nose-wheel", today: "2026-06-01", state } as const;
    const day = figureOf({ id: "eu-recency-day", ...asked });
    const dark = figureOf({ id: "eu-recency-night", ...asked });
    const needsNight = each.inputs["night"] === true && each.inputs["holdsInstrumentRating"] === false;
    const failing = [
      ...(legal(day) ? [] : ["FCL.060(b)(1)"]),
      ...(needsNight && !legal(dark) ? ["FCL.060(b)(2)"] : []),
    ];
    expect(failing).toEqual(each.expected["failing"]);
  });
});

describe("medical certificates by class and age", () => {
  it.each(group("medical-", CALENDAR))("$id", (each) => {
    const grade = Number(each.inputs["class"]);
    const given = {
      on: text(each, "examination_date"),
      born: text(each, "birth_date"),
      class: grade === 1 ? 1 : grade === 2 ? 2 : 3,
    } as const;
    const kinds: readonly (readonly [string, Medical])[] = [
      ["private_lastValid_date", "us-private"],
      ["commercial_lastValid_date", "us-commercial"],
      ["atpPic_lastValid_date", "us-airline"],
    ];
    for (const [name, kind] of kinds)
      if (each.expected[name] !== undefined) expect(medicalUntil(kind, given)).toBe(each.expected[name]);
  });

  it.each(group("easa-class2", CALENDAR))("$id", (each) => {
    const given = { on: text(each, "examination_date"), born: text(each, "birth_date") };
    expect(medicalUntil("eu-class-2", given)).toBe(each.expected["valid_until_date"]);
  });

  it("a class that does not serve for a flight has no last day for it", () => {
    const given = { on: "2026-01-10", born: "1990-01-01", class: 3 } as const;
    expect(medicalUntil("us-commercial", given)).toBeUndefined();
    expect(medicalUntil("us-airline", { ...given, class: 2 })).toBeUndefined();
  });
});

it("takes up every case of the file", () => {
  expect(CASES.filter(({ id }) => !tried.has(id)).map(({ id }) => id)).toEqual([]);
});
