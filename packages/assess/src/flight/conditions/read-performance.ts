import type { Performance, PerformanceQuantity, PerformanceTable, Runway } from "@witnessmark/book";
import { interpolateTable } from "@witnessmark/engine";
import { countedOf_mPerS, HARMLESS, offTable, type TablePoint } from "./distances.ts";
import type { Missing } from "./figure.ts";

/** What is asked of the tables at one field beside its distances. */
export interface PerformanceAsk {
  readonly performance: Performance;
  readonly runway: Runway;
  readonly at: TablePoint;
}

/** Of the wind along the runway what may be counted: the share of the book, as in the distances. */
export const countedAlong_mPerS = ({ performance, at }: PerformanceAsk): number =>
  countedOf_mPerS(performance, at);

export interface ReadCell {
  readonly table: PerformanceTable;
  readonly value: number;
}

/** One figure of a table that is no distance; nothing beyond its ends but what is harmless. */
export function readCell(
  table: PerformanceTable,
  ask: PerformanceAsk,
  worse: "more" | "less",
): ReadCell | Missing {
  const { at, runway } = ask;
  const answer = interpolateTable(
    table,
    {
      mass_kg: at.mass_kg,
      pressureAltitude_m: at.pressureAltitude_m,
      oat_K: at.oat_K,
      headwind_mPerS: countedAlong_mPerS(ask),
      slope_1: runway.slope_1,
    },
    { mode: "linear", worse, harmless: HARMLESS },
  );
  return answer.ok ? { table, value: answer.value } : offTable(table, answer);
}

/** The flaps that a table of distances is for. */
export const flapsOf = ({ tables }: Performance, quantity: PerformanceQuantity): string | undefined =>
  tables.find((table) => table.quantity === quantity)?.flaps;
