import { type Document, LineCounter, type ParsedNode, parseDocument, type YAMLError } from "yaml";
import type { BookFault } from "../book.ts";
import { type FaultText, locatedFault } from "../faults/fault-list.ts";
import { shown } from "../faults/shown.ts";

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
  const faults: BookFault[] = [];
  const places = new Set<number>();
  for (const problem of telling([...document.errors, ...document.warnings])) {
    const { at = problem.pos[0], ...words } = wordsFor(problem, text);
    if (places.has(at)) continue; // one slip often gives several errors at the same place
    places.add(at);
    const { line, col } = lines.linePos(Math.min(at, text.length));
    faults.push(locatedFault(file, { line, column: col }, words));
  }
  return { document, lines, faults };
}

/** Some errors bring others in their train: then they alone are worth reading. */
function telling(problems: readonly YAMLError[]): readonly YAMLError[] {
  const exhausted = problems.filter(({ code }) => code === "RESOURCE_EXHAUSTION");
  if (exhausted.length > 0) return exhausted.slice(0, 1);
  const tabs = problems.filter(({ code }) => code === "TAB_AS_INDENT");
  if (tabs.length > 0) return tabs;
  const sorted = problems.toSorted((a, b) => a.pos[0] - b.pos[0]);
  const derailed = sorted.findIndex(({ code }) => DERAILING.has(code));
  if (derailed >= 0) return sorted.slice(0, derailed + 1);
  const keysInValues = problems.filter(({ code }) => code === "BLOCK_AS_IMPLICIT_KEY");
  const explained = new Set(keysInValues.map(({ pos }) => pos[0]));
  return problems.filter(({ code, pos }) => code === "BLOCK_AS_IMPLICIT_KEY" || !explained.has(pos[0]));
}

/** After one of these, what follows is read as something that it is not. */
const DERAILING: ReadonlySet<YAMLError["code"]> = new Set([
  "BAD_INDENT",
  "MISSING_CHAR",
  "UNEXPECTED_TOKEN",
  "IMPOSSIBLE",
]);

interface SyntaxWords extends FaultText {
  /** Where the slip is, when that is not where the error is. */
  readonly at?: number;
}

function wordsFor({ code, message, pos }: YAMLError, text: string): SyntaxWords {
  const said = `text of which the YAML reader says: ${message.slice(0, 1).toLowerCase()}${message.slice(1)}`;
  switch (code) {
    case "TAB_AS_INDENT":
      return { expected: "spaces", found: "a tab", remedy: "indent with spaces only" };
    case "BAD_INDENT":
      return { at: firstInk(pos[0], text), ...(message.startsWith("Flow") ? BRACKET : UNEVEN) };
    case "MISSING_CHAR":
      if (message.startsWith("Flow")) return BRACKET;
      return message.startsWith("Missing closing")
        ? {
            expected: "a closing quote",
            found: "none",
            remedy: "close the text that the quote before opened",
          }
        : { expected: "YAML that can be read", found: said };
    case "UNEXPECTED_TOKEN":
      return {
        expected: "the end of what was opened before, or a comma",
        found: shown(text.slice(pos[0], pos[0] + 20).split("\n", 1)[0]),
        remedy: "look just before it for a bracket, quote or comma too many or too few",
      };
    case "BLOCK_AS_IMPLICIT_KEY":
      return keyInValue(pos[0], text);
    case "MULTILINE_IMPLICIT_KEY":
      return {
        expected: "a key, a colon and a space",
        found: "a line that is neither a key nor the end of a value",
        remedy: "write `key: value` with a space after the colon, or indent the line",
      };
    case "BAD_SCALAR_START":
      return {
        expected: "text that starts with a letter or a figure",
        found: `text that starts with ${text.charAt(pos[0])}`,
        remedy: "put the text in quotes",
      };
    case "BAD_DQ_ESCAPE":
      return {
        expected: "an escape that YAML knows, such as \\n",
        found: text.slice(pos[0], pos[0] + 2),
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
        found: "a tag, which starts with an exclamation mark",
        remedy: "leave out the tag",
      };
    case "NON_STRING_KEY":
      return { expected: "text as a key", found: "a list or keys and values as a key" };
    case "RESOURCE_EXHAUSTION":
      return {
        expected: "a book, which is at most a few levels deep",
        found: "brackets inside brackets, too many to read",
      };
    default:
      return { expected: "YAML that can be read", found: said };
  }
}

const BRACKET: FaultText = {
  expected: "a closing bracket, ] or }",
  found: "none before the end of its block",
  remedy: "close the bracket that is open above",
};

const UNEVEN: FaultText = {
  expected: "a line that is indented like the others of its block",
  found: "one that is not",
  remedy: "line it up with its neighbours",
};

/** The first character from here on that shows. */
function firstInk(start: number, text: string): number {
  let at = start;
  while (at < text.length && /\s/.test(text.charAt(at))) at += 1;
  return at;
}

/** A second colon on a line, or a value that runs on into the next line because that is indented too far. */
function keyInValue(start: number, text: string): SyntaxWords {
  const end = text.indexOf("\n", start);
  const firstLine = text.slice(start, end < 0 ? text.length : end);
  if (/:(\s|$)/.test(firstLine)) {
    return {
      expected: "one key and one value on a line",
      found: "a second colon",
      remedy: 'put text that holds a colon and a space in quotes: "like: this"',
    };
  }
  return {
    at: firstInk(start + firstLine.length, text),
    expected: "a line that is indented like the others of its block",
    found: "one that is indented further, and so belongs to the value above",
    remedy: "line it up with its neighbours",
  };
}
