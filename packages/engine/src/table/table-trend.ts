import { valueAt } from "./locate.ts";
import { axisValuesOfCell, requireSoundTable, type Table } from "./table.ts";

/** Which way the cells must go as a value of the axis grows; equal cells are allowed. */
export type Trend = "rising" | "falling";

/** Two neighbouring cells that go the wrong way. */
export interface TrendFault {
  readonly axis: string;
  readonly expected: Trend;
  /** The axis values of the first of the two cells. */
  readonly at: Readonly<Record<string, number>>;
  /** The value of the axis at the second cell. */
  readonly to: number;
  readonly cell: number;
  readonly nextCell: number;
}

/**
 * Looks for cells that go against what the physics of the table demands: a heavier or hotter aircraft never needs less.
 * A cell without a figure is skipped, so that its two neighbours are compared with each other.
 *
 * @param trends by axis name; an axis that is not named is not looked at
 * @throws {InputError} `out-of-range` for a table that is not one
 */
export function trendFaults(table: Table, trends: Readonly<Record<string, Trend>>): readonly TrendFault[] {
  const steps = requireSoundTable(table);
  const indexOn = (cell: number, dimension: number): number =>
    Math.floor(cell / (steps[dimension] ?? 1)) % (table.axes[dimension]?.values.length ?? 1);
  const faults: TrendFault[] = [];
  table.axes.forEach((axis, dimension) => {
    const expected = trends[axis.name];
    const step = steps[dimension];
    if (expected === undefined || step === undefined) return;
    table.cells.forEach((cell, index) => {
      if (cell === null) return;
      for (let on = indexOn(index, dimension) + 1; on < axis.values.length; on += 1) {
        const next = table.cells[index + (on - indexOn(index, dimension)) * step];
        if (next === null || next === undefined) continue;
        if (expected === "rising" ? next < cell : next > cell) {
          faults.push({
            axis: axis.name,
            expected,
            at: axisValuesOfCell(table, index),
            to: valueAt(axis, on),
            cell,
            nextCell: next,
          });
        }
        break;
      }
    });
  });
  return faults;
}
