import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import { LIST_SECTIONS } from "../shape/draft.ts";
import type { Rule } from "./rule.ts";

/** Says of each id but the first of its kind that it stands a second time. */
export function noIdTwice(
  ids: readonly { readonly id: string; readonly path: Path }[],
  report: Report,
  kind = "an id",
): void {
  const seen = new Set<string>();
  for (const { id, path } of ids) {
    if (seen.has(id)) {
      report(path, {
        expected: `${kind} that no other has`,
        found: `\`${id}\` a second time`,
        remedy: `give one of the two another ${kind.replace(/^an? /, "")}`,
      });
    }
    seen.add(id);
  }
}

/** Ids of the items of a list, as `noIdTwice` wants them. */
export const idsIn = (items: readonly { readonly id: string }[], path: Path) =>
  items.map(({ id }, i) => ({ id, path: [...path, i, "id"] }));

/** Within a section, and among the faults of a check, an id names one thing. */
export const idsAreUnique: Rule = (draft, report) => {
  for (const section of LIST_SECTIONS) {
    const ids = draft.ids[section] ?? [];
    noIdTwice(
      ids.map(({ id, index }) => ({ id, path: [section, index, "id"] })),
      report,
    );
  }
  for (const { index, value } of draft.checks) {
    noIdTwice(idsIn(value.faults, ["checks", index, "faults"]), report);
  }
  const { loading, oxygen, performance, fields } = draft;
  noIdTwice(idsIn(loading?.stations ?? [], ["loading", "stations"]), report);
  noIdTwice(idsIn(loading?.tanks ?? [], ["loading", "tanks"]), report);
  noIdTwice(idsIn(loading?.groups ?? [], ["loading", "groups"]), report);
  noIdTwice(idsIn(loading?.envelopes ?? [], ["loading", "envelopes"]), report);
  noIdTwice(idsIn(oxygen?.outlets ?? [], ["oxygen", "outlets"]), report);
  noIdTwice(idsIn(performance?.tables ?? [], ["performance", "tables"]), report);
  noIdTwice(idsIn(performance?.factors ?? [], ["performance", "factors"]), report);
  const codes = (fields ?? []).map(({ code }, i) => ({ id: code, path: ["fields", i, "code"] }));
  noIdTwice(codes, report, "a code");
  for (const [i, { runways }] of (fields ?? []).entries()) {
    const names = runways.map(({ name }, j) => ({ id: name, path: ["fields", i, "runways", j, "name"] }));
    noIdTwice(names, report, "a name");
  }
};
