import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import { jascChapter, jascTitle } from "../jasc/jasc-title.ts";
import type { Rule } from "./rule.ts";

/** A JASC code is one of the table. */
export const jascCodesAreKnown: Rule = (draft, report) => {
  for (const { index, value } of draft.checks) {
    if (value.jasc !== undefined) mustBeKnown(value.jasc, ["checks", index, "jasc"], report);
  }
  for (const { index, value } of draft.equipment) {
    mustBeKnown(value.jasc, ["equipment", index, "jasc"], report);
  }
};

function mustBeKnown(code: string, path: Path, report: Report): void {
  if (jascTitle(code) !== undefined) return;
  const chapter = jascChapter(code);
  report(path, {
    expected: "a code of the JASC table",
    found: `"${code}"`,
    remedy:
      chapter === undefined
        ? "the first two figures name the system, as 32 for landing gear"
        : `write "${code.slice(0, 2)}00" for ${chapter} as a whole`,
  });
}
