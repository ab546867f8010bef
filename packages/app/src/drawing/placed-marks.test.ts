import {
  ARCHETYPES,
  type Book,
  distanceOutside_m,
  drawnFrom,
  outlineOf,
  type Point,
  type Stance,
  walkLine,
} from "@witnessmark/book";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { demoBook } from "../testing/told-ledger.ts";
import type { DrawingView } from "./drawing-props.ts";
import type { Stood } from "./mark-places.ts";
import { markUnder, type PlacedMarks, placedMarks } from "./placed-marks.ts";

/** What of a book stands on a drawing. */
interface Drawn {
  readonly geometry: Book["geometry"];
  readonly points: readonly Pick<Point, "id" | "place">[];
  readonly stances: readonly Stance[];
}

const demos = new Map<string, Promise<Drawn>>();

/** A demo book is read once for all that is asked of it. */
async function demo(name: string): Promise<Drawn> {
  const known = demos.get(name);
  if (known !== undefined) return known;
  const read = demoBook(name).then(({ geometry, points, stances }) => ({
    geometry,
    points: [...points.values()],
    stances,
  }));
  demos.set(name, read);
  return read;
}

async function begun(id: string): Promise<Drawn> {
  const archetype = ARCHETYPES.find((each) => each.id === id);
  if (archetype === undefined) throw new Error(`expected an archetype, found none called ${id}`);
  const figures = { registration: "ZZ-NEW", type: "New 1", ...archetype.figures };
  return { ...drawnFrom(figures), stances: [] };
}

interface Box {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly halfX: number;
  readonly halfY: number;
}

/** Every label and every mark as the box that it takes. */
const boxesOf = (book: Drawn, { marks, numbers, labels }: PlacedMarks, mark_px: number): readonly Box[] => [
  ...marks.map(({ ids, x, y }) => ({
    name: `mark ${ids[0]}`,
    x,
    y,
    halfX: mark_px / 2,
    halfY: mark_px / 2,
  })),
  ...[...numbers].map(([id, { x, y }]) => {
    const digits = String(book.stances.findIndex((stance) => stance.id === id) + 1).length;
    return { name: `number ${id}`, x, y, halfX: digits * 4.25, halfY: 7.5 };
  }),
  ...[...labels].map(([id, { x, y }]) => ({ name: `label ${id}`, x, y, halfX: 4 * 3.6, halfY: 7.5 })),
];

const overlapping = (boxes: readonly Box[]): readonly string[] =>
  boxes.flatMap((a, index) =>
    boxes
      .slice(index + 1)
      .flatMap((b) =>
        Math.abs(a.x - b.x) >= a.halfX + b.halfX - 1e-6 || Math.abs(a.y - b.y) >= a.halfY + b.halfY - 1e-6
          ? []
          : [`${a.name} on ${b.name}`],
      ),
  );

const marksOf = (book: Drawn) => book.points.map(({ id, place }) => ({ id, place, label: "Abcd" }));
const stopsOf = (book: Drawn) =>
  book.stances.map((stance, index) => ({ stance, number: index + 1, state: "ahead" as const }));

