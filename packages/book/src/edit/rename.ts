import { isList, isMap } from "./differences.ts";
import type { BookEdit, BookPath, Plain } from "./edit-text.ts";
import { valueAt } from "./plain-of.ts";

/** The keys under which items of a list are named elsewhere in a book. */
const NAMED_BY: Readonly<Record<string, readonly string[]>> = {
  points: ["at", "point", "points", "mirrors", "readAt"],
  stances: ["stance", "from", "last"],
  areas: ["area"],
  gauges: ["gauge"],
  checks: ["after", "check"],
  equipment: ["component", "equipment"],
  counters: ["counter"],
  "loading.stations": ["seat", "stations"],
  "loading.tanks": ["order"],
};

/**
 * The short name of an item changed, with every place that names it.
 *
 * @param path of the item in its list
 */
export function renameEdits(plain: Plain, path: BookPath, to: string): readonly BookEdit[] {
  const mine: BookEdit = { set: [...path, "id"], to };
  const before = valueAt(plain, [...path, "id"]);
  const keys = NAMED_BY[path.slice(0, -1).join(".")];
  if (typeof before !== "string" || before === "" || keys === undefined) return [mine];
  return [mine, ...placesOf(plain, before, keys, [], false).map((place): BookEdit => ({ set: place, to }))];
}

function placesOf(
  value: Plain,
  id: string,
  keys: readonly string[],
  path: BookPath,
  isNaming: boolean,
): readonly BookPath[] {
  if (isList(value)) return value.flatMap((each, at) => placesOf(each, id, keys, [...path, at], isNaming));
  if (isMap(value)) {
    // the lists at the top have such names too, and hold items, not the names of items
    return Object.entries(value).flatMap(([key, each]) =>
      placesOf(each, id, keys, [...path, key], path.length > 0 && keys.includes(key)),
    );
  }
  return isNaming && value === id ? [path] : [];
}
