import { envelopeFaults } from "@witnessmark/engine";
import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { LoadingSource } from "../schema/loading.ts";
import { mustBeAbove0 } from "./amounts.ts";
import { armsInside } from "./arms.ts";
import { measureText } from "./measure-text.ts";
import type { Rule } from "./rule.ts";

type Corner = LoadingSource["envelopes"][number]["points"][number];

/** Every envelope encloses something, once, within the limits. */
export const envelopesEnclose: Rule = (draft, report) => {
  const { loading } = draft;
  if (loading === undefined) return;
  const { along } = armsInside(draft, report);
  const { limits } = loading;
  const most = limits.ramp ?? limits.takeOff;
  for (const [i, { points }] of loading.envelopes.entries()) {
    const path: Path = ["loading", "envelopes", i, "points"];
    if (points.length < 3) {
      report(path, {
        expected: "at least 3 corners, one after the other round the edge",
        found: String(points.length),
        remedy: "the edge closes by itself from the last corner to the first",
      });
      continue;
    }
    for (const [j, { arm, mass }] of points.entries()) {
      along(arm, [...path, j, "arm"]);
      mustBeAbove0("a mass", mass, [...path, j, "mass"], report);
      if (mass.valueSI > most.valueSI) {
        report([...path, j, "mass"], {
          expected: `a mass within the limit, ${measureText(most)}`,
          found: measureText(mass),
          remedy: "mend the corner, or `loading.limits`",
        });
      }
    }
    edgeDoesNotCross(points, path, report);
  }
};

/**
 * By the rule of the engine, which judges by the same envelopes, told in the corners and units of the book. The first
 * is told; the others mostly come of the same slip.
 */
function edgeDoesNotCross(points: readonly Corner[], path: Path, report: Report): void {
  const faults = envelopeFaults({
    points: points.map(({ arm, mass }) => ({ arm_m: arm.valueSI, mass_kg: mass.valueSI })),
  }).flatMap(({ code, points: at }) => {
    const [first = 0, second = first] = at;
    switch (code) {
      case "point-twice":
        return [{ at: second, found: `${textAt(points, second)} twice in a row` } as const];
      case "folds-back": {
        const last = points.length - 1;
        const [one, other] = first === last ? [0, last] : [first, first + 1];
        return [{ at: other, found: meeting(points, one, other) } as const];
      }
      case "crosses-itself":
        return [{ at: second, found: meeting(points, first, second) } as const];
      // told above, each in its own words
      case "too-few-points":
      case "not-a-number":
      case "mass-not-positive":
        return [];
      default:
        return code satisfies never;
    }
  });
  const [told] = faults.toSorted((a, b) => a.at - b.at);
  if (told === undefined) return;
  const isTwice = told.found.endsWith("twice in a row");
  report([...path, told.at], {
    expected: isTwice ? "each corner once" : "an edge that does not cross or touch itself",
    found: told.found,
    remedy: isTwice
      ? "take one of the two out; the edge closes by itself"
      : "give the corners one after the other round the edge",
  });
}

function textAt(points: readonly Corner[], at: number): string {
  const corner = points.at(at);
  return corner === undefined ? "no corner" : `${measureText(corner.arm)}, ${measureText(corner.mass)}`;
}

/** Edges are named by the corner that they lead to. */
const meeting = (points: readonly Corner[], one: number, other: number): string =>
  `the line from ${textAt(points, other - 1)} to ${textAt(points, other)}, which meets that from ${textAt(points, one - 1)} to ${textAt(points, one)}`;
