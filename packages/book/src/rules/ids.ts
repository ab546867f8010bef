import type { Path } from "../faults/path.ts";
import { LIST_SECTIONS } from "../shape/draft.ts";
import type { Rule } from "./rule.ts";

/** Within a section, and among the faults of a check, an id names one thing. */
export const idsAreUnique: Rule = (draft, report) => {
  const tell = (ids: readonly { readonly id: string; readonly path: Path }[]): void => {
    const seen = new Set<string>();
    for (const { id, path } of ids) {
      if (seen.has(id)) {
        report(path, {
          expected: "an id that no other has",
          found: `\`${id}\` a second time`,
          remedy: "give one of the two another id",
        });
      }
      seen.add(id);
    }
  };
  for (const section of LIST_SECTIONS) {
    tell((draft.ids[section] ?? []).map(({ id, index }) => ({ id, path: [section, index, "id"] })));
  }
  for (const { index, value } of draft.checks) {
    tell(value.faults.map(({ id }, i) => ({ id, path: ["checks", index, "faults", i, "id"] })));
  }
};
