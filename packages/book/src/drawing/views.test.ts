import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { arbitraryGeometry } from "../testing/arbitrary-geometry.ts";
import { smallGeometry } from "../testing/small-geometry.ts";
import { distanceOutside_m, extent, outlineOf, type PlanPlace } from "./extent.ts";
import { frontView } from "./front-view.ts";
import { isHighWing, tailKind } from "./layout.ts";
import { chordwise_m } from "./lifting-surface.ts";
import { planView } from "./plan-view.ts";
import { elevation, frontElevation, noseLeft, noseUp } from "./projection.ts";
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
          ...frontView(geometry, frontElevation(45, 100, 50), detail),
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

const metresOf = (strokes: readonly Stroke[]) =>
  places(strokes).map(([x, y]) => [x / 1000, -y / 1000] as const);

describe("the view from ahead", () => {
  const front = (geometry = smallGeometry, detail: Detail = 2) =>
    frontView(geometry, frontElevation(1000, 0, 0), detail);

  it("has the right wing at the left", () => {
    expect(frontElevation(10, 0, 100)(5, 3)).toEqual([-50, 70]);
  });

  it("is the same on both sides", () => {
    // but for its blades, which turn one way
    const drawn = places(front(smallGeometry, 0).filter(({ weight }) => weight !== "inside"));
    expect(drawn.length).toBeGreaterThan(40);
    expect(asText(drawn.map(([x, y]) => [-x, y]))).toEqual(asText(drawn));
  });

  it("reaches from tip to tip, and stands on the ground", () => {
    const all = metresOf(front());
    const { left_m, right_m, top_m } = extent(smallGeometry);
    expect(Math.min(...all.map(([x]) => x))).toBeCloseTo(-right_m, 1);
    expect(Math.max(...all.map(([x]) => x))).toBeCloseTo(-left_m, 1);
    expect(Math.min(...all.map(([, z]) => z))).toBeCloseTo(0, 2);
    expect(Math.max(...all.map(([, z]) => z))).toBeLessThanOrEqual(top_m + 0.06);
  });

  it("has as many blades as the book says, and two when it says nothing", () => {
    const [propeller] = smallGeometry.propellers;
    if (propeller === undefined) throw new Error("expected a propeller");
    const bladesOf = (blades: number | undefined) =>
      front({ ...smallGeometry, propellers: [{ ...propeller, ...(blades === undefined ? {} : { blades }) }] })
        .map(({ d }) => d.split("M").length - 1)
        .toSorted((a, b) => b - a)[0];
    expect([bladesOf(undefined), bladesOf(3), bladesOf(5)]).toEqual([2, 3, 5]);
  });
});

describe("the layout", () => {
  const { wing, tailplane, fin, fuselage } = smallGeometry;
  if (fin === undefined) throw new Error("expected a fin");
  const top_m = Math.max(...fin.outline.map(([, z]) => z));
  const foot_m = 1.6;
  const tailAt = (z: number) =>
    tailKind({
      ...smallGeometry,
      fuselage: fuselage.map(([x, w, , b]) => [x, w, foot_m, Math.min(b, foot_m)] as const),
      tailplane: { ...tailplane, root: { ...tailplane.root, z }, tip: { ...tailplane.tip, z } },
    });

  it("has a tail that is what its surfaces make it", () => {
    expect(tailAt(foot_m)).toBe("conventional");
    expect(tailAt((foot_m + top_m) / 2)).toBe("cruciform");
    expect(tailAt(top_m)).toBe("t");
    const { fin: _, ...finless } = smallGeometry;
    expect(tailKind(finless)).toBe("v");
  });

  it("draws a T tail over the fin, and a low one under it", () => {
    const raised = (z: number) => ({
      ...smallGeometry,
      tailplane: { ...tailplane, root: { ...tailplane.root, z }, tip: { ...tailplane.tip, z } },
    });
    const order = (z: number) => {
      const drawn = planView(raised(z), noseUp(1000, 0, 0), 0);
      const at = (x_m: number) =>
        drawn.findIndex(({ d }) =>
          places([{ d } as Stroke]).some(([, y]) => Math.abs(y / 1000 - x_m) < 1e-6),
        );
      return Math.sign(at(tailplane.tip.leadingEdge + tailplane.tip.chord) - at(fin.span[0]));
    };
    expect(order(tailplane.root.z)).toBe(-1);
    expect(order(top_m)).toBe(1);
  });

  it("draws a high wing over the cabin as one piece, and the cabin's sides under it dashed", () => {
    const z = Math.max(...fuselage.map(([, , top]) => top));
    const high = { ...smallGeometry, wing: { ...wing, root: { ...wing.root, z }, tip: { ...wing.tip, z } } };
    const low = {
      ...smallGeometry,
      wing: { ...wing, root: { ...wing.root, z: 0.6 }, tip: { ...wing.tip, z: 0.8 } },
    };
    expect([isHighWing(high), isHighWing(low)]).toEqual([true, false]);
    const hidden = (geometry: typeof high) =>
      planView({ ...geometry, wheels: [] }, noseUp(40, 0, 0), 0).filter(({ dashed }) => dashed).length;
    expect([hidden(high), hidden(low)]).toEqual([2, 0]);
  });

  it("follows a kink in the wing", () => {
    const kink = { y: 2.5, leadingEdge: wing.root.leadingEdge, chord: wing.root.chord, z: wing.root.z };
    const kinked = { ...wing, kinks: [kink] };
    expect(chordwise_m(kinked, 1.5, 0)).toBeCloseTo(wing.root.leadingEdge, 9);
    expect(chordwise_m(kinked, 2.5, 1)).toBeCloseTo(wing.root.leadingEdge + wing.root.chord, 9);
    expect(chordwise_m(kinked, wing.tip.y, 0)).toBeCloseTo(wing.tip.leadingEdge, 9);
    const halfway = (kink.y + wing.tip.y) / 2;
    expect(chordwise_m(kinked, halfway, 0)).toBeCloseTo((kink.leadingEdge + wing.tip.leadingEdge) / 2, 9);
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
