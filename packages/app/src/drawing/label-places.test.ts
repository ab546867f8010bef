import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Label, labelPlaces, type Place } from "./label-places.ts";

const apart = (a: Label, atA: Place, b: Label, atB: Place): boolean =>
  Math.abs(atA.x - atB.x) >= (a.width + b.width) / 2 || Math.abs(atA.y - atB.y) >= (a.height + b.height) / 2;

const label = (id: string, x: number, y: number): Label => ({
  id,
  x,
  y,
  width: 17,
  height: 15,
  liked_rad: 0,
});

function clashes(labels: readonly Label[], places: ReadonlyMap<string, Place>): readonly string[] {
  return labels.flatMap((a, index) =>
    labels.slice(index + 1).flatMap((b) => {
      const [atA, atB] = [places.get(a.id), places.get(b.id)];
      if (atA === undefined || atB === undefined) return [`${a.id} or ${b.id} has no place`];
      return apart(a, atA, b, atB) ? [] : [`${a.id} on ${b.id}`];
    }),
  );
}

describe("numbers beside what they belong to", () => {
  it("stand where they are liked when nothing is in the way", () => {
    expect(labelPlaces([label("1", 0, 0)], []).get("1")).toMatchObject({ x: 20, y: 0 });
  });

  it("give way to what is drawn", () => {
    const at = labelPlaces([label("1", 0, 0)], [{ x: 20, y: 0, radius: 6 }]).get("1");
    expect(
      Math.hypot(Math.max(0, Math.abs((at?.x ?? 20) - 20) - 8.5), Math.max(0, Math.abs(at?.y ?? 0) - 7.5)),
    ).toBeGreaterThanOrEqual(6);
  });

  it("do not lie on each other, however close two stand", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(60), fc.nat(60)), { minLength: 2, maxLength: 5 }), (stands) => {
        const labels = stands.map(([x, y], index) => label(String(index), x, y));
        expect(clashes(labels, labelPlaces(labels, []))).toEqual([]);
      }),
    );
  });

  it("never touch a mark, and are left out where there is no room for any", () => {
    const mark = (x: number, y: number) => ({ x, y, half_px: 9 });
    const at = labelPlaces([label("1", 0, 0)], [], [mark(20, 0), mark(14, 14)]).get("1");
    expect(at).toBeDefined();
    for (const { x, y } of [mark(20, 0), mark(14, 14)])
      expect(Math.abs((at?.x ?? x) - x) >= 8.5 + 9 || Math.abs((at?.y ?? y) - y) >= 7.5 + 9).toBe(true);
    expect(labelPlaces([label("1", 0, 0)], [], [{ x: 0, y: 0, half_px: 90 }]).size).toBe(0);
  });
});
