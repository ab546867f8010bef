import { distanceOutside_m, outlineOf } from "../drawing/extent.ts";
import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { LoadingSource } from "../schema/loading.ts";
import { NONE_GIVEN } from "../schema/text.ts";
import type { Draft } from "../shape/draft.ts";
import { mustBeAbove0 } from "./amounts.ts";
import { armsInside } from "./arms.ts";
import { measureText } from "./measure-text.ts";
import type { Rule } from "./rule.ts";
import { sideNamed } from "./sides.ts";

type Station = LoadingSource["stations"][number];

/** What lies on a station acts about where it is drawn: a person's centre is a hand ahead of the seat. */
const ARM_FROM_PLACE_m = 0.3;
/** A station of the centre may be this far off the centre line. */
const CENTRE_HALF_WIDTH_m = 0.5;

/** Every seat and bay is in the aircraft, where its arm says, and bears something. */
export const stationsAreInTheAircraft: Rule = (draft, report) => {
  const { loading } = draft;
  if (loading === undefined) return;
  const { along, across } = armsInside(draft, report);
  for (const [i, station] of loading.stations.entries()) {
    const path: Path = ["loading", "stations", i];
    along(station.arm, [...path, "arm"]);
    if (station.lateralArm !== undefined) across(station.lateralArm, [...path, "lateralArm"]);
    mustBeAbove0("a mass", station.max ?? undefined, [...path, "max"], report);
    if (station.max === null && station.kind === "bay") {
      report([...path, "max"], {
        expected: "what the bay bears, from the manual or its placard",
        found: NONE_GIVEN,
        remedy: "only a seat may be without a limit of its own",
      });
    }
    mustBeAbove0("an area", station.floor?.area, [...path, "floor", "area"], report);
    mustBeAbove0("a mass", station.floor?.maxPerSquareMetre, [...path, "floor", "maxPerSquareMetre"], report);
    isWhereItsArmSays(station, path, report);
    isOnItsSide(station.side, station.name, station.place[1], path, report);
    if (station.crew && station.kind !== "seat") {
      report([...path, "crew"], {
        expected: "a seat, where it is flown from",
        found: "a bay",
        remedy: "take `crew` out, or write `kind: seat`",
      });
    }
  }
  placesAreOnTheAircraft(draft, report);
  seatsAreThoseOfTheAircraft(draft, loading.stations, report);
  groupsLimitSomething(loading, report);
};

function isWhereItsArmSays({ arm, lateralArm, place }: Station, path: Path, report: Report): void {
  if (Math.abs(arm.valueSI - place[0]) > ARM_FROM_PLACE_m) {
    report([...path, "place"], {
      expected: `a place within ${ARM_FROM_PLACE_m} m of the arm, ${measureText(arm)} aft of the datum`,
      found: `x = ${place[0]} m`,
      remedy: "mend the arm, or where it is drawn",
    });
  }
  if (lateralArm !== undefined && Math.abs(lateralArm.valueSI - place[1]) > ARM_FROM_PLACE_m) {
    report([...path, "place"], {
      expected: `a place within ${ARM_FROM_PLACE_m} m of the lateral arm, ${measureText(lateralArm)} to the right`,
      found: `y = ${place[1]} m`,
      remedy: "mend the arm, or where it is drawn",
    });
  }
}

/** Side, name and y say the same. */
export function isOnItsSide(
  side: Station["side"],
  name: string,
  y_m: number,
  path: Path,
  report: Report,
): void {
  const really = y_m < 0 ? "left" : y_m > 0 ? "right" : "centre";
  const agrees = side === really || (side === "centre" && Math.abs(y_m) <= CENTRE_HALF_WIDTH_m);
  if (!agrees) {
    report([...path, "side"], {
      expected: `${really}, as y = ${y_m} m is (y is to the right)`,
      found: side,
      remedy: "mend the side, or the sign of y",
    });
  }
  const named = sideNamed(name);
  if (named === undefined || named === side) return;
  report([...path, "name"], {
    expected: `a name for a place whose side is ${side}`,
    found: `"${name}"`,
    remedy: "the name and the side must say the same",
  });
}

function placesAreOnTheAircraft({ geometry, loading }: Draft, report: Report): void {
  if (geometry === undefined || loading === undefined) return;
  const parts = outlineOf(geometry).filter(({ name }) => name !== "propeller" && name !== "wheel");
  for (const list of ["stations", "tanks"] as const) {
    for (const [i, { place }] of loading[list].entries()) {
      const [x_m, y_m] = place;
      const outside_m = Math.min(...parts.map((part) => distanceOutside_m(part, [x_m, y_m])));
      if (outside_m === 0) continue;
      report(["loading", list, i, "place"], {
        expected: "a place on the aircraft as seen from above",
        found: `[${place.join(", ")}], ${outside_m.toFixed(2)} m outside`,
        remedy: "it is [x aft of the datum, y right, z up], in metres",
      });
    }
  }
}

function seatsAreThoseOfTheAircraft({ aircraft }: Draft, stations: readonly Station[], report: Report): void {
  const seats = stations.filter(({ kind }) => kind === "seat");
  if (aircraft !== undefined && seats.length !== aircraft.seats) {
    report(["loading", "stations"], {
      expected: `a station for each seat of the aircraft, ${aircraft.seats}`,
      found: String(seats.length),
      remedy: "mend `aircraft.seats`, or the list of stations",
    });
  }
  if (!seats.some(({ crew }) => crew)) {
    report(["loading", "stations"], {
      expected: "a seat from which it is flown",
      found: "none",
      remedy: "write `crew: true` at the pilot's seat",
    });
  }
}

function groupsLimitSomething({ groups, stations }: LoadingSource, report: Report): void {
  for (const [i, group] of groups.entries()) {
    const path: Path = ["loading", "groups", i, "max"];
    mustBeAbove0("a mass", group.max, path, report);
    const members = stations.filter(({ id }) => group.stations.includes(id));
    if (members.length < group.stations.length) continue; // a dangling id, told elsewhere
    // of one without a limit of its own, that of the group is the only one
    const sum_kg = members.reduce((sum, { max }) => sum + (max?.valueSI ?? Number.POSITIVE_INFINITY), 0);
    if (group.max.valueSI < sum_kg) continue;
    report(path, {
      expected: `a mass below that of its stations together, ${Number(sum_kg.toFixed(3))} kg`,
      found: measureText(group.max),
      remedy: "a group that limits nothing is left out",
    });
  }
}
