import type { Sheet, SheetNote } from "@witnessmark/sheet";
import fc from "fast-check";
import { expect, it } from "vitest";
import { firstPage } from "./first-page.ts";

const note = (number: number, length: number): SheetNote => ({
  number,
  status: "caution",
  title: `Thing ${number}`,
  says: "w".repeat(length),
  margin: "1 mm",
});

const sheetWith = (numbers: number, why?: string): Sheet => ({
  title: "Go",
  status: "caution",
  registration: "ZZ-SML",
  type: "Pipit 1",
  date: "Thursday 12 November 2026",
  flight: {
    from: "ZZTW",
    to: "ZZQN",
    offBlocks: "09:10 UTC",
    figures: {
      rules: "visual rules",
      mass: { rows: [], open: ["who is aboard"] },
      numbers: Array.from({ length: numbers }, (_, index) => ({
        what: `Number ${index}`,
        needs: "1 m",
        has: "2 m",
        left: "1 m",
        status: why === undefined ? ("clear" as const) : ("open" as const),
        ...(why === undefined ? {} : { why }),
      })),
      tips: [],
      brief: { trip: [], aboard: [], fields: [], units: "" },
      aboard: 2,
    },
  },
  walk: "First walk of the day",
  counts: { stop: 0, caution: 0, open: 0, clear: 0 },
  marks: [],
  notes: [],
  alsoOpen: [],
  readings: [],
  holds: "Holds until 16:40: sunset",
  voidWhen: [],
  slip: [],
  caution: "",
  signature: null,
  restsOn: "",
  notice: "",
});

it("no note is lost or told twice, and their order stays, however many there are and however long", () => {
  fc.assert(
    fc.property(
      fc.array(fc.nat({ max: 900 }), { maxLength: 60 }),
      fc.nat({ max: 12 }),
      (lengths, numbers) => {
        const notes = lengths.map((length, index) => note(index + 1, length));
        const { here, overleaf } = firstPage({ ...sheetWith(numbers), notes });
        expect([...here, ...overleaf]).toEqual(notes);
      },
    ),
  );
});

it("with seven numbers there is room for some notes, and with more notes the rest goes overleaf", () => {
  const notes = Array.from({ length: 30 }, (_, index) => note(index + 1, 60));
  const { here, overleaf, numbers } = firstPage({ ...sheetWith(7), notes });
  expect(numbers?.here).toHaveLength(7);
  expect(here.length).toBeGreaterThanOrEqual(2);
  expect(overleaf.length).toBeGreaterThan(20);
});

it("of more numbers than have room as many stay as do, beside two notes, and the rest goes overleaf", () => {
  const notes = [note(1, 60), note(2, 60), note(3, 60)];
  const { here, numbers } = firstPage({ ...sheetWith(30), notes });
  expect(here.length).toBeGreaterThanOrEqual(2);
  expect(numbers?.here.length).toBeGreaterThan(4);
  expect((numbers?.here.length ?? 0) + (numbers?.overleaf.length ?? 0)).toBe(30);
});

it("what warns comes before numbers that are clear, where both have no room", () => {
  const long = "Why: ".padEnd(300, "x");
  const { here, numbers } = firstPage({ ...sheetWith(30), notes: [note(1, 80), note(2, 500)], why: long });
  expect(here.length).toBeGreaterThanOrEqual(1);
  expect(numbers?.overleaf.length).toBeGreaterThan(0);
});

it("numbers that are all open at length go overleaf whole, and leave their place to the notes", () => {
  const { here, numbers } = firstPage({
    ...sheetWith(9, "Not known: ".padEnd(140, "x")),
    notes: [note(1, 60)],
  });
  expect(numbers).toBeUndefined();
  expect(here).toHaveLength(1);
});

it("a stop is on the first page, before the numbers where both have no room", () => {
  const why = "Not known: ".padEnd(60, "x");
  const stop = { ...note(1, 60), status: "stop" as const };
  const least = [...Array(12).keys()].find(
    (count) => firstPage({ ...sheetWith(count, why), notes: [stop] }).numbers === undefined,
  );
  expect(least).toBeDefined();
  for (let count = 0; count < 12; count += 1)
    expect(firstPage({ ...sheetWith(count, why), notes: [stop] }).here).toEqual([stop]);
});

it("a flight that is not planned leaves more room, and what has none goes overleaf too: the slip is never torn apart", () => {
  const unplanned: Sheet = { ...sheetWith(0), flight: null };
  const notes = Array.from({ length: 30 }, (_, index) => note(index + 1, 60));
  const { here, overleaf, room } = firstPage({ ...unplanned, notes });
  expect(here.length).toBeGreaterThan(firstPage({ ...sheetWith(7), notes }).here.length);
  expect(overleaf.length).toBeGreaterThan(0);
  expect([...here, ...overleaf]).toEqual(notes);
  expect(room).toBeGreaterThanOrEqual(0);
  expect(firstPage({ ...unplanned, notes: notes.slice(0, 2) }).overleaf).toEqual([]);
});
