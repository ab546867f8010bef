import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { planView } from "../drawing/plan-view.ts";
import { elevation, noseUp } from "../drawing/projection.ts";
import { sideView } from "../drawing/side-view.ts";
import type { Stroke } from "../drawing/stroke.ts";
import { readBook } from "../read-book.ts";
import { movedAlong } from "./along.ts";

const BOOKS = join(import.meta.dirname, "../../../../books");

const figuresIn = (strokes: readonly Stroke[]): readonly number[] =>
  strokes.flatMap(({ d }) => [...d.matchAll(/-?[\d.]+/g)].map(([figure]) => Number(figure)));

function sameStrokes(moved: readonly Stroke[], were: readonly Stroke[]): void {
  const [figures, before] = [figuresIn(moved), figuresIn(were)];
  expect(figures.length).toBeGreaterThan(200);
  expect(figures).toHaveLength(before.length);
  const off_px = figures.map((figure, index) => Math.abs(figure - (before[index] ?? Number.NaN)));
  expect(Math.max(...off_px)).toBeLessThan(0.03);
}

describe("everything that is drawn", () => {
  it.each(["zz-skr.yaml", "zz-dun.yaml", "zz-brk.yaml"])(
    "moves along together, and looks as it did: %s",
    async (file) => {
      const result = await readBook(readFileSync(join(BOOKS, file), "utf8"), file);
      if (!result.ok) throw new Error("expected a book");
      const { geometry } = result.book;
      const moved = movedAlong({ geometry }, -2).geometry;
      // 2 m at 50 px/m are 100 px; the paths are written to a hundredth of one
      sameStrokes(planView(moved, noseUp(50, 0, 100), 2), planView(geometry, noseUp(50, 0, 0), 2));
      sameStrokes(sideView(moved, elevation(50, 100, 0), 2), sideView(geometry, elevation(50, 0, 0), 2));
    },
  );

  it("but no arm: those are the handbook's, and what is no figure stays as it is typed", () => {
    const plain = {
      geometry: { exhaust: "0.8 m?", frames: [0.9] },
      points: [{ id: "pitot", place: [2.4, -3.3, 1.9] }],
      loading: { empty: { arm: "0.36 m" }, stations: [{ arm: "0.94 m", place: ["", 0, 1] }] },
    };
    expect(movedAlong(plain, -1.15)).toEqual({
      geometry: { exhaust: "0.8 m?", frames: [-0.25] },
      points: [{ id: "pitot", place: [1.25, -3.3, 1.9] }],
      loading: { empty: { arm: "0.36 m" }, stations: [{ arm: "0.94 m", place: ["", 0, 1] }] },
    });
  });
});
