import type { Measure } from "@witnessmark/engine";
import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { LoadingSource } from "../schema/loading.ts";
import { mustBeAbove0 } from "./amounts.ts";
import { armsInside } from "./arms.ts";
import { measureText } from "./measure-text.ts";
import type { Rule } from "./rule.ts";

/** The empty aircraft, its limits and its chord can be those of one aircraft. */
export const limitsCanBeKept: Rule = (draft, report) => {
  const { loading, aircraft } = draft;
  if (loading === undefined) return;
  const { empty, limits, mac, gearMoment } = loading;
  const { along, across } = armsInside(draft, report);
  const weighed = [
    { ...empty, path: ["loading", "empty"] as Path },
    ...empty.revisions.map((revision, i) => ({
      ...revision,
      path: ["loading", "empty", "revisions", i] as Path,
    })),
  ];
  for (const { mass, arm, lateralArm, path } of weighed) {
    mustBeAbove0("a mass", mass, [...path, "mass"], report);
    along(arm, [...path, "arm"]);
    if (lateralArm !== undefined) across(lateralArm, [...path, "lateralArm"]);
  }
  revisionsFollow(empty, report);
  limitsAreInOrder(loading, report);
  for (const key of ["lateralMoment", "fuelImbalance"] as const) {
    mustBeAbove0("a limit", limits[key], ["loading", "limits", key], report);
  }
  if (mac !== undefined) {
    mustBeAbove0("a chord", mac.length, ["loading", "mac", "length"], report);
    along(mac.leadingEdge, ["loading", "mac", "leadingEdge"]);
  }
  if (gearMoment !== undefined && aircraft?.retractable === false) {
    report(["loading", "gearMoment"], {
      expected: "no moment of the gear, which stays down on this aircraft",
      found: measureText(gearMoment),
      remedy: "take it out, or mend `aircraft.retractable`",
    });
  }
};

/** ISO dates sort as text. */
function revisionsFollow({ weighedOn, revisions }: LoadingSource["empty"], report: Report): void {
  for (const [i, { on }] of revisions.entries()) {
    const before = revisions[i - 1]?.on ?? weighedOn;
    if (on >= before) continue;
    report(["loading", "empty", "revisions", i, "on"], {
      expected: `a date not before ${before}, that of the one before`,
      found: on,
      remedy: "put them in order, oldest first; the last is in force",
    });
  }
}

/** Each may not be above the next that the book gives; the empty aircraft is below them all. */
function limitsAreInOrder({ empty, limits }: LoadingSource, report: Report): void {
  const top = limits.ramp ?? limits.takeOff;
  const topName = limits.ramp === undefined ? "take-off" : "ramp";
  const pairs: readonly (readonly [keyof typeof limits, Measure, string])[] = [
    ["takeOff", top, topName],
    ["landing", top, topName],
    ["landing", limits.takeOff, "take-off"],
    ["zeroFuel", limits.takeOff, "take-off"],
    ["minimumFlight", limits.takeOff, "take-off"],
    ["minimumFlight", limits.landing ?? limits.takeOff, "landing"],
  ];
  const told = new Set<string>();
  for (const [key, above, name] of pairs) {
    const limit = limits[key];
    if (limit === undefined || limit.valueSI <= above.valueSI || told.has(key)) continue;
    told.add(key);
    report(["loading", "limits", key], {
      expected: `a mass not above the ${name} limit, ${measureText(above)}`,
      found: measureText(limit),
      remedy: "mend one of the two",
    });
  }
  const now = empty.revisions.at(-1) ?? empty;
  for (const key of ["ramp", "takeOff", "zeroFuel", "landing"] as const) {
    const limit = limits[key];
    if (limit === undefined || told.has(key) || limit.valueSI > now.mass.valueSI) continue;
    report(["loading", "limits", key], {
      expected: `a mass above that of the empty aircraft, ${measureText(now.mass)}`,
      found: measureText(limit),
    });
  }
  if (limits.minimumFlight !== undefined) {
    mustBeAbove0("a limit", limits.minimumFlight, ["loading", "limits", "minimumFlight"], report);
  }
}
