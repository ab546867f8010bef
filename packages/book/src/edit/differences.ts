import type { BookPath, Plain } from "./edit-text.ts";

/** A step to a key, to a place in a list, or to the item of a list that has this id. */
export type KeyedStep = string | number | { readonly id: string };
export type KeyedPath = readonly KeyedStep[];

/** One thing that two books say differently. */
export interface Difference {
  readonly path: KeyedPath;
  /** `order`: the same items in another order; then the values are their ids. */
  readonly kind: "value" | "order";
  /** `undefined` where there was nothing. */
  readonly was: Plain | undefined;
  readonly now: Plain | undefined;
}

type PlainMap = { readonly [key: string]: Plain };

/** What two books say differently, as far down as they go; items of lists are known by their ids. */
export const differences = (before: Plain, after: Plain): readonly Difference[] => [
  ...between(before, after, []),
];

function* between(was: Plain | undefined, now: Plain | undefined, path: KeyedPath): Generator<Difference> {
  if (isMap(was) && isMap(now)) {
    for (const key of new Set([...Object.keys(was), ...Object.keys(now)]))
      yield* between(own(was, key), own(now, key), [...path, key]);
    return;
  }
  if (isList(was) && isList(now)) {
    const [ids, others] = [idsOf(was), idsOf(now)];
    if (ids !== undefined && others !== undefined) {
      yield* betweenItems(itemsById(was, ids), itemsById(now, others), path);
      return;
    }
    if (was.length === now.length && was.every(isMap) && now.every(isMap)) {
      for (const [index, item] of was.entries()) yield* between(item, now[index], [...path, index]);
      return;
    }
  }
  if (!isSame(was, now)) yield { path, kind: "value", was, now };
}

function* betweenItems(
  was: ReadonlyMap<string, Plain>,
  now: ReadonlyMap<string, Plain>,
  path: KeyedPath,
): Generator<Difference> {
  for (const id of new Set([...was.keys(), ...now.keys()]))
    yield* between(was.get(id), now.get(id), [...path, { id }]);
  const stayed = [...was.keys()].filter((id) => now.has(id));
  const stands = [...now.keys()].filter((id) => was.has(id));
  if (!isSame(stayed, stands)) yield { path, kind: "order", was: stayed, now: stands };
}

/** The keys by which an item of a list is known, the first that it has. */
const KEYS = ["id", "code"] as const;

export function idOf(item: Plain | undefined): string | undefined {
  if (!isMap(item)) return undefined;
  for (const key of KEYS) {
    const id = own(item, key);
    if (typeof id === "string" && id !== "") return id;
  }
  return undefined;
}

/** The ids of a list in which each item has one of its own; nothing for any other list. */
function idsOf(list: readonly Plain[]): readonly string[] | undefined {
  const ids = list.map(idOf).filter((id) => id !== undefined);
  return ids.length === list.length && new Set(ids).size === ids.length ? ids : undefined;
}

const itemsById = (list: readonly Plain[], ids: readonly string[]): ReadonlyMap<string, Plain> =>
  new Map(ids.map((id, index) => [id, list[index] ?? null]));

/** Where a path leads in a book; `undefined` when an item on the way is not there. The last step need not be there. */
export function placeOf(plain: Plain, path: KeyedPath): BookPath | undefined {
  const place: (string | number)[] = [];
  let value: Plain | undefined = plain;
  for (const step of path) {
    let here: string | number;
    if (typeof step === "object") {
      if (!isList(value)) return undefined;
      here = value.findIndex((item) => idOf(item) === step.id);
      if (here < 0) return undefined;
    } else here = step;
    place.push(here);
    value = isList(value) ? value[Number(here)] : isMap(value) ? own(value, String(here)) : undefined;
  }
  return place;
}

export const isMap = (value: Plain | undefined): value is PlainMap =>
  typeof value === "object" && value !== null && !Array.isArray(value);
export const isList = (value: Plain | undefined): value is readonly Plain[] => Array.isArray(value);
export const own = (map: PlainMap, key: string): Plain | undefined =>
  Object.hasOwn(map, key) ? map[key] : undefined;

export function isSame(one: Plain | undefined, other: Plain | undefined): boolean {
  if (one === other) return true;
  if (isList(one) && isList(other))
    return one.length === other.length && one.every((item, index) => isSame(item, other[index]));
  if (!isMap(one) || !isMap(other)) return false;
  const keys = Object.keys(one);
  return (
    keys.length === Object.keys(other).length &&
    keys.every((key) => Object.hasOwn(other, key) && isSame(own(one, key), own(other, key)))
  );
}
