import type { BookPath, Plain } from "../edit-text.ts";

/** How a field of a book is written, so that one page can show and edit any of them. */
export type BookFieldKind =
  | { readonly is: "line"; readonly long?: true }
  /** Several lines, each an item of a list. */
  | { readonly is: "lines" }
  | { readonly is: "id" }
  | { readonly is: "date" }
  | { readonly is: "number"; readonly unit?: string; readonly step?: number }
  /** A value with its unit in one text; a bare figure gets `unit`. `or`: the usual one of another dimension that will do. */
  | { readonly is: "measure"; readonly unit: string; readonly or?: string; readonly none?: true }
  /** A value in the unit of a gauge: its own, or that of the reading's. */
  | { readonly is: "gauge-measure" }
  /** Two such values, low end first. */
  | { readonly is: "gauge-span" }
  | { readonly is: "choice"; readonly of: readonly string[] }
  | { readonly is: "choices"; readonly of: readonly string[] }
  | { readonly is: "switch" }
  /** The id of an item of a list of the book. */
  | { readonly is: "one-of"; readonly list: BookPath }
  | { readonly is: "some-of"; readonly list: BookPath }
  /** One id, or several. */
  | { readonly is: "at" }
  | { readonly is: "place"; readonly ways: readonly string[] }
  | { readonly is: "part"; readonly fields: readonly BookField[]; readonly blank: Plain }
  | {
      readonly is: "rows";
      readonly one: string;
      readonly fields: readonly BookField[];
      readonly blank: Plain;
      /** What each is called, where it has no name of its own but where it stands says it. */
      readonly names?: (rows: readonly Plain[]) => readonly string[];
    }
  /** Which fields there are depends on one of them. */
  | {
      readonly is: "kinds";
      readonly by: string;
      readonly kinds: Readonly<Record<string, FieldsOfKind>>;
    }
  /** A mark that what stands above it is common practice, until it is changed or said to be right. */
  | { readonly is: "assumed" }
  /** Lists in lists: shown as a grid of its own. */
  | { readonly is: "cells" };

/** One of the kinds of a field. */
export interface FieldsOfKind {
  readonly fields: readonly BookField[];
  readonly blank: Plain;
  /** What it is for, in one sentence. */
  readonly says?: string;
}

export type BookField = BookFieldKind & {
  readonly key: string;
  readonly label: string;
  readonly optional?: true;
  readonly note?: string;
  /** Has no meaning where what stands beside it at this path is this. */
  readonly unless?: { readonly at: BookPath; readonly is: string };
};

/** A page of a book: a list of items, or one thing. */
export interface Section {
  readonly id: string;
  readonly title: string;
  readonly group: "aircraft" | "walk" | "loading" | "performance" | "record" | "rules";
  readonly path: BookPath;
  /** What one item is called; absent for a page that is one thing. */
  readonly one?: string;
  readonly fields: readonly BookField[];
  readonly blank: Plain;
}

export const line = (
  key: string,
  label: string,
  more: { readonly optional?: true; readonly note?: string } = {},
) => ({ is: "line", key, label, ...more }) as const;
export const text = (
  key: string,
  label: string,
  more: { readonly optional?: true; readonly note?: string } = {},
) => ({ is: "line", long: true, key, label, ...more }) as const;
export const measure = (
  key: string,
  label: string,
  unit: string,
  more: { readonly optional?: true; readonly note?: string; readonly or?: string; readonly none?: true } = {},
) => ({ is: "measure", key, label, unit, ...more }) as const;

export const ID: BookField = {
  is: "id",
  key: "id",
  label: "Short name",
  note: "Lower-case letters, figures, hyphens",
};
export const NAME = line("name", "Name");
export const SIDE: BookField = { is: "choice", key: "side", label: "Side", of: ["left", "right", "centre"] };
export const PLACE: BookField = { is: "place", key: "place", label: "Place", ways: ["aft", "right", "up"] };
