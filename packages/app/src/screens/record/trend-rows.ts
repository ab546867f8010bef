import { asRead, referredPoint, type Trend } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { AircraftState } from "@witnessmark/ledger";
import { capital } from "../../words/capital.ts";

/** One row of the table behind a chart. */
export type TableRow =
  | {
      readonly kind: "reading";
      readonly key: string;
      readonly at_ms: number;
      readonly asRead: string;
      readonly by: string;
      /** Under the conditions of the series; worked out for the rows that are shown only. */
      readonly shown: () => number | undefined;
    }
  | { readonly kind: "restart"; readonly key: string; readonly at_ms: number; readonly words: string };

/** Every reading of a series and what began it anew, latest first. */
export function rowsOf(book: Book, state: AircraftState, trend: Trend): readonly TableRow[] {
  const check = trend.check === undefined ? undefined : book.checksById.get(trend.check);
  const readings: readonly TableRow[] =
    check === undefined
      ? trend.points.map((point) => ({
          kind: "reading",
          key: point.event,
          at_ms: point.at_ms,
          asRead: point.asRead,
          by: point.by,
          shown: () => point.shown,
        }))
      : (state.checks.get(check.id)?.readings ?? []).map((reading) => ({
          kind: "reading",
          key: reading.event,
          at_ms: Date.parse(reading.recordedAt),
          asRead: asRead(reading, book.gauges.get(reading.gauge)),
          by: reading.imported?.by ?? reading.author.name,
          shown: () => referredPoint(book, check, reading)?.shown,
        }));
  const restarts = trend.restarts.map(
    ({ event, at_ms, what }): TableRow => ({
      kind: "restart",
      key: event,
      at_ms,
      words: capital(what),
    }),
  );
  return [...readings, ...restarts].sort((a, b) => b.at_ms - a.at_ms);
}
