import { ARCHETYPES, drawnFrom } from "@witnessmark/book";
import { describe, expect, it } from "vitest";
import { tappedPlace } from "./tapped-place.ts";
import type { DraftPoint } from "./walk-points.ts";

const [archetype] = ARCHETYPES;
if (archetype === undefined) throw new Error("expected an archetype");
const { geometry } = drawnFrom({
  registration: "ZZ-NEW",
  type: "New 1",
  ...archetype.figures,
  datumAft_m: 1.15,
});
const wing_m = geometry.wing.root.leadingEdge + 0.4;

const point = (id: string, place: DraftPoint["place"]): DraftPoint => ({
  index: 0,
  id,
  name: id,
  label: id,
  stance: "nose",
  place,
});

describe("a tap on a view of the aircraft", () => {
  it("from above is where it is, on the aircraft or within a hand of it, ahead of the datum too", () => {
    expect(tappedPlace({ x_m: wing_m, y_m: -3 }, geometry, [])).toEqual({ x_m: wing_m, y_m: -3 });
    expect(tappedPlace({ x_m: -1.1, y_m: 0 }, geometry, [])).toEqual({ x_m: -1.1, y_m: 0 });
    expect(tappedPlace({ x_m: -3, y_m: 0 }, geometry, [])).toBeNull();
    expect(tappedPlace({ x_m: wing_m, y_m: 9 }, geometry, [])).toBeNull();
  });

  it("from the side is as far out as the nearest point there, or in the middle", () => {
    const aileron = point("left-aileron", [wing_m, -4, 2]);
    expect(tappedPlace({ x_m: wing_m, z_m: 1.9 }, geometry, [aileron])).toEqual({
      x_m: wing_m,
      y_m: -4,
      z_m: 1.9,
    });
    expect(tappedPlace({ x_m: wing_m + 2.5, z_m: 1 }, geometry, [aileron])).toEqual({
      x_m: wing_m + 2.5,
      y_m: 0,
      z_m: 1,
    });
    expect(tappedPlace({ x_m: wing_m, z_m: 1 }, geometry, [])).toEqual({ x_m: wing_m, y_m: 0, z_m: 1 });
  });

  it("from the side is outside beneath the ground, above the fin and ahead of the nose", () => {
    for (const at of [
      { x_m: wing_m, z_m: -0.1 },
      { x_m: wing_m, z_m: 6 },
      { x_m: -3, z_m: 1 },
      { y_m: 0, z_m: 1 },
    ])
      expect(tappedPlace(at, geometry, [])).toBeNull();
  });
});
