import { isList, isMap, isSame } from "../edit/differences.ts";
import type { BookEdit, BookPath, Plain } from "../edit/edit-text.ts";
import { valueAt } from "../edit/plain-of.ts";

/** Parts of the shape of which there may be one on each side. */
const PAIRED = ["wheels", "propellers", "nacelles"] as const;
/** Figures that are counted to the right. */
const ACROSS = ["y", "topY"] as const;

/** The same changes, and with each the one that keeps its mirror image a mirror image. What has none is changed alone. */
export const withMirrored = (plain: Plain, edits: readonly BookEdit[]): readonly BookEdit[] =>
  edits.flatMap((edit) => {
    const other = mirrored(plain, edit);
    return other === undefined ? [edit] : [edit, other];
  });

function mirrored(plain: Plain, edit: BookEdit): BookEdit | undefined {
  const path = "set" in edit ? edit.set : "insert" in edit ? edit.insert : edit.remove;
  const [top, list, index, key, ...rest] = path;
  if (top !== "geometry" || !PAIRED.some((each) => each === list) || key === undefined) return undefined;
  const items = valueAt(plain, path.slice(0, 2));
  if (!isList(items) || typeof index !== "number") return undefined;
  const other = items.findIndex((item, at) => at !== index && isMirror(items[index], item));
  if (other < 0) return undefined;
  const there: BookPath = [...path.slice(0, 2), other, key, ...rest];
  if ("insert" in edit) return { insert: there, item: edit.item };
  if ("remove" in edit) return { remove: there };
  const isAcross = ACROSS.some((each) => each === key);
  if (!isAcross) return { set: there, to: edit.to };
  // a slip in one is mended there: the other waits
  return typeof edit.to === "number" ? { set: there, to: 0 - edit.to } : undefined;
}

/** Whether two parts are the same but for their side; a figure across that is none could be anything. */
function isMirror(one: Plain | undefined, other: Plain): boolean {
  if (!isMap(one) || !isMap(other) || one["y"] === 0) return false;
  const rest = (part: { readonly [key: string]: Plain }) =>
    Object.fromEntries(Object.entries(part).filter(([key]) => !ACROSS.some((each) => each === key)));
  const isOpposite = ACROSS.every((key) => {
    const [mine, its] = [one[key], other[key]];
    if (typeof mine !== "number") return mine !== undefined || its === undefined;
    return typeof its === "number" && mine === 0 - its;
  });
  return isOpposite && isSame(rest(one), rest(other));
}
