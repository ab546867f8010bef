import { band } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import { fromSI, type UnitId } from "@witnessmark/engine";
import { beforeAll, describe, expect, it } from "vitest";
import { demoBook } from "../testing/demo-ledger.ts";
import { type PlannedWalk, walkPaper } from "./walk-paper.ts";

type Verdicts = Parameters<typeof walkPaper>[3];

const NOTHING = { discrepancies: new Map() };

/** Every check and every piece of ground gear, at one stop: how they are grouped is the planner's affair. */
function wholeBook(book: Book): PlannedWalk {
  const [stance] = book.stances;
  if (stance === undefined) throw new Error("expected a stance in the demo's book");
  const steps = [
    ...book.groundGear.map((item) => ({ kind: "ground-gear" as const, id: item.id, item })),
    ...book.checks.map((check) => ({ kind: "check" as const, id: check.id, check })),
  ];
  return { kind: "first-of-day", stops: [{ number: 1, stance, steps }] };
}

/** The first figure in a text. */
const figureIn = (text: string): number => Number(/[−-]?\d+(\.\d+)?/.exec(text)?.[0]?.replace("−", "-"));

describe("the walk on paper", () => {
  let book: Book;
  beforeAll(async () => {
    book = await demoBook();
  });

  it("has a line for every check and every piece of ground gear, in the order of the walk", () => {
    const plan = wholeBook(book);
    const paper = walkPaper(book, NOTHING, plan, [], undefined);
    expect(paper.stops.flatMap(({ lines }) => lines.map(({ id }) => id))).toEqual(
      plan.stops.flatMap(({ steps }) => steps.map(({ id }) => id)),
    );
    expect(paper.lineCount).toBe(book.checks.length + book.groundGear.length);
  });

  it("says each limit at the temperature given, never milder than the limit itself", () => {
    const temperature = { value: -3, unit: "degC" as UnitId };
    const paper = walkPaper(book, NOTHING, wholeBook(book), [], temperature);
    const lines = new Map(paper.stops.flatMap((stop) => stop.lines.map((line) => [line.id, line])));
    let withLow = 0;
    for (const check of book.checks) {
      const gauge = check.reading === undefined ? undefined : book.gauges.get(check.reading.gauge);
      const low = band(check, book, temperature)?.low;
      if (gauge === undefined || low === undefined) continue;
      withLow += 1;
      const [words = ""] = lines.get(check.id)?.reading?.limits ?? [];
      expect(figureIn(words), `${check.id}: ${words}`).toBeGreaterThanOrEqual(fromSI(low, gauge.unit) - 1e-9);
    }
    expect(withLow).toBeGreaterThan(5);
  });

  it("without a temperature says what is right on several days, where the limit moves", () => {
    const paper = walkPaper(book, NOTHING, wholeBook(book), [], undefined);
    const readings = paper.stops.flatMap(({ lines }) => lines.flatMap(({ reading }) => reading ?? []));
    const tyre = readings.find(({ quantity }) => /tyre/.test(quantity));
    expect(tyre?.limits).toHaveLength(4);
    expect(tyre?.limits.map((words) => /at (.*)$/.exec(words)?.[1]?.replace("\u00A0", " "))).toEqual([
      "−10 °C",
      "5 °C",
      "20 °C",
      "35 °C",
    ]);
  });

  it("names what is known to be not right", () => {
    const discrepancies = new Map([
      ["a", { isOpen: true, words: "Left tyre: cut" }],
      ["b", { isOpen: false, words: "Beacon: out" }],
    ]);
    // of a discrepancy only these two are asked
    const state = { discrepancies } as unknown as Parameters<typeof walkPaper>[1];
    expect(walkPaper(book, state, wholeBook(book), [], undefined).known).toEqual(["Left tyre: cut"]);
  });

  it("names what was read outside its limit too, though it was answered as it should be", () => {
    const [, check] = book.checks;
    if (check === undefined) throw new Error("expected checks in the demo's book");
    const of = { title: "Left main tyre", working: { lines: [] }, evidence: [], sources: [] } as const;
    const stop = { status: "stop", because: ["low"], wayOut: ["air"] } as const;
    const verdicts: Verdicts = [
      {
        ...{ ...of, ...stop, id: `check:${check.id}`, topic: "check", says: "20.0 psi" },
        margin: { value: -3.5, unit: "psi", text: "3.5 psi under" },
      },
      { ...of, ...stop, id: "timed:oil", topic: "timed", title: "Oil change", says: "12 h over" },
      { ...of, id: "check:strut", topic: "check", title: "Strut", says: "seen", status: "clear" },
    ];
    expect(walkPaper(book, NOTHING, wholeBook(book), verdicts, undefined).known).toEqual([
      "Left main tyre: 3.5 psi under",
    ]);
  });

  it("has a box for each place where ground gear may be stowed, and none after a flight", () => {
    const gearLines = (kind: PlannedWalk["kind"]) =>
      walkPaper(book, NOTHING, { ...wholeBook(book), kind }, [], undefined).stops.flatMap(({ lines }) =>
        lines.filter((line) => line.kind === "ground-gear").map(({ stowedIn }) => stowedIn),
      );
    expect(gearLines("first-of-day")).toEqual(book.groundGear.map(({ stowedIn }) => stowedIn));
    expect(new Set(gearLines("after-flight").flat()).size).toBe(0);
  });

  it("has a line for what is in a tank where one looks into it and no reading is asked for", () => {
    const tank = book.loading?.tanks.find(({ readAt }) =>
      book.checks.some(({ point, reading }) => readAt.includes(point) && reading?.dimension === "volume"),
    );
    if (tank === undefined) throw new Error("expected a tank that is read in the demo's book");
    const linesOf = (of: Book) =>
      walkPaper(of, NOTHING, wholeBook(of), [], undefined).stops.flatMap(({ lines }) =>
        lines.filter(({ tanks }) => tanks.some(({ name }) => name === tank.name)),
      );
    expect(linesOf(book)).toEqual([]);
    const unread = { ...book, checks: book.checks.map(({ reading: _reading, ...check }) => check) };
    expect(linesOf(unread)).toHaveLength(tank.readAt.length);
    expect(linesOf(unread)[0]?.tanks.every(({ unit }) => unit === "L" || unit === "US gal")).toBe(true);
  });

  it("asks for a decision before a flight, not after one", () => {
    const before = (kind: PlannedWalk["kind"]) =>
      walkPaper(book, NOTHING, { ...wholeBook(book), kind }, [], undefined).isBeforeFlight;
    expect([before("first-of-day"), before("turnaround"), before("after-flight")]).toEqual([
      true,
      true,
      false,
    ]);
  });
});
