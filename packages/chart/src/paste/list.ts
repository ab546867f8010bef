import { readHeading } from "./headings.ts";
import {
  type Axis,
  axisOf,
  type Entry,
  type Found,
  figureOf,
  figureUnit,
  keysOf,
  type PasteFault,
  type PasteSaid,
  type ReadRow,
} from "./pasted-parts.ts";

/** One row for each figure: every column but one is an axis. */
export function entriesOfList(
  heading: ReadRow,
  body: readonly ReadRow[],
  said: PasteSaid,
  faults: PasteFault[],
): Found | undefined {
  const headings = heading.cells.map(({ cell }) => ({ cell, heading: readHeading(cell.text) }));
  const axes = headings.filter(({ heading: { axis } }) => axis !== undefined);
  const others = headings.filter(({ cell, heading: { axis } }) => axis === undefined && cell.text !== "");
  const figures = others.length === 1 ? others[0] : others.find(({ cell }) => cell.column === said.column);
  if (figures === undefined) {
    faults.push({
      row: heading.row,
      column: others[0]?.cell.column ?? 0,
      says:
        others.length === 0
          ? "Expected a column of figures beside the axes, found none."
          : `Expected one column of figures, found ${others.length}: ${others.map(({ cell }) => `${cell.text} (column ${cell.column})`).join(", ")}. Say which one, or spell the names of the axes out.`,
    });
    return undefined;
  }
  const columns = new Map<number, Axis>();
  for (const { cell, heading: named } of axes) {
    const axis = axisOf(named, said, cell, faults);
    if (axis !== undefined) columns.set(cell.column, axis);
  }
  const unit = figureUnit(figures.heading.unit, said, figures.cell, faults);
  const filled = new Map<number, number>();
  const entries: Entry[] = [];
  for (const { row, cells } of body) {
    const at = keysOf(row, cells, columns, filled, false, faults);
    const found = cells.find(({ cell }) => cell.column === figures.cell.column);
    const cell = found?.cell ?? { row, column: figures.cell.column, text: "" };
    if (at !== undefined) entries.push({ at, figure: figureOf(found?.content, unit, cell, faults), cell });
  }
  return { axes: [...columns.values()], entries, unit };
}
