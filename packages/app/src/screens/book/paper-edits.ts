import { type BookEdit, freeId, idOf, type Plain, type Section, valueAt } from "@witnessmark/book";
import type { FromPaper } from "../chart/wanted.ts";
import { sectionBlank } from "./blanks.ts";

/** How a draft takes what was made of a paper, and which item it then is. */
export interface PaperEdits {
  readonly edits: readonly BookEdit[];
  readonly item: string;
}

/**
 * What was made of a paper, put into a draft in one step: over the item in hand, whose short name and whatever the paper
 * does not tell stay, or as one more of the list.
 *
 * @param index of the item in hand; `undefined` for a new one
 */
export function paperEdits(
  plain: Plain,
  section: Section,
  made: FromPaper,
  index: number | undefined,
): PaperEdits {
  const value = plainOf(made);
  const before = index === undefined ? undefined : valueAt(plain, [...section.path, index]);
  if (index === undefined || before === undefined) return newItem(plain, section, value);
  const { id: _id, ...told } = value;
  return {
    edits: Object.entries(told)
      .filter(([key, to]) => JSON.stringify(valueAt(before, [key])) !== JSON.stringify(to))
      .map(([key, to]) => ({ set: [...section.path, index, key], to })),
    item: idOf(before) ?? `at-${index}`,
  };
}

function newItem(plain: Plain, section: Section, value: Keyed): PaperEdits {
  const item = freeId(plain, section.path, String(value["id"]));
  const whole: Plain = { ...value, id: item };
  const edits = sectionBlank(plain, section).map((edit): BookEdit => {
    if ("insert" in edit) return { ...edit, item: whole };
    const isList = "set" in edit && edit.set.join(".") === section.path.join(".");
    return isList ? { set: edit.set, to: [whole] } : edit;
  });
  return { edits, item };
}

type Keyed = { readonly [key: string]: Plain };

/** Keys, lists, figures and nothing: what is made of a paper is all of that. */
function plainOf({ kind, value }: FromPaper): Keyed {
  if (kind === "table") {
    const { axes, cells, ...rest } = value;
    return {
      ...rest,
      axes: axes.map(({ name, unit, values }) => ({ name, unit, values: [...values] })),
      cells: cells as Plain, // lists in lists of figures and nothing
    };
  }
  return { ...value, points: value.points.map(({ arm, mass }) => ({ arm, mass })) };
}
