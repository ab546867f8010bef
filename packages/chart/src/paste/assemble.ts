import type { Cells, PaperTable } from "../table/chart-table.ts";
import { AXIS_ORDER, axisWords, symbolOf } from "./headings.ts";
import { at, type Entry, type Found, type PasteFault } from "./pasted-parts.ts";

/** The table of all figures, its axes ascending; says where one place has two figures. */
export function assembled(
  { axes: found, entries, unit }: Found,
  faults: PasteFault[],
): { readonly table: PaperTable; readonly notes: readonly string[] } | undefined {
  const axes = found.toSorted((one, other) => AXIS_ORDER.indexOf(one.name) - AXIS_ORDER.indexOf(other.name));
  const twice = axes.find(({ name }, i) => axes.findIndex((other) => other.name === name) < i);
  if (twice !== undefined) {
    faults.push({
      row: 0,
      column: 0,
      says: `Expected each axis once, found ${axisWords(twice.name)} twice.`,
    });
    return undefined;
  }
  const named = axes.map((axis) => ({
    ...axis,
    values: [...new Set(entries.map((entry) => entry.at.get(axis.name) ?? Number.NaN))].sort((a, b) => a - b),
  }));
  const keyOf = (values: readonly number[]): string => values.join(" ");
  const byPlace = new Map<string, Entry>();
  for (const entry of entries) {
    const key = keyOf(axes.map(({ name }) => entry.at.get(name) ?? Number.NaN));
    const before = byPlace.get(key);
    if (before !== undefined && before.figure !== entry.figure) {
      faults.push(
        at(
          entry.cell,
          `Expected one figure for each place, found ${entry.cell.text || "nothing"} here and ${before.cell.text || "nothing"} in row ${before.cell.row}, column ${before.cell.column}, for the same values.`,
        ),
      );
    }
    byPlace.set(key, entry);
  }
  let missing = 0;
  const fill = (level: number, values: readonly number[]): Cells | number | null => {
    const axis = named[level];
    if (axis !== undefined) return axis.values.map((value) => fill(level + 1, [...values, value]));
    const figure = byPlace.get(keyOf(values))?.figure ?? null;
    if (figure === null) missing += 1;
    return figure;
  };
  const cells = fill(0, []);
  return {
    table: {
      axes: named.map(({ name, unit: of, values }) => ({ name, unit: symbolOf(of), values })),
      unit: symbolOf(unit),
      cells: Array.isArray(cells) ? cells : [],
    },
    notes: missing === 0 ? [] : [`${missing} ${missing === 1 ? "place has" : "places have"} no figure.`],
  };
}
