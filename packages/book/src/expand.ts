import type { CheckSource } from "./schema/check.ts";
import type { Listed } from "./shape/draft.ts";

/** A check as written, at one of its points. */
export interface CheckAtPoint {
  /** The id of a check that is written for one point; `id.point` where it is written for several. */
  readonly id: string;
  readonly point: string;
  readonly source: CheckSource;
  /** Its place among the checks of the book as written. */
  readonly index: number;
}

/** One check for each point, in the order in which the book lists them. */
export function expandChecks(checks: readonly Listed<CheckSource>[]): readonly CheckAtPoint[] {
  return checks.flatMap(({ index, value }): readonly CheckAtPoint[] => {
    const { id, at } = value;
    if (typeof at === "string") return [{ id, point: at, source: value, index }];
    return at.map((point) => ({ id: `${id}.${point}`, point, source: value, index }));
  });
}

/**
 * What a written `after` means for a check at a point: the named check at the same point, where there is one; else
 * the named check at all of its points.
 */
export function comesAfter(
  check: CheckAtPoint,
  named: string,
  byWrittenId: ReadonlyMap<string, readonly CheckAtPoint[]>,
): readonly CheckAtPoint[] {
  const all = byWrittenId.get(named) ?? [];
  const here = all.filter(({ point }) => point === check.point);
  return here.length > 0 ? here : all;
}

export const byWrittenId = (checks: readonly CheckAtPoint[]): ReadonlyMap<string, readonly CheckAtPoint[]> =>
  Map.groupBy(checks, ({ source }) => source.id);
