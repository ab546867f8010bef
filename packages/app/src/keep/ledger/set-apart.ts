import type { LedgerEvent } from "@witnessmark/ledger";
import type { Connection } from "../storage/open-database.ts";
import { type AircraftRow, newAircraftRow } from "../storage/schema.ts";
import { allOf, putAll, type Writing, writeStrictly } from "../storage/strict-write.ts";

/** Moves events of other devices out of the ledger, because the server holds others in their place. */
export const setApart = (
  connection: Connection,
  aircraft: string,
  ids: readonly string[],
): Promise<AircraftRow> =>
  connection.run((database) =>
    writeStrictly(database, ["aircraft", "events", "outbox", "apart", "projections"], async (transaction) => {
      const row = (await transaction.objectStore("aircraft").get(aircraft)) ?? newAircraftRow(aircraft);
      const found = await allOf(ids.map((id) => transaction.objectStore("events").get(id)));
      const events = found.filter((event) => event !== undefined);
      await moveApart(transaction, events);
      const changed = { ...row, eventCount: row.eventCount - events.length };
      await transaction.objectStore("aircraft").put(changed);
      return changed;
    }),
  );

/** As `setApart`, within a transaction; the aircraft's row is the caller's to write. */
export async function moveApart(transaction: Writing, events: readonly LedgerEvent[]): Promise<void> {
  const [first] = events;
  if (first === undefined) return;
  await putAll(
    transaction.objectStore("apart"),
    events.map((event) => ({
      id: event.id,
      aircraft: event.aircraft,
      reason: `The server holds another entry as number ${event.deviceSeq} of device ${event.device}. The server's counts; this one is kept apart.`,
      text: JSON.stringify(event),
    })),
  );
  await allOf(
    events.flatMap(({ id }) => [
      transaction.objectStore("events").delete(id),
      transaction.objectStore("outbox").delete(id),
    ]),
  );
  await transaction.objectStore("projections").delete(first.aircraft);
}
