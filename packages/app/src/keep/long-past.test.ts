import { readFileSync } from "node:fs";
import { assess } from "@witnessmark/assess";
import { readBook } from "@witnessmark/book";
import { fromSI } from "@witnessmark/engine";
import {
  canonical,
  fold,
  generateHistory,
  hlcTime_ms,
  type LedgerEvent,
  LongPast,
} from "@witnessmark/ledger";
import { beforeAll, expect, it } from "vitest";

const BOOK = new URL("../../../../books/zz-skr.yaml", import.meta.url);

async function demo() {
  const text = readFileSync(BOOK, "utf8");
  const read = await readBook(text, "zz-skr.yaml");
  if (!read.ok) throw new Error("expected a book without faults");
  const { book } = read;
  const history = await generateHistory({
    years: 1,
    flightsPerYear: 36,
    seed: 5,
    seal: "none",
    aircraft: book.aircraft.registration,
    checks: book.checks.map(({ id, reading }) => {
      const gauge = reading && book.gauges.get(reading.gauge);
      if (reading === undefined || gauge === undefined) return { id };
      const [low, high] = reading.scale;
      const usual = fromSI((low.valueSI + high.valueSI) / 2, gauge.unit);
      return { id, gauge: { id: gauge.id, unit: gauge.unit, usual } };
    }),
    groundGear: book.groundGear.map(({ id, count }) => ({ item: id, count, stowedIn: "cabin" })),
    book: { sha256: book.sha256, revision: book.revision, type: book.aircraft.type, text },
  });
  return { book, history };
}

let given: Awaited<ReturnType<typeof demo>>;
beforeAll(async () => {
  given = await demo();
});

/** What a phone has that came to the ledger at its end. */
function needed(events: readonly LedgerEvent[]): readonly LedgerEvent[] {
  const past = new LongPast(3);
  for (const event of events) past.see(event);
  return events.filter((event) => past.isNeeded(event));
}

it.each([1, 0.97, 0.6])("is judged to the letter as with everything, after %f of the past", (part) => {
  const events = given.history.slice(0, Math.floor(part * given.history.length));
  const few = needed(events);
  expect(few.length).toBeLessThan(0.75 * events.length);
  const now_ms = hlcTime_ms(events.at(-1)?.hlc ?? "") + 60_000;
  const judged = (of: readonly LedgerEvent[]) => canonical(assess(given.book, fold(of), null, now_ms));
  expect(judged(few)).toBe(judged(events));
});
