import type { Book, Check } from "@witnessmark/book";
import { fromSI } from "@witnessmark/engine";
import type { CheckLike } from "@witnessmark/ledger";

/** A check as the generator of histories knows it; its gauge reads about the middle of the rule that is drawn. */
export function checkLike(book: Book, { id, reading }: Check): CheckLike {
  const gauge = reading === undefined ? undefined : book.gauges.get(reading.gauge);
  if (reading === undefined || gauge === undefined) return { id };
  const [low, high] = reading.scale;
  return {
    id,
    gauge: { id: gauge.id, unit: gauge.unit, usual: fromSI((low.valueSI + high.valueSI) / 2, gauge.unit) },
  };
}
