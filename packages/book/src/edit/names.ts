import { idOf, isList } from "./differences.ts";
import type { BookDraft } from "./draft.ts";
import type { BookEdit, BookPath, Plain } from "./edit-text.ts";
import { editPlain } from "./merge.ts";
import { plainOf, valueAt } from "./plain-of.ts";
import { renameEdits } from "./rename.ts";

const LONGEST_ID = 50;

/** A short name from words, as ids are written: `left-pitot-tube`. */
export const idFrom = (words: string): string =>
  words
    .normalize("NFD")
    .replaceAll(/\p{M}/gu, "")
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "-")
    .replaceAll(/^-+|-+$/g, "")
    .slice(0, LONGEST_ID)
    .replace(/-+$/, "") || "new";

/** The short name that is free in a list, as near to the wanted one as can be. */
export function freeId(plain: Plain | null, list: BookPath, wanted: string): string {
  const items = valueAt(plain ?? undefined, list);
  const taken = new Set(isList(items) ? items.map(idOf) : []);
  const stem = idFrom(wanted);
  if (!taken.has(stem)) return stem;
  for (let count = 2; ; count++) if (!taken.has(`${stem}-${count}`)) return `${stem}-${count}`;
}

const LONGEST_LABEL = 16;
const SIDES = { left: "L", right: "R" } as const;

/** What stands beside a point on a drawing: "L main tyre" for "Left main tyre, tread and sides". */
export function labelFrom(name: string): string {
  const [first = ""] = name.trim().split(/,| and | with |:|;|\(/i);
  const words = first
    .trim()
    .split(/\s+/)
    .filter((word) => !/^(the|a|an|its|of)$/i.test(word));
  const side = SIDES[(words[0] ?? "").toLowerCase() as keyof typeof SIDES]; // nothing for any other word
  const rest = side === undefined || words.length === 1 ? words : words.slice(1);
  let label = side === undefined || words.length === 1 ? "" : side;
  for (const word of rest) {
    const longer = label === "" ? word : `${label} ${word}`;
    if (longer.length > LONGEST_LABEL && label !== "" && label !== side) break;
    label = longer;
  }
  return label.length <= LONGEST_LABEL ? label : `${label.slice(0, LONGEST_LABEL - 1).trimEnd()}…`;
}

/** The label of a point: its own, or made from its name. */
export function labelOf(point: { readonly name: string; readonly label?: string | undefined }): string {
  return point.label === undefined || point.label.trim() === "" ? labelFrom(point.name) : point.label.trim();
}

/**
 * An item named anew; its short name follows as long as it was made by the program and no issued book has it: records
 * name items by it. Of a pair that was named alike the other one follows.
 *
 * @param path of the item in its list
 */
export function nameEdits(
  draft: Pick<BookDraft, "base">,
  plain: Plain,
  path: BookPath,
  to: string,
): { readonly edits: readonly BookEdit[]; readonly id: string | undefined } {
  const mine = renamed(draft, plain, path, to);
  const other = mirrorPath(plain, path);
  const [was, its] = [nameAt(plain, path), other === undefined ? undefined : nameAt(plain, other)];
  if (other === undefined || was === undefined || its === undefined || otherSide(was) !== its) return mine;
  if (otherSide(to) === to) return mine;
  const after = mine.edits.reduce<Plain>((so, edit) => editPlain(so, edit), plain);
  return { edits: [...mine.edits, ...renamed(draft, after, other, otherSide(to)).edits], id: mine.id };
}

function renamed(draft: Pick<BookDraft, "base">, plain: Plain, path: BookPath, to: string) {
  const name: BookEdit = { set: [...path, "name"], to };
  const [id, was] = [valueAt(plain, [...path, "id"]), nameAt(plain, path)];
  if (
    typeof id !== "string" ||
    to.trim() === "" ||
    !isMade(id, was) ||
    isIssued(draft, path.slice(0, -1), id)
  )
    return { edits: [name], id: typeof id === "string" ? id : undefined };
  const wanted = freeId(without(plain, path), path.slice(0, -1), to);
  if (wanted === id) return { edits: [name], id };
  return { edits: [name, ...renameEdits(plain, path, wanted)], id: wanted };
}

const nameAt = (plain: Plain, path: BookPath): string | undefined => {
  const name = valueAt(plain, [...path, "name"]);
  return typeof name === "string" ? name : undefined;
};

/** Made from the name that stands there, or given to what had none yet. */
const isMade = (id: string, name: string | undefined): boolean =>
  id === "" ||
  /^((left|right)-)?new(-[a-z]+)*(-\d+)?$/.test(id) ||
  (name !== undefined && id.replace(/-\d+$/, "") === idFrom(name).replace(/-\d+$/, "")) ||
  ((name ?? "") === "" && /^[a-z]+(-[a-z]+)*(-\d+)?$/.test(id));

function isIssued({ base }: Pick<BookDraft, "base">, list: BookPath, id: string): boolean {
  if (base === null) return false;
  const read = plainOf(base.text, "the book");
  const items = read.ok ? valueAt(read.plain, list) : undefined;
  return isList(items) && items.some((item) => idOf(item) === id);
}

const without = (plain: Plain, path: BookPath): Plain => editPlain(plain, { remove: path });

function mirrorPath(plain: Plain, path: BookPath): BookPath | undefined {
  if (path.length !== 2 || path[0] !== "points") return undefined;
  const points = valueAt(plain, ["points"]);
  const mine = valueAt(plain, path);
  if (!isList(points) || mine === undefined) return undefined;
  const [id, mirrors] = [valueAt(mine, ["id"]), valueAt(mine, ["mirrors"])];
  const at = points.findIndex(
    (each) =>
      (mirrors !== undefined && valueAt(each, ["id"]) === mirrors) ||
      (id !== undefined && valueAt(each, ["mirrors"]) === id),
  );
  return at < 0 ? undefined : ["points", at];
}

/** "Right main tyre" for "Left main tyre". */
export const otherSide = (words: string): string =>
  words.replaceAll(/left|right/gi, (word) => {
    const other = word.toLowerCase() === "left" ? "right" : "left";
    return /^[LR]/.test(word) ? other.charAt(0).toUpperCase() + other.slice(1) : other;
  });
