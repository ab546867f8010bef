import { nearest } from "../faults/did-you-mean.ts";
import type { FaultText, Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { Draft, ListSection } from "../shape/draft.ts";
import type { Rule } from "./rule.ts";

const ONE: Readonly<Record<ListSection, string>> = {
  gauges: "a gauge",
  areas: "an area",
  stances: "a stance",
  points: "a point",
  checks: "a check",
  groundGear: "a piece of ground gear",
  equipment: "a piece of equipment",
};

/** Every id that names something elsewhere in the book names something that is there. */
export const referencesHold: Rule = (draft, report) => {
  const must = referTo(draft, report);
  for (const { index, value } of draft.points) {
    must("areas", value.area, ["points", index, "area"]);
    must("stances", value.stance, ["points", index, "stance"]);
    if (value.mirrors !== undefined) must("points", value.mirrors, ["points", index, "mirrors"]);
  }
  for (const { index, value } of draft.checks) {
    const here: Path = ["checks", index];
    if (typeof value.at === "string") must("points", value.at, [...here, "at"]);
    else for (const [i, id] of value.at.entries()) must("points", id, [...here, "at", i]);
    if (value.from !== undefined) must("stances", value.from, [...here, "from"]);
    for (const [i, id] of value.after.entries()) must("checks", id, [...here, "after", i]);
    if (value.reading !== undefined) must("gauges", value.reading.gauge, [...here, "reading", "gauge"]);
  }
  for (const { index, value } of draft.groundGear) {
    must("points", value.point, ["groundGear", index, "point"]);
    if (value.stance !== undefined) must("stances", value.stance, ["groundGear", index, "stance"]);
  }
  for (const { index, value } of draft.equipment) {
    for (const [i, id] of value.points.entries()) must("points", id, ["equipment", index, "points", i]);
  }
  flightReferences(draft, must, report);
};

type Must = (section: ListSection, id: string, path: Path) => void;

/** Of loading, fuel and oxygen: what they name of the walk, and of one another. */
function flightReferences({ loading, fuel, oxygen }: Draft, must: Must, report: Report): void {
  const stations = new Set(loading?.stations.map(({ id }) => id));
  const tanks = new Set(loading?.tanks.map(({ id }) => id));
  const mustBe = (ids: ReadonlySet<string>, one: string, under: string, id: string, path: Path): void => {
    if (!ids.has(id)) report(path, danglingFault(id, ids, one, under));
  };
  for (const [i, { point }] of (loading?.stations ?? []).entries()) {
    if (point !== undefined) must("points", point, ["loading", "stations", i, "point"]);
  }
  for (const [i, { gauge, readAt }] of (loading?.tanks ?? []).entries()) {
    const here: Path = ["loading", "tanks", i];
    if (gauge !== undefined) must("gauges", gauge, [...here, "gauge"]);
    for (const [j, id] of readAt.entries()) must("points", id, [...here, "readAt", j]);
  }
  for (const [i, group] of (loading?.groups ?? []).entries()) {
    for (const [j, id] of group.stations.entries()) {
      mustBe(stations, "a station", "loading.stations", id, ["loading", "groups", i, "stations", j]);
    }
  }
  if (loading !== undefined) {
    for (const [i, together] of (fuel?.order ?? []).entries()) {
      for (const [j, id] of together.entries()) {
        mustBe(tanks, "a tank", "loading.tanks", id, ["fuel", "order", i, j]);
      }
    }
    for (const [i, { seat }] of (oxygen?.outlets ?? []).entries()) {
      mustBe(stations, "a station", "loading.stations", seat, ["oxygen", "outlets", i, "seat"]);
    }
  }
  if (oxygen !== undefined) {
    must("gauges", oxygen.cylinder.gauge, ["oxygen", "cylinder", "gauge"]);
    must("checks", oxygen.cylinder.check, ["oxygen", "cylinder", "check"]);
  }
}

function danglingFault(id: string, ids: Iterable<string>, one: string, under: string): FaultText {
  const meant = nearest(id, ids);
  return {
    expected: `the id of ${one} of this book`,
    found: `\`${id}\`, which no ${one.replace(/^an? /, "")} has`,
    remedy: meant === undefined ? `add it under \`${under}\`, or name another` : `did you mean \`${meant}\`?`,
  };
}

function referTo(draft: Draft, report: Report): Must {
  const known = new Map<ListSection, ReadonlySet<string>>();
  return (section: ListSection, id: string, path: Path): void => {
    const written = draft.ids[section];
    if (written === undefined) return; // the section itself is at fault and says so
    const ids = known.get(section) ?? new Set(written.map((item) => item.id));
    known.set(section, ids);
    if (ids.has(id)) return;
    report(path, danglingFault(id, ids, ONE[section], section));
  };
}
