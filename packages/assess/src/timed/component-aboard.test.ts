import type { Book, TimedItem } from "@witnessmark/book";
import {
  type AircraftState,
  type ComponentMove,
  type CounterReading,
  type Done,
  emptyState,
} from "@witnessmark/ledger";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { book as smallBook } from "../testing/small-book.ts";
import { componentAboard, componentRan } from "./component-aboard.ts";
import { type TimedFigure, timedFigures } from "./timed-figures.ts";

const ORIGIN = {
  event: "e",
  device: "d",
  deviceSeq: 1,
  author: { id: "p", name: "MK", role: "pilot" },
  hlc: "0",
  recordedAt: "2020-01-01T00:00:00Z",
} as const;

const read = (on: string, total: number): CounterReading => ({
  ...ORIGIN,
  at: `${on}T12:00:00Z`,
  at_ms: Date.parse(`${on}T12:00:00Z`),
  shown: total,
  total,
  backwards: false,
});

const fitted = (
  on: string,
  serial: string,
  ran: Record<string, number>,
  counters?: Record<string, number>,
): ComponentMove => ({
  ...ORIGIN,
  component: "magneto",
  serial,
  on,
  ran,
  ...(counters === undefined ? {} : { counters }),
  fitted: true,
});
const removed = (on: string, serial: string, ran: Record<string, number>): ComponentMove => ({
  ...ORIGIN,
  component: "magneto",
  serial,
  on,
  ran,
  fitted: false,
});
const done = (on: string, hours: number, serial?: string): Done => ({
  ...ORIGIN,
  item: "magneto",
  on,
  counters: { hours },
  by: "a licensed mechanic",
  ...(serial === undefined ? {} : { serial }),
});

interface Setting {
  readonly moves: readonly ComponentMove[];
  readonly readings: readonly CounterReading[];
  readonly dones?: readonly Done[];
  readonly endsLife?: boolean;
  readonly every?: number;
}

const stateOf = ({ moves, readings, dones = [] }: Setting): AircraftState => ({
  ...emptyState("ZZ-SML"),
  componentMoves: moves,
  counters: new Map([["hours", readings]]),
  timedDone: new Map([["magneto", dones]]),
});

function figureOf(setting: Setting): TimedFigure {
  const item: TimedItem = {
    id: "magneto",
    name: "Magneto",
    about: "component",
    component: "magneto",
    limits: [{ by: "counter", counter: "hours", every: setting.every ?? 500 }],
    combine: "first",
    recurring: true,
    endsLife: setting.endsLife ?? false,
    why: "It wears.",
  };
  const book: Book = {
    ...smallBook({ checks: [] }),
    counters: [{ id: "hours", name: "Airframe hours", of: "airframe", unit: "h" }],
    timedItems: [item],
  };
  const [figure] = timedFigures({
    book,
    state: stateOf(setting),
    flight: null,
    clock: { now_ms: Date.parse("2026-06-01T12:00:00Z"), offset_min: 0 },
    pilot: "p",
  });
  if (figure === undefined) throw new Error("expected one figure");
  return figure;
}

const left = ({ nearest }: TimedFigure): number | undefined =>
  nearest?.by === "counter" ? nearest.left : undefined;
const lacks = ({ nearest }: TimedFigure): string | undefined =>
  nearest?.by === "unknown" ? nearest.lacks : undefined;

// worked by hand: what it had run, and what the aircraft ran since
describe("a life goes with the component from aircraft to aircraft", () => {
  it("one that had run 420 h elsewhere has 500 − 420 − 30 = 50 h left after 30 h here", () => {
    const figure = figureOf({
      moves: [fitted("2026-01-10", "M-17", { hours: 420 }, { hours: 1000 })],
      readings: [read("2026-01-10", 1000), read("2026-05-01", 1030)],
      endsLife: true,
    });
    expect(left(figure)).toBeCloseTo(50, 9);
    expect(figure.state).toBe("good");
  });

  it("an inspection or repair in between stretches no life", () => {
    const figure = figureOf({
      moves: [fitted("2026-01-10", "M-17", { hours: 480 }, { hours: 1000 })],
      readings: [read("2026-01-10", 1000), read("2026-05-01", 1030)],
      dones: [done("2026-05-01", 1030)],
      endsLife: true,
    });
    expect(left(figure)).toBeCloseTo(-10, 9);
    expect(figure.state).toBe("past");
  });

  it("without what it had run when it was fitted nothing is known, whatever else was done", () => {
    const figure = figureOf({
      moves: [fitted("2026-01-10", "M-17", {}, { hours: 1000 })],
      readings: [read("2026-05-01", 1030)],
      dones: [done("2026-05-01", 1030)],
      endsLife: true,
    });
    expect(figure.state).toBe("unknown");
    expect(lacks(figure)).toBe("what number M-17 had run when it was fitted");
  });
});

