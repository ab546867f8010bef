import { type Trend, tableFaults, trendFaults } from "@witnessmark/engine";
import { flatCells, type PaperTable } from "./chart-table.ts";

/** A cell that goes against its neighbours. */
export interface OddCell {
  readonly axis: string;
  readonly expected: Trend;
  /** Places on the axes of the table, outermost first, of the second of the two cells. */
  readonly indices: readonly number[];
  readonly says: string;
}

/** Of the steps along an axis, so many must go one way before the rest are looked at. */
const MOSTLY_1 = 0.8;

/**
 * Cells that go against the way of the others along an axis. Where the physics says which way it is, that is given;
 * else the way of most is taken, and nothing is said of an axis that has none.
 *
 * @param trends by the name of the axis
 */
export function oddCells(
  table: PaperTable,
  trends: Readonly<Record<string, Trend>> = {},
): readonly OddCell[] {
  const plain = { axes: table.axes, cells: flatCells(table.cells) };
  if (tableFaults(plain).length > 0) return [];
  const found: OddCell[] = [];
  for (const { name } of table.axes) {
    const trend = trends[name] ?? wayOfMost(plain, name);
    if (trend === undefined) continue;
    for (const fault of trendFaults(plain, { [name]: trend })) {
      const to = { ...fault.at, [name]: fault.to };
      const more = trend === "rising" ? "at least" : "at most";
      found.push({
        axis: name,
        expected: trend,
        indices: table.axes.map((axis) => axis.values.indexOf(to[axis.name] ?? Number.NaN)),
        says: `At ${placeText(table, to)} the table has ${withUnit(fault.nextCell, table.unit)}; expected ${more} ${withUnit(fault.cell, table.unit)}, that at ${placeText(table, fault.at)}.`,
      });
    }
  }
  return found;
}

function wayOfMost(plain: Parameters<typeof trendFaults>[0], name: string): Trend | undefined {
  const falls = trendFaults(plain, { [name]: "rising" }).length;
  const rises = trendFaults(plain, { [name]: "falling" }).length;
  if (rises >= MOSTLY_1 * (rises + falls) && rises > 0) return "rising";
  if (falls >= MOSTLY_1 * (rises + falls) && falls > 0) return "falling";
  return undefined;
}

const withUnit = (value: number, unit: string): string => `${value} ${unit}`.trim();

const placeText = ({ axes }: PaperTable, at: Readonly<Record<string, number>>): string =>
  axes.map(({ name, unit }) => `${name} ${withUnit(at[name] ?? Number.NaN, unit)}`).join(", ");
