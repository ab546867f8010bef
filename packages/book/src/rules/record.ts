import { nearest } from "../faults/did-you-mean.ts";
import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { TimedItem } from "../schema/timed-item.ts";
import type { Draft } from "../shape/draft.ts";
import { idsIn, noIdTwice } from "./ids.ts";
import type { Rule } from "./rule.ts";

/** What runs out and what may be flown with name what is there, and can be so. */
export const recordCanBeKept: Rule = (draft, report) => {
  noIdTwice(idsIn(draft.counters ?? [], ["counters"]), report);
  noIdTwice(idsIn(draft.timedItems ?? [], ["timedItems"]), report);
  for (const [i, item] of (draft.timedItems ?? []).entries())
    itemCanRunOut(draft, item, ["timedItems", i], report);
  reliefCanBe(draft, report);
};

function mustName(
  known: Iterable<string>,
  id: string,
  one: string,
  under: string,
  path: Path,
  report: Report,
): void {
  const ids = [...known];
  if (ids.includes(id)) return;
  const meant = nearest(id, ids);
  report(path, {
    expected: `the id of ${one} of this book`,
    found: `\`${id}\`, which none has`,
    remedy: meant === undefined ? `add it under \`${under}\`, or name another` : `did you mean \`${meant}\`?`,
  });
}

function itemCanRunOut(draft: Draft, item: TimedItem, path: Path, report: Report): void {
  const equipment = (draft.ids.equipment ?? []).map(({ id }) => id);
  const counters = (draft.counters ?? []).map(({ id }) => id);
  if (item.component !== undefined)
    mustName(equipment, item.component, "a piece of equipment", "equipment", [...path, "component"], report);
  for (const [j, limit] of item.limits.entries()) {
    if (limit.by === "counter")
      mustName(counters, limit.counter, "a counter", "counters", [...path, "limits", j, "counter"], report);
  }
  if (item.endsLife && item.recurring) {
    report([...path, "recurring"], {
      expected: "`false`: a life that ends does not begin again",
      found: "`true`",
      remedy: "write `recurring: false`, or take `endsLife` out",
    });
  }
  const { tolerance } = item;
  if (tolerance !== undefined && (tolerance.hours ?? tolerance.days ?? tolerance.months) === undefined) {
    report([...path, "tolerance"], {
      expected: "how much: `hours`, `days` or `months`",
      found: "none of them",
    });
  }
  if (item.counts !== undefined && !item.limits.some(({ by }) => by === "days" || by.endsWith("months"))) {
    report([...path, "limits"], {
      expected: "days or months within which they count",
      found: "none",
      remedy: "write `{ by: days, days: 90 }`",
    });
  }
}

function reliefCanBe(draft: Draft, report: Report): void {
  const equipment = (draft.ids.equipment ?? []).map(({ id }) => id);
  for (const [i, item] of (draft.relief?.minimumEquipmentList?.items ?? []).entries()) {
    const path: Path = ["relief", "minimumEquipmentList", "items", i];
    mustName(equipment, item.equipment, "a piece of equipment", "equipment", [...path, "equipment"], report);
    if (item.needed > item.installed) {
      report([...path, "needed"], {
        expected: `at most as many as are installed, ${item.installed}`,
        found: String(item.needed),
      });
    }
    if (item.category === "A" && item.days === undefined) {
      report([...path, "category"], {
        expected: "category A with its days",
        found: "no `days`",
        remedy: "write how many days the list gives",
      });
    }
  }
}
