import { type Trend, type TrendFault, trendFaults } from "@witnessmark/engine";
import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type {
  PerformanceQuantity,
  PerformanceTable,
  PerformanceTableSource,
  TableAxisName,
} from "../schema/performance.ts";
import type { Draft } from "../shape/draft.ts";
import { readTable } from "./read-table.ts";
import { tablesOf } from "./tables-of.ts";

type Trends = Readonly<Partial<Record<TableAxisName, Trend>>>;

const LONGER: Trends = {
  mass_kg: "rising",
  pressureAltitude_m: "rising",
  oat_K: "rising",
  headwind_mPerS: "falling",
};
const LESS_CLIMB: Trends = { mass_kg: "falling", pressureAltitude_m: "falling", oat_K: "falling" };

/** Which way the figures of a quantity must go: heavier, hotter, higher and downwind never shorten a distance. */
export const TRENDS: Readonly<Record<PerformanceQuantity, Trends>> = {
  "take-off-ground-roll": { ...LONGER, slope_1: "rising" },
  "take-off-over-50ft": { ...LONGER, slope_1: "rising" },
  "landing-ground-roll": { ...LONGER, slope_1: "falling" },
  "landing-over-50ft": { ...LONGER, slope_1: "falling" },
  "accelerate-stop": LONGER,
  "climb-gradient": LESS_CLIMB,
  "go-around-gradient": LESS_CLIMB,
  "stall-speed": { mass_kg: "rising" },
};

/** Every performance table in SI, in the order of the book; says where one cannot be. */
export function readTables({ performance }: Draft, report: Report): readonly PerformanceTable[] {
  const tables = (performance?.tables ?? []).map((source, i) => {
    const path: Path = ["performance", "tables", i];
    const table = readTable(source, path, report);
    if (table === undefined) return undefined;
    for (const fault of trendFaults(table, TRENDS[table.quantity])) {
      trendFault(source, table, fault, path, report);
    }
    return table;
  });
  rollsAreShorterThanTotals(performance?.tables ?? [], tables, report);
  return tables.flatMap((table, i) => {
    const source = performance?.tables[i];
    return table === undefined || source === undefined ? [] : tablesOf(table, source);
  });
}

/** The second of two cells that go the wrong way, in the words and units of the table. */
function trendFault(
  source: PerformanceTableSource,
  table: PerformanceTable,
  { axis, expected, at, to }: TrendFault,
  path: Path,
  report: Report,
): void {
  const first = table.axes.map(({ name, values }) => values.indexOf(at[name] ?? Number.NaN));
  const moved = table.axes.findIndex(({ name }) => name === axis);
  const second = first.with(moved, table.axes[moved]?.values.indexOf(to) ?? -1);
  const more = expected === "rising" ? "at least" : "at most";
  report([...path, "cells", ...second], {
    expected: `${more} ${withUnit(writtenCell(source, first), source.unit)}, that at ${placeText(source, first)}`,
    found: `${withUnit(writtenCell(source, second), source.unit)} at ${placeText(source, second)}`,
    remedy: "one of the two cells is a misprint",
  });
}

const withUnit = (value: unknown, unit: string): string => `${String(value)} ${unit}`.trim();

/** `mass 2400 kg, oat 20 °C`: where a cell stands, in the units of the table. */
const placeText = ({ axes }: PerformanceTableSource, indices: readonly number[]): string =>
  axes.map(({ name, unit, values }, i) => `${name} ${withUnit(values[indices[i] ?? 0], unit)}`).join(", ");

function writtenCell({ cells }: PerformanceTableSource, indices: readonly number[]): unknown {
  let node: unknown = cells;
  for (const index of indices) node = Array.isArray(node) ? node[index] : undefined;
  return node;
}

const PAIRS = [
  ["take-off-ground-roll", "take-off-over-50ft"],
  ["landing-ground-roll", "landing-over-50ft"],
] as const;

/** Over an obstacle it takes longer than on the ground: told once for two tables of the same axes and flaps. */
function rollsAreShorterThanTotals(
  sources: readonly PerformanceTableSource[],
  tables: readonly (PerformanceTable | undefined)[],
  report: Report,
): void {
  for (const [rollQuantity, totalQuantity] of PAIRS) {
    for (const [i, total] of tables.entries()) {
      if (total?.quantity !== totalQuantity) continue;
      const roll = tables.find(
        (table) => table?.quantity === rollQuantity && table.flaps === total.flaps && sameAxes(table, total),
      );
      const source = sources[i];
      const at = total.cells.findIndex((cell, k) => isShorter(cell, roll?.cells[k]));
      if (roll === undefined || source === undefined || at < 0) continue;
      const indices = indicesOf(total, at);
      report(["performance", "tables", i, "cells", ...indices], {
        expected: `more than the ground roll there, ${Number((roll.cells[at] ?? 0).toFixed(1))} m in \`${roll.id}\``,
        found: `${withUnit(writtenCell(source, indices), source.unit)} at ${placeText(source, indices)}`,
        remedy: "are the two tables changed over?",
      });
    }
  }
}

const isShorter = (total: number | null | undefined, roll: number | null | undefined): boolean =>
  typeof total === "number" && typeof roll === "number" && total <= roll;

const sameAxes = (one: PerformanceTable, other: PerformanceTable): boolean =>
  JSON.stringify(one.axes) === JSON.stringify(other.axes);

function indicesOf({ axes }: PerformanceTable, cell: number): readonly number[] {
  let rest = cell;
  return axes
    .toReversed()
    .map(({ values }) => {
      const index = rest % values.length;
      rest = Math.floor(rest / values.length);
      return index;
    })
    .toReversed();
}
