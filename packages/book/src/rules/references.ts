import { nearest } from "../faults/did-you-mean.ts";
import type { Report } from "../faults/fault-list.ts";
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
};

function referTo(draft: Draft, report: Report) {
  const known = new Map<ListSection, ReadonlySet<string>>();
  return (section: ListSection, id: string, path: Path): void => {
    const written = draft.ids[section];
    if (written === undefined) return; // the section itself is at fault and says so
    const ids = known.get(section) ?? new Set(written.map((item) => item.id));
    known.set(section, ids);
    if (ids.has(id)) return;
    const meant = nearest(id, ids);
    report(path, {
      expected: `the id of ${ONE[section]} of this book`,
      found: `\`${id}\`, which no ${ONE[section].replace(/^an? /, "")} has`,
      remedy:
        meant === undefined ? `add it under \`${section}\`, or name another` : `did you mean \`${meant}\`?`,
    });
  };
}
