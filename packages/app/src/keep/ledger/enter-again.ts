import {
  hlcTime_ms,
  isKnownEvent,
  type KnownEvent,
  type LedgerEvent,
  mustBeSigned,
  newId,
  sealEvent,
  tick,
  type UnsealedEvent,
} from "@witnessmark/ledger";
import { underNewId } from "../device.ts";
import type { Connection } from "../storage/open-database.ts";
import { type AircraftRow, type ApartRow, type DeviceRow, newAircraftRow } from "../storage/schema.ts";
import { allOf, putAll, writeStrictly } from "../storage/strict-write.ts";
import { inOutbox } from "./load.ts";
import { type ChainPlace, chainEnd, deviceIn, isSamePlace, rowIn } from "./place.ts";

/*
 * A phone that was put back to an older copy of itself, or copied, goes on numbering where the copy stood, and the
 * server already holds other events under those numbers. What was entered on this phone since then is not lost: it
 * goes into the ledger again under a new device id, with its own times, and the first writing is kept apart. What a
 * person signed is not signed again for them.
 */

/** Each time another tab has been quicker, so that one of them always gets on. */
const ATTEMPTS = 50;

/**
 * Takes a new device id if `device` is still this phone's, and enters again what this phone made on the aircraft under
 * `device` and the server does not have: what waits, and what it answered with a conflict.
 *
 * @returns the aircraft's row afterwards
 */
export async function enterAgain(
  connection: Connection,
  aircraft: string,
  device: string,
  conflicts: readonly string[],
  now_ms: number,
): Promise<AircraftRow> {
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    const found = await connection.run((database) => find(database, aircraft, device, conflicts));
    const next = found.place.device.id === device ? underNewId(found.place.device) : found.place.device;
    const entered = await rewrite(found.events, found.place.row, next, now_ms);
    const row = await connection.run((database) =>
      writeStrictly(
        database,
        ["aircraft", "events", "outbox", "apart", "settings", "projections"],
        async (transaction) => {
          const now = await rowIn(transaction, aircraft);
          const device = await deviceIn(transaction);
          if (!isSamePlace(now, found.place.row) || device?.id !== found.place.device.id) return null;
          await transaction.objectStore("settings").put(next, "device");
          await allOf(
            found.events.flatMap(({ id }) => [
              transaction.objectStore("events").delete(id),
              transaction.objectStore("outbox").delete(id),
            ]),
          );
          await putAll(transaction.objectStore("apart"), entered.apart);
          await putAll(transaction.objectStore("events"), entered.events);
          await putAll(
            transaction.objectStore("outbox"),
            entered.events.map(({ id, deviceSeq }) => ({
              id,
              aircraft,
              device: next.id,
              deviceSeq,
              state: "waiting" as const,
            })),
          );
          await transaction.objectStore("projections").delete(aircraft);
          const eventCount = now.eventCount - found.events.length + entered.events.length;
          const changed = { ...now, chain: entered.chain, eventCount };
          await transaction.objectStore("aircraft").put(changed);
          return changed;
        },
      ),
    );
    if (row !== null) return row;
  }
  throw new Error(
    `${aircraft}: expected the ledger to hold still for a moment; other tabs wrote at every try`,
  );
}

interface Found {
  readonly place: ChainPlace;
  /** In the order of the chain. */
  readonly events: readonly LedgerEvent[];
}

async function find(
  database: Parameters<Parameters<Connection["run"]>[0]>[0],
  aircraft: string,
  device: string,
  conflicts: readonly string[],
): Promise<Found> {
  const transaction = database.transaction(["aircraft", "events", "outbox", "settings"], "readonly");
  const row = (await transaction.objectStore("aircraft").get(aircraft)) ?? newAircraftRow(aircraft);
  // Under this name the settings hold a device; without one there is nothing that it could have made.
  const own = (await transaction.objectStore("settings").get("device")) as DeviceRow;
  const waiting = await transaction
    .objectStore("outbox")
    .index("byAircraft")
    .getAll(inOutbox(aircraft, "waiting"));
  const ids = new Set([
    ...waiting.filter((entry) => entry.device === device).map(({ id }) => id),
    ...conflicts,
  ]);
  const events = await allOf([...ids].map((id) => transaction.objectStore("events").get(id)));
  return {
    place: { device: own, row },
    events: events.filter((event) => event !== undefined).sort((a, b) => a.deviceSeq - b.deviceSeq),
  };
}

interface Entered {
  readonly events: readonly KnownEvent[];
  readonly apart: readonly ApartRow[];
  readonly chain: AircraftRow["chain"];
}

async function rewrite(
  originals: readonly LedgerEvent[],
  row: AircraftRow,
  device: DeviceRow,
  now_ms: number,
): Promise<Entered> {
  let last = chainEnd(row, device);
  /** A chain's stamps only go forward; a new chain can take the old stamps as they are. */
  let clock = last === null ? null : row.hlc;
  const events: KnownEvent[] = [];
  const renamed = new Map<string, string>();

  const enter = async (event: KnownEvent, hlc: string) => {
    const { hash: _hash, signature: _signature, ...rest } = event;
    clock = clock !== null && hlc <= clock ? tick(clock, now_ms) : hlc;
    const sealed = await sealEvent(
      {
        ...rest,
        id: newId(),
        device: device.id,
        deviceSeq: (last?.deviceSeq ?? 0) + 1,
        previousHash: last?.hash ?? null,
        hlc: clock,
      } as UnsealedEvent, // the same member of the union, with its envelope renewed
      device.key.privateKey,
    );
    last = { deviceSeq: sealed.deviceSeq, hash: sealed.hash };
    events.push(sealed);
    renamed.set(event.id, sealed.id);
  };

  const again = originals
    .filter(isKnownEvent)
    .filter(({ type }) => type !== "device.introduced" && !mustBeSigned(type));
  const [first] = again;
  if (first !== undefined && last === null) {
    // A moment before the first, so that stamps and numbers go the same way.
    const hlc = tick(null, hlcTime_ms(first.hlc) - 1);
    const body = { label: device.label, key: device.key.key };
    await enter({ ...first, type: "device.introduced", body }, hlc);
  }
  for (const event of again) {
    const moved =
      event.type === "event.withdrawn"
        ? { ...event, body: { ...event.body, event: renamed.get(event.body.event) ?? event.body.event } }
        : event;
    await enter(moved, event.hlc);
  }
  const end: { readonly deviceSeq: number; readonly hash: string } | null = last;
  return {
    events,
    apart: originals.map((event) => apartRow(event, renamed.get(event.id))),
    chain: end === null ? null : { device: device.id, ...end },
  };
}

function apartRow(event: LedgerEvent, enteredAgainAs: string | undefined): ApartRow {
  const { id, aircraft } = event;
  const text = JSON.stringify(event);
  if (enteredAgainAs !== undefined || event.type === "device.introduced") {
    const reason =
      "This phone's record was also used elsewhere. The entry stands in the ledger under a new device id.";
    return { id, aircraft, reason, text, enteredAgainAs: enteredAgainAs ?? "" };
  }
  const reason = mustBeSigned(event.type)
    ? "It was signed while this phone's record was also used elsewhere, and the server holds other entries in its place. Look at what has changed and sign again."
    : "It was made by another version of Witnessmark while this phone's record was also used elsewhere.";
  return { id, aircraft, reason, text };
}
