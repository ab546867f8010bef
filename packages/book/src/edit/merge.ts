import {
  type Difference,
  differences,
  idOf,
  isList,
  isMap,
  isSame,
  type KeyedPath,
  placeOf,
} from "./differences.ts";
import { type BookEdit, EditError, editText, type Plain } from "./edit-text.ts";
import { plainOf, valueAt } from "./plain-of.ts";

/** Something that both have changed, each in another way. */
export interface MergeQuestion {
  /** Names it, for the answer. */
  readonly key: string;
  readonly path: KeyedPath;
  readonly was: Plain | undefined;
  readonly mine: Plain | undefined;
  readonly theirs: Plain | undefined;
}

export interface Merged {
  /** Theirs with all of mine that they have not changed, and what was answered. */
  readonly text: string;
  /** What is not answered yet; theirs stands in the text. */
  readonly questions: readonly MergeQuestion[];
}

/** Which revision it is, and who issued it, is said when it is issued. */
const NEVER_MINE = new Set(["revision", "issued"]);

/**
 * My changes of a book laid onto the one that others have issued meanwhile, place by place. Where both have changed the
 * same, it asks.
 *
 * @param answers by the key of a question
 * @throws {EditError} a text that cannot be read
 */
export function mergeBooks(
  base: string,
  mine: string,
  theirs: string,
  answers: ReadonlyMap<string, "mine" | "theirs"> = new Map(),
): Merged {
  const [from, here, there] = [base, mine, theirs].map(readOrThrow) as [Plain, Plain, Plain]; // three in, three out
  const { edits, questions } = mergeEdits(from, here, there, answers);
  return { text: edits.length === 0 ? theirs : editText(theirs, edits), questions };
}

/** What has to be changed in theirs, and what is asked. */
export function mergeEdits(
  from: Plain,
  here: Plain,
  there: Plain,
  answers: ReadonlyMap<string, "mine" | "theirs"> = new Map(),
): { readonly edits: readonly BookEdit[]; readonly questions: readonly MergeQuestion[] } {
  const theirChanges = differences(from, there);
  const questions: MergeQuestion[] = [];
  const edits: BookEdit[] = [];
  let running = there;
  for (const change of differences(from, here)) {
    if (NEVER_MINE.has(String(change.path[0]))) continue;
    const against = theirChanges.filter(
      ({ path }) => isWithin(path, change.path) || isWithin(change.path, path),
    );
    if (against.length > 0 && !bothSay(against, change)) {
      const key = keyOf(change.path);
      const answer = answers.get(key);
      if (answer === undefined) questions.push(questionOf(change, there, key));
      if (answer !== "mine") continue;
    } else if (against.length > 0) continue;
    for (const edit of editsOf(change, running, here)) {
      edits.push(edit);
      running = editPlain(running, edit);
    }
  }
  return { edits, questions };
}

const bothSay = (against: readonly Difference[], { path, kind, now }: Difference): boolean =>
  against.length === 1 &&
  against[0]?.kind === kind &&
  keyOf(against[0].path) === keyOf(path) &&
  isSame(against[0].now, now);

const questionOf = ({ path, was, now }: Difference, there: Plain, key: string): MergeQuestion => {
  const place = placeOf(there, path);
  return { key, path, was, mine: now, theirs: place === undefined ? undefined : valueAt(there, place) };
};

export const keyOf = (path: KeyedPath): string => JSON.stringify(path);

const isWithin = (inner: KeyedPath, outer: KeyedPath): boolean =>
  outer.every((step, index) => JSON.stringify(inner[index]) === JSON.stringify(step));

/** The change made in another book; nothing where that has no such place any more. */
function editsOf({ path, kind, now }: Difference, running: Plain, mine: Plain): readonly BookEdit[] {
  const last = path.at(-1);
  if (kind === "order") {
    const place = placeOf(running, path);
    const list = place === undefined ? undefined : valueAt(running, place);
    return place === undefined || !isList(list) || !isList(now)
      ? []
      : [{ set: place, to: inOrderOf(list, now.map(String)) }];
  }
  if (typeof last === "object") {
    const place = placeOf(running, path);
    if (now === undefined) return place === undefined ? [] : [{ remove: place }];
    if (place !== undefined) return [{ set: place, to: now }];
    const list = placeOf(running, path.slice(0, -1));
    return list === undefined ? [] : [{ insert: [...list, rankOf(last.id, path, running, mine)], item: now }];
  }
  const place = placeOf(running, path);
  if (place === undefined || !isThere(running, place.slice(0, -1))) return [];
  if (now !== undefined) return [{ set: place, to: now }];
  return valueAt(running, place) === undefined ? [] : [{ remove: place }];
}

const isThere = (plain: Plain, path: readonly (string | number)[]): boolean => {
  const value = valueAt(plain, path);
  return isMap(value) || isList(value);
};

/** After the item that it follows in mine, where that is there. */
function rankOf(id: string, path: KeyedPath, running: Plain, mine: Plain): number {
  const listIn = (plain: Plain): readonly Plain[] => {
    const place = placeOf(plain, path.slice(0, -1));
    const list = place === undefined ? undefined : valueAt(plain, place);
    return isList(list) ? list : [];
  };
  const ids = listIn(mine).map(idOf);
  const there = listIn(running).map(idOf);
  for (let at = ids.indexOf(id) - 1; at >= 0; at--) {
    const rank = there.indexOf(ids[at]);
    if (rank >= 0) return rank + 1;
  }
  return ids.indexOf(id) === 0 ? 0 : there.length;
}

/** In the order given; what that does not name keeps its place at the end. */
function inOrderOf(list: readonly Plain[], ids: readonly string[]): readonly Plain[] {
  const rank = (item: Plain) => {
    const at = ids.indexOf(idOf(item) ?? "");
    return at < 0 ? ids.length : at;
  };
  return list.toSorted((a, b) => rank(a) - rank(b));
}

/** What `editText` does to a text, done to its keys and values. */
export function editPlain(plain: Plain, edit: BookEdit): Plain {
  const path = "set" in edit ? edit.set : "insert" in edit ? edit.insert : edit.remove;
  return changeAt(plain, path, edit);
}

function changeAt(plain: Plain | undefined, path: readonly (string | number)[], edit: BookEdit): Plain {
  const [step, ...rest] = path;
  if (step === undefined || (!isList(plain) && !isMap(plain)))
    throw new EditError(`expected keys or a list at ${path.join(".")}, found neither`);
  if (isList(plain)) {
    const at = Number(step);
    if (rest.length > 0) return plain.with(at, changeAt(plain[at], rest, edit));
    if ("set" in edit) return plain.map((item, index) => (index === at ? edit.to : item));
    return "insert" in edit ? plain.toSpliced(at, 0, edit.item) : plain.toSpliced(at, 1);
  }
  if (rest.length > 0) return { ...plain, [step]: changeAt(plain[step], rest, edit) };
  if ("set" in edit) return { ...plain, [step]: edit.to };
  return Object.fromEntries(Object.entries(plain).filter(([key]) => key !== step));
}

function readOrThrow(text: string): Plain {
  const read = plainOf(text, "the book");
  if (read.ok) return read.plain;
  const { line, column, expected, found } = read.fault;
  throw new EditError(`line ${line}, column ${column}: expected ${expected}, found ${found}`);
}
