import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { markPlaces, needsLeader, type Stood, type Wanted } from "./mark-places.ts";

const overlapping = (places: readonly Stood[]): readonly string[] =>
  places.flatMap((a, index) =>
    places.slice(index + 1).flatMap((b) => {
      const far_px = Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y));
      return far_px >= a.half_px + b.half_px - 1e-6 ? [] : [`${a.ids.join()} on ${b.ids.join()}`];
    }),
  );

const wanted = (id: string, x: number, y: number, half_px = 9): Wanted => ({ id, x, y, half_px });

const crowd = fc
  .array(fc.tuple(fc.nat(200), fc.nat(200), fc.integer({ min: 6, max: 24 }), fc.boolean()), { maxLength: 40 })
  .map((all) => all.map(([x, y, half_px, first], i): Wanted => ({ id: `m${i}`, x, y, half_px, first })));

describe("marks on a drawing", () => {
  it("keep their own places when these are apart", () => {
    const places = markPlaces([wanted("a", 0, 0), wanted("b", 18, 0), wanted("c", 0, -40)], 26);
    expect(places.map(({ ids, x, y }) => [ids[0], x, y])).toEqual([
      ["a", 0, 0],
      ["b", 18, 0],
      ["c", 0, -40],
    ]);
    expect(places.some(needsLeader)).toBe(false);
  });

  it("give way a little, the one with more neighbours first", () => {
    const places = markPlaces([wanted("a", 0, 0), wanted("b", 10, 0), wanted("c", 20, 0)], 26);
    expect(places.map(({ ids }) => ids)).toEqual([["a"], ["b"], ["c"]]);
    expect(places[0]).toMatchObject({ x: 0, y: 0 });
    expect(places[2]).toMatchObject({ x: 20, y: 0 });
    expect(overlapping(places)).toEqual([]);
  });

  it("share one square when there is no room for each", () => {
    const same = ["a", "b", "c"].map((id) => wanted(id, 5, 5, 24));
    expect(markPlaces(same, 10)).toEqual([{ ids: ["a", "b", "c"], x: 5, y: 5, half_px: 24, ofX: 5, ofY: 5 }]);
  });

  it("stand round the place that they share when there is room to reach", () => {
    const places = markPlaces(
      ["a", "b", "c", "d"].map((id) => wanted(id, 0, 0, 10)),
      40,
    );
    expect(places.map(({ ids }) => ids)).toEqual([["a"], ["b"], ["c"], ["d"]]);
    expect(overlapping(places)).toEqual([]);
    expect(places.filter(needsLeader)).toHaveLength(3);
  });

  it("never overlap, lose none and go no further than they may, however they are crowded", () => {
    fc.assert(
      fc.property(crowd, fc.integer({ min: 0, max: 80 }), (marks, reach_px) => {
        const places = markPlaces(marks, reach_px);
        expect(overlapping(places)).toEqual([]);
        expect(places.flatMap(({ ids }) => ids).toSorted()).toEqual(marks.map(({ id }) => id).toSorted());
        for (const { x, y, ofX, ofY } of places)
          expect(Math.hypot(x - ofX, y - ofY)).toBeLessThanOrEqual(reach_px + 1e-6);
        expect(markPlaces(marks, reach_px)).toEqual(places);
      }),
      { numRuns: 60 },
    );
  });
});
