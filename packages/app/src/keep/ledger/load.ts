import {
  type AircraftState,
  compareEvents,
  emptyState,
  type LedgerEvent,
  type OrderKey,
} from "@witnessmark/ledger";
import { CACHE_SHAPE } from "../cache-shape.ts";
import type { Connection } from "../storage/open-database.ts";
import { type AircraftRow, type KeepDatabase, newAircraftRow } from "../storage/schema.ts";
import { writeStrictly } from "../storage/strict-write.ts";
import { fits, foldOnto, type LedgerMemory, memoryOf, TAIL_KEPT, withdrawnBy } from "./ledger-memory.ts";

const BATCH = 2_000;

/** One aircraft as the storage has it. */
export interface LoadedAircraft {
  readonly row: AircraftRow;
  readonly ledger: LedgerMemory;
  /** Own events that the server has not acknowledged. */
  readonly toSend: number;
  readonly quarantined: readonly { readonly id: string; readonly reason: string }[];
}

/** Every event of an aircraft after a place in the ledger's order. */
const after = (aircraft: string, key: OrderKey | null): IDBKeyRange =>
  key === null
    ? IDBKeyRange.bound([aircraft], [aircraft, []])
    : IDBKeyRange.bound([aircraft, key.hlc, key.device, key.deviceSeq], [aircraft, []], true);

/**
 * Reads an aircraft. From `base` when everything before it is known to be in it, otherwise from the stored copy of a
 * state, otherwise from the first event.
 */
export async function loadAircraft(
  connection: Connection,
  aircraft: string,
  base: AircraftState | null,
): Promise<LoadedAircraft> {
  const stored = base ?? (await connection.run((database) => storedBase(database, aircraft)));
  if (stored !== null) {
    const loaded = await connection.run((database) => loadFrom(database, stored));
    if (loaded !== null) return loaded;
  }
  return await loadFromStart(connection, aircraft);
}

async function storedBase(database: KeepDatabase, aircraft: string): Promise<AircraftState | null> {
  const row = await database.get("projections", aircraft);
  return row?.shape === CACHE_SHAPE ? row.state : null;
}

/** In one transaction, so that row, events and outbox belong together. `null` when the base is not right any more. */
async function loadFrom(database: KeepDatabase, base: AircraftState): Promise<LoadedAircraft | null> {
  const { aircraft } = base;
  const transaction = database.transaction(["aircraft", "events", "outbox", "apart"], "readonly");
  const [row, tail, withdrawals, waiting, refused, apart] = await Promise.all([
    transaction.objectStore("aircraft").get(aircraft),
    transaction.objectStore("events").index("byOrder").getAll(after(aircraft, base.upTo)),
    transaction
      .objectStore("events")
      .index("byTarget")
      .getAll(IDBKeyRange.bound([aircraft], [aircraft, []])),
    transaction.objectStore("outbox").index("byAircraft").count(inOutbox(aircraft, "waiting")),
    transaction.objectStore("outbox").index("byAircraft").getAll(inOutbox(aircraft, "quarantined")),
    transaction.objectStore("apart").index("byAircraft").getAll(aircraft),
    transaction.done,
  ]);
  const known = row ?? newAircraftRow(aircraft);
  if (base.eventCount + tail.length !== known.eventCount) return null;
  if (!fits(base, tail, withdrawnBy(withdrawals))) return null;
  return {
    row: known,
    ledger: memoryOf(base, tail, withdrawals),
    toSend: waiting,
    quarantined: [...refused, ...apart].map(({ id, reason = "" }) => ({ id, reason })),
  };
}

/** The outbox rows of one aircraft in one state, in the order of their chains. */
export const inOutbox = (aircraft: string, state: "waiting" | "quarantined"): IDBKeyRange =>
  IDBKeyRange.bound([aircraft, state], [aircraft, state, []]);

/** Reads and folds in steps, between which the page can answer and write. */
async function loadFromStart(connection: Connection, aircraft: string): Promise<LoadedAircraft> {
  for (let attempt = 1; ; attempt++) {
    const base = await foldStored(connection, aircraft);
    const loaded = await connection.run((database) => loadFrom(database, base));
    if (loaded !== null) return loaded;
    // Another tab wrote meanwhile, or the count in the row is wrong. The events are what counts.
    if (attempt >= 2) await connection.run((database) => recount(database, aircraft));
    if (attempt >= 5) {
      throw new Error(
        `${aircraft}: expected the storage to hold still for a moment; it changed at every look`,
      );
    }
  }
}

/** Everything but the latest events. */
async function foldStored(connection: Connection, aircraft: string): Promise<AircraftState> {
  const withdrawals = await connection.run((database) =>
    database.getAllFromIndex("events", "byTarget", IDBKeyRange.bound([aircraft], [aircraft, []])),
  );
  const withdrawn = withdrawnBy(withdrawals);
  let state = { ...emptyState(aircraft), withdrawn };
  let loose: LedgerEvent[] = [];
  let last: LedgerEvent | null = null;
  for (;;) {
    const from: LedgerEvent | null = last;
    const batch: LedgerEvent[] = await connection.run((database) =>
      database.getAllFromIndex("events", "byOrder", fromAgain(aircraft, from), BATCH),
    );
    const seen = new Set(loose.slice(-BATCH).map((event) => event.id));
    const fresh = batch.filter((event) => !seen.has(event.id)).sort(compareEvents);
    if (fresh.length === 0) return state;
    loose.push(...fresh);
    last = fresh.at(-1) ?? last;
    const settled = loose.slice(0, Math.max(0, loose.length - TAIL_KEPT));
    state = foldOnto(state, settled, withdrawn);
    loose = loose.slice(settled.length);
  }
}

/** From an event on, itself included: two events may have one place in the order, and neither may be lost. */
const fromAgain = (aircraft: string, event: OrderKey | null): IDBKeyRange =>
  event === null
    ? after(aircraft, null)
    : IDBKeyRange.bound([aircraft, event.hlc, event.device, event.deviceSeq], [aircraft, []]);

async function recount(database: KeepDatabase, aircraft: string): Promise<void> {
  await writeStrictly(database, ["aircraft", "events"], async (transaction) => {
    const row = (await transaction.objectStore("aircraft").get(aircraft)) ?? newAircraftRow(aircraft);
    const eventCount = await transaction.objectStore("events").index("byOrder").count(after(aircraft, null));
    await transaction.objectStore("aircraft").put({ ...row, eventCount });
  });
}
