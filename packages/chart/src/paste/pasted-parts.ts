import { type Dimension, fromSI, toSI, UNITS, type UnitId, unitFromText } from "@witnessmark/engine";
import {
  axisWords,
  dimensionOf,
  exampleUnitOf,
  type Heading,
  type PastedAxisName,
  symbolOf,
} from "./headings.ts";
import type { CellContent, DecimalSign } from "./read-number.ts";
import type { PastedCell } from "./split-cells.ts";

/** What is wrong with a pasted text, and where; rows and columns count from 1, 0 is the whole. */
export interface PasteFault {
  readonly row: number;
  readonly column: number;
  readonly says: string;
}

/** What a person says where the text does not. */
export interface PasteSaid {
  readonly decimal?: DecimalSign;
  /** The dimension of the figures: length for a distance. */
  readonly cells: Dimension;
  /** The unit of the figures, where no heading has it. */
  readonly unit?: string;
  /** The column of the figures, from 1, where there are several. */
  readonly column?: number;
  /** The axes whose values stand across and down, where no heading names them. */
  readonly across?: PastedAxisName;
  readonly down?: PastedAxisName;
  /** Units of axes, where no heading has them. */
  readonly units?: Readonly<Partial<Record<PastedAxisName, string>>>;
}

export interface ReadRow {
  readonly row: number;
  readonly cells: readonly { readonly cell: PastedCell; readonly content: CellContent }[];
}

/** One figure with the values of its axes, and where it stood. */
export interface Entry {
  readonly at: ReadonlyMap<PastedAxisName, number>;
  readonly figure: number | null;
  readonly cell: PastedCell;
}

export interface Axis {
  readonly name: PastedAxisName;
  readonly unit: UnitId | undefined;
  readonly turned: boolean;
}

/** Figures with the values of their axes, however they stood. */
export interface Found {
  readonly axes: readonly Axis[];
  readonly entries: readonly Entry[];
  readonly unit: UnitId | undefined;
}

/** A fault at a cell. */
export const at = ({ row, column }: PastedCell, says: string): PasteFault => ({ row, column, says });

export function axisOf(
  heading: Heading,
  said: PasteSaid,
  cell: PastedCell,
  faults: PasteFault[],
): Axis | undefined {
  const { axis: name } = heading;
  if (name === undefined) {
    faults.push(
      at(
        cell,
        `Expected the name of an axis (mass, pressure altitude, temperature, headwind or slope), found ${cell.text === "" ? "none" : `“${cell.text}”`}.`,
      ),
    );
    return undefined;
  }
  const dimension = dimensionOf(name);
  const unit =
    heading.unit ?? unitFromText(said.units?.[name] ?? "") ?? (dimension === "ratio" ? "1" : undefined);
  if (unit === undefined || UNITS[unit].dimension !== dimension) {
    faults.push(
      at(
        cell,
        `Expected a unit with the ${axisWords(name)}, such as ${exampleUnitOf(name)}, found ${unit === undefined ? "none" : symbolOf(unit)}.`,
      ),
    );
    return undefined;
  }
  return { name, unit, turned: heading.turned };
}

export function figureUnit(
  inHeading: UnitId | undefined,
  said: PasteSaid,
  cell: PastedCell,
  faults: PasteFault[],
): UnitId | undefined {
  const unit = inHeading ?? unitFromText(said.unit ?? "") ?? (said.cells === "ratio" ? "1" : undefined);
  if (unit !== undefined && UNITS[unit].dimension === said.cells) return unit;
  faults.push(
    at(
      cell,
      `Expected the unit of the figures (a ${said.cells}), found ${unit === undefined ? "none" : symbolOf(unit)}. Say which it is.`,
    ),
  );
  return undefined;
}

/** The values of the axes of one row. A gap in an outer column stands for what is above it, as in merged cells. */
export function keysOf(
  row: number,
  cells: ReadRow["cells"],
  columns: ReadonlyMap<number, Axis>,
  filled: Map<number, number>,
  isGrid: boolean,
  faults: PasteFault[],
): Map<PastedAxisName, number> | undefined {
  const keys = new Map<PastedAxisName, number>();
  const last = Math.max(...columns.keys());
  for (const [column, axis] of columns) {
    const found = cells.find(({ cell }) => cell.column === column);
    const above = filled.get(column);
    const mayFill = !isGrid || column !== last;
    const isGap = found === undefined || found.content.kind === "blank";
    const value =
      isGap && mayFill && above !== undefined
        ? above
        : axisValueOf(found?.content, axis, found?.cell ?? { row, column, text: "" }, faults);
    if (value === undefined) return undefined;
    filled.set(column, value);
    keys.set(axis.name, value);
  }
  return keys;
}

export function axisValueOf(
  content: CellContent | undefined,
  axis: Axis,
  cell: PastedCell,
  faults: PasteFault[],
): number | undefined {
  if (content?.kind === "number") {
    const value = inUnit(content, axis.unit, cell, faults);
    return value === undefined || !axis.turned || value === 0 ? value : -value;
  }
  faults.push(
    at(
      cell,
      `Expected a number for the ${axisWords(axis.name)}, found ${cell.text === "" ? "nothing" : `“${cell.text}”`}.`,
    ),
  );
  return undefined;
}

export function figureOf(
  content: CellContent | undefined,
  unit: UnitId | undefined,
  cell: PastedCell,
  faults: PasteFault[],
): number | null {
  if (content === undefined || content.kind === "blank" || content.kind === "none") return null;
  if (content.kind === "number") return inUnit(content, unit, cell, faults) ?? null;
  faults.push(at(cell, `Expected a number or nothing, found “${cell.text}”.`));
  return null;
}

/** A cell may carry a unit of its own. */
function inUnit(
  content: CellContent & { readonly kind: "number" },
  unit: UnitId | undefined,
  cell: PastedCell,
  faults: PasteFault[],
): number | undefined {
  if (content.unit === "" || unit === undefined) return content.value;
  const own = unitFromText(content.unit);
  if (own === undefined || UNITS[own].dimension !== UNITS[unit].dimension) {
    faults.push(at(cell, `Expected a number in ${symbolOf(unit)}, found “${cell.text}”.`));
    return undefined;
  }
  return own === unit ? content.value : Number(fromSI(toSI(content.value, own), unit).toPrecision(12));
}
