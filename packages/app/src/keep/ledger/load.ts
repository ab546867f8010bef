import { type AircraftState, emptyState, type LedgerEvent, type OrderKey } from "@witnessmark/ledger";
import type { IDBPObjectStore, StoreNames } from "idb";
import { CACHE_SHAPE } from "../cache-shape.ts";
import type { Connection } from "../storage/open-database.ts";
import { type AircraftRow, type KeepDatabase, type KeepSchema, newAircraftRow } from "../storage/schema.ts";
import { writeStrictly } from "../storage/strict-write.ts";
import { eventsInOrder, wholeLedger } from "./events-in-order.ts";
import {
  emptyMemory,
  fits,
  foldOnto,
  type LedgerMemory,
  memoryOf,
  TAIL_KEPT,
  withdrawnBy,
} from "./ledger-memory.ts";

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
    ? wholeLedger(aircraft)
    : IDBKeyRange.bound([aircraft, key.hlc, key.device, key.deviceSeq], [aircraft, []], true);

/**
 * Reads an aircraft. From `base` when everything before it is known to be in it, otherwise from the stored copy of a
 * state, otherwise from the first event.
 *
 * @returns also how many events are in the stored copy, when it was used
 */
export async function loadAircraft(
  connection: Connection,
  aircraft: string,
  base: AircraftState | null,
): Promise<{ readonly loaded: LoadedAircraft; readonly savedCount: number | null }> {
  const stored = base ?? (await connection.run((database) => storedBase(database, aircraft)));
  if (stored !== null) {
    const loaded = await connection.run((database) => loadFrom(database, stored));
    if (loaded !== null) return { loaded, savedCount: base === null ? stored.eventCount : null };
  }
  return { loaded: await loadFromStart(connection, aircraft), savedCount: null };
}

export const emptyAircraft = (aircraft: string): LoadedAircraft => ({
  row: newAircraftRow(aircraft),
  ledger: emptyMemory(aircraft),
  toSend: 0,
  quarantined: [],
});

async function storedBase(database: KeepDatabase, aircraft: string): Promise<AircraftState | null> {
  const row = await database.get("projections", aircraft);
  return row?.shape === CACHE_SHAPE ? row.state : null;
}

/** In one transaction, so that row, events and outbox belong together. `null` when the base is not right any more. */
async function loadFrom(database: KeepDatabase, base: AircraftState): Promise<LoadedAircraft | null> {
  const { aircraft } = base;
  const transaction = database.transaction(["aircraft", "events", "outbox", "apart"], "readonly");
  const events = transaction.objectStore("events");
  const [row = newAircraftRow(aircraft), tail, withdrawals, counts] = await Promise.all([
    transaction.objectStore("aircraft").get(aircraft),
    events.index("byOrder").getAll(after(aircraft, base.upTo)),
    events.index("byTarget").getAll(wholeLedger(aircraft)),
    countIn(transaction.objectStore("outbox"), transaction.objectStore("apart"), aircraft),
  ]);
  if (base.eventCount + tail.length !== row.eventCount) return null;
  if (!fits(base, tail, withdrawnBy(withdrawals))) return null;
  return { row, ledger: memoryOf(base, tail, withdrawals), ...counts };
}

/** As many entries kept apart as anyone can look at one by one. */
const SHOWN_MOST = 200;

type Counts = Pick<LoadedAircraft, "toSend" | "quarantined">;

/** What waits for the server, and what is kept apart. */
export async function readCounts(database: KeepDatabase, aircraft: string): Promise<Counts> {
  const transaction = database.transaction(["outbox", "apart"], "readonly");
  return await countIn(transaction.objectStore("outbox"), transaction.objectStore("apart"), aircraft);
}

async function countIn(
  outbox: IDBPObjectStore<KeepSchema, StoreNames<KeepSchema>[], "outbox">,
  apart: IDBPObjectStore<KeepSchema, StoreNames<KeepSchema>[], "apart">,
  aircraft: string,
): Promise<Counts> {
  const [toSend, refused, kept] = await Promise.all([
    outbox.index("byAircraft").count(inOutbox(aircraft, "waiting")),
    outbox.index("byAircraft").getAll(inOutbox(aircraft, "quarantined"), SHOWN_MOST),
    apart.index("byAircraft").getAll(aircraft),
  ]);
  // What was entered again stands in the ledger: nobody needs to do anything about it.
  const lost = kept.filter((row) => row.enteredAgainAs === undefined);
  return { toSend, quarantined: [...refused, ...lost].map(({ id, reason = "" }) => ({ id, reason })) };
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
    database.getAllFromIndex("events", "byTarget", wholeLedger(aircraft)),
  );
  const withdrawn = withdrawnBy(withdrawals);
  let state: AircraftState = { ...emptyState(aircraft), withdrawn };
  let loose: LedgerEvent[] = [];
  for await (const event of eventsInOrder(connection, aircraft)) {
    loose.push(event);
    if (loose.length < BATCH + TAIL_KEPT) continue;
    state = foldOnto(state, loose.slice(0, BATCH), withdrawn);
    loose = loose.slice(BATCH);
  }
  const settled = loose.slice(0, Math.max(0, loose.length - TAIL_KEPT));
  return foldOnto(state, settled, withdrawn);
}

async function recount(database: KeepDatabase, aircraft: string): Promise<void> {
  await writeStrictly(database, ["aircraft", "events"], async (transaction) => {
    const row = (await transaction.objectStore("aircraft").get(aircraft)) ?? newAircraftRow(aircraft);
    const eventCount = await transaction.objectStore("events").index("byOrder").count(wholeLedger(aircraft));
    await transaction.objectStore("aircraft").put({ ...row, eventCount });
  });
}
