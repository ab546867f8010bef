import { type AircraftRow, newAircraftRow } from "../storage/schema.ts";
import { writeStrictly } from "../storage/strict-write.ts";
import type { CheckedPage } from "./check-page.ts";
import { EpochMoved, type ExchangeContext, ServerInconsistent } from "./context.ts";
import { Refused } from "./server.ts";
import { takePage } from "./take-page.ts";

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
    const page = await askPage(context, row);
    if (page !== null && page.epoch !== row.epoch) throw new EpochMoved(page.epoch);
    const fault = page === null ? "has another history than it had" : faultOf(page, row.pulledTo);
    if (fault !== null) {
      if (restarts++ > 0) throw new ServerInconsistent(`The server's ledger of ${aircraft} ${fault}.`);
      await startAgain(context, aircraft, row.epoch);
      continue;
    }
    if (page === null) continue;
    if (page.entries.length === 0) return { row, usedElsewhere };
    const taken = await takePage(context, aircraft, row.pulledTo, page);
    usedElsewhere ??= taken?.usedElsewhere ?? null;
    if (taken && taken.row.pulledTo >= page.head) return { row: taken.row, usedElsewhere };
  }
}

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

export const readRow = (context: ExchangeContext, aircraft: string): Promise<AircraftRow> =>
  context.connection.run(
    async (database) => (await database.get("aircraft", aircraft)) ?? newAircraftRow(aircraft),
  );

/** Numbers are counted from zero again, and the server is asked what it lacks. */
export const startAgain = (
  context: ExchangeContext,
  aircraft: string,
  epoch: string | null,
): Promise<AircraftRow> => changeRow(context, aircraft, (row) => fromZero(row, epoch));

export const fromZero = (row: AircraftRow, epoch: string | null): AircraftRow => ({
  ...row,
  epoch,
  pulledTo: 0,
  pulledId: null,
  // A phone that never met a server has everything of its own in the outbox.
  refill: row.epoch !== null,
  settled: {},
});

export async function changeRow(
  context: ExchangeContext,
  aircraft: string,
  change: (row: AircraftRow) => AircraftRow,
): Promise<AircraftRow> {
  const row = await context.connection.run((database) =>
    writeStrictly(database, ["aircraft"], async (transaction) => {
      const store = transaction.objectStore("aircraft");
      const next = change((await store.get(aircraft)) ?? newAircraftRow(aircraft));
      await store.put(next);
      return next;
    }),
  );
  await context.tell({ aircraft, row });
  return row;
}
