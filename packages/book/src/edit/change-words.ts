import { type Difference, differences, isList, isMap, type KeyedPath, own, placeOf } from "./differences.ts";
import type { BookPath, Plain } from "./edit-text.ts";
import { fieldsAt, insideOf } from "./field-of.ts";
import { valueAt } from "./plain-of.ts";
import type { BookField } from "./sections/field.ts";
import { SECTIONS } from "./sections/sections.ts";

/** What has changed from one book to another, each as a sentence without a stop; revision and issue are left out. */
export function changeWords(before: Plain, after: Plain): readonly string[] {
  return differences(before, after)
    .filter(({ path }) => path[0] !== "revision" && path[0] !== "issued")
    .map((difference) => wordsOf(difference, before, after));
}

/** One difference in words: "Left main tyre, measure the pressure: lowest tyre pressure 3.4 bar, was 3.2 bar". */
export function wordsOf(difference: Difference, before: Plain, after: Plain): string {
  const { path, kind, was, now } = difference;
  const { about, label, field, isItem, one } = namesOf(path, was === undefined ? after : before, after);
  if (isItem) {
    const name = itemName(now ?? was, after) ?? "one";
    if (was === undefined) return `New ${one}: ${name}`;
    if (now === undefined) return `Taken out, ${one}: ${name}`;
  }
  const [whole] = path;
  if (
    path.length === 1 &&
    typeof whole === "string" &&
    (was === undefined || now === undefined) &&
    !isPlainField(whole)
  )
    return `${capital(spaced(whole))}: ${was === undefined ? "put in" : "taken out"}`;
  if (kind === "order") return `${label}: in another order`;
  const lead = about === undefined ? capital(label) : `${about}: ${label}`;
  if (now === undefined) return `${lead} taken out, was ${shortly(was, field, before)}`;
  if (was === undefined) return `${lead} ${shortly(now, field, after)}, new`;
  if (field?.is === "cells") return `${lead}: ${cellsText(was, now)}`;
  return `${lead} ${shortly(now, field, after)}, was ${shortly(was, field, before)}`;
}

/** A key at the top that is a field of its own, not a part of the book. */
const isPlainField = (key: string): boolean => key === "notice";

interface Names {
  /** The item that it is of. */
  readonly about: string | undefined;
  readonly label: string;
  readonly field: BookField | undefined;
  readonly isItem: boolean;
  readonly one: string;
}

function namesOf(path: KeyedPath, plain: Plain, after: Plain): Names {
  const keys = path.filter((step) => typeof step === "string");
  const section = SECTIONS.filter(
    ({ path: under, one }) =>
      under.every((step, index) => path[index] === step) && (one === undefined || path.length > 0),
  ).toSorted((a, b) => b.path.length - a.path.length)[0];
  const rest = path.slice(section?.path.length ?? 0);
  const at = typeof rest[0] === "object" && section?.one !== undefined ? section.path.length + 1 : undefined;
  const item =
    at === undefined ? undefined : (itemAt(path.slice(0, at), plain) ?? itemAt(path.slice(0, at), after));
  const inner = (at === undefined ? rest : rest.slice(1)).filter((step) => typeof step === "string");
  const trail = fieldsAt(section?.fields ?? [], inner);
  const field = trail.at(-1);
  const isItem = at !== undefined && path.length === at;
  const quantity = quantityOf(item);
  const label =
    quantity !== undefined && (field?.key === "low" || field?.key === "high")
      ? `${field.key === "low" ? "lowest" : "highest"} ${quantity}`
      : (field?.label.toLowerCase() ??
        (inner.length > 0
          ? inner.map(spaced).join(", ")
          : (section?.title.toLowerCase() ?? keys.map(spaced).join(", "))));
  return {
    about: item === undefined ? (field === undefined ? undefined : section?.title) : itemName(item, after),
    label: isItem ? "" : label || "the book",
    field,
    isItem,
    one: section?.one ?? "item",
  };
}

const itemAt = (path: KeyedPath, plain: Plain): Plain | undefined => {
  const place = placeOf(plain, path);
  return place === undefined ? undefined : valueAt(plain, place);
};

/** What an item is called; a check by its points too, the factor of a surface by what it is for. */
export function itemName(item: Plain | undefined, book: Plain): string | undefined {
  if (!isMap(item)) return undefined;
  const quantities = own(item, "quantities");
  if (isList(quantities)) return factorName(item, quantities);
  const names = [own(item, "name"), own(item, "title"), own(item, "code")];
  // the id of what has no name yet is no name
  const written = names.every((name) => name === undefined) ? [own(item, "id")] : names;
  const title = written.find((name) => typeof name === "string" && name !== "");
  if (typeof title !== "string") return undefined;
  const at = own(item, "at");
  const points = (isList(at) ? at : [at]).flatMap((id) => nameOf(["points"], id, book) ?? []);
  const [first] = points;
  if (first === undefined) return title;
  return points.length <= 2
    ? `${points.join(" and ")}, ${decapital(title)}`
    : `${title}, ${points.length} points`;
}

