import { unitFromText } from "@witnessmark/engine";
import type { PaperTable } from "../table/chart-table.ts";
import { assembled } from "./assemble.ts";
import { entriesOfGrid } from "./grid.ts";
import { entriesOfList } from "./list.ts";
import type { PasteFault, PasteSaid, ReadRow } from "./pasted-parts.ts";
import { decimalSignOf, readCell } from "./read-number.ts";
import { splitCells } from "./split-cells.ts";

export type { PastedAxisName } from "./headings.ts";
export type { PasteFault, PasteSaid } from "./pasted-parts.ts";

export type PasteResult =
  | {
      readonly ok: true;
      readonly table: PaperTable;
      /** What was taken for what, in words. */
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly faults: readonly PasteFault[] };

const MOST_CELLS = 20_000;

/**
 * Reads a table that was copied from a spreadsheet or a CSV file: with tabs, semicolons, commas, bars or spaces between
 * its cells; as a grid (values of one axis across, of others down) or as a list (one row for each figure); rows and
 * columns in any order. Bars about the whole, a line under the headings and a row of units are taken for what they are.
 */
export function readPasted(text: string, said: PasteSaid): PasteResult {
  const { delimiter, rows } = splitCells(text);
  const all = rows.flat();
  if (all.length === 0) return failed(0, 0, "Nothing is pasted yet.");
  if (all.length > MOST_CELLS) {
    return failed(0, 0, `Expected at most ${MOST_CELLS} cells, found ${all.length}. Is it the right table?`);
  }
  const evidence = decimalSignOf(all.map((cell) => cell.text));
  const decimal =
    said.decimal ?? (delimiter === "comma" ? "point" : "sign" in evidence ? evidence.sign : undefined);
  if (decimal === undefined && "unclear" in evidence) {
    const cell = all.find((each) => each.text === evidence.unclear);
    return failed(
      cell?.row ?? 0,
      cell?.column ?? 0,
      `${evidence.unclear} can be read in two ways. Say whether the decimal sign is a point or a comma.`,
    );
  }
  const read = rows.map(
    (cells): ReadRow => ({
      row: cells[0]?.row ?? 0,
      cells: cells.map((cell) => ({ cell, content: readCell(cell.text, decimal ?? "point") })),
    }),
  );
  const faults: PasteFault[] = [];
  const table = tableOf(read, said, faults);
  if (table === undefined || faults.length > 0) return { ok: false, faults: faults.slice(0, 50) };
  const notes = [
    `Between the cells: ${delimiter === "tab" ? "tabs" : delimiter === "spaces" ? "spaces" : `${delimiter}s`}.`,
    ...(decimal === undefined ? [] : [`Decimal sign: ${decimal}.`]),
    ...table.notes,
  ];
  return { ok: true, table: table.table, notes };
}

const failed = (row: number, column: number, says: string): PasteResult => ({
  ok: false,
  faults: [{ row, column, says }],
});

function tableOf(rows: readonly ReadRow[], said: PasteSaid, faults: PasteFault[]) {
  // titles have one cell; the first row with more says what kind of table it is
  const headAt = rows.findIndex(({ cells }) => filledCells(cells).length > 1);
  const head = rows[headAt];
  const next = rows[headAt + 1];
  if (
    head === undefined ||
    !rows.some(({ cells }) => cells.some(({ content }) => content.kind === "number"))
  ) {
    faults.push({ row: 0, column: 0, says: "Expected rows of numbers under their headings, found none." });
    return undefined;
  }
  const isWords = filledCells(head.cells).every(({ content }) => content.kind === "text");
  if (isWords && next !== undefined && isUnits(next)) {
    const all = rows.filter((row) => row !== next).map((row) => (row === head ? withUnits(head, next) : row));
    return tableOf(all, said, faults);
  }
  // a row of words over a row that begins with a gap: what is down and what is across
  const isDouble = isWords && next?.cells[0]?.content.kind === "blank";
  const found =
    isWords && !isDouble
      ? entriesOfList(head, rows.slice(headAt + 1), said, faults)
      : isDouble && next !== undefined
        ? entriesOfGrid(next, rows.slice(0, headAt + 1), rows.slice(headAt + 2), said, faults)
        : entriesOfGrid(head, rows.slice(0, headAt), rows.slice(headAt + 1), said, faults);
  if (found === undefined || faults.length > 0) return undefined;
  if (found.entries.length === 0) {
    faults.push({ row: head.row, column: 0, says: "Expected rows of numbers under this one, found none." });
    return undefined;
  }
  return assembled(found, faults);
}

/** A row of nothing but units, under the names they are of. */
const isUnits = ({ cells }: ReadRow): boolean =>
  filledCells(cells).length > 0 &&
  filledCells(cells).every(({ cell }) => unitFromText(withoutBrackets(cell.text)) !== undefined);

const withoutBrackets = (unit: string): string => unit.replace(/^[([]|[)\]]$/g, "");

/** The names with their units: `Mass (kg)`. */
const withUnits = (head: ReadRow, units: ReadRow): ReadRow => ({
  ...head,
  cells: head.cells.map(({ cell, content }) => {
    const under = units.cells.find((each) => each.cell.column === cell.column)?.cell.text ?? "";
    const text = under === "" ? cell.text : `${cell.text} (${withoutBrackets(under)})`;
    return { cell: { ...cell, text }, content: content.kind === "text" ? { ...content, text } : content };
  }),
});

const filledCells = (cells: ReadRow["cells"]) => cells.filter(({ content }) => content.kind !== "blank");
