import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Box, boxOf, column, freest, shared } from "./place-words.ts";

const ROOM = { top: 20, bottom: 400 };
const named = (wanted: readonly number[]) =>
  wanted.map((y) => ({ x: 100, y, anchor: "start", text: "Landing" }) as const);
const placed = (wanted: readonly number[], apart_px: number, taken: readonly Box[] = []) =>
  column(named(wanted), apart_px, ROOM, taken);

describe("names in a column", () => {
  it("stand apart, in their order, and in the picture, however close their marks are", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 20, max: 400, noNaN: true }), { maxLength: 6 }), (marks) => {
        const ys = placed(
          marks.toSorted((a, b) => a - b),
          19,
        );
        ys.forEach((y, rank) => {
          expect(y).toBeGreaterThanOrEqual(rank === 0 ? ROOM.top : (ys[rank - 1] ?? 0) + 19);
          expect(y).toBeLessThanOrEqual(ROOM.bottom);
        });
      }),
    );
  });

  it("stay where they are where there is room, as near as they are tried", () => {
    expect(placed([50, 100, 200], 19)).toEqual([50, 100, 200]);
  });

  it("move as little as can be, all together: 100 and 104 are moved by sixteen", () => {
    const [first = 0, second = 0] = placed([100, 104], 20);
    expect(second - first).toBe(20);
    expect(Math.abs(first - 100) + Math.abs(second - 104)).toBe(16);
  });

  it("leave out what is taken beside them, and stand on it where there is no other room", () => {
    const line = { left: 90, right: 130, top: 98, bottom: 102 };
    // they reach 12 px above their baseline and 4 below it
    expect(placed([100], 19, [line])).toEqual([94]);
    expect(placed([100], 19, [{ ...line, left: 0, right: 60 }])).toEqual([100]);
    expect(placed([100], 19, [{ left: 0, right: 400, top: 0, bottom: 500 }])).toEqual([100]);
  });
});

describe("words that may stand in several places", () => {
  const at = (x: number) => ({ x, y: 100, anchor: "start", text: "30 mm" }) as const;
  const plot = { left: 0, right: 400, top: 0, bottom: 400 };

  it("stand in the first that is free, else anywhere near in the picture, else where they cover least", () => {
    const mark = { left: 90, right: 118, top: 86, bottom: 114 };
    expect(freest([at(10), at(100)], [mark], plot)).toEqual(at(10));
    expect(freest([at(100), at(200)], [mark], plot)).toEqual(at(200));
    const near = freest([at(100), at(390)], [mark], plot);
    if (near === undefined) throw new Error("expected a place");
    expect(shared(boxOf(near), mark)).toBe(0);
    expect(Math.hypot(near.x - 100, near.y - 100)).toBeLessThan(60);
    expect(freest([at(100), at(390)], [mark], plot, () => false)).toEqual(at(100));
    expect(freest([at(100), at(390)], [plot], plot)).toEqual(at(100));
  });

  it("are as wide as they are drawn: 64 px for 214 mm in the app's type", () => {
    const { left, right } = boxOf({ ...at(0), text: "214 mm" });
    expect(right - left).toBeGreaterThanOrEqual(62);
    expect(right - left).toBeLessThan(72);
    expect(shared(boxOf(at(0)), boxOf(at(20)))).toBeGreaterThan(0);
    expect(shared(boxOf(at(0)), boxOf(at(200)))).toBe(0);
  });
});
