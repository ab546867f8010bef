import { clockOf, timedFigures } from "@witnessmark/assess";
import { readBook } from "@witnessmark/book";
import { bookInForce, fold, type LedgerEvent } from "@witnessmark/ledger";
import { timedCalendar } from "@witnessmark/record";
import type { OperatorStore } from "@witnessmark/store";
import { Refusal } from "../refusal.ts";
import { readKept, textsUpTo } from "./kept-events.ts";

/**
 * What runs out rests on none of these, and they are nearly all of a long ledger: they are not even read. Inside a text
 * of the canonical JSON a quotation mark is escaped, so that this is never found in somebody's words.
 */
const LEFT_OUT =
  /"type":"(check\.answered|reading\.recorded|reading\.imported|photo\.attached|note\.written|walk\.interrupted)"/;

/**
 * The last days of what runs out on an aircraft by date, as a calendar.
 *
 * @throws {Refusal} 409 when no book is in force that reads
 */
export async function runsOutCalendar(
  own: OperatorStore,
  aircraft: string,
  head: number,
  now_ms: number,
): Promise<string> {
  const events: LedgerEvent[] = [];
  for await (const texts of textsUpTo(own, aircraft, head)) {
    for (const text of texts) if (!LEFT_OUT.test(text)) events.push(readKept(aircraft, text));
  }
  const state = fold(events);
  const adopted = bookInForce(state);
  const read = adopted === undefined ? undefined : await readBook(adopted.text, "the book in the ledger");
  if (read?.ok !== true)
    throw new Refusal(
      409,
      "no-book",
      `What runs out on ${aircraft} is in its book, and none is in force that reads. Adopt one, then ask again.`,
    );
  const { book } = read;
  const clock = clockOf(book, state, now_ms);
  const figures = timedFigures({ book, state, flight: null, clock, pilot: undefined });
  return timedCalendar(aircraft, figures, now_ms);
}
