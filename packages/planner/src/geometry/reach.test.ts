import type { Geometry } from "@witnessmark/book";
import { describe, expect, it } from "vitest";
import { PERSON } from "./person.ts";
import { reachOf } from "./reach.ts";
import { canSee } from "./solids.ts";

/**
 * A tube of 1 m across, 1 m above the ground to 2 m, from x = 0 to 10; a wing of 2 m chord and constant height 1.5 m
 * from x = 4, so 0.24 m thick (6 % of the chord each way); everything else is far away.
 */
const far = { y: 0.1, leadingEdge: 90, chord: 1, z: 90 };
const geometry: Geometry = {
  fuselage: [
    [0, 0.5, 2, 1],
    [5, 0.5, 2, 1],
    [10, 0.5, 2, 1],
  ],
  wing: {
    root: { y: 0.5, leadingEdge: 4, chord: 2, z: 1.5 },
    tip: { y: 6, leadingEdge: 4, chord: 2, z: 1.5 },
    tipRound: 0,
  },
  tailplane: { root: far, tip: { ...far, y: 1 }, tipRound: 0, elevator: 0.5 },
  fin: {
    span: [9, 10],
    outline: [
      [9, 2],
      [9.5, 3],
      [10, 2],
    ],
    hinge: [
      [9.8, 3],
      [9.8, 2],
    ],
  },
  nacelles: [],
  propellers: [{ x: 0, y: 0, z: 1.5, radius: 1, spinner: true }],
  wheels: [],
  frames: [],
  windows: [],
  sideWindows: [],
};

describe("what is seen", () => {
  it.each([
    // by hand: the line lies outside x² / 0.5² + (z − 1.5)² / 0.5² < 1 all the way, or goes through it
    { what: "the near side of the tube", eye: [2, 2, 1.5], point: [2, 0.5, 1.5], seen: true },
    {
      what: "the far side of the tube, level through it",
      eye: [2, 2, 1.5],
      point: [2, -0.5, 1.5],
      seen: false,
    },
    { what: "over the tube, a hand above it", eye: [2, 2, 2.1], point: [2, -2, 2.1], seen: true },
    { what: "under the tube, a hand below it", eye: [2, 2, 0.9], point: [2, -2, 0.9], seen: true },
    { what: "the wing's top from above", eye: [5, 3, 2.5], point: [5, 3, 1.62], seen: true },
    { what: "the wing's underside from above", eye: [5, 3, 2.5], point: [5, 3, 1.0], seen: false },
    { what: "the wing's underside from below", eye: [5, 3, 0.9], point: [5, 3, 1.38], seen: true },
    { what: "past the wing's tip", eye: [5, 6.1, 2.5], point: [5, 6.1, 0.5], seen: true },
    { what: "before the wing's leading edge", eye: [3.9, 3, 2.5], point: [3.9, 3, 0.5], seen: true },
    { what: "before the nose", eye: [-0.1, 2, 1.5], point: [-0.1, -2, 1.5], seen: true },
  ] as const)("$what: $seen", ({ eye, point, seen }) => {
    expect(canSee(geometry, eye, point)).toBe(seen);
  });
});

describe("what can be done from a place", () => {
  const at = (
    from: readonly [number, number],
    posture: "stand" | "crouch",
    place: readonly [number, number, number],
    method: "look" | "touch",
  ) => reachOf(geometry, PERSON, from, posture, { place, method });

  it("looking reaches as far as a detail can be judged: 3 m from the eye, at 1.58 m", () => {
    expect(at([2, 3.49], "stand", [2, 0.5, 1.58], "look")).toEqual({ posture: "stand", needsStep: false });
    expect(at([2, 3.51], "stand", [2, 0.5, 1.58], "look")).toBeUndefined();
  });

  it("the hand reaches 0.7 m from the shoulder, at 1.38 m, and 0.6 m of leaning besides: 1.3 m level", () => {
    expect(at([2, 1.79], "stand", [2, 0.5, 1.38], "touch")).toEqual({ posture: "stand", needsStep: false });
    expect(at([2, 1.81], "stand", [2, 0.5, 1.38], "touch")).toBeUndefined();
  });

  it("standing, the hand comes down to 0.68 m straight below; for a tyre one crouches", () => {
    expect(at([-1, 3], "stand", [-1, 3, 0.69], "touch")).toBeDefined();
    expect(at([-1, 3], "stand", [-1, 3, 0.67], "touch")).toBeUndefined();
    expect(at([-1, 3], "crouch", [-1, 3, 0.3], "touch")).toEqual({ posture: "crouch", needsStep: false });
  });

  it("above 2.0 m a step is needed, and a step does not lengthen the arm", () => {
    expect(at([2, 3], "stand", [2, 3, 2.0], "touch")?.needsStep).toBe(false);
    expect(at([2, 3], "stand", [2, 3, 2.01], "touch")?.needsStep).toBe(true);
    expect(at([2, 3], "stand", [2, 4.31, 2.01], "touch")).toBeUndefined();
  });

  it("nothing is done through the fuselage, however near", () => {
    expect(at([2, 1], "stand", [2, -0.5, 1.5], "look")).toBeUndefined();
  });
});
