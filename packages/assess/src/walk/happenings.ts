import type { HappeningKind } from "@witnessmark/book";
import { compareOrder, type Happening } from "@witnessmark/ledger";
import { type Earliest, MINUTE_MS } from "./moments.ts";

/** Happenings that may have come after a look, by kind, earliest first. */
export type Happenings = ReadonlyMap<HappeningKind, readonly Happening[]>;

/** A fold keeps the list of happenings until there is a new one, so it is gone through once, not with every look. */
const sortedLists = new WeakMap<readonly Happening[], Happenings>();

const byTime = (a: Happening, b: Happening): number => a.at_ms - b.at_ms || compareOrder(a, b);

function sorted(list: readonly Happening[]): Happenings {
  const known = sortedLists.get(list);
  if (known !== undefined) return known;
  const byKind = new Map<HappeningKind, Happening[]>();
  const toldLate = new Set<HappeningKind>();
  for (const happening of list) {
    const same = byKind.get(happening.kind);
    if (same === undefined) {
      byKind.set(happening.kind, [happening]);
      continue;
    }
    if (happening.at_ms < (same.at(-1)?.at_ms ?? happening.at_ms)) toldLate.add(happening.kind);
    same.push(happening);
  }
  for (const kind of toldLate) byKind.get(kind)?.sort(byTime);
  sortedLists.set(list, byKind);
  return byKind;
}

/** How many of a list, earliest first, happened before a moment. */
function countBefore(list: readonly Happening[], at_ms: number): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((list[middle]?.at_ms ?? at_ms) < at_ms) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * The happenings that can have ended any of some looks; a sieve that is never too fine. To end a look, a happening has
 * to be in or after its minute, or to be told after it (`isAfter`).
 */
export function happeningsSince(list: readonly Happening[], earliest: Earliest): Happenings {
  const from_ms = earliest.at_ms - MINUTE_MS;
  const since = new Map<HappeningKind, Happening[]>();
  for (const [kind, same] of sorted(list)) since.set(kind, same.slice(countBefore(same, from_ms)));
  for (let at = list.length - 1; at >= 0; at -= 1) {
    const happening = list[at];
    if (happening === undefined || happening.hlc < earliest.hlc) break;
    if (happening.at_ms < from_ms) since.get(happening.kind)?.push(happening);
  }
  for (const same of since.values()) same.sort(byTime);
  return since;
}

/** The latest flight that anybody told of. */
export const lastFlown = (list: readonly Happening[]): Happening | undefined =>
  sorted(list).get("flown")?.at(-1);
