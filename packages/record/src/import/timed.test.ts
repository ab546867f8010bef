import type { TimedFigure } from "@witnessmark/assess";
import { type Book, type Counter, readBook, smallBookText, type TimedLimit } from "@witnessmark/book";
import {
  type AddedTimedItem,
  type AircraftState,
  type Done,
  type EventDraft,
  emptyState,
} from "@witnessmark/ledger";
import { beforeAll, describe, expect, it } from "vitest";
import { timedCsv } from "../timed-csv.ts";
import type { ImportAnswers } from "./answer.ts";
import { intervalText, readInterval } from "./intervals.ts";
import { readTable } from "./table.ts";
import { readTimed, timedColumns, timedDrafts } from "./timed.ts";

const BUNDLE = "0199f000-0000-7000-8000-000000000001";
const ORIGIN = {
  event: "e",
  device: "d",
  deviceSeq: 1,
  author: { id: "p", name: "MK", role: "pilot" },
  hlc: "0",
  recordedAt: "2031-05-04T10:00:00Z",
} as const;
const HOURS: Counter = { id: "airframe-hours", name: "Airframe hours", of: "airframe", unit: "h" };
const ENGINE: Counter = { id: "engine-hours", name: "Engine hours", of: "engine", unit: "h" };
const LANDINGS: Counter = { id: "landings", name: "Landings", of: "airframe", unit: "1" };

describe("an interval", () => {
  const counterFor = (unit: "h" | "1") => (unit === "h" ? HOURS.id : LANDINGS.id);
  it.each<[string, "first" | "later", readonly TimedLimit[]]>([
    ["100 h", "first", [{ by: "counter", counter: "airframe-hours", every: 100 }]],
    [
      "50 hours or 6 months",
      "first",
      [
        { by: "counter", counter: "airframe-hours", every: 50 },
        { by: "months", months: 6 },
      ],
    ],
    ["12 calendar months", "first", [{ by: "calendar-months", months: 12 }]],
    [
      "2 years and 500 landings",
      "later",
      [
        { by: "months", months: 24 },
        { by: "counter", counter: "landings", every: 500 },
      ],
    ],
    ["until 2028-02-29", "first", [{ by: "date", on: "2028-02-29" }]],
    ["28-day data cycle", "first", [{ by: "data-cycle" }]],
    ["as printed on it", "first", [{ by: "printed" }]],
  ])("%s is read, and written so that it reads the same", (text, combine, limits) => {
    expect(readInterval(text, counterFor)).toEqual({ ok: true, limits, combine });
    expect(readInterval(intervalText({ limits, combine }, [HOURS, LANDINGS]), counterFor)).toEqual({
      ok: true,
      limits,
      combine,
    });
  });

  it.each(["", "often", "0 days", "1.5 months", "100", "100 furlongs", "until 2027-02-29"])(
    "%j is none",
    (text) => {
      expect(readInterval(text, counterFor).ok).toBe(false);
    },
  );
});