describe("what is due again and again counts for the component that is aboard", () => {
  const readings = [read("2025-01-01", 900), read("2026-01-10", 1000), read("2026-05-01", 1030)];

  it("what was done to the one before it does not count", () => {
    const figure = figureOf({
      moves: [fitted("2026-01-10", "M-17", { hours: 420 }, { hours: 1000 })],
      readings,
      dones: [done("2025-12-01", 980)],
    });
    expect(lacks(figure)).toBe("when it was last done");
  });

  it("what was done to it on another aircraft does, by its own hours: done at 300 h, so due at 800 h of its own", () => {
    const figure = figureOf({
      moves: [fitted("2026-01-10", "M-17", { hours: 420 }, { hours: 1000 })],
      readings,
      dones: [done("2025-03-01", 300, "M-17"), done("2025-12-01", 980)],
    });
    expect(left(figure)).toBeCloseTo(800 - 450, 9);
  });

  it("and what was done to it here, by the aircraft's", () => {
    const figure = figureOf({
      moves: [fitted("2026-01-10", "M-17", { hours: 420 }, { hours: 1000 })],
      readings,
      dones: [done("2025-03-01", 300, "M-17"), done("2026-04-01", 1020)],
    });
    expect(left(figure)).toBeCloseTo(490, 9);
  });

  it("while none is fitted, it is open and says which was removed", () => {
    const figure = figureOf({
      moves: [
        fitted("2026-01-10", "M-17", { hours: 420 }, { hours: 1000 }),
        removed("2026-04-01", "M-17", { hours: 440 }),
      ],
      readings,
      dones: [done("2026-02-01", 1010)],
    });
    expect(figure.state).toBe("unknown");
    expect(lacks(figure)).toBe("which one is fitted: number M-17 was removed on 2026-04-01");
  });
});

describe("what the counter showed when it was fitted", () => {
  const of = (setting: Setting) => {
    const state = stateOf(setting);
    const aboard = componentAboard(state, "magneto");
    if (aboard === undefined) throw new Error("expected one aboard");
    return componentRan(state, aboard, "hours");
  };

  it("is taken from the last reading before, where nobody said: what may be its own counts against it", () => {
    const readings = [read("2026-01-01", 990), read("2026-02-01", 1015), read("2026-05-01", 1030)];
    expect(of({ moves: [fitted("2026-01-10", "M-17", { hours: 100 })], readings })).toBeCloseTo(140, 9);
  });

  it("is not known before the first reading", () => {
    const readings = [read("2026-05-01", 1030)];
    expect(of({ moves: [fitted("2026-01-10", "M-17", { hours: 100 })], readings })).toBeUndefined();
  });

  it("the move of the latest day counts, in whatever order they were written down", () => {
    const moves = [
      fitted("2026-03-01", "M-18", { hours: 0 }, { hours: 1020 }),
      removed("2026-03-01", "M-17", { hours: 440 }),
      fitted("2026-01-10", "M-17", { hours: 420 }, { hours: 1000 }),
    ];
    // of one day the one that was written down last: nothing was put in after it was taken out
    expect(componentAboard(stateOf({ moves, readings: [] }), "magneto")).toMatchObject({
      serial: "M-17",
      isFitted: false,
    });
    const inOrder = [moves[2], moves[1], moves[0]].flatMap((move) => (move === undefined ? [] : [move]));
    expect(of({ moves: inOrder, readings: [read("2026-05-01", 1030)] })).toBeCloseTo(10, 9);
  });
});

it("moving it to another aircraft and back leaves its life as if it had stayed on one", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 400 }),
      fc.integer({ min: 0, max: 90 }),
      fc.integer({ min: 0, max: 90 }),
      (ran, elsewhere, here) => {
        const figure = figureOf({
          moves: [
            fitted("2025-01-10", "M-17", { hours: ran }, { hours: 1000 }),
            removed("2025-06-01", "M-17", { hours: ran + 50 }),
            fitted("2026-01-10", "M-17", { hours: ran + 50 + elsewhere }, { hours: 1200 }),
          ],
          readings: [read("2025-01-10", 1000), read("2026-01-10", 1200), read("2026-05-01", 1200 + here)],
          endsLife: true,
          every: 2000,
        });
        expect(left(figure)).toBeCloseTo(2000 - ran - 50 - elsewhere - here, 6);
      },
    ),
    { numRuns: 50 },
  );
});