/** "Wet grass, landing over 50 ft": the factor of a surface has no name of its own. */
function factorName(factor: Plain, quantities: readonly Plain[]): string | undefined {
  const said = (words: readonly (Plain | undefined)[]) =>
    words.filter((word) => typeof word === "string" && word !== "").map((word) => spaced(String(word)));
  const where = said(["condition", "surface"].map((key) => valueAt(factor, ["when", key]))).join(" ");
  const words = [...(where === "" ? [] : [where]), ...said(quantities)].join(", ");
  return words === "" ? undefined : capital(words);
}

/** The name of the item of a list that has an id. */
function nameOf(list: BookPath, id: Plain | undefined, book: Plain): string | undefined {
  if (typeof id !== "string" || list.length === 0) return undefined;
  const place = placeOf(book, [...list, { id }, "name"]);
  const name = place === undefined ? undefined : valueAt(book, place);
  return typeof name === "string" && name !== "" ? name : undefined;
}

function quantityOf(item: Plain | undefined): string | undefined {
  const quantity = item === undefined ? undefined : valueAt(item, ["reading", "quantity"]);
  return typeof quantity === "string" ? quantity : undefined;
}

const LONGEST = 60;

function shortly(value: Plain | undefined, field: BookField | undefined, book: Plain): string {
  if (field?.is === "place" && isList(value))
    return value.map((metres, index) => `${String(metres)} m ${field.ways[index] ?? ""}`).join(", ");
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (isList(value)) {
    if (value.length === 0) return "none";
    return cut(value.map((each) => shortly(each, field, book)).join(", "));
  }
  if (isMap(value)) {
    const name = own(value, "id") === undefined ? undefined : itemName(value, book);
    if (name !== undefined) return cut(name);
    const inside = field === undefined ? [] : insideOf(field);
    const fieldOfKey = (key: string) => inside.find((each) => each.key === key);
    return cut(
      Object.entries(value)
        .map(([key, each]) => `${spaced(key)} ${shortly(each, fieldOfKey(key), book)}`)
        .join(", "),
    );
  }
  if (value === "" || value === null || value === undefined) return "empty";
  if (field?.is === "choice" || field?.is === "choices") return cut(spaced(String(value)));
  const unit = field?.is === "number" && field.unit !== undefined ? ` ${field.unit}` : "";
  return cut(`${nameOf(listOf(field), value, book) ?? String(value)}${unit}`);
}

/** The list whose items a field names by their ids; none of another field. */
function listOf(field: BookField | undefined): BookPath {
  if (field?.is === "one-of" || field?.is === "some-of") return field.list;
  return field?.is === "at" ? ["points"] : [];
}

const cut = (words: string): string =>
  words.length <= LONGEST ? words : `${words.slice(0, LONGEST).replace(/[\s,]+\S*$/, "")} …`;

function cellsText(was: Plain, now: Plain): string {
  const [before, after] = [flat(was), flat(now)];
  if (before.length !== after.length) return `${after.length} cells, were ${before.length}`;
  const changed = after.filter((cell, index) => cell !== before[index]).length;
  return changed === 1 ? "one cell" : `${changed} cells`;
}

const flat = (value: Plain): readonly Plain[] => (isList(value) ? value.flatMap(flat) : [value]);

/** What is said otherwise than its name is written. */
const SAID: Readonly<Record<string, string>> = {
  "take-off-ground-roll": "take-off ground roll",
  "take-off-over-50ft": "take-off over 50 ft",
  "landing-over-50ft": "landing over 50 ft",
  "accelerate-stop": "accelerate-stop",
  "first-of-day": "first of the day",
  "jet-a1": "jet A-1",
  "jet-a": "jet A",
  "avgas-100ll": "avgas 100LL",
  unattended: "left alone",
  "95-percent": "95 %",
  oat: "outside temperature",
  h: "hours",
  "1": "a number",
};

/** `landing-ground-roll` or `pressureAltitude`, as words. */
export const spaced = (key: string): string =>
  SAID[key] ??
  key
    .replaceAll(/([a-z])([A-Z])/g, (_, before: string, letter: string) => `${before} ${letter.toLowerCase()}`)
    .replaceAll(/-(?!\d)/g, " ");

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
const decapital = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);
