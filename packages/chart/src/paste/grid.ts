import { type UnitId, unitFromText } from "@witnessmark/engine";
import { axisIn, type Heading, type PastedAxisName, readCorner, readHeading } from "./headings.ts";
import {
  type Axis,
  at,
  axisOf,
  axisValueOf,
  type Entry,
  type Found,
  figureOf,
  figureUnit,
  keysOf,
  type PasteFault,
  type PasteSaid,
  type ReadRow,
} from "./pasted-parts.ts";
import type { PastedCell } from "./split-cells.ts";

/** What stands over and beside the figures of a grid. */
interface GridHeads {
  /** The cells over the figures. */
  readonly over: ReadRow["cells"];
  readonly acrossHeading: Heading | undefined;
  /** The columns of the outer axes. */
  readonly named: readonly { readonly cell: PastedCell; readonly heading: Heading }[];
  readonly figuresUnit: UnitId | undefined;
}

/** Values of one axis across, of the others down. */
export function entriesOfGrid(
  across: ReadRow,
  titles: readonly ReadRow[],
  body: readonly ReadRow[],
  said: PasteSaid,
  faults: PasteFault[],
): Found | undefined {
  const { over, acrossHeading: written, named, figuresUnit } = headsOf(across, titles, said);
  const unitsOver = over.map(({ content }) =>
    content.kind === "number" ? unitFromText(content.unit) : undefined,
  );
  const unitIn = unitsOver.find((unit) => unit !== undefined);
  const acrossHeading = written ?? headingSaid(axisIn(unitIn));
  const firstValue = over[0]?.cell;
  if (acrossHeading?.axis === undefined || firstValue === undefined) {
    faults.push({
      row: across.row,
      column: firstValue?.column ?? 0,
      says: `The values across (${over.map(({ cell }) => cell.text).join(", ")}) have no name. Say which axis they are.`,
    });
    return undefined;
  }
  const columns = new Map<number, Axis>();
  for (const { cell, heading } of named) {
    const known = heading.axis === undefined && named.length === 1 ? headingSaid(said.down) : heading;
    const axis = axisOf({ ...(known ?? heading), unit: heading.unit }, said, cell, faults);
    if (axis !== undefined) columns.set(cell.column, axis);
  }
  const unitOver = acrossHeading.unit ?? unitIn;
  const axis = axisOf({ ...acrossHeading, unit: unitOver }, said, firstValue, faults);
  const unit = figureUnit(figuresUnit, said, firstValue, faults);
  if (axis === undefined || faults.length > 0) return undefined;
  const values = new Map<number, number>();
  for (const { cell, content } of over) {
    const value = axisValueOf(content, axis, cell, faults);
    if (value !== undefined) values.set(cell.column, value);
  }
  const filled = new Map<number, number>();
  const entries = body.flatMap((row) => entriesOfRow(row, { columns, filled, values, axis, unit }, faults));
  return { axes: [...columns.values(), axis], entries, unit };
}

interface Columns {
  readonly columns: ReadonlyMap<number, Axis>;
  readonly filled: Map<number, number>;
  /** What stands over each column of figures. */
  readonly values: ReadonlyMap<number, number>;
  readonly axis: Axis;
  readonly unit: UnitId | undefined;
}

function entriesOfRow(
  { row, cells }: ReadRow,
  { columns, filled, values, axis, unit }: Columns,
  faults: PasteFault[],
): readonly Entry[] {
  for (const { cell, content } of cells) {
    if (content.kind !== "blank" && !values.has(cell.column) && !columns.has(cell.column)) {
      faults.push(at(cell, `Expected nothing here, for no value stands over it; found ${cell.text}.`));
    }
  }
  const keys = keysOf(row, cells, columns, filled, true, faults);
  if (keys === undefined) return [];
  return [...values].map(([column, value]) => {
    const found = cells.find(({ cell }) => cell.column === column);
    const cell = found?.cell ?? { row, column, text: "" };
    const place = new Map<PastedAxisName, number>([...keys, [axis.name, value]]);
    return { at: place, figure: figureOf(found?.content, unit, cell, faults), cell };
  });
}

function headsOf(across: ReadRow, titles: readonly ReadRow[], said: PasteSaid): GridHeads {
  const over = across.cells.filter(({ content }) => content.kind === "number");
  const lastOver = Math.max(...over.map(({ cell }) => cell.column));
  const corners = across.cells
    .filter(({ content }) => content.kind === "text" || content.kind === "blank")
    .filter(({ cell }) => cell.text !== "" || cell.column < lastOver)
    .map(({ cell }) => ({
      cell,
      headings: readCorner(cell.text === "" ? titleOver(titles, cell) : cell.text),
    }));
  const named = corners.map(({ cell, headings }) => ({ cell, heading: headings[0] ?? readHeading("") }));
  const titleHeadings = titles.flatMap(({ cells }) => cells.map(({ cell }) => readHeading(cell.text)));
  const title = titleHeadings.find(
    ({ axis }) => axis !== undefined && named.every(({ heading }) => heading.axis !== axis),
  );
  return {
    over,
    acrossHeading:
      corners.map(({ headings }) => headings[1]).find((each) => each !== undefined) ??
      title ??
      headingSaid(said.across),
    named,
    figuresUnit: titleHeadings.find(({ axis, unit }) => axis === undefined && unit !== undefined)?.unit,
  };
}

/** What stands in the column of a gap, in the rows above. */
const titleOver = (titles: readonly ReadRow[], { column }: PastedCell): string =>
  titles.flatMap(({ cells }) => cells).find(({ cell }) => cell.column === column && cell.text !== "")?.cell
    .text ?? "";

const headingSaid = (name: PastedAxisName | undefined): Heading | undefined =>
  name === undefined ? undefined : { text: name, axis: name, unit: undefined, turned: false };
