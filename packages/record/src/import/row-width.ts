import type { RowFaults } from "./answer.ts";
import type { Table, TableRow } from "./table.ts";

/** Whether a row has more cells than there are headings: what a decimal comma does between commas. Adds the fault. */
export function hasTooMany({ headings, delimiter }: Table, { cells }: TableRow, faults: RowFaults): boolean {
  if (cells.length <= headings.length) return false;
  faults.add(
    "",
    `${cells.length} cells`,
    `${headings.length}, one for each heading`,
    delimiter === ","
      ? "A decimal comma parts cells here: save the file with semicolons between its columns, or with decimal points."
      : "A cell that holds the separator has to stand in quotation marks.",
  );
  return true;
}
