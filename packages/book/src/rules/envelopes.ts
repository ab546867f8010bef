import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { LoadingSource } from "../schema/loading.ts";
import { mustBeAbove0 } from "./amounts.ts";
import { armsInside } from "./arms.ts";
import { measureText } from "./measure-text.ts";
import type { Rule } from "./rule.ts";

type Corner = LoadingSource["envelopes"][number]["points"][number];
type Edge = readonly [from: Corner, to: Corner];

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

const cornerText = ({ arm, mass }: Corner): string => `${measureText(arm)}, ${measureText(mass)}`;

/** The first crossing is told; the others mostly come of the same slip. */
function edgeDoesNotCross(points: readonly Corner[], path: Path, report: Report): void {
  const edges = points.map((to, i): Edge => [points.at(i - 1) ?? to, to]);
  for (const [j, edge] of edges.entries()) {
    const [from, to] = edge;
    if (from.arm.valueSI === to.arm.valueSI && from.mass.valueSI === to.mass.valueSI) {
      report([...path, j], {
        expected: "each corner once",
        found: `${cornerText(to)} twice in a row`,
        remedy: "take one of the two out; the edge closes by itself",
      });
      return;
    }
    for (const [k, other] of edges.slice(0, j).entries()) {
      const meet = k === j - 1 || (k === 0 && j === edges.length - 1);
      if (meet ? !foldsBack(other, edge) : !touch(other, edge)) continue;
      report([...path, j], {
        expected: "an edge that does not cross or touch itself",
        found: `the line from ${cornerText(from)} to ${cornerText(to)}, which meets that from ${cornerText(other[0])} to ${cornerText(other[1])}`,
        remedy: "give the corners one after the other round the edge",
      });
      return;
    }
  }
}

/** Twice the area of a triangle of corners, with the sign of the turn at the second. */
function turn(a: Corner, b: Corner, c: Corner): number {
  const [ax, ay] = [b.arm.valueSI - a.arm.valueSI, b.mass.valueSI - a.mass.valueSI];
  const [bx, by] = [c.arm.valueSI - a.arm.valueSI, c.mass.valueSI - a.mass.valueSI];
  return ax * by - ay * bx;
}

const isBetween = (a: number, b: number, x: number): boolean => x >= Math.min(a, b) && x <= Math.max(a, b);

const liesIn = ([a, b]: Edge, c: Corner): boolean =>
  turn(a, b, c) === 0 &&
  isBetween(a.arm.valueSI, b.arm.valueSI, c.arm.valueSI) &&
  isBetween(a.mass.valueSI, b.mass.valueSI, c.mass.valueSI);

function touch(one: Edge, other: Edge): boolean {
  const [a, b] = one;
  const [c, d] = other;
  const apart =
    Math.sign(turn(a, b, c)) * Math.sign(turn(a, b, d)) < 0 &&
    Math.sign(turn(c, d, a)) * Math.sign(turn(c, d, b)) < 0;
  return apart || liesIn(one, c) || liesIn(one, d) || liesIn(other, a) || liesIn(other, b);
}

/** Two edges that share a corner may share nothing else. */
function foldsBack(one: Edge, other: Edge): boolean {
  const shared = one[1] === other[0] ? one[1] : one[0];
  const farOfOne = one[1] === shared ? one[0] : one[1];
  const farOfOther = other[0] === shared ? other[1] : other[0];
  return liesIn(other, farOfOne) || liesIn(one, farOfOther);
}
