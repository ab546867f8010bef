import { fromSI, roundToSafeSide, toSI, type UnitId, unitFromText } from "@witnessmark/engine";
import type { PerformanceQuantity, PerformanceTable, PerformanceTableSource } from "../schema/performance.ts";

/** The ground roll that goes with a distance over an obstacle. */
export const ROLL_OF: Readonly<Partial<Record<PerformanceQuantity, PerformanceQuantity>>> = {
  "take-off-over-50ft": "take-off-ground-roll",
  "landing-over-50ft": "landing-ground-roll",
};

/** What the tables of a book give, with the ground rolls that are written as a share. */
export const quantitiesOf = (
  tables: readonly Pick<PerformanceTableSource, "quantity" | "groundRoll">[],
): ReadonlySet<PerformanceQuantity> =>
  new Set(
    tables.flatMap(({ quantity, groundRoll }): readonly PerformanceQuantity[] => {
      const roll = groundRoll === undefined ? undefined : ROLL_OF[quantity];
      return roll === undefined ? [quantity] : [quantity, roll];
    }),
  );

/**
 * The tables that one written table stands for: itself, for its one mass where it has one, and the ground roll that is a
 * share of it. A mass is an axis with one value: a table is never read beyond it, and less mass is no worse.
 */
export function tablesOf(
  table: PerformanceTable,
  { upToMass, groundRoll, unit }: PerformanceTableSource,
): readonly PerformanceTable[] {
  const whole: PerformanceTable =
    upToMass === undefined
      ? table
      : { ...table, axes: [{ name: "mass_kg", values: [upToMass.valueSI] }, ...table.axes] };
  const quantity = ROLL_OF[table.quantity];
  const written = unitFromText(unit);
  if (groundRoll === undefined || quantity === undefined || written === undefined) return [whole];
  return [
    whole,
    {
      ...whole,
      id: `${table.id}-ground-roll`,
      quantity,
      title: `${table.title}: ground roll, ${groundRoll} of it`,
      cells: whole.cells.map((cell) => (cell === null ? null : shareOf(cell, groundRoll, written))),
    },
  ];
}

/** In whole units of the print, rounded up. */
const shareOf = (cellSI: number, share_1: number, unit: UnitId): number =>
  toSI(roundToSafeSide(fromSI(cellSI, unit) * share_1, 1, "up"), unit);