describe.each([
  ...(["zz-skr", "zz-dun", "zz-brk"] as const).map((name) => [name, () => demo(name)] as const),
  ...ARCHETYPES.map(({ id }) => [id, () => begun(id)] as const),
])("the marks of %s", (_, read) => {
  it("lie on no other mark, and no label on a label or a mark, at any zoom and turn, from anywhere", async () => {
    const book = await read();
    expect(book.points.length).toBeGreaterThan(20);
    fc.assert(
      fc.property(
        fc.constantFrom<DrawingView>("plan", "plan", "side", "front"),
        fc.double({ min: Math.log(10), max: Math.log(260), noNaN: true }),
        fc.integer({ min: -180, max: 180 }),
        fc.constantFrom(16, 48),
        (view, logScale, turn_deg, apart_px) => {
          const camera = {
            pxPerMetre: Math.exp(logScale),
            originX_px: 0,
            originY_px: 0,
            turn_deg: view === "plan" ? turn_deg : 0,
          };
          const placed = placedMarks(
            view,
            camera,
            marksOf(book),
            { stops: stopsOf(book) },
            { mark_px: 16, apart_px, isNearest: logScale > 5.5 },
          );
          expect(overlapping(boxesOf(book, placed, 16))).toEqual([]);
          // a target has its 48 px to itself
          for (const [index, a] of placed.marks.entries())
            for (const b of placed.marks.slice(index + 1))
              expect(Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y))).toBeGreaterThan(apart_px - 1e-6);
          expect(placed.marks.flatMap(({ ids }) => ids).toSorted()).toEqual(
            book.points.map(({ id }) => id).toSorted(),
          );
        },
      ),
      { numRuns: 16 },
    );
  });

  it("are on the aircraft, and stand each by itself once it is looked at from near", async () => {
    const book = await read();
    const parts = outlineOf(book.geometry);
    for (const { id, place } of book.points)
      expect([
        id,
        Math.min(...parts.map((part) => distanceOutside_m(part, [place[0], place[1]]))) < 0.31,
      ]).toEqual([id, true]);
    const camera = { pxPerMetre: 260, originX_px: 0, originY_px: 0 };
    const crowding = { mark_px: 16, apart_px: 48, isNearest: true };
    const near = placedMarks("plan", camera, marksOf(book), { stops: stopsOf(book) }, crowding);
    expect(near.marks.filter(({ ids }) => ids.length > 1).map(({ ids }) => ids)).toEqual([]);
  });

  it("leave room for the number of each stance when the walk is looked at as a whole on a tablet", async () => {
    const book = await read();
    const camera = { pxPerMetre: 42, originX_px: 0, originY_px: 0 };
    const stops = stopsOf(book);
    const placed = placedMarks(
      "plan",
      camera,
      marksOf(book).map(({ id, place }) => ({ id, place })),
      { stops },
      {
        mark_px: 16,
        apart_px: 16,
        isNearest: false,
      },
    );
    const outside = book.stances.filter(({ posture }) => posture !== "inside").map(({ id }) => id);
    expect(outside.filter((id) => !placed.numbers.has(id))).toEqual([]);
  });
});

describe("a finger on marks", () => {
  const stood = (id: string, x: number): Stood => ({ ids: [id], x, y: 0, half_px: 7, ofX: x, ofY: 0 });
  const marks = [stood("tyre", 0), stood("brake", 14), stood("leg", 60)];

  it.each([
    ["on one of two that stand together", 0, ["tyre"]],
    ["a little beside it", -6, ["tyre"]],
    ["far from all but one", 80, ["leg"]],
    ["between two", 7, ["tyre", "brake"]],
  ] as const)(
    "means the one that it is nearest to, and several only where it cannot tell: %s",
    (_, x, ids) => {
      expect(markUnder(marks, [x, 0], 24)?.several.map((each) => each.ids[0])).toEqual(ids);
    },
  );

  it("reaches all that is within it, so that what is selected can be taken hold of", () => {
    expect(markUnder(marks, [0, 0], 24)?.within.map((each) => each.ids[0])).toEqual(["tyre", "brake"]);
    expect(markUnder(marks, [110, 0], 24)).toBeNull();
  });
});

describe("the numbers of a walk's stances", () => {
  const CAMERA = { pxPerMetre: 28, originX_px: 0, originY_px: 0 };
  const numbered = (book: Drawn, isNumberedInside: boolean) =>
    placedMarks(
      "plan",
      CAMERA,
      [],
      { stops: stopsOf(book) },
      { mark_px: 16, apart_px: 16, isNearest: false },
      {},
      { struts: book.geometry.wing.struts, isNumberedInside },
    ).numbers;

  it("stand at those inside too on paper, where no mark lies", async () => {
    const book = await demo("zz-brk");
    const inside = book.stances.filter(({ posture }) => posture === "inside").map(({ id }) => id);
    expect(inside.length).toBeGreaterThan(0);
    for (const id of inside) {
      expect(numbered(book, false).has(id)).toBe(false);
      expect(numbered(book, true).has(id)).toBe(true);
    }
  });

  it("lie beside the way from stance to stance, not on it", async () => {
    const book = await demo("zz-brk");
    const { trace } = walkLine(book.stances, undefined, (x_m, y_m) => [
      y_m * CAMERA.pxPerMetre,
      x_m * CAMERA.pxPerMetre,
    ]);
    const numbers = numbered(book, true);
    expect(numbers.size).toBe(book.stances.length);
    for (const [id, { x, y }] of numbers) {
      const digits = String(book.stances.findIndex((stance) => stance.id === id) + 1).length;
      const on = trace.filter(([a, b]) => Math.abs(a - x) < digits * 4.25 && Math.abs(b - y) < 7.5);
      expect(on, `the number of ${id}`).toEqual([]);
    }
  });
});
