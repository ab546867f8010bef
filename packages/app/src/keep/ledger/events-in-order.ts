import { compareEvents, type LedgerEvent } from "@witnessmark/ledger";
import type { Connection } from "../storage/open-database.ts";

const BATCH = 2_000;

/** Every event of an aircraft, in an index that begins with its registration. */
export const wholeLedger = (aircraft: string): IDBKeyRange => IDBKeyRange.bound([aircraft], [aircraft, []]);

/** All events of an aircraft in ledger order, read in steps. */
export async function* eventsInOrder(connection: Connection, aircraft: string): AsyncGenerator<LedgerEvent> {
  let range = wholeLedger(aircraft);
  let seen = new Set<string>();
  for (;;) {
    const from = range;
    const batch = await connection.run((database) =>
      database.getAllFromIndex("events", "byOrder", from, BATCH),
    );
    const fresh = batch.filter(({ id }) => !seen.has(id)).sort(compareEvents);
    const last = fresh.at(-1);
    if (last === undefined) return;
    yield* fresh;
    // From the last one on, itself included: two events may have one place, and neither may be lost.
    range = IDBKeyRange.bound([aircraft, last.hlc, last.device, last.deviceSeq], [aircraft, []]);
    seen = new Set(batch.map(({ id }) => id));
  }
}
