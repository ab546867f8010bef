import { distanceOutside_m, type Extent, extent, outlineOf, type PlanPart } from "../drawing/extent.ts";
import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { Point } from "../schema/book-source.ts";
import type { Rule } from "./rule.ts";
import { sideNamed } from "./sides.ts";

/** Probes, wicks, aerials, chocks and tow bars stand out by less than this from what the geometry knows. */
export const ALLOWED_OUTSIDE_m = 0.3;
/** A point of the centre may be this far off the centre line: a gauge on the panel, a filler. */
const CENTRE_HALF_WIDTH_m = 0.5;

/** Every point is on the aircraft, above the ground, and on the side it says. */
export const pointsAreOnTheAircraft: Rule = (draft, report) => {
  const parts = draft.geometry === undefined ? undefined : outlineOf(draft.geometry);
  const box = draft.geometry === undefined ? undefined : extent(draft.geometry);
  for (const { index, value } of draft.points) {
    const path: Path = ["points", index];
    sideFault(value, path, report);
    nameFault(value, path, report);
    if (parts !== undefined && box !== undefined) placeFault(value, parts, box, path, report);
  }
};

function sideFault({ side, place }: Point, path: Path, report: Report): void {
  const y_m = place[1];
  const agrees = { left: y_m < 0, right: y_m > 0, centre: Math.abs(y_m) <= CENTRE_HALF_WIDTH_m }[side];
  if (agrees) return;
  const really = y_m < 0 ? "left" : y_m > 0 ? "right" : "centre";
  report([...path, "side"], {
    expected: `${really}, as y = ${y_m} m is (y is to the right)`,
    found: side,
    remedy: "mend the side, or the sign of y",
  });
}

function nameFault({ name, side }: Point, path: Path, report: Report): void {
  const named = sideNamed(name);
  if (named === undefined || named === side) return;
  report([...path, "name"], {
    expected: `a name for a point whose side is ${side}`,
    found: `"${name}"`,
    remedy: "the name and the side must say the same",
  });
}

function placeFault(
  { place }: Point,
  parts: readonly PlanPart[],
  box: Extent,
  path: Path,
  report: Report,
): void {
  const [x_m, y_m, z_m] = place;
  const outside_m = Math.min(...parts.map((part) => distanceOutside_m(part, [x_m, y_m])));
  if (outside_m > ALLOWED_OUTSIDE_m) {
    report([...path, "place"], {
      expected: `a place on the aircraft, or within ${ALLOWED_OUTSIDE_m} m of it as seen from above`,
      found: `[${place.join(", ")}], ${outside_m.toFixed(2)} m outside`,
      remedy: "it is [x aft of the datum, y right, z up], in metres",
    });
  }
  if (z_m < 0 || z_m > box.top_m + ALLOWED_OUTSIDE_m) {
    report([...path, "place", 2], {
      expected: `a height above the ground, at most ${(box.top_m + ALLOWED_OUTSIDE_m).toFixed(2)} m`,
      found: `${z_m} m`,
    });
  }
}
