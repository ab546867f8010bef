import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { arbitraryGeometry } from "../testing/arbitrary-geometry.ts";
import { smallGeometry } from "../testing/small-geometry.ts";
import { distanceOutside_m, extent, outlineOf, type PlanPlace } from "./extent.ts";
import { planView } from "./plan-view.ts";
import { elevation, noseLeft, noseUp } from "./projection.ts";
import { sideView } from "./side-view.ts";
import type { Detail, Stroke } from "./stroke.ts";

const DETAILS: readonly Detail[] = [0, 1, 2];
const ONE_COMMAND = /^[MLCQ](-?\d+(\.\d+)?(e-?\d+)?,-?\d+(\.\d+)?(e-?\d+)?( |$))+$/;

/** Every pair of numbers of some path data. */
const places = (strokes: readonly Stroke[]): (readonly [number, number])[] =>
  strokes.flatMap(({ d }) =>
    [...d.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2])] as const),
  );

const roundedTo = (value: number): string => value.toFixed(1).replace("-0.0", "0.0");
const asText = (all: readonly (readonly [number, number])[]): string[] =>
  all.map(([x, y]) => `${roundedTo(x)},${roundedTo(y)}`).sort();

describe("the drawings", () => {
  it("are made of absolute M, L, C, Q and Z with finite numbers, for any geometry that the schema accepts", () => {
    fc.assert(
      fc.property(arbitraryGeometry(), fc.constantFrom(...DETAILS), (geometry, detail) => {
        const strokes = [
          ...planView(geometry, noseUp(45, 100, 50), detail),
          ...planView(geometry, noseLeft(45, 100, 50), detail),
          ...sideView(geometry, elevation(45, 100, 50), detail),
        ];
        for (const { d } of strokes) {
          for (const command of d.replaceAll("Z", "").split(/(?=[A-Z])/)) {
            if (!ONE_COMMAND.test(command) && command !== "")
              throw new Error(`not path data: ${command} in ${d}`);
          }
        }
      }),
      { numRuns: 150 },
    );
  });

  it("show more with more detail", () => {
    const plan = DETAILS.map((detail) => planView(smallGeometry, noseUp(40, 0, 0), detail).length);
    const side = DETAILS.map((detail) => sideView(smallGeometry, elevation(40, 0, 0), detail).length);
    expect(plan[0]).toBeLessThan(plan[1] ?? 0);
    expect(plan[1]).toBeLessThan(plan[2] ?? 0);
    expect(side[0]).toBeLessThan(side[1] ?? 0);
  });

  it("draw the outline the same on both sides of the centre line", () => {
    const drawn = places(planView(smallGeometry, noseUp(40, 0, 0), 0));
    expect(drawn.length).toBeGreaterThan(100);
    expect(asText(drawn.map(([x, y]) => [-x, y]))).toEqual(asText(drawn));
  });

  it("put the right wing to the right with the nose up, and up with the nose to the left", () => {
    expect(noseUp(10, 0, 0)(3, 5)).toEqual([50, 30]);
    expect(noseLeft(10, 0, 0)(3, 5)).toEqual([30, -50]);
    expect(elevation(10, 0, 100)(3, 5)).toEqual([30, 50]);
  });

  it("draw the trim tab on its own side only", () => {
    const withTab = planView(smallGeometry, noseUp(40, 0, 0), 2);
    const { trimTab: _, ...plain } = smallGeometry.tailplane;
    const without = new Set(
      planView({ ...smallGeometry, tailplane: plain }, noseUp(40, 0, 0), 2).map(({ d }) => d),
    );
    const tab = withTab.filter(({ d }) => !without.has(d));
    expect(tab).toHaveLength(1);
    expect(places(tab).every(([x]) => x > 0)).toBe(true); // the small aircraft has it on the right
  });

  it("stay inside the extent, in plan and from the side", () => {
    const { fore_m, aft_m, left_m, right_m, top_m } = extent(smallGeometry);
    const slack_m = 0.06; // a smooth line may swing a little past its stations
    for (const [y, x] of places(planView(smallGeometry, noseUp(1000, 0, 0), 2))) {
      expect(x / 1000).toBeGreaterThanOrEqual(fore_m - slack_m);
      expect(x / 1000).toBeLessThanOrEqual(aft_m + slack_m);
      expect(y / 1000).toBeGreaterThanOrEqual(left_m - slack_m);
      expect(y / 1000).toBeLessThanOrEqual(right_m + slack_m);
    }
    for (const [x, z] of places(sideView(smallGeometry, elevation(1000, 0, 0), 2))) {
      expect(x / 1000).toBeGreaterThanOrEqual(fore_m - slack_m);
      expect(x / 1000).toBeLessThanOrEqual(aft_m + slack_m);
      expect(-z / 1000).toBeGreaterThanOrEqual(0 - slack_m);
      expect(-z / 1000).toBeLessThanOrEqual(top_m + slack_m);
    }
  });
});

describe("the outline in metres", () => {
  const parts = outlineOf(smallGeometry);
  const outside_m = (place: PlanPlace): number =>
    Math.min(...parts.map((part) => distanceOutside_m(part, place)));

  it.each<[string, PlanPlace]>([
    ["the cabin", [3, 0]],
    ["the right wing", [3.1, 4]],
    ["the left wing tip", [3.1, -5.1]],
    ["a wheel", [3.5, 1.4]],
    ["a propeller blade", [0.3, 0.9]],
    ["the elevator", [7.0, -1]],
  ])("holds %s", (_, place) => {
    expect(outside_m(place)).toBe(0);
  });

  it.each<[string, PlanPlace, number]>([
    ["a metre past the right tip", [3.2, 6.2], 1],
    ["a metre ahead of the spinner", [-1.07, 0], 1],
    ["half a metre behind the fin", [8.1, 0], 0.5],
  ])("measures %s", (_, place, expected_m) => {
    expect(outside_m(place)).toBeCloseTo(expected_m, 6);
  });

  it("has the extent that its numbers give", () => {
    expect(extent(smallGeometry)).toEqual({
      fore_m: expect.closeTo(0.3 - 0.37, 9),
      aft_m: 7.6,
      left_m: -5.2,
      right_m: 5.2,
      top_m: 2.8,
    });
  });
});
