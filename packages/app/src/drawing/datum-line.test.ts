import { ARCHETYPES, drawnFrom } from "@witnessmark/book";
import { describe, expect, it } from "vitest";
import type { Camera } from "./camera.ts";
import { datumEnds, datumLine } from "./datum-line.ts";
import { dimensionPlaces } from "./dimension-places.ts";
import { metres, overallDimensions, placeDimensions } from "./dimensions.ts";
import { viewBox, withDatum } from "./view-plane.ts";

const NOSE_LEFT: Camera = { pxPerMetre: 40, originX_px: 0, originY_px: 0, turn_deg: -90 };
const LEVEL: Camera = { ...NOSE_LEFT, turn_deg: 0 };

function begun(datumAft_m: number) {
  const [archetype] = ARCHETYPES;
  if (archetype === undefined) throw new Error("expected an archetype");
  return drawnFrom({ registration: "ZZ-NEW", type: "New 1", ...archetype.figures, datumAft_m }).geometry;
}

const lineOf = (view: "plan" | "side", camera: Camera, measures: Parameters<typeof datumLine>[1] = []) => {
  const ends = datumEnds(view, begun(1.15), camera);
  if (ends === null) throw new Error("expected the datum");
  return datumLine(ends, measures, []);
};

describe("the datum on a drawing", () => {
  it("is at x = 0, across the aircraft from above, upright from the side, and nowhere from ahead", () => {
    const plan = lineOf("plan", NOSE_LEFT);
    const side = lineOf("side", LEVEL);
    for (const [x] of [plan.from, plan.to, side.from, side.to]) expect(x).toBeCloseTo(0, 6);
    // a span of 11 m at 40 px/m
    expect(Math.abs(plan.to[1] - plan.from[1])).toBeGreaterThan(440);
    expect(datumEnds("front", begun(1.15), NOSE_LEFT)).toBeNull();
  });

  it("has its name at the end where no measure is", () => {
    const geometry = begun(1.15);
    const measured = (dimensions: ReturnType<typeof overallDimensions>) =>
      lineOf("plan", NOSE_LEFT, dimensionPlaces(dimensions, NOSE_LEFT, [], undefined)).at.y;
    // of the whole the length is below; of a point how far aft it is, above
    expect(measured(overallDimensions("plan", geometry, metres))).toBeLessThan(-200);
    expect(measured(placeDimensions("plan", [1, 2, 1], geometry, metres))).toBeGreaterThan(200);
  });

  it("has its name over the end of a level line, not past it", () => {
    const { from, to, at } = lineOf("plan", LEVEL);
    expect(at.x + 23).toBeLessThanOrEqual(Math.max(from[0], to[0]) + 0.01); // half of the name is 23 px
    expect(Math.abs(at.y)).toBe(13);
  });

  it.each([-2, 0, 1.15, 9.5])("is in the picture, %s m from the tip of the nose", (datumAft_m) => {
    const geometry = begun(datumAft_m);
    const plan = withDatum("plan", viewBox("plan", geometry));
    expect([plan.fore <= 0, plan.aft >= 0]).toEqual([true, true]);
    // 8.2 m long
    expect(plan.aft - plan.fore).toBeCloseTo(Math.max(8.2, 8.2 - datumAft_m, datumAft_m), 1);
    const side = withDatum("side", viewBox("side", geometry));
    expect([side.left <= 0, side.right >= 0]).toEqual([true, true]);
  });
});
