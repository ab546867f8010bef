import { setImmediate } from "node:timers/promises";
import { type LedgerEvent, parseEvent, saysOfFaults } from "@witnessmark/ledger";
import type { OperatorStore } from "@witnessmark/store";
import { EVENTS_MOST_B } from "../guard/limits.ts";
import { PAGE_EVENTS } from "../protocol.ts";
import { Refusal } from "../refusal.ts";

/** The highest ledgerSeq of an aircraft, and in which database. @throws {Refusal} 404 when there is none */
export async function headOf(
  own: OperatorStore,
  aircraft: string,
): Promise<{ readonly head: number; readonly epoch: string }> {
  const { head, epoch } = await own.page(aircraft, { after: 0, limit: 1, most_B: 1 });
  if (head === 0) throw new Refusal(404, "no-such-aircraft", `There are no events of ${aircraft} here.`);
  return { head, epoch };
}

/** Page by page, so that a ledger of ten years does not have to fit into memory. Each as it was kept. */
export async function* textsUpTo(
  own: OperatorStore,
  aircraft: string,
  head: number,
): AsyncGenerator<readonly string[], void> {
  let after = 0;
  while (after < head) {
    const { events } = await own.page(aircraft, {
      after,
      limit: Math.min(PAGE_EVENTS, head - after),
      most_B: EVENTS_MOST_B,
    });
    if (events.length === 0)
      throw new Error(`${aircraft}: expected an event after number ${after}, found none.`);
    yield events.map(({ text }) => text);
    after = events.at(-1)?.ledgerSeq ?? head;
    await setImmediate(); // others are answered between two pages, also where the store answers at once
  }
}

/** An event as it is kept. @throws {Error} when it does not read, which it did when it was taken */
export function readKept(aircraft: string, text: string): LedgerEvent {
  const parsed = parseEvent(JSON.parse(text));
  if (parsed.ok) return parsed.event;
  throw new Error(
    `${aircraft}: an event that is kept does not read: ${saysOfFaults(parsed.faults)}; ${text.slice(0, 200)}`,
  );
}

/** As `textsUpTo`, read. */
export async function* eventsUpTo(
  own: OperatorStore,
  aircraft: string,
  head: number,
): AsyncGenerator<LedgerEvent> {
  for await (const texts of textsUpTo(own, aircraft, head)) {
    for (const text of texts) yield readKept(aircraft, text);
  }
}
