import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { Rule } from "./rule.ts";

/** Lists that are sets name nothing twice. */
export const listsDoNotRepeat: Rule = (draft, report) => {
  for (const { index, value } of draft.checks) {
    const here: Path = ["checks", index];
    noRepeats(value.holds.until, [...here, "holds", "until"], report);
    noRepeats(value.walks, [...here, "walks"], report);
    noRepeats(value.after, [...here, "after"], report);
    if (typeof value.at !== "string") noRepeats(value.at, [...here, "at"], report);
  }
  for (const { index, value } of draft.groundGear) {
    noRepeats(value.stowedIn, ["groundGear", index, "stowedIn"], report);
  }
  for (const { index, value } of draft.equipment) {
    noRepeats(value.points, ["equipment", index, "points"], report);
  }
  for (const [i, { readAt }] of (draft.loading?.tanks ?? []).entries()) {
    noRepeats(readAt, ["loading", "tanks", i, "readAt"], report);
  }
  for (const [i, { stations }] of (draft.loading?.groups ?? []).entries()) {
    noRepeats(stations, ["loading", "groups", i, "stations"], report);
  }
  for (const [i, { quantities }] of (draft.performance?.factors ?? []).entries()) {
    noRepeats(quantities, ["performance", "factors", i, "quantities"], report);
  }
};

function noRepeats(list: readonly string[], path: Path, report: Report): void {
  for (const [i, item] of list.entries()) {
    if (list.indexOf(item) < i) {
      report([...path, i], {
        expected: "each item only once",
        found: `\`${item}\` a second time`,
        remedy: "take it out",
      });
    }
  }
}
