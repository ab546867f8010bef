import { type BookEdit, type Plain, plainOf, valueAt } from "@witnessmark/book";
import { describe, expect, it } from "vitest";
import { handlesOf, type OutlineHandle } from "./outline-handles.ts";

/** An outline of few figures, counted from the fire-wall: the nose lies ahead of it. */
const OUTLINE = `
geometry:
  fuselage: [[-1.15, 0.2, 1.5, 1.2], [0, 0.5, 1.7, 0.9], [5.75, 0.1, 1, 0.8]]
  wing:
    root: { y: 0.5, leadingEdge: 0.2, chord: 1.6, z: 1.9 }
    tip: { y: 5.2, leadingEdge: 0.4, chord: 1.2, z: 2 }
  tailplane:
    root: { y: 0.1, leadingEdge: 4.9, chord: 0.9, z: 1 }
    tip: { y: 1.5, leadingEdge: 5, chord: 0.7, z: 1 }
  fin:
    outline: [[4.6, 1], [5.4, 2.06], [5.75, 0.9]]
`;

const plainIn = (text: string): Plain => {
  const read = plainOf(text, "the draft");
  if (!read.ok) throw new Error(read.fault.found);
  return read.plain;
};
const PLAIN = plainIn(OUTLINE);

const handle = (view: "plan" | "side", id: string): OutlineHandle => {
  const found = handlesOf(PLAIN, view).find((each) => each.id === id);
  if (found === undefined) throw new Error(`expected a handle ${id}`);
  return found;
};

const set = (...path: (string | number)[]) => ({ set: ["geometry", ...path] });
const setTo = (path: readonly (string | number)[], to: number): BookEdit => ({
  set: ["geometry", ...path],
  to,
});

describe("the handles of an outline", () => {
  it("are a place of each edge that the view shows, each with a name", () => {
    const names = (view: "plan" | "side" | "front") => handlesOf(PLAIN, view).map(({ name }) => name);
    expect(names("plan")).toEqual([
      "Station 1",
      "Station 2",
      "Station 3",
      "Wing root, leading edge",
      "Wing root, trailing edge",
      "Wing tip, leading edge",
      "Wing tip, trailing edge",
      "Tailplane root, leading edge",
      "Tailplane root, trailing edge",
      "Tailplane tip, leading edge",
      "Tailplane tip, trailing edge",
    ]);
    expect(names("side")).toEqual([
      "Station 1, top",
      "Station 1, bottom",
      "Station 2, top",
      "Station 2, bottom",
      "Station 3, top",
      "Station 3, bottom",
      "Fin, corner 1",
      "Fin, corner 2",
      "Fin, corner 3",
    ]);
    expect(names("front")).toEqual([]);
  });

  it("lie where the figures are, ahead of the datum too", () => {
    expect(handle("plan", "fuselage-0").place).toEqual([-1.15, 0.2, 1.35]);
    expect(handle("side", "fuselage-0-bottom").place).toEqual([-1.15, 0, 1.2]);
    // 0.4 + 1.2
    expect(handle("plan", "wing-tip-aft").place).toEqual([1.6, 5.2, 2]);
  });

  it.each([
    [
      "a station ahead and out",
      "plan",
      "fuselage-0",
      { x_m: -1.304, y_m: 0.3 },
      [
        [["fuselage", 0, 0], -1.3],
        [["fuselage", 0, 1], 0.3],
      ],
    ],
    [
      "a station across the centre line",
      "plan",
      "fuselage-1",
      { x_m: 0, y_m: -0.6 },
      [
        [["fuselage", 1, 0], 0],
        [["fuselage", 1, 1], 0.6],
      ],
    ],
    [
      "the top of a station",
      "side",
      "fuselage-1-top",
      { x_m: 0.1, z_m: 1.8 },
      [
        [["fuselage", 1, 0], 0.1],
        [["fuselage", 1, 2], 1.8],
      ],
    ],
    [
      "the underside of a station",
      "side",
      "fuselage-1-bottom",
      { x_m: 0.1, z_m: 0.8 },
      [
        [["fuselage", 1, 0], 0.1],
        [["fuselage", 1, 3], 0.8],
      ],
    ],
    [
      "a trailing edge: the leading one stays",
      "plan",
      "wing-root-aft",
      { x_m: 2, y_m: 0.5 },
      [
        [["wing", "root", "y"], 0.5],
        [["wing", "root", "chord"], 1.8],
      ],
    ],
    [
      "a leading edge: the trailing one stays",
      "plan",
      "wing-root-edge",
      { x_m: -0.1, y_m: 0.5 },
      [
        [["wing", "root", "y"], 0.5],
        [["wing", "root", "leadingEdge"], -0.1],
        [["wing", "root", "chord"], 1.9],
      ],
    ],
    [
      "a corner of the fin",
      "side",
      "fin-1",
      { x_m: 5.5, z_m: 2.1 },
      [
        [["fin", "outline", 1, 0], 5.5],
        [["fin", "outline", 1, 1], 2.1],
      ],
    ],
  ] as const)("put figures to the centimetre where they are dragged: %s", (_, view, id, at, wanted) => {
    expect(handle(view, id).edits(at)).toEqual(wanted.map(([path, to]) => setTo(path, to)));
  });

  it("change nothing along a way that the view does not show", () => {
    expect(handle("plan", "wing-root-edge").edits({ y_m: 2 })).toEqual([]);
    expect(handle("plan", "fuselage-0").edits({ x_m: -1 })).toEqual([
      expect.objectContaining(set("fuselage", 0, 0)),
    ]);
  });

  it("are left out where a figure is none", () => {
    const slip = plainIn(OUTLINE.replace("[-1.15, 0.2", "[-1.15 m, 0.2").replace("chord: 1.6", 'chord: ""'));
    const ids = handlesOf(slip, "plan").map(({ id }) => id);
    expect(ids).not.toContain("fuselage-0");
    expect(ids).not.toContain("wing-root-edge");
    expect(ids).toContain("wing-tip-edge");
    expect(valueAt(slip, ["geometry", "wing", "root", "chord"])).toBe("");
    expect(handlesOf({}, "side")).toEqual([]);
  });
});
