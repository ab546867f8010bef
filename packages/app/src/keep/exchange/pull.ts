import { type AircraftRow, newAircraftRow } from "../storage/schema.ts";
import { writeStrictly } from "../storage/strict-write.ts";
import { EpochMoved, type ExchangeContext, ServerInconsistent } from "./context.ts";
import type { PullAnswer } from "./server.ts";
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
    const page = await context.server.pull(aircraft, row.pulledTo);
    if (page.epoch !== row.epoch) throw new EpochMoved(page.epoch);
    const fault = faultOf(page, row.pulledTo);
    if (fault !== null) {
      if (restarts++ > 0) throw new ServerInconsistent(`The server's ledger of ${aircraft} ${fault}.`);
      await startAgain(context, aircraft, page.epoch);
      continue;
    }
    if (page.events.length === 0) return { row, usedElsewhere };
    const taken = await takePage(context, aircraft, row.pulledTo, page);
    usedElsewhere ??= taken?.usedElsewhere ?? null;
    if (taken && taken.row.pulledTo >= page.head) return { row: taken.row, usedElsewhere };
  }
}

function faultOf({ head, events }: PullAnswer, after: number): string | null {
  if (after > head) return `ends at number ${head}, before number ${after} that it has given out`;
  const hole = events.findIndex((entry, at) => entry.ledgerSeq !== after + 1 + at);
  if (hole >= 0)
    return `has a hole: expected number ${after + 1 + hole}, received ${events[hole]?.ledgerSeq}`;
  if (events.length === 0 && head > after)
    return `says it goes to number ${head} but gives nothing after ${after}`;
  return null;
}

export const readRow = (context: ExchangeContext, aircraft: string): Promise<AircraftRow> =>
  context.connection.run(
    async (database) => (await database.get("aircraft", aircraft)) ?? newAircraftRow(aircraft),
  );

/** Numbers are counted from zero again, and the server is asked what it lacks. */
export async function startAgain(
  context: ExchangeContext,
  aircraft: string,
  epoch: string,
): Promise<AircraftRow> {
  const row = await changeRow(context, aircraft, (before) => ({
    ...before,
    epoch,
    pulledTo: 0,
    // A phone that never met a server has everything of its own in the outbox.
    refill: before.epoch !== null,
    settled: {},
  }));
  return row;
}

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
