import type { BookFault } from "../book.ts";
import { FaultList } from "../faults/fault-list.ts";
import { textFault } from "../text-fault.ts";
import { NodePositions } from "../yaml/node-positions.ts";
import { parseYaml } from "../yaml/parse-yaml.ts";
import { PlainReader } from "../yaml/plain-value.ts";
import type { BookPath, Plain } from "./edit-text.ts";

/** A text as plain keys and values, whether or not they are a book; or why there are none. */
export type PlainResult =
  | { readonly ok: true; readonly plain: { readonly [key: string]: Plain } }
  | { readonly ok: false; readonly fault: BookFault };

/** Reads the keys and values of a text: what an editor shows of a book that may still have faults. */
export function plainOf(text: string, fileName: string): PlainResult {
  const unreadable = textFault(text, fileName);
  if (unreadable !== undefined) return { ok: false, fault: unreadable };
  const { document, lines, faults } = parseYaml(text, fileName);
  const [syntax] = faults;
  if (syntax !== undefined) return { ok: false, fault: syntax };
  const reader: PlainReader = new PlainReader((path, fault) => list.report(path, fault));
  const list = new FaultList(fileName, new NodePositions(document.contents, reader.targets, lines));
  const plain = reader.read(document.contents);
  const [fault] = list.inOrder();
  if (fault !== undefined) return { ok: false, fault };
  if (!isMap(plain)) {
    list.report([], {
      expected: "a book: keys and values, the first `witnessmark: 1`",
      found: "something else",
    });
    const [other] = list.inOrder();
    if (other !== undefined) return { ok: false, fault: other };
  }
  return { ok: true, plain: withoutHoles(plain) as { readonly [key: string]: Plain } }; // keys and values, as just seen
}

/** An item that was forgotten is nothing. */
function withoutHoles(value: unknown): Plain {
  if (Array.isArray(value)) return value.map(withoutHoles);
  if (isMap(value)) {
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, withoutHoles(each)]));
  }
  return typeof value === "string" || typeof value === "number" || typeof value === "boolean" ? value : null;
}

const isMap = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** What is at a path; `undefined` when nothing is. */
export function valueAt(plain: Plain | undefined, path: BookPath): Plain | undefined {
  let value: Plain | undefined = plain;
  for (const step of path) {
    if (typeof value !== "object" || value === null) return undefined;
    const isThere = Object.hasOwn(value, step) && Array.isArray(value) === (typeof step === "number");
    const next: unknown = isThere ? Reflect.get(value, step) : undefined;
    value = next as Plain | undefined; // what is in plain data is plain
  }
  return value;
}
