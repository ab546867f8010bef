import type { AircraftRow } from "../storage/schema.ts";
import { readRow, startAgain } from "./aircraft-row.ts";
import type { CheckedPage } from "./check-page.ts";
import { EpochMoved, type ExchangeContext, ServerInconsistent } from "./context.ts";
import { Refused } from "./server.ts";
import { takeNeeded } from "./take-needed.ts";
import { nextPage, takePage } from "./take-page.ts";

export interface Pulled {
  readonly row: AircraftRow;
  /** See `takePage`. */
  readonly usedElsewhere: string | null;
}

/**
 * Brings this phone up to the server's last event of an aircraft, page by page, in the order of ledgerSeq. A hole, or
 * a place that the server does not have, starts again from the first event; what is here already stays.
 *
 * @throws {EpochMoved} when the server's database is another than the row's
 * @throws {ServerInconsistent} when starting again did not help
 */
export async function pullAll(context: ExchangeContext, aircraft: string): Promise<Pulled> {
  let usedElsewhere: string | null = null;
  let restarts = 0;
  for (;;) {
    const row = await readRow(context, aircraft);
    if (row.pulledTo === 0 && row.older?.taking && (await takeNeeded(context, row))) continue;
    const page = await askPage(context, row);
    if (page !== null && page.epoch !== row.epoch) throw new EpochMoved(page.epoch);
    const fault = page === null ? "has another history than it had" : faultOf(page, row.pulledTo);
    if (fault !== null) {
      if (restarts++ > 0) throw new ServerInconsistent(`The server's ledger of ${aircraft} ${fault}.`);
      await startAgain(context, aircraft, row.epoch);
      continue;
    }
    if (page === null) continue;
    if (isNewTo(row, page.head, context.longLedger) && (await takeNeeded(context, row))) continue;
    if (page.entries.length === 0) return { row, usedElsewhere };
    const taken = await takePage(context, aircraft, page, nextPage(row.pulledTo, page));
    usedElsewhere ??= taken?.usedElsewhere ?? null;
    if (taken && taken.row.pulledTo >= page.head) return { row: taken.row, usedElsewhere };
  }
}

/** Whether a phone has so little of a long ledger that it does better to ask for what it needs first. */
const isNewTo = ({ pulledTo, older, eventCount }: AircraftRow, head: number, long: number): boolean =>
  pulledTo === 0 && head >= long && (older !== undefined || eventCount * 2 < head);

/** `null` when another event stands at the place that was reached. */
async function askPage(context: ExchangeContext, row: AircraftRow): Promise<CheckedPage | null> {
  const place = { after: row.pulledTo, ...(row.pulledId === null ? {} : { afterId: row.pulledId }) };
  try {
    return await context.server.pull(row.aircraft, place);
  } catch (error) {
    if (error instanceof Refused && error.code === "another-history") return null;
    throw error;
  }
}

function faultOf({ head, entries }: CheckedPage, after: number): string | null {
  if (after > head) return `ends at number ${head}, before number ${after} that it has given out`;
  const hole = entries.findIndex((entry, at) => entry.ledgerSeq !== after + 1 + at);
  if (hole >= 0)
    return `has a hole: expected number ${after + 1 + hole}, received ${entries[hole]?.ledgerSeq}`;
  if (entries.length === 0 && head > after)
    return `says it goes to number ${head} but gives nothing after ${after}`;
  return null;
}