describe("timed items of a file", () => {
  let book: Book;

  beforeAll(async () => {
    const read = await readBook(smallBookText, "small.yaml");
    if (!read.ok) throw new Error("expected the small book to read");
    book = {
      ...read.book,
      counters: [HOURS, LANDINGS],
      timedItems: [
        {
          id: "annual",
          name: "Yearly inspection",
          about: "aircraft",
          limits: [{ by: "calendar-months", months: 12 }],
          combine: "first",
          recurring: true,
          endsLife: false,
          why: "Invented.",
        },
      ],
    };
  });

  const read = (
    text: string,
    answers: ImportAnswers = {},
    state: AircraftState = emptyState("ZZ-SML"),
    of = book,
  ) => {
    const table = readTable(text);
    if (!table.ok) throw new Error(`expected a table, found ${table.found}`);
    const columns = timedColumns(table.table.headings, of.counters);
    return readTimed({
      book: of,
      state,
      table: table.table,
      columns,
      answers,
      today: "2031-05-04",
      person: "MK",
    });
  };

  it("are of the one who brings them in where they are a pilot's own, and of the aircraft where they are not", () => {
    const { rows } = read(`Item;About;Interval;Last done
Flight review;pilot;24 calendar months;2031-04-01
Fire bottle;aircraft;12 months;2031-04-01`);
    const done = timedDrafts(rows, BUNDLE)
      .flat()
      .filter(({ type }) => type === "timedItem.done");
    expect(done).toMatchObject([{ body: { holder: "MK" } }, { body: { item: "fire-bottle" } }]);
    expect(done[1]?.body).not.toHaveProperty("holder");
  });

  it("are added where nobody follows them, and done where they were done", () => {
    const { rows } = read(`Item;Interval;Last done;Airframe hours;Done by;Reference
Yearly inspection;;12.03.2031;1210,5;The workshop;WO 7
Hose, left;50 h or 6 months;2031-04-01;1220,0;;
Fire bottle;12 months;;;;`);
    expect(timedDrafts(rows, BUNDLE).flat()).toMatchObject([
      {
        type: "timedItem.done",
        body: {
          item: "annual",
          on: "2031-03-12",
          counters: { "airframe-hours": 1210.5 },
          by: "The workshop",
          reference: "WO 7",
        },
      },
      { type: "timedItem.added", body: { item: { id: "hose-left", name: "Hose, left", combine: "first" } } },
      { type: "timedItem.done", body: { item: "hose-left", on: "2031-04-01", by: "not said in the file" } },
      {
        type: "timedItem.added",
        body: { item: { id: "fire-bottle", limits: [{ by: "months", months: 12 }] } },
      },
    ]);
  });

  it("come back from what is written as CSV: what was done, when, at which hours, by whom", () => {
    const done: Done = {
      event: "e",
      device: "d",
      deviceSeq: 1,
      author: { id: "p", name: "AB", role: "pilot" },
      hlc: "1",
      recordedAt: "2031-03-12T09:00:00Z",
      item: "hose",
      on: "2031-03-12",
      counters: { "airframe-hours": 1210.5 },
      by: "The workshop",
      reference: "WO 7",
    };
    const item = {
      id: "hose",
      name: "Hose",
      about: "aircraft",
      limits: [
        { by: "counter", counter: "airframe-hours", every: 50 },
        { by: "months", months: 6 },
      ],
      combine: "first",
      recurring: true,
      endsLife: false,
      why: "Brought in from a file.",
    } as const;
    const figure: TimedFigure = {
      item,
      isInBook: false,
      last: done,
      limits: [
        {
          by: "counter",
          counter: HOURS,
          at: 1260.5,
          from: 1210.5,
          now: 1220,
          left: 40.5,
          past: false,
          pastAfterFlight: false,
        },
        { by: "date", on: "2031-09-12", left_d: 131, past: false, pastAfterFlight: false },
      ],
      nearest: undefined,
      state: "good",
      needed: true,
    };
    const csv = timedCsv([figure], book.counters);
    const { on, counters, by, reference } = done;
    expect(timedDrafts(read(csv).rows, BUNDLE).flat()).toEqual([
      { type: "timedItem.added", body: { item, import: BUNDLE } },
      { type: "timedItem.done", body: { item: "hose", on, counters, by, reference, import: BUNDLE } },
    ]);
    const state: AircraftState = {
      ...emptyState("ZZ-SML"),
      timedAdded: new Map([["hose", { ...done, item }]]),
      timedDone: new Map([["hose", [done]]]),
    };
    expect(read(csv, {}, state).rows.map((row) => row.ok && row.again)).toEqual([true, true]);
  });

  it("under two names that would have one id are two items, and none takes the id of another", () => {
    const { rows } = read(
      "Item,Interval\nAnnual.,1 year\nHose A,50 h\nHose-A,60 h\nhose a,50 h\n滑油,10 h\n燃油,10 h",
    );
    const ids = timedDrafts(rows, BUNDLE)
      .flat()
      .flatMap((draft) => (draft.type === "timedItem.added" ? [draft.body.item.id] : []));
    expect(ids).toEqual(["annual-2", "hose-a", "hose-a-2", "item", "item-2"]);
  });

  it("with more cells than headings are not read askew", () => {
    const [row] = read("Item,Last done,Airframe hours\nYearly inspection,2031-04-01,1220,5").rows;
    expect(row).toMatchObject({ ok: false, faults: [{ found: "4 cells" }] });
  });

  it("with hours that two counters show are asked for, and not guessed", () => {
    const two = { ...book, counters: [HOURS, ENGINE] };
    const text = "Item,Interval\nHose,50 h";
    const state = emptyState("ZZ-SML");
    expect(read(text, {}, state, two).questions.map(({ id }) => id)).toEqual(["counter:h"]);
    expect(
      timedDrafts(read(text, { "counter:h": "engine-hours" }, state, two).rows, BUNDLE).flat(),
    ).toMatchObject([{ body: { item: { limits: [{ counter: "engine-hours", every: 50 }] } } }]);
  });

  it.each([
    ["Hose,,2031-04-01,1220", "Interval", "Hose"],
    ["Hose,often,2031-04-01,1220", "Interval", "often"],
    ["Yearly inspection,,2031-02-30,1220", "Last done", "2031-02-30"],
    ["Yearly inspection,,2031-05-05,1220", "Last done", "2031-05-05"],
    ["Yearly inspection,,2031-04-01,many", "Airframe hours", "many"],
    [",50 h,2031-04-01,1220", "Item", "nothing"],
  ])("of which a row is wrong say so at its place: %s", (row, column, found) => {
    const [first] = read(`Item,Interval,Last done,Airframe hours\n${row}`).rows;
    expect(first).toMatchObject({ ok: false, faults: [{ row: 2, column, found }] });
  });

  it("broken off anywhere and brought in again are there once each, and nothing is lost", () => {
    const csv =
      "Item,Interval,Last done\nHose,50 h,2031-01-01\nHose,50 h,2031-02-01\nBelts,12 months,2031-03-01\nYearly inspection,,2031-04-01";
    const whole = timedDrafts(read(csv).rows, BUNDLE).flat();
    for (let kept = 0; kept <= whole.length; kept += 1) {
      const first = whole.slice(0, kept);
      const again = timedDrafts(read(csv, {}, stateAfter(first)).rows, "b2").flat();
      const tellOf = (draft: EventDraft): string =>
        draft.type === "timedItem.added"
          ? `added ${draft.body.item.id}`
          : draft.type === "timedItem.done"
            ? `done ${draft.body.item} ${draft.body.on}`
            : draft.type;
      expect([...first, ...again].map(tellOf).toSorted()).toEqual(whole.map(tellOf).toSorted());
    }
  });
});

/** The state once these were kept. */
function stateAfter(drafts: readonly EventDraft[]): AircraftState {
  const timedAdded = new Map<string, AddedTimedItem>();
  const timedDone = new Map<string, Done[]>();
  for (const draft of drafts) {
    if (draft.type === "timedItem.added") timedAdded.set(draft.body.item.id, { ...ORIGIN, ...draft.body });
    if (draft.type === "timedItem.done")
      timedDone.set(draft.body.item, [
        ...(timedDone.get(draft.body.item) ?? []),
        { ...ORIGIN, ...draft.body },
      ]);
  }
  return { ...emptyState("ZZ-SML"), timedAdded, timedDone };
}
