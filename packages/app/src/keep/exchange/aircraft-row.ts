import { type AircraftRow, newAircraftRow } from "../storage/schema.ts";
import { writeStrictly } from "../storage/strict-write.ts";
import type { ExchangeContext } from "./context.ts";

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
  ...(row.older === undefined ? {} : { older: { ...row.older, askAgain: true, taking: null } }),
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
