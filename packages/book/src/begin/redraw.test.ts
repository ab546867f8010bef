import { describe, expect, it } from "vitest";
import { editDraft, newDraft, redoDraft, undoDraft } from "../edit/draft.ts";
import { type BookEdit, editText, type Plain } from "../edit/edit-text.ts";
import { valueAt } from "../edit/plain-of.ts";
import { faultSentence } from "../faults/fault-sentence.ts";
import { readBook } from "../read-book.ts";
import { begun, placeIn, plainIn, rankIn, SINGLE } from "../testing/begun-book.ts";
import { type FirstFigures, firstFiguresOf } from "./first-figures.ts";
import { followShape } from "./follow-shape.ts";
import { changedByHand, redraw } from "./redraw.ts";

const rankOf = (plain: Plain, id: string): number => rankIn(plain, "points", id);
const placeOf = (plain: Plain, id: string) => placeIn(plain, "points", id);

function drawnAnew(text: string, changed: Partial<FirstFigures>) {
  const plain = plainIn(text);
  const figures = firstFiguresOf(plain);
  if (figures === undefined) throw new Error("expected the first figures");
  const { edits, stays } = redraw(plain, { ...figures, ...changed });
  return { text: editText(text, edits), stays: stays.map((path) => JSON.stringify(path)) };
}

const PITOT: BookEdit = {
  set: ["points", rankOf(plainIn(begun()), "pitot"), "place"],
  to: [2.4, -3.33, 1.9],
};

