import type { LimitLeft, TimedFigure } from "@witnessmark/assess";
import type { Counter } from "@witnessmark/book";
import { intervalText } from "./import/intervals.ts";
import { csvOf } from "./readings-csv.ts";

const COLUMNS = [
  "item",
  "about",
  "state",
  "last_done",
  "last_done_by",
  "limit",
  "good_until",
  "left",
  "left_unit",
  "interval",
  "reference",
];

/** Columns of one limit; what is not known is empty. */
function limitColumns(left: LimitLeft) {
  switch (left.by) {
    case "date":
      return { limit: "date", good_until: left.on, left: left.left_d, left_unit: "d" };
    case "counter":
      return {
        limit: left.counter.name,
        good_until: left.at,
        left: Number(left.left.toFixed(1)),
        left_unit: left.counter.unit,
      };
    case "unknown":
      return { limit: "", good_until: "", left: "", left_unit: "" };
    default:
      return left satisfies never;
  }
}

/**
 * Everything that runs out, a line for each of its limits, with a column for each counter that was written down when
 * something was last done.
 *
 * @returns CSV as RFC 4180 has it, with a head line
 */
export function timedCsv(figures: readonly TimedFigure[], known: readonly Counter[] = []): string {
  const counters = [...new Set(figures.flatMap(({ last }) => Object.keys(last?.counters ?? {})))].sort();
  const rows = figures.flatMap(({ item, state, last, limits }) =>
    limits.map((left) => ({
      item: item.name,
      about: item.about,
      state,
      last_done: last?.on ?? "",
      last_done_by: last?.by ?? "",
      ...limitColumns(left),
      interval: intervalText(item, known),
      reference: last?.reference ?? "",
      ...Object.fromEntries(counters.map((id) => [`last_done_${id}`, last?.counters[id] ?? ""])),
    })),
  );
  return csvOf([...COLUMNS, ...counters.map((id) => `last_done_${id}`)], rows);
}
