import type { Report } from "../faults/fault-list.ts";
import type { PerformanceTable } from "../schema/performance.ts";
import type { Draft } from "../shape/draft.ts";
import { readTable } from "./read-table.ts";

/** Every performance table in SI, in the order of the book; says where one cannot be. */
export function readTables({ performance }: Draft, report: Report): readonly PerformanceTable[] {
  return (performance?.tables ?? []).flatMap((source, i) => {
    const table = readTable(source, ["performance", "tables", i], report);
    return table === undefined ? [] : [table];
  });
}
