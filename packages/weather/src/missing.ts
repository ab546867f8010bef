import { type Aspect, joinAspects, type Problem } from "./aspect.ts";
import type { Elements } from "./elements.ts";
import { problemOf } from "./group.ts";

const NAMES: readonly (readonly [readonly Aspect[], string, (said: Elements) => boolean])[] = [
  [["wind", "gust"], "no wind group", ({ wind }) => wind !== undefined],
  [["visibility"], "no visibility group", ({ visibility }) => visibility !== undefined],
  [["ceiling"], "no cloud group", ({ ceiling }) => ceiling !== undefined],
  [["temperature", "dew point"], "no temperature group", ({ temperature }) => temperature !== undefined],
  [["dew point"], "no dew point", ({ dewPoint }) => dewPoint !== undefined],
  [["pressure"], "no altimeter setting", ({ pressure }) => pressure !== undefined],
];

/** What should be there and is not, where no other problem has told so already. */
export function missingFrom(
  said: Elements,
  wanted: readonly Aspect[],
  told: Iterable<Problem>,
  period?: number,
): readonly Problem[] {
  const open = new Set([...told].flatMap(({ affects }) => affects));
  const problems: Problem[] = [];
  for (const [aspects, says, isThere] of NAMES) {
    if (!aspects.some((aspect) => wanted.includes(aspect)) || isThere(said)) continue;
    if (aspects.every((aspect) => open.has(aspect))) continue;
    problems.push(problemOf("", { outcome: "missing", says, affects: aspects }, period));
    for (const aspect of aspects) open.add(aspect);
  }
  return problems;
}

export const openOf = (problems: readonly Problem[]): readonly Aspect[] =>
  joinAspects(problems.flatMap(({ affects }) => affects));
