import { describe, expect, it } from "vitest";
import { editDraft, newDraft, undoDraft } from "../edit/draft.ts";
import { type BookEdit, EditError, editText, type Plain } from "../edit/edit-text.ts";
import { editPlain } from "../edit/merge.ts";
import { valueAt } from "../edit/plain-of.ts";
import { begun, placeIn, plainIn, rankIn } from "../testing/begun-book.ts";
import { followShape } from "./follow-shape.ts";
import { shapeIn } from "./shaped.ts";

const x_m = (plain: Plain, list: string, id: string): number => {
  const value = valueAt(plain, [list, rankIn(plain, list, id), "place", 0]);
  if (typeof value !== "number") throw new Error(`expected a place of ${id}`);
  return value;
};
const after = (plain: Plain, edits: readonly BookEdit[]) => edits.reduce(editPlain, plain);

const WHEEL_AFT: BookEdit = { set: ["geometry", "wheels", 1, "x"], to: 1.1 };

describe("a change of the shape", () => {
  it.each([0, 1.15, -2])(
    "takes the tyre, the brake and the stance of a wheel along, %s m from the nose to the datum",
    (datumAft_m) => {
      const plain = plainIn(begun({ datumAft_m }));
      const to_m = 1.1 - datumAft_m;
      const moved = after(
        plain,
        followShape(plain, [{ set: ["geometry", "wheels", 1, "x"], to: to_m }], null).edits,
      );
      expect(x_m(moved, "points", "right-main-tyre")).toBeCloseTo(to_m, 9);
      expect(x_m(moved, "points", "right-main-brake")).toBeCloseTo(to_m + 0.05, 9);
      // who looks at it goes as far as it goes
      const by_m = to_m - Number(valueAt(plain, ["geometry", "wheels", 1, "x"]));
      const crouched_m = x_m(plain, "stances", "right-main-wheel");
      expect(x_m(moved, "stances", "right-main-wheel")).toBeCloseTo(crouched_m + by_m, 9);
      // the left wheel goes with it, and what stands at that one
      expect(valueAt(moved, ["geometry", "wheels", 2, "x"])).toBe(to_m);
      expect(x_m(moved, "points", "left-main-tyre")).toBeCloseTo(to_m, 9);
      expect(x_m(moved, "stances", "left-main-wheel")).toBeCloseTo(crouched_m + by_m, 9);
    },
  );

  it("takes flaps, ailerons and who stands behind them along with the wing, and the tail with its own", () => {
    const plain = plainIn(begun());
    const wing = (["root", "tip"] as const).map((end): BookEdit => {
      const path = ["geometry", "wing", end, "leadingEdge"];
      return { set: path, to: Number(valueAt(plain, path)) - 0.5 };
    });
    const moved = after(plain, followShape(plain, wing, null).edits);
    for (const id of ["left-flap", "right-aileron", "pitot", "right-tip-light"])
      expect(x_m(moved, "points", id)).toBeCloseTo(x_m(plain, "points", id) - 0.5, 9);
    for (const id of ["left-trailing-edge", "right-leading-edge"])
      expect(x_m(moved, "stances", id)).toBeCloseTo(x_m(plain, "stances", id) - 0.5, 9);
    const tail = (["root", "tip"] as const).map((end): BookEdit => {
      const path = ["geometry", "tailplane", end, "leadingEdge"];
      return { set: path, to: Number(valueAt(plain, path)) + 0.2 };
    });
    const further = after(plain, followShape(plain, tail, null).edits);
    expect(x_m(further, "points", "left-elevator")).toBeCloseTo(
      x_m(plain, "points", "left-elevator") + 0.2,
      9,
    );
    expect(x_m(further, "stances", "behind-tail")).toBeCloseTo(x_m(plain, "stances", "behind-tail") + 0.2, 9);
  });

  it("takes the struts along with the wing, each at its share of the chord; not where they are put by hand", () => {
    const plain = plainIn(begun());
    const root = ["geometry", "wing", "root", "leadingEdge"];
    const tip = ["geometry", "wing", "tip", "leadingEdge"];
    const forward = [root, tip].map(
      (path): BookEdit => ({ set: path, to: Number(valueAt(plain, path)) - 0.5 }),
    );
    const head = ["geometry", "wing", "struts", 0, "head"];
    const [x, y, z] = valueAt(plain, head) as readonly number[]; // a place
    const moved = after(plain, followShape(plain, forward, null).edits);
    expect(valueAt(moved, head)).toEqual([Number(((x ?? Number.NaN) - 0.5).toFixed(2)), y, z]);
    const byHand: BookEdit = { set: [...head, 0], to: 1.5 };
    expect(valueAt(after(plain, followShape(plain, [...forward, byHand], null).edits), head)).toEqual([
      1.5,
      y,
      z,
    ]);
  });

  it("leaves what a hand has moved where it is, and names it", () => {
    const own = after(plainIn(begun()), [
      {
        set: ["points", rankIn(plainIn(begun()), "points", "right-main-tyre"), "place"],
        to: [1.4, 1.2, 0.22],
      },
    ]);
    const { edits, stays, count } = followShape(own, [WHEEL_AFT], null);
    expect(stays).toEqual(["Right main tyre"]);
    // brake, leg and where one crouches, and on the left the tyre too
    expect(count).toBe(7);
    expect(placeIn(after(own, edits), "points", "right-main-tyre")).toEqual([1.4, 1.2, 0.22]);
  });

  it("is one step of undo, to the last character", () => {
    const text = begun();
    const drawn = editDraft(newDraft(text, null), followShape(plainIn(text), [WHEEL_AFT], null).edits);
    expect(drawn.past).toHaveLength(1);
    expect(undoDraft(drawn).text).toBe(text);
  });

  it("still knows, once a slip is mended, where things stood before it", () => {
    const plain = plainIn(begun());
    const slip = followShape(plain, [{ set: ["geometry", "wheels", 1, "x"], to: "1.1o" }], null);
    expect(slip).toMatchObject({ count: 0, stays: [] });
    const wrong = after(plain, slip.edits);
    const mended = after(wrong, followShape(wrong, [WHEEL_AFT], shapeIn(plain) ?? null).edits);
    expect(x_m(mended, "points", "right-main-tyre")).toBeCloseTo(1.1, 9);
  });

  it("takes nothing along in a book that was not begun from first figures", () => {
    const own = plainIn(editText(begun(), [{ remove: ["drawnFrom"] }]));
    const alone: BookEdit = { set: ["geometry", "wheels", 0, "x"], to: 6.2 };
    expect(followShape(own, [alone], null)).toEqual({ edits: [alone], hasPair: false, count: 0, stays: [] });
  });

  it("is one of a pair: further out to both sides, and alone where it is none", () => {
    const plain = plainIn(begun());
    const out: BookEdit = { set: ["geometry", "wheels", 2, "y"], to: -1.3 };
    const { edits, hasPair } = followShape(plain, [out], null);
    const moved = after(plain, edits);
    expect(hasPair).toBe(true);
    expect(valueAt(moved, ["geometry", "wheels", 1, "y"])).toBe(1.3);
    expect(valueAt(moved, ["points", rankIn(moved, "points", "right-main-tyre"), "place", 1])).toBe(1.3);
    const uneven = after(plain, [{ set: ["geometry", "wheels", 2, "diameter"], to: 0.3 }]);
    expect(followShape(uneven, [out], null).hasPair).toBe(false);
    const tail: BookEdit = { set: ["geometry", "wheels", 0, "x"], to: 6.2 };
    expect(followShape(plain, [tail], null).hasPair).toBe(false);
    const taken: BookEdit = { remove: ["geometry", "wheels", 1] };
    expect(followShape(plain, [taken], null).edits[1]).not.toEqual({ remove: ["geometry", "wheels", 2] });
  });

  it("still takes its pair along once a slip across is mended", () => {
    const plain = plainIn(begun());
    const slip = after(
      plain,
      followShape(plain, [{ set: ["geometry", "wheels", 1, "y"], to: "1.3o" }], null).edits,
    );
    const edit: BookEdit = { set: ["geometry", "wheels", 1, "y"], to: 1.3 };
    const mended = after(slip, followShape(slip, [edit], shapeIn(plain) ?? null).edits);
    expect(valueAt(mended, ["geometry", "wheels", 2, "y"])).toBe(-1.3);
    expect(valueAt(mended, ["points", rankIn(mended, "points", "left-main-tyre"), "place", 1])).toBe(-1.3);
  });

  it("is refused where there is no such place", () => {
    const edit: BookEdit = { set: ["geometry", "floats", 0], to: 1 };
    expect(() => followShape(plainIn(begun()), [edit], null)).toThrow(EditError);
  });
});
