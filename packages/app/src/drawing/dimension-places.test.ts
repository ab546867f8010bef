import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { demoBook } from "../testing/told-ledger.ts";
import { type Camera, fromDatum } from "./camera.ts";
import { dimensionPlaces, type PlacedDimension, textSquares } from "./dimension-places.ts";
import { fromDatumWords, metres, overallDimensions, placeDimensions, placeWords } from "./dimensions.ts";
import type { Place, Square } from "./label-places.ts";
import { placedMarks } from "./placed-marks.ts";
import { onPlaneOf } from "./view-plane.ts";

/** Nose to the left, as on the pages of a book. */
const NOSE_LEFT: Camera = { pxPerMetre: 40, originX_px: 0, originY_px: 0, turn_deg: -90 };
const LEVEL: Camera = { ...NOSE_LEFT, turn_deg: 0 };

const touch = (a: Square, b: Square): boolean =>
  Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y)) < a.half_px + b.half_px - 0.01;
const lieOn = (figures: readonly Square[], others: readonly Square[]): number =>
  figures.filter((figure) => others.some((other) => touch(figure, other))).length;

const SPAN = { from: [-5, 7], to: [5, 7], off: [0, 1], row: 1, text: "10.00 m" } as const;
const mark = ([x, y]: readonly [number, number]): Square => ({ x, y, half_px: 7 });
const middle = ({ from, to }: PlacedDimension): Place => ({
  x: (from[0] + to[0]) / 2,
  y: (from[1] + to[1]) / 2,
});

describe("the figures of a measure", () => {
  it("stand in the middle of its line where that is free, and along it where a mark is there", () => {
    const [free] = dimensionPlaces([SPAN], LEVEL, [], undefined);
    if (free === undefined) throw new Error("expected the measure");
    expect(free.at).toEqual(middle(free));
    expect(free.inline).toBe(true);
    const inTheWay = mark([free.at.x, free.at.y]);
    const [moved] = dimensionPlaces([SPAN], LEVEL, [inTheWay], undefined);
    if (moved === undefined) throw new Error("expected the measure");
    expect(moved.at.y).toBe(free.at.y);
    expect(lieOn(textSquares(moved), [inTheWay])).toBe(0);
  });

  it("stand past the end of a short line, where nothing cuts them off", () => {
    const short = {
      from: [0, -2],
      to: [0.4, -2],
      off: [0, -1],
      row: 1,
      text: "0.40 m aft of the datum",
    } as const;
    const [aft] = dimensionPlaces([short], LEVEL, [], { left: -60, right: 400, top: -150, bottom: 50 });
    expect(aft?.at.x).toBeGreaterThan(16 + 100); // 0.4 m are 16 px, and half the words more than 100
    const [fore] = dimensionPlaces([short], LEVEL, [], { left: -400, right: 60, top: -150, bottom: 50 });
    expect(fore?.at.x).toBeLessThan(-100);
  });

  it("lie on no mark and on no other figures while there is a place for them, wherever the marks are", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: -250, max: 250 }), fc.integer({ min: 230, max: 360 })), {
          maxLength: 3,
        }),
        (places) => {
          const marks = places.map(mark);
          const [placed] = dimensionPlaces([SPAN], LEVEL, marks, undefined);
          if (placed === undefined) throw new Error("expected the measure");
          // seven places along 400 px: three marks of 14 px leave one of them
          expect(lieOn(textSquares(placed), marks)).toBe(0);
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe("a point of a book with its measures", () => {
  it.each(["zz-skr", "zz-brk", "zz-dun"])("has labels, figures and points apart: %s", async (name) => {
    const { geometry, points } = await demoBook(name);
    for (const view of ["plan", "side"] as const) {
      for (const inHand of points.values()) {
        const marks = [...points.values()].map(({ id, place }) => ({
          id,
          place,
          size: id === inHand.id ? ("large" as const) : ("small" as const),
          ...(id === inHand.id ? { label: "R main tyre" } : {}),
        }));
        const placed = placedMarks(
          view,
          view === "plan" ? NOSE_LEFT : LEVEL,
          marks,
          undefined,
          { mark_px: 14, apart_px: 14, isNearest: false },
          { dimensions: placeDimensions(view, inHand.place, geometry, metres), datumOf: geometry },
        );
        const figures = placed.dimensions.map(textSquares);
        const drawn = placed.marks.map(({ x, y }) => mark([x, y]));
        for (const [index, its] of figures.entries()) {
          const others = figures.filter((_, other) => other !== index).flat();
          expect([inHand.id, view, lieOn(its, others)]).toEqual([inHand.id, view, 0]);
          expect([inHand.id, view, lieOn(its, drawn)]).toEqual([inHand.id, view, 0]);
        }
        const label = placed.labels.get(inHand.id);
        if (label === undefined) continue;
        // 11 letters of about 7 px: five squares of 15 px in a row
        const letters = [-2, -1, 0, 1, 2].map((step) => ({
          x: label.x + step * 15.5,
          y: label.y,
          half_px: 7,
        }));
        expect([inHand.id, view, lieOn(letters, figures.flat())]).toEqual([inHand.id, view, 0]);
      }
    }
  });

  it("is measured from the datum: aft of it or ahead of it, to the left and to the right, up from the ground", async () => {
    const { geometry } = await demoBook("zz-brk");
    const words = (view: "plan" | "side", place: readonly [number, number, number]) =>
      placeDimensions(view, place, geometry, metres).map(({ text }) => text);
    expect(words("plan", [1.52, -1.07, 0.22])).toEqual(["1.52 m aft of the datum", "1.07 m"]);
    expect(words("side", [-0.35, 1, 0.22])).toEqual(["0.35 m ahead of the datum", "0.22 m"]);
    expect(words("plan", [0, 0, 1])).toEqual([]);
    const [along] = placeDimensions("side", [-0.35, 1, 0.22], geometry, metres);
    expect(along?.from[0]).toBe(0);
    expect(along?.to[0]).toBe(onPlaneOf("side", [-0.35, 1, 0.22])[0]);
    expect(fromDatumWords(0, metres)).toBe("0.00 m aft of the datum");
    expect(placeWords([-0.35, -1, 0.22])).toBe("0.35 m ahead of the datum, 1.00 m left, 0.22 m up");
  });
});

describe("an aircraft as a whole", () => {
  it("has span and length from above, length and height from the side, wherever its datum lies", async () => {
    const { geometry } = await demoBook("zz-brk");
    const of = (view: "plan" | "side" | "front") =>
      overallDimensions(view, geometry, metres).map(({ text }) => text);
    expect(of("plan")).toEqual([of("front")[0], of("side")[0]]);
    expect(of("side")[1]).toBe(of("front")[1]);
    const [span] = overallDimensions("plan", geometry, metres);
    const [from, to] = [span?.from, span?.to].map((end) => fromDatum(LEVEL, end ?? [0, 0]));
    expect(((to?.[0] ?? 0) - (from?.[0] ?? 0)) / LEVEL.pxPerMetre).toBeCloseTo(
      Number.parseFloat(of("plan")[0] ?? ""),
      2,
    );
  });
});