describe("a book drawn anew from other first figures", () => {
  it("is the one that would have been begun with them, where nothing was changed by hand", () => {
    const { text, stays } = drawnAnew(begun(), {
      span_m: 12.5,
      length_m: 7.6,
      wing: "low",
      height_m: 2.6,
    });
    expect(plainIn(text)).toEqual(
      plainIn(begun({ span_m: 12.5, length_m: 7.6, wing: "low", height_m: 2.6 })),
    );
    expect(stays).toEqual([]);
  });

  it("keeps the place of a point that was moved by hand, and says so; the others follow", () => {
    const moved = editText(begun(), [PITOT]);
    const { text, stays } = drawnAnew(moved, { span_m: 13 });
    const [plain, fresh] = [plainIn(text), plainIn(begun({ span_m: 13 }))];
    expect(placeOf(plain, "pitot")).toEqual([2.4, -3.33, 1.9]);
    expect(placeOf(plain, "left-tip-light")).toEqual(placeOf(fresh, "left-tip-light"));
    expect(placeOf(fresh, "left-tip-light")).not.toEqual(placeOf(plainIn(begun()), "left-tip-light"));
    expect(stays).toEqual(['["points",{"id":"pitot"},"place"]']);
  });

  it("knows which points were moved by hand, and where they would stand", () => {
    expect(changedByHand(plainIn(begun()))).toEqual({ points: [], parts: [] });
    const moved = plainIn(drawnAnew(editText(begun(), [PITOT]), { span_m: 13 }).text);
    expect(changedByHand(moved).points).toEqual([
      {
        id: "pitot",
        index: rankOf(moved, "pitot"),
        name: "Left pitot tube",
        drawn: placeOf(plainIn(begun({ span_m: 13 })), "pitot"),
      },
    ]);
  });

  it("knows which parts of the shape were changed by hand; those stay, the others follow", () => {
    const own = editText(begun(), [{ set: ["geometry", "wing", "tipRound"], to: 0.4 }]);
    expect(changedByHand(plainIn(own)).parts.map(({ key }) => key)).toEqual(["wing"]);
    const plain = plainIn(drawnAnew(own, { length_m: 7.7 }).text);
    expect(valueAt(plain, ["geometry", "wing", "tipRound"])).toBe(0.4);
    expect(valueAt(plain, ["geometry", "fuselage"])).toEqual(
      valueAt(plainIn(begun({ length_m: 7.7 })), ["geometry", "fuselage"]),
    );
  });

  it("keeps what was written by hand: a check reworded, a point taken out, a remark", () => {
    const by = editText(begun(), [
      { set: ["checks", 0, "title"], to: "Switches off, key in my pocket" },
      { remove: ["points", rankOf(plainIn(begun()), "tail-light")] },
    ]).replace("revision: 1", "revision: 1 # mine");
    const { text } = drawnAnew(by, { length_m: 7.9 });
    expect(text).toContain("# mine");
    expect(valueAt(plainIn(text), ["checks", 0, "title"])).toBe("Switches off, key in my pocket");
    expect(rankOf(plainIn(text), "tail-light")).toBe(-1);
  });

  it("takes the other wheel and its looks, and is a book without faults", async () => {
    const { text } = drawnAnew(begun(), { gear: "nose-wheel", tail: "t", engines: 2, wing: "low" });
    const result = await readBook(text, "new.yaml");
    expect(result.ok ? [] : result.faults.map(faultSentence)).toEqual([]);
    expect(rankOf(plainIn(text), "tail-wheel")).toBe(-1);
    expect(rankOf(plainIn(text), "nose-wheel")).toBeGreaterThan(0);
    expect(valueAt(plainIn(text), ["aircraft", "description"])).toBe("piston twin, nose wheel");
  });

  it("is one step: it is undone to the last character, and done again", () => {
    const text = editText(begun(), [PITOT]).replace("revision: 1", "revision: 1   # mine");
    const plain = plainIn(text);
    const figures = firstFiguresOf(plain);
    if (figures === undefined) throw new Error("expected the first figures");
    const { edits } = redraw(plain, { ...figures, gear: "nose-wheel", span_m: 12, tail: "v" });
    const drawn = editDraft(newDraft(text, null), edits);
    expect(drawn.past).toHaveLength(1);
    expect(undoDraft(drawn).text).toBe(text);
    expect(redoDraft(undoDraft(drawn)).text).toBe(drawn.text);
  });

  it("moves all that is drawn with another datum, also what a hand has put there; the arms of the handbook stay", () => {
    const own = editText(begun(), [
      PITOT,
      { set: ["geometry", "wheels", 1, "x"], to: 1.777 },
      { set: ["hazards"], to: [{ name: "Step", kind: "step", place: [2.5, -1], radius: 0.3 }] },
      {
        set: ["loading"],
        to: {
          stations: [{ id: "seat-1", arm: "0.94 m", place: [2.09, -0.25, 1.2] }],
          tanks: [{ id: "left-tank", arms: [{ volume: "0 L", arm: "0.61 m" }], place: [1.9, -2, 1.9] }],
        },
      },
    ]);
    const { text, stays } = drawnAnew(own, { datumAft_m: 1.15 });
    const plain = plainIn(text);
    expect(stays).toEqual([]);
    expect(valueAt(plain, ["drawnFrom", "datum"])).toBe(1.15);
    // 2.40 − 1.15, 1.777 − 1.15, 2.50 − 1.15, 2.09 − 1.15, 1.90 − 1.15
    expect(placeOf(plain, "pitot")).toEqual([1.25, -3.33, 1.9]);
    expect(valueAt(plain, ["geometry", "wheels", 1, "x"])).toBe(0.627);
    expect(valueAt(plain, ["hazards", 0, "place"])).toEqual([1.35, -1]);
    expect(valueAt(plain, ["loading", "stations", 0])).toMatchObject({
      arm: "0.94 m",
      place: [0.94, -0.25, 1.2],
    });
    expect(valueAt(plain, ["loading", "tanks", 0])).toMatchObject({
      arms: [{ arm: "0.61 m" }],
      place: [0.75, -2, 1.9],
    });
    const byHand = (of: Plain) => changedByHand(of).points.map(({ id }) => id);
    expect(byHand(plain)).toEqual(byHand(plainIn(own)));
    // back at the tip of the nose it is as it was, figure for figure
    expect(plainIn(drawnAnew(text, { datumAft_m: 0 }).text)).toEqual(plainIn(own));
  });

  it("with another datum alone is the one that would have been begun with it, in one step", () => {
    const { text } = drawnAnew(begun(), { datumAft_m: -0.5, length_m: 7.3 });
    expect(plainIn(text)).toEqual(plainIn(begun({ datumAft_m: -0.5, length_m: 7.3 })));
    const plain = plainIn(begun());
    const figures = firstFiguresOf(plain);
    if (figures === undefined) throw new Error("expected the first figures");
    const drawn = editDraft(newDraft(begun(), null), redraw(plain, { ...figures, datumAft_m: 1.15 }).edits);
    expect(drawn.past).toHaveLength(1);
    expect(undoDraft(drawn).text).toBe(begun());
  });

  it("of before, without a word of its datum, is counted from the foremost part", () => {
    expect(firstFiguresOf(plainIn(begun()))?.datumAft_m).toBe(0);
    expect(begun()).not.toMatch(/datum/);
  });

  it("puts the points of a wheel that was moved by hand at that wheel", () => {
    const own = editText(begun(), [{ set: ["geometry", "wheels", 1, "x"], to: 1.1 }]);
    const { edits } = followShape(plainIn(begun()), [{ set: ["geometry", "wheels", 1, "x"], to: 1.1 }], null);
    const followed = plainIn(editText(begun(), edits));
    expect(placeOf(followed, "right-main-tyre")).toEqual([1.1, 1.1, 0.22]);
    expect(changedByHand(followed).points).toEqual([]);
    expect(changedByHand(plainIn(own)).points.map(({ id }) => id)).toContain("right-main-tyre");
    const anew = plainIn(drawnAnew(editText(begun(), edits), { length_m: 7.6 }).text);
    expect(placeOf(anew, "right-main-tyre")).toEqual([1.1, 1.1, 0.22]);
    expect(placeOf(anew, "papers")).toEqual(placeOf(plainIn(begun({ length_m: 7.6 })), "papers"));
  });

  it("is refused for figures that no aircraft has", () => {
    expect(() => drawnAnew(begun(), { datumAft_m: Number.NaN })).toThrow(/datum: expected −10 to 10 m/);
    expect(() => drawnAnew(begun(), { span_m: 0 })).toThrow(/span: expected 5 to 40 m, received 0 m/);
  });

  it("says the figures, and changes nothing else, of a book that was not begun from any", () => {
    const own = editText(begun(), [{ remove: ["drawnFrom"] }]);
    const { edits } = redraw(plainIn(own), { ...SINGLE.figures, span_m: 14 });
    expect(plainIn(editText(own, edits))).toEqual({
      ...(plainIn(own) as object),
      drawnFrom: expect.objectContaining({ span: 14 }),
    });
  });
});
