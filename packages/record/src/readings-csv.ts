import type { Book } from "@witnessmark/book";
import type { AircraftState } from "@witnessmark/ledger";
import Papa from "papaparse";

/**
 * Every reading that the ledger holds, as it was read, oldest first: one line each, with its unit beside it.
 *
 * @returns CSV as RFC 4180 has it, with a head line
 */
export function readingsCsv(book: Book, state: AircraftState): string {
  const rows = [...state.checks].flatMap(([id, { readings }]) => {
    const check = book.checksById.get(id);
    const point = book.points.get(check?.point ?? "");
    return readings.map((reading) => ({
      recorded_at: reading.recordedAt,
      check: id,
      title: check?.title ?? "",
      point: point?.name ?? "",
      gauge: reading.gauge,
      value: reading.read.value,
      unit: reading.read.unit,
      temperature: reading.temperature?.value ?? "",
      temperature_unit: reading.temperature?.unit ?? "",
      by: reading.imported?.by ?? reading.author.name,
      hlc: reading.hlc,
    }));
  });
  rows.sort((a, b) => (a.hlc < b.hlc ? -1 : a.hlc > b.hlc ? 1 : 0));
  return csvOf(
    [
      "recorded_at",
      "check",
      "title",
      "point",
      "gauge",
      "value",
      "unit",
      "temperature",
      "temperature_unit",
      "by",
    ],
    rows,
  );
}

/** Lines with these columns; a text that a spreadsheet would take for a formula is kept from being one. */
export const csvOf = (columns: readonly string[], rows: readonly object[]): string =>
  `${Papa.unparse(rows.length === 0 ? [[...columns]] : (rows as object[]), {
    columns: rows.length === 0 ? undefined : [...columns],
    escapeFormulae: true,
    newline: "\r\n",
  } as Papa.UnparseConfig)}\r\n`;
