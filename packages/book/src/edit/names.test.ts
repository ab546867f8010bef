import { describe, expect, it } from "vitest";
import type { BookEdit, Plain } from "./edit-text.ts";
import { editPlain } from "./merge.ts";
import { freeId, idFrom, labelFrom, labelOf, nameEdits } from "./names.ts";
import { valueAt } from "./plain-of.ts";

const PLAIN: Plain = {
  points: [
    { id: "left-new-point", name: "Left new point", mirrors: "right-new-point" },
    { id: "right-new-point", name: "Right new point", mirrors: "left-new-point" },
    { id: "spinner", name: "Spinner" },
    { id: "pitot", name: "Left pitot tube" },
  ],
  checks: [{ id: "look", at: ["left-new-point", "right-new-point"] }],
};
const NEW = { base: null };
const after = (edits: readonly BookEdit[]) => edits.reduce<Plain>((so, edit) => editPlain(so, edit), PLAIN);

describe("a name that is typed", () => {
  it.each([
    ["Left main tyre, tread and sides", "L main tyre"],
    ["Windscreen and windows", "Windscreen"],
    ["Right leading edge and upper side", "R leading edge"],
    ["Master switch", "Master switch"],
    ["Left", "Left"],
    ["Emergency locator transmitter antenna", "Emergency"],
    ["Donaudampfschifffahrtsgesellschaft", "Donaudampfschif…"],
    ["", ""],
  ])("gives a label for the drawing: %s", (name, label) => {
    expect(labelFrom(name)).toBe(label);
  });

  it("gives way to a label of one's own", () => {
    expect(labelOf({ name: "Left main tyre", label: "LMT" })).toBe("LMT");
    expect(labelOf({ name: "Left main tyre", label: " " })).toBe("L main tyre");
  });

  it("gives a short name that can be written", () => {
    expect(idFrom("Übler Ölstand, 2.")).toBe("ubler-olstand-2");
    expect(idFrom("…")).toBe("new");
    expect(freeId(PLAIN, ["points"], "Spinner")).toBe("spinner-2");
  });

  it("takes the short name that the program made with it, everywhere, and the other one of a pair", () => {
    const { edits, id } = nameEdits(NEW, PLAIN, ["points", 0], "Left fuel drain");
    expect(id).toBe("left-fuel-drain");
    expect(after(edits)).toMatchObject({
      points: [
        { id: "left-fuel-drain", name: "Left fuel drain", mirrors: "right-fuel-drain" },
        { id: "right-fuel-drain", name: "Right fuel drain", mirrors: "left-fuel-drain" },
        { id: "spinner" },
        { id: "pitot" },
      ],
      checks: [{ at: ["left-fuel-drain", "right-fuel-drain"] }],
    });
  });

  it("leaves a short name that somebody gave, and one that an issued book has", () => {
    expect(nameEdits(NEW, PLAIN, ["points", 3], "Pitot mast").edits).toEqual([
      { set: ["points", 3, "name"], to: "Pitot mast" },
    ]);
    const issued = { base: { revision: 1, text: "points:\n  - id: spinner\n    name: Spinner\n" } };
    const { edits } = nameEdits(issued, PLAIN, ["points", 2], "Spinner and screws");
    expect(valueAt(after(edits), ["points", 2, "id"])).toBe("spinner");
    expect(nameEdits(NEW, PLAIN, ["points", 2], "Spinner and screws").id).toBe("spinner-and-screws");
  });
});
