import { isList } from "./differences.ts";
import type { Plain } from "./edit-text.ts";

/**
 * The cells of a table for axes of these lengths: those that are there stay where they are, new ones are empty.
 *
 * @param lengths the outermost axis first
 */
export function resizedCells(cells: Plain | undefined, lengths: readonly number[]): Plain {
  const [length, ...rest] = lengths;
  if (length === undefined) return isList(cells) || cells === undefined ? null : cells;
  return Array.from({ length }, (_, index) => resizedCells(isList(cells) ? cells[index] : undefined, rest));
}

/**
 * What was copied from a spreadsheet, as rows of figures; nothing where a cell is blank or a dash.
 *
 * @throws {Error} a cell that is no figure, with its row and column
 */
export function pastedRows(text: string): readonly (readonly (number | null)[])[] {
  return text
    .replace(/\r?\n$/, "")
    .split(/\r?\n/)
    .map((line, row) => line.split("\t").map((cell, column) => pastedFigure(cell, row, column)));
}

function pastedFigure(cell: string, row: number, column: number): number | null {
  const tidy = cell.trim().replaceAll("−", "-").replace(",", ".");
  if (tidy === "" || tidy === "-" || tidy === "–") return null;
  const value = Number(tidy);
  if (Number.isFinite(value)) return value;
  throw new Error(
    `Row ${row + 1}, column ${column + 1} of what was pasted: expected a figure, found “${cell.trim()}”. Nothing was put in.`,
  );
}

/** The cells with a block of figures laid over them, its first at this place; what does not fit is left out. */
export function withBlock(
  cells: Plain,
  outer: readonly number[],
  at: readonly [row: number, column: number],
  block: readonly (readonly (number | null)[])[],
): Plain {
  const [first, ...rest] = outer;
  if (!isList(cells)) return cells;
  if (first !== undefined)
    return cells.map((each, index) => (index === first ? withBlock(each, rest, at, block) : each));
  return cells.map((line, row) =>
    isList(line)
      ? line.map((cell, column) => {
          const put = block[row - at[0]]?.[column - at[1]];
          return put === undefined ? cell : put;
        })
      : (block[0]?.[row - at[1]] ?? line),
  );
}
