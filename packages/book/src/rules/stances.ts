import { type Station, sectionAt } from "../drawing/fuselage-body.ts";
import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { Stance } from "../schema/book-source.ts";
import type { Geometry } from "../schema/geometry.ts";
import type { Rule } from "./rule.ts";
import { sideNamed } from "./sides.ts";

/** Under a body higher than this one can crouch, or stand. */
const ROOM_m: Readonly<Record<"crouch" | "stand", number>> = { crouch: 1.0, stand: 1.9 };
/** Before and behind the plane in which the blades turn, nobody is asked to stand. */
const CLEAR_OF_BLADES_m = 0.5;

/** One can be at a stance: not inside the metal, not where the propeller turns; and inside is inside. */
export const stancesCanBeTaken: Rule = (draft, report) => {
  for (const { index, value } of draft.stances) {
    const path: Path = ["stances", index];
    const named = sideNamed(value.name);
    const y_m = value.place[1];
    if ((named === "left" && y_m > 0) || (named === "right" && y_m < 0)) {
      report([...path, "name"], {
        expected: `a name for a place on the ${y_m > 0 ? "right" : "left"}, as y = ${y_m} m is`,
        found: `"${value.name}"`,
        remedy: "mend the name, or the sign of y",
      });
    }
    if (draft.geometry !== undefined) placeFaults(value, draft.geometry, path, report);
  }
};

function placeFaults(stance: Stance, geometry: Geometry, path: Path, report: Report): void {
  const { place, posture } = stance;
  const [x_m, y_m] = place;
  if (posture === "inside") {
    if (bodyOver([{ y: 0, stations: geometry.fuselage }], place) === undefined) {
      report([...path, "place"], {
        expected: "a place inside the fuselage, for the posture inside",
        found: `[${place.join(", ")}], outside it`,
        remedy: "mend the place, or take `stand` or `crouch` as posture",
      });
    }
    return;
  }
  const bottom_m = bodyOver([{ y: 0, stations: geometry.fuselage }, ...geometry.nacelles], place);
  if (bottom_m !== undefined && bottom_m < ROOM_m[posture]) {
    report([...path, "place"], {
      expected: `a place beside the aircraft, or one with ${ROOM_m[posture]} m of room above it to ${posture}`,
      found: `[${place.join(", ")}], under metal ${bottom_m.toFixed(2)} m above the ground`,
      remedy: "move it outwards, or take `inside` as posture",
    });
  }
  const blades = geometry.propellers.find(
    ({ x, y, radius }) => Math.abs(x_m - x) < CLEAR_OF_BLADES_m && Math.abs(y_m - y) < radius,
  );
  if (blades === undefined && stance.inArc !== undefined) {
    report([...path, "inArc"], {
      expected: "no reason to stand where a propeller turns: none turns there",
      found: `"${stance.inArc}"`,
      remedy: "take `inArc` out, or mend the place",
    });
  }
  if (blades !== undefined && stance.inArc === undefined) {
    report([...path, "place"], {
      expected: `a place at least ${CLEAR_OF_BLADES_m} m before or behind where the blades turn, x = ${blades.x} m`,
      found: `[${place.join(", ")}]`,
      remedy: "look at it from outside its disc, or say under `inArc` why that cannot be done",
    });
  }
}

/** The underside of the body that is over a place, metres above the ground; `undefined` when none is. */
function bodyOver(
  bodies: readonly { readonly y: number; readonly stations: readonly Station[] }[],
  [x_m, y_m]: Stance["place"],
): number | undefined {
  for (const { y, stations } of bodies) {
    const [fore, aft] = [stations.at(0)?.[0] ?? 0, stations.at(-1)?.[0] ?? 0];
    if (x_m < fore || x_m > aft) continue;
    const [, halfWidth_m, , bottom_m] = sectionAt(stations, x_m);
    if (Math.abs(y_m - y) < halfWidth_m) return bottom_m;
  }
  return undefined;
}
