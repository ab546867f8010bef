import type { BookFault } from "./book.ts";
import { type FaultText, locatedFault, type Position, WHOLE_FILE } from "./faults/fault-list.ts";

/** A book of a hundred checks has some 60 000 characters. */
const MOST_BYTES = 1_000_000;
const REPLACEMENT = "\uFFFD";

/** What makes a text unfit to be read at all: empty, far too long, or not text. */
export function textFault(text: string, file: string): BookFault | undefined {
  if (text.trim() === "") {
    return locatedFault(file, WHOLE_FILE, {
      expected: "a book",
      found: text === "" ? "an empty file" : "blank lines only",
      remedy: "begin with `witnessmark: 1`",
    });
  }
  if (text.length > MOST_BYTES || new TextEncoder().encode(text).length > MOST_BYTES) {
    return locatedFault(file, WHOLE_FILE, {
      expected: "a book of at most 1 MB",
      found: `${(text.length / 1_000_000).toFixed(1)} million characters`,
      remedy: "is it the right file?",
    });
  }
  return notText(text, file);
}

/** Control characters and what a decoder puts for bytes that are not UTF-8. */
function notText(text: string, file: string): BookFault | undefined {
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    const isControl = (code < 0x20 && code !== 0x09 && code !== 0x0a && code !== 0x0d) || code === 0x7f;
    if (isControl) {
      return locatedFault(file, positionAt(text, i), {
        expected: "text",
        found: `a control character, code ${code}`,
        remedy: "is it the right file? A book is a text file in YAML",
      });
    }
    if (text[i] === REPLACEMENT) return locatedFault(file, positionAt(text, i), NOT_UTF_8);
  }
  return undefined;
}

const NOT_UTF_8: FaultText = {
  expected: "text in UTF-8",
  found: "a character that could not be decoded",
  remedy: "save the file as UTF-8 in your editor",
};

function positionAt(text: string, offset: number): Position {
  const before = text.slice(0, offset).split(/\r\n|\r|\n/);
  return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 };
}
