import { type Document, LineCounter, type ParsedNode, parseDocument, type YAMLError } from "yaml";
import type { BookFault } from "../book.ts";
import { type FaultText, locatedFault } from "../faults/fault-list.ts";

export interface ParsedYaml {
  readonly document: Document<ParsedNode, true>;
  readonly lines: LineCounter;
  readonly faults: readonly BookFault[];
}

/** Reads YAML 1.2, core schema, one document; keys are text, dates stay text, nothing is merged or constructed. */
export function parseYaml(text: string, file: string): ParsedYaml {
  const lines = new LineCounter();
  const document = parseDocument(text, {
    lineCounter: lines,
    prettyErrors: false,
    schema: "core",
    merge: false,
    resolveKnownTags: false,
    stringKeys: true,
    uniqueKeys: false, // `plain-value.ts` finds doubled keys, in one pass and with its own words
    logLevel: "error", // "silent" would also hide a second document
  });
  const problems: readonly YAMLError[] = [...document.errors, ...document.warnings];
  const exhausted = problems.find(({ code }) => code === "RESOURCE_EXHAUSTION");
  const faults: BookFault[] = [];
  const places = new Set<number>();
  for (const problem of exhausted === undefined ? problems : [exhausted]) {
    const [start] = problem.pos;
    if (places.has(start)) continue; // one slip often gives several errors at the same place
    places.add(start);
    const { line, col } = lines.linePos(Math.min(start, text.length));
    faults.push(locatedFault(file, { line, column: col }, wordsFor(problem)));
  }
  return { document, lines, faults };
}

function wordsFor(problem: YAMLError): FaultText {
  switch (problem.code) {
    case "TAB_AS_INDENT":
      return { expected: "spaces", found: "a tab", remedy: "indent with spaces only" };
    case "BAD_INDENT":
      return {
        expected: "a line that is indented like the others of its list or block",
        found: lowerFirst(problem.message),
        remedy: "line it up with the key above, or close the bracket that is open",
      };
    case "MISSING_CHAR":
      return {
        expected: "what was opened before to be closed",
        found: lowerFirst(problem.message),
        remedy: "look at the lines above for a quote, bracket or colon that is missing",
      };
    case "BLOCK_AS_IMPLICIT_KEY":
      return {
        expected: "one key and one value on a line",
        found: "a second colon",
        remedy: 'put text that holds a colon and a space in quotes: "like: this"',
      };
    case "MULTILINE_IMPLICIT_KEY":
      return {
        expected: "a key, a colon and a space",
        found: "a line that is neither a key nor the end of a value",
        remedy: "write `key: value` with a space after the colon, or indent the line",
      };
    case "BAD_SCALAR_START":
      return {
        expected: "text that starts with a letter or a figure",
        found: lowerFirst(problem.message),
        remedy: "put the text in quotes",
      };
    case "BAD_DQ_ESCAPE":
      return {
        expected: "an escape that YAML knows, such as \\n",
        found: lowerFirst(problem.message),
        remedy: "write \\\\ for a backslash, or use single quotes",
      };
    case "MULTIPLE_DOCS":
      return {
        expected: "one book in a file",
        found: "a second document, after `---`",
        remedy: "put it in a file of its own",
      };
    case "TAG_RESOLVE_FAILED":
      return {
        expected: "a plain value",
        found: lowerFirst(problem.message),
        remedy: "leave out the tag that starts with an exclamation mark",
      };
    case "NON_STRING_KEY":
      return { expected: "text as a key", found: "a list or keys and values as a key" };
    case "RESOURCE_EXHAUSTION":
      return {
        expected: "a book, which is at most a few levels deep",
        found: "brackets inside brackets, too many to read",
      };
    default:
      return { expected: "YAML that can be read", found: lowerFirst(problem.message) };
  }
}

const lowerFirst = (text: string): string => text.slice(0, 1).toLowerCase() + text.slice(1);
