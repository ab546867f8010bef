import type { BookFault } from "../book.ts";
import { type Path, pathText } from "./path.ts";

/** 1-based. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** Finds where in a file the value at a path, or its key, is written. */
export interface Positions {
  readonly ofValue: (path: Path) => Position;
  readonly ofKey: (path: Path) => Position;
}

export interface FaultText {
  readonly expected: string;
  readonly found: string;
  readonly remedy?: string | undefined;
  /** The key is at fault, not its value. */
  readonly on?: "key" | "value";
}

/** How a rule says what is wrong. */
export type Report = (path: Path, fault: FaultText) => void;

/** More than this helps nobody; the last one then says how many there are. */
const MOST_LISTED = 500;

/** What is wrong with one file, in the order of its lines. */
export class FaultList {
  readonly #file: string;
  readonly #positions: Positions;
  readonly #faults: BookFault[] = [];

  constructor(file: string, positions: Positions) {
    this.#file = file;
    this.#positions = positions;
  }

  readonly report: Report = (path, { expected, found, remedy, on }) => {
    const position = on === "key" ? this.#positions.ofKey(path) : this.#positions.ofValue(path);
    this.#faults.push(locatedFault(this.#file, position, { expected, found, remedy }, pathText(path)));
  };

  inOrder(): readonly BookFault[] {
    return inOrder(this.#file, this.#faults);
  }
}

export function locatedFault(
  file: string,
  position: Position,
  { expected, found, remedy }: FaultText,
  path = "",
): BookFault {
  const { line, column } = position;
  return { file, line, column, path, expected, found, ...(remedy === undefined ? {} : { remedy }) };
}

/** For a fault of the file as a whole. */
export const WHOLE_FILE: Position = { line: 0, column: 0 };

export function inOrder(file: string, faults: readonly BookFault[]): readonly BookFault[] {
  const sorted = faults.toSorted((a, b) => a.line - b.line || a.column - b.column);
  if (sorted.length <= MOST_LISTED) return sorted;
  const more = {
    expected: `at most ${MOST_LISTED} faults`,
    found: `${sorted.length}; only the first ${MOST_LISTED} are listed`,
    remedy: "mend these first",
  };
  return [...sorted.slice(0, MOST_LISTED), locatedFault(file, WHOLE_FILE, more)];
}
