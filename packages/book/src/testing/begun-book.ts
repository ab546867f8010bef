import { beginBook } from "../begin/begin-book.ts";
import { ARCHETYPES } from "../begin/figures.ts";
import type { FirstFigures } from "../begin/first-figures.ts";
import type { Plain } from "../edit/edit-text.ts";
import { plainOf, valueAt } from "../edit/plain-of.ts";

function tailWheel() {
  const found = ARCHETYPES.find(({ id }) => id === "piston-single-tail-wheel");
  if (found === undefined) throw new Error("expected an aircraft with a tail wheel");
  return found;
}

/** An aircraft with a tail wheel and one engine. */
export const SINGLE = tailWheel();

/** The text of a new book of it. */
export const begun = (changed: Partial<FirstFigures> = {}): string =>
  beginBook({
    archetype: SINGLE,
    figures: { registration: "ZZ-NEW", type: "New 1", ...SINGLE.figures, ...changed },
    by: "A. Example",
    on: "2026-11-26",
  });

/** A book of a test as keys and values. */
export function plainIn(text: string): Plain {
  const read = plainOf(text, "new.yaml");
  if (!read.ok) throw new Error(read.fault.found);
  return read.plain;
}

/** Where in a list of the book the item with an id stands; −1 where it does not. */
export function rankIn(plain: Plain, list: string, id: string): number {
  const items = valueAt(plain, [list]);
  if (!Array.isArray(items)) throw new Error(`expected ${list}`);
  return items.findIndex((item: Plain) => valueAt(item, ["id"]) === id);
}

/** The place of the item of a list that has an id. */
export const placeIn = (plain: Plain, list: string, id: string): Plain | undefined =>
  valueAt(plain, [list, rankIn(plain, list, id), "place"]);
