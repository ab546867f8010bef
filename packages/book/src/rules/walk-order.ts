import { byWrittenId, type CheckAtPoint, comesAfter, expandChecks } from "../expand.ts";
import { nearest } from "../faults/did-you-mean.ts";
import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { OrderStepSource } from "../schema/walk-order.ts";
import type { Draft, ListSection } from "../shape/draft.ts";
import { firstById } from "../shape/first-by-id.ts";
import type { Rule } from "./rule.ts";

/** The manual's order can be walked: it names what is there, once, and breaks no rule of what comes first. */
export const manualOrderCanBeWalked: Rule = (draft, report) => {
  const { order, last } = draft;
  const isThere = lookUp(draft, report);
  for (const [i, id] of (last ?? []).entries()) {
    if (isThere("stances", "a stance", id, ["last", i]) && last?.indexOf(id) !== i)
      twice(id, ["last", i], report);
  }
  if (order === undefined) return;
  const expanded = expandChecks(draft.checks);
  const named = new Map<string, number>();
  for (const [i, step] of order.steps.entries()) {
    const path: Path = ["order", "steps", i];
    if (!namesSomething(step, path, expanded, isThere, report)) continue;
    for (const key of keysOf(step, expanded)) {
      if (named.has(key)) {
        twice(key.slice(key.indexOf(" ") + 1), path, report);
        break;
      }
      named.set(key, i);
    }
  }
  comesFirst(draft, expanded, named, report);
};

/** Nobody is asked to stand before an inlet, an exhaust or an antenna. */
export const hazardsAreKeptFrom: Rule = ({ hazards, stances }, report) => {
  for (const { index, value } of stances) {
    if (value.posture === "inside") continue;
    const hazard = hazards?.find(
      ({ kind, place, radius }) =>
        kind !== "chock" &&
        kind !== "step" &&
        Math.hypot(place[0] - value.place[0], place[1] - value.place[1]) < radius,
    );
    if (hazard === undefined) continue;
    report(["stances", index, "place"], {
      expected: `a place outside "${hazard.name}", ${hazard.radius} m round [${hazard.place.join(", ")}]`,
      found: `[${value.place.join(", ")}]`,
      remedy: "move the stance, or mend the hazard",
    });
  }
};

type IsThere = (section: ListSection, one: string, id: string, path: Path) => boolean;

function lookUp(draft: Draft, report: Report): IsThere {
  return (section, one, id, path) => {
    const ids = draft.ids[section];
    if (ids === undefined || ids.some((item) => item.id === id)) return ids !== undefined;
    const meant = nearest(
      id,
      ids.map((item) => item.id),
    );
    report(path, {
      expected: `the id of ${one} of this book`,
      found: `\`${id}\`, which no ${one.replace(/^an? /, "")} has`,
      remedy: meant === undefined ? "name one of those, or take it out" : `did you mean \`${meant}\`?`,
    });
    return false;
  };
}

function namesSomething(
  step: OrderStepSource,
  path: Path,
  expanded: readonly CheckAtPoint[],
  isThere: IsThere,
  report: Report,
): boolean {
  if (typeof step === "string") return isThere("stances", "a stance", step, path);
  if ("groundGear" in step) {
    return isThere("groundGear", "a piece of ground gear", step.groundGear, [...path, "groundGear"]);
  }
  if (!isThere("checks", "a check", step.check, [...path, "check"])) return false;
  const points = expanded.filter(({ source }) => source.id === step.check).map(({ point }) => point);
  if (step.at === undefined || points.length === 0 || points.includes(step.at)) return points.length > 0;
  report([...path, "at"], {
    expected: `a point at which \`${step.check}\` is made: ${points.join(", ")}`,
    found: `\`${step.at}\``,
    remedy: "name one of those, or leave `at` out for all of them",
  });
  return false;
}

function twice(id: string, path: Path, report: Report): void {
  report(path, {
    expected: "each step once",
    found: `\`${id}\` a second time`,
    remedy: "take one of the two out",
  });
}

const keysOf = (step: OrderStepSource, expanded: readonly CheckAtPoint[]): readonly string[] => {
  if (typeof step === "string") return [`stance ${step}`];
  if ("groundGear" in step) return [`groundGear ${step.groundGear}`];
  return expanded
    .filter(({ source, point }) => source.id === step.check && (step.at ?? point) === point)
    .map(({ id }) => `check ${id}`);
};

/** Of two checks that the manual puts in an order, by themselves or with their stance, it keeps the book's rule. */
function comesFirst(
  draft: Draft,
  expanded: readonly CheckAtPoint[],
  named: ReadonlyMap<string, number>,
  report: Report,
): void {
  const points = firstById(draft.points);
  const written = byWrittenId(expanded);
  const placeOf = ({ id, source, point }: CheckAtPoint): number | undefined =>
    named.get(`check ${id}`) ?? named.get(`stance ${source.from ?? points.get(point)?.stance ?? ""}`);
  const told = new Set<number>();
  for (const check of expanded) {
    const place = placeOf(check);
    if (place === undefined) continue;
    for (const earlier of check.source.after.flatMap((id) => comesAfter(check, id, written))) {
      const before = placeOf(earlier);
      if (before === undefined || before <= place || told.has(place)) continue;
      told.add(place);
      report(["order", "steps", place], {
        expected: `\`${check.id}\` behind \`${earlier.id}\`, which comes before it`,
        found: "it stands before it",
        remedy: "change the order, or take `after` out of the check",
      });
    }
  }
}
