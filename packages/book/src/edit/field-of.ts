import type { BookPath } from "./edit-text.ts";
import type { BookField } from "./sections/field.ts";
import { SECTIONS } from "./sections/sections.ts";

/** The field that a path of a book is shown by; the innermost one known on the way to it. */
export function fieldOf(path: BookPath): BookField | undefined {
  return SECTIONS.filter(({ path: under }) => under.every((step, index) => path[index] === step))
    .toSorted((a, b) => b.path.length - a.path.length)
    .flatMap(({ path: under, fields }) => {
      const keys = path.slice(under.length).filter((step) => typeof step === "string");
      return fieldsAt(fields, keys).at(-1) ?? [];
    })[0];
}

/** The fields on the way to a key, as far as they are known. */
export function fieldsAt(fields: readonly BookField[], keys: readonly string[]): readonly BookField[] {
  const [key, ...rest] = keys;
  if (key === undefined) return [];
  for (const field of fields) {
    if (field.is === "kinds" && field.key === "") {
      const inside = fieldsAt(insideOf(field), keys);
      if (inside.length > 0) return inside;
    }
    if (field.key === key) return [field, ...fieldsAt(insideOf(field), rest)];
  }
  return [];
}

/** The fields inside a field, of whatever kind it may be. */
export const insideOf = (field: BookField): readonly BookField[] => {
  if (field.is === "part" || field.is === "rows") return field.fields;
  return field.is === "kinds" ? Object.values(field.kinds).flatMap(({ fields }) => fields) : [];
};
