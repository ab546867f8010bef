import { describe, expect, it } from "vitest";
import { wheelNames } from "./wheel-names.ts";

const wheel = (x: number, y: number, diameter = 0.42) => ({ x, y, diameter });

describe("the wheels of an aircraft", () => {
  it.each([
    [
      "a nose wheel",
      [wheel(1.2, 0, 0.36), wheel(3.8, 1.1), wheel(3.8, -1.1)],
      ["Nose wheel", "Right main wheel", "Left main wheel"],
    ],
    [
      "a tail wheel, in another order, ahead of the datum",
      [wheel(-0.05, -1), wheel(5.2, 0, 0.2), wheel(-0.05, 1)],
      ["Left main wheel", "Tail wheel", "Right main wheel"],
    ],
    ["one wheel", [wheel(6.3, 0, 0.2), wheel(2.6, 0)], ["Tail wheel", "Main wheel"]],
    [
      "one wheel and two under the wings",
      [wheel(2.6, 0), wheel(2.8, 6, 0.15), wheel(2.8, -6, 0.15), wheel(0.4, 0, 0.2)],
      ["Main wheel", "Right outer wheel", "Left outer wheel", "Nose wheel"],
    ],
    [
      "two on each leg",
      [wheel(1, 0, 0.3), wheel(4, 1.1), wheel(4, 1.4), wheel(4, -1.1), wheel(4, -1.4)],
      ["Nose wheel", "Right main wheel", "Right main wheel 2", "Left main wheel", "Left main wheel 2"],
    ],
    ["none", [], []],
  ] as const)("are called by where they stand: %s", (_, wheels, names) => {
    expect(wheelNames(wheels)).toEqual(names);
  });
});
