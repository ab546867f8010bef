import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { DrawingView } from "./drawing-props.ts";
import { onPlaneOf, placeOf } from "./view-plane.ts";

const cm = fc.integer({ min: -3000, max: 3000 }).map((value) => value / 100);

describe("a place on a view", () => {
  it("has the right wing to the right in plan, to the left from ahead, and the nose to the left from the side", () => {
    expect(onPlaneOf("plan", [3, 5, 1])).toEqual([5, 3]);
    expect(onPlaneOf("front", [3, 5, 1])).toEqual([-5, -1]);
    expect(onPlaneOf("side", [3, 5, 1])).toEqual([3, -1]);
  });

  it("comes back as the two metres that the view shows, to the centimetre", () => {
    fc.assert(
      fc.property(
        cm,
        cm,
        cm,
        fc.constantFrom<DrawingView>("plan", "side", "front"),
        (x_m, y_m, z_m, view) => {
          const place = placeOf(view, onPlaneOf(view, [x_m, y_m, z_m]));
          const { plan, side, front } = { plan: { x_m, y_m }, side: { x_m, z_m }, front: { y_m, z_m } };
          const expected = { plan, side, front }[view];
          for (const [axis, metres] of Object.entries(expected))
            expect(Object.entries(place).find(([name]) => name === axis)?.[1]).toBeCloseTo(metres, 9);
          expect(Object.keys(place)).toHaveLength(2);
        },
      ),
    );
  });
});
