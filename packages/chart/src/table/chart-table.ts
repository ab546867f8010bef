import { type Family, readChain } from "../curve/family.ts";
import { type Rounding, roundCell } from "./round-cell.ts";

/** One axis of a table as a book writes it. */
export interface NamedAxis {
  readonly name: string;
  readonly unit: string;
  /** Ascending. */
  readonly values: readonly number[];
}

/** A table in the units of its paper; cells are lists in lists, one level for each axis, `null` where there is no figure. */
export interface PaperTable {
  readonly axes: readonly NamedAxis[];
  readonly unit: string;
  readonly cells: Cells;
}

export type Cells = readonly (Cells | number | null)[];

/** What the grid of a table asks of a chart: the axis a value of each panel belongs to. */
export interface Asked {
  readonly panels: readonly Family[];
  /** The axis of the first panel's parameter; absent where it has one curve only. */
  readonly parameter?: NamedAxis;
  /** What each panel is entered by, in the order of the panels. */
  readonly entered: readonly NamedAxis[];
  /** The axes of the table by name, outermost first. */
  readonly order: readonly string[];
  readonly unit: string;
  readonly rounding: Rounding;
}

/** The table that the curves give at the corners of a grid; `null` where they do not reach. */
export function tableOfCurves({ panels, parameter, entered, order, unit, rounding }: Asked): PaperTable {
  const all = parameter === undefined ? entered : [parameter, ...entered];
  const axes = order.map((name) => {
    const axis = all.find((each) => each.name === name);
    if (axis === undefined) throw new RangeError(`the chart has no axis ${name}`);
    return axis;
  });
  const only = panels[0]?.curves[0]?.parameter ?? 0;
  const cell = (at: ReadonlyMap<string, number>): number | null => {
    const value = readChain(
      panels,
      parameter === undefined ? only : (at.get(parameter.name) ?? Number.NaN),
      entered.map(({ name }) => at.get(name) ?? Number.NaN),
    );
    return value === undefined ? null : roundCell(value, rounding);
  };
  const fill = (level: number, at: ReadonlyMap<string, number>): Cells | number | null => {
    const axis = axes[level];
    if (axis === undefined) return cell(at);
    return axis.values.map((value) => fill(level + 1, new Map([...at, [axis.name, value]])));
  };
  const cells = fill(0, new Map());
  return { axes, unit, cells: Array.isArray(cells) ? cells : [] };
}

/** All cells, row by row, the last axis fastest. */
export const flatCells = (cells: Cells): readonly (number | null)[] =>
  cells.flatMap((cell) => (typeof cell === "number" || cell === null ? [cell] : flatCells(cell)));
