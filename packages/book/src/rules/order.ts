import { byWrittenId, type CheckAtPoint, comesAfter, expandChecks } from "../expand.ts";
import type { Path } from "../faults/path.ts";
import type { CheckSource } from "../schema/check.ts";
import type { Draft, Listed } from "../shape/draft.ts";
import { firstById } from "../shape/first-by-id.ts";
import type { Rule } from "./rule.ts";
import { withoutSide } from "./sides.ts";

/** What a check comes after is done before it, in the order in which one walks. */
export const orderCanBeKept: Rule = (draft, report) => {
  const inCircle = circles(draft.checks);
  for (const { path, ring } of inCircle) {
    report(path, {
      expected: "an order in which checks can be done",
      found: `a circle: ${ring.map((id) => `\`${id}\``).join(" after ")}`,
      remedy: "take one of them out of `after`",
    });
  }
  if (inCircle.length > 0) return; // any order breaks a circle somewhere: one report is enough
  const stances = walkOrder(draft);
  const expanded = expandChecks(draft.checks);
  const written = byWrittenId(expanded);
  const told = new Set<string>();
  for (const check of expanded) {
    for (const [i, named] of check.source.after.entries()) {
      const late = comesAfter(check, named, written).find((other) => isLater(other, check, stances));
      const key = `${check.index}.${i}`;
      if (late === undefined || told.has(key)) continue;
      told.add(key);
      report(["checks", check.index, "after", i], {
        expected: "a check that is done before this one on the walk",
        found: `\`${late.id}\`, done from stance \`${stances.of(late)}\`, later`,
        remedy: "move one of the two in the file, or to another stance",
      });
    }
  }
};

/** Two checks are not the same check at the same point. */
export const checksDoNotRepeat: Rule = (draft, report) => {
  const seen = new Map<string, string>();
  for (const { id, point, source, index } of expandChecks(draft.checks)) {
    const key = `${point} ${source.method} ${withoutSide(source.title)}`;
    const first = seen.get(key);
    if (first !== undefined && first !== source.id) {
      report(["checks", index, "title"], {
        expected: `a check that is not yet made at \`${point}\``,
        found: `"${source.title}" a second time, after \`${first}\``,
        remedy: `take one of the two out, or say how \`${id}\` differs`,
      });
    }
    if (first === undefined) seen.set(key, source.id);
  }
};

interface WalkOrder {
  readonly of: (check: CheckAtPoint) => string;
  readonly rank: (check: CheckAtPoint) => number | undefined;
}

function walkOrder(draft: Draft): WalkOrder {
  const ranks = new Map((draft.ids.stances ?? []).map(({ id }, i) => [id, i]));
  const points = firstById(draft.points);
  const of = ({ source, point }: CheckAtPoint): string => source.from ?? points.get(point)?.stance ?? "";
  return { of, rank: (check) => ranks.get(of(check)) };
}

function isLater(other: CheckAtPoint, check: CheckAtPoint, stances: WalkOrder): boolean {
  const [a, b] = [stances.rank(other), stances.rank(check)];
  if (a === undefined || b === undefined) return false; // a dangling stance is told elsewhere
  return a === b ? other.index > check.index : a > b;
}

interface Circle {
  readonly path: Path;
  readonly ring: readonly string[];
}

/** Each circle of `after`, told once, where it closes. */
function circles(checks: readonly Listed<CheckSource>[]): readonly Circle[] {
  const byId = new Map(checks.toReversed().map((check) => [check.value.id, check]));
  const state = new Map<string, "open" | "done">();
  const found: Circle[] = [];
  // An own stack: a chain of a thousand checks must not overflow that of the machine.
  for (const { value } of checks) {
    const trail: { readonly id: string; next: number }[] = [];
    const enter = (id: string): void => {
      state.set(id, "open");
      trail.push({ id, next: 0 });
    };
    if (!state.has(value.id)) enter(value.id);
    for (let top = trail.at(-1); top !== undefined; top = trail.at(-1)) {
      const check = byId.get(top.id);
      const i = top.next;
      const named = check?.value.after[i];
      if (check === undefined || named === undefined) {
        state.set(top.id, "done");
        trail.pop();
        continue;
      }
      top.next += 1;
      if (state.get(named) === "open") {
        const start = trail.findIndex(({ id }) => id === named);
        const ring = [...trail.slice(start).map(({ id }) => id), named];
        found.push({ path: ["checks", check.index, "after", i], ring });
      } else if (!state.has(named) && byId.has(named)) enter(named);
    }
  }
  return found;
}
