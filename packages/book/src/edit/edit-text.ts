import {
  type Document,
  isAlias,
  isCollection,
  isScalar,
  isSeq,
  type Node,
  type ParsedNode,
  stringify,
  visit,
  type YAMLSeq,
} from "yaml";
import { faultSentence } from "../faults/fault-sentence.ts";
import { parseYaml } from "../yaml/parse-yaml.ts";
import { writeYaml } from "../yaml/write-yaml.ts";
import { keepLines } from "./keep-lines.ts";

/** Keys and places in lists, from the top of the book: `["checks", 12, "title"]`. */
export type BookPath = readonly (string | number)[];

/** What can stand in the text of a book. */
export type Plain = string | number | boolean | null | readonly Plain[] | { readonly [key: string]: Plain };

/** One change of a book's text. */
export type BookEdit =
  /** Puts a value at a place, in place of what is there; the place above it must be there. */
  | { readonly set: BookPath; readonly to: Plain }
  /** Puts an item into a list before the one at this place, or at its end. */
  | { readonly insert: BookPath; readonly item: Plain }
  | { readonly remove: BookPath };

/** A change that cannot be made where it was asked. */
export class EditError extends Error {
  override readonly name = "EditError";
}

/**
 * The text after the changes, made one after another: all of them, or an error and none. Everything else, comments too,
 * stays as it is written; it may be a book with faults before and after.
 *
 * @throws {EditError} a text that cannot be read, or a place that is not there
 */
export function editText(text: string, edits: readonly BookEdit[]): string {
  const { document, faults } = parseYaml(text, "the book");
  const [fault] = faults;
  if (fault !== undefined) throw new EditError(faultSentence(fault));
  const spliced = spliceScalars(text, document, edits);
  if (spliced !== undefined) return spliced;
  const before = writeYaml(document);
  for (const edit of edits) change(document, edit);
  return keepLines(text, before, writeYaml(document));
}

/** Values put in place of values are changed where they stand: not a blank more. Nothing for any other change. */
function spliceScalars(
  text: string,
  document: Document<ParsedNode, true>,
  edits: readonly BookEdit[],
): string | undefined {
  const splices = new Map<number, { readonly end: number; readonly now: string }>();
  for (const edit of edits) {
    if (!("set" in edit) || typeof edit.to === "object" || isRepeated(document, edit.set)) return undefined;
    const node: unknown = edit.set.length === 0 ? undefined : document.getIn(edit.set, true);
    if (!isScalar(node) || node.anchor !== undefined || node.tag !== undefined) return undefined;
    const [start, end] = node.range ?? [0, 0];
    if (node.source === "" || start >= end || node.type?.startsWith("BLOCK") === true) return undefined;
    if (splices.has(start)) return undefined; // the same place twice: one after another, as they were asked
    splices.set(start, { end, now: scalarText(edit.to) });
  }
  return [...splices]
    .toSorted(([a], [b]) => b - a)
    .reduce((so, [start, { end, now }]) => so.slice(0, start) + now + so.slice(end), text);
}

/** Whether something on the way to a place has a name, by which it may stand in other places too. */
const isRepeated = (document: Document, path: BookPath): boolean =>
  path.some((_, length) => {
    const node: unknown = length === 0 ? document.contents : document.getIn(path.slice(0, length), true);
    return isCollection(node) && node.anchor !== undefined;
  });

/** A value as it may stand in brackets, and so anywhere. */
const scalarText = (value: string | number | boolean): string =>
  stringify([value], { collectionStyle: "flow", lineWidth: 0, flowCollectionPadding: false })
    .trim()
    .slice(1, -1);

function change(document: Document, edit: BookEdit): void {
  const path = "set" in edit ? edit.set : "insert" in edit ? edit.insert : edit.remove;
  writeOut(document, path);
  if ("remove" in edit) {
    if (!document.hasIn(edit.remove)) throw nothingAt(edit.remove);
    document.deleteIn(edit.remove);
    return;
  }
  if ("set" in edit) {
    holderOf(document, edit.set);
    document.setIn(edit.set, document.createNode(edit.to));
    return;
  }
  const holder = holderOf(document, edit.insert);
  const at = edit.insert.at(-1);
  if (!isSeq(holder) || typeof at !== "number" || at < 0 || at > holder.items.length) {
    throw new EditError(`expected a place in a list, received ${edit.insert.join(".")}`);
  }
  (holder as YAMLSeq).items.splice(at, 0, document.createNode(edit.item));
}

/**
 * Writes out what is repeated by an alias, so that the change is of one place: an alias on the way to it becomes what it
 * stands for, and so does every alias of what is on the way, or is to go.
 */
function writeOut(document: Document, path: BookPath): void {
  const names = new Set<string>();
  const nameOf = (node: unknown) => {
    if ((isCollection(node) || isScalar(node)) && node.anchor !== undefined) names.add(node.anchor);
  };
  for (let length = 1; length < path.length; length++) {
    const way = path.slice(0, length);
    const node: unknown = document.getIn(way, true);
    if (isAlias(node)) document.setIn(way, copyOf(node.resolve(document)));
    else nameOf(node);
  }
  const going: unknown = document.hasIn(path) ? document.getIn(path, true) : undefined;
  if (isCollection(going) || isScalar(going)) visit(going, { Node: (_, node) => nameOf(node) });
  if (names.size === 0) return;
  visit(document, {
    Alias: (_, alias) => (names.has(alias.source) ? copyOf(alias.resolve(document)) : undefined),
  });
}

function copyOf(node: Node | undefined): Node | undefined {
  const copy = node?.clone() as Node | undefined; // a clone is of the kind of its original
  if (copy === undefined) return undefined;
  visit(copy, {
    Node: (_, each: { anchor?: string }) => {
      delete each.anchor;
    },
  });
  return copy;
}

/** What holds the place that a path names. */
function holderOf(document: Document, path: BookPath): unknown {
  const above = path.slice(0, -1);
  const holder = above.length === 0 ? document.contents : document.getIn(above, true);
  if (path.length === 0 || !isCollection(holder)) throw nothingAt(above);
  return holder;
}

const nothingAt = (path: BookPath): EditError =>
  new EditError(
    `expected something at ${path.length === 0 ? "the top of the book" : path.join(".")}, found nothing`,
  );
