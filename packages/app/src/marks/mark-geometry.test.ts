import { expect, it } from "vitest";
import { cornerDashes, cutFor, hexagon } from "./mark-geometry.ts";

it("draws simpler and heavier when it is small", () => {
  // the design's table: edge 4.2, 3.2, 2.2; a base ring at 48 only
  expect([16, 19, 20, 35, 36, 56].map((size) => cutFor(size).edge)).toEqual([4.2, 4.2, 3.2, 3.2, 2.2, 2.2]);
  expect([16, 24, 48].map((size) => cutFor(size).ring)).toEqual([0, 0, 20.4]);
});

it("stands point up when nothing has moved, and a corner is one radius from the middle", () => {
  expect(hexagon(16, 0).split(" ")[0]).toBe("0.00,-16.00");
  for (const corner of hexagon(16, 40).split(" ")) {
    const [x = 0, y = 0] = corner.split(",").map(Number);
    expect(Math.hypot(x, y)).toBeCloseTo(16, 1);
  }
});

it("leaves the corners and no sides: one dash and one gap to a side", () => {
  const cut = cutFor(24);
  const [dash = 0, gap = 0] = cornerDashes(cut).dashes.split(" ").map(Number);
  // a hexagon's side is its circumradius
  expect(dash + gap).toBeCloseTo(cut.nut, 2);
});
