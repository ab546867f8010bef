import { type Author, type LedgerEvent, makeEvents, newId } from "@witnessmark/ledger";
import type { StoreNames } from "idb";
import type { Draft } from "../contract.ts";
import type { Connection } from "../storage/open-database.ts";
import type { AircraftRow, DeviceRow, KeepSchema, PhotoRow } from "../storage/schema.ts";
import { allOf, putAll, type Writing, writeStrictly } from "../storage/strict-write.ts";
import { type ChainPlace, chainEnd, deviceIn, rowIn } from "./place.ts";

/** Everything that new events take from around them. */
export interface AppendContext {
  readonly connection: Connection;
  readonly operator: string;
  readonly author: Author;
  readonly now_ms: number;
  readonly clockOffset_ms: number | null;
}

export interface Appended {
  readonly events: readonly LedgerEvent[];
  readonly row: AircraftRow;
}

const STORES: StoreNames<KeepSchema>[] = ["aircraft", "events", "outbox", "settings"];
const PHOTO_STORES: StoreNames<KeepSchema>[] = [...STORES, "photos", "uploads"];

/** Each time another tab has been quicker, so that one of them always gets on. */
const ATTEMPTS = 50;

/**
 * Keeps drafts as events in one strict transaction. The events are made before it, because hashing would end it;
 * inside, it is checked that the storage has not moved, and when it has, they are made again.
 *
 * @param known where the chain is believed to be, so that the storage need not be asked first
 * @param photo bytes to keep with its event, of which the id is not known yet
 */
export async function appendDrafts(
  context: AppendContext,
  known: ChainPlace,
  drafts: readonly Draft[],
  photo?: PhotoRow,
): Promise<Appended> {
  let place = known;
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    const made = await makeAt(context, place, drafts);
    try {
      await context.connection.run((database) =>
        writeStrictly(database, photo ? PHOTO_STORES : STORES, (transaction) =>
          writeUnlessMoved(transaction, place.row, made, photo),
        ),
      );
      return made;
    } catch (error) {
      if (!(error instanceof Moved)) throw error;
      // A connection that died after it had committed: this was the second run, and everything is there.
      if (error.row.chain !== null && error.row.chain.hash === made.row.chain?.hash) {
        return { events: made.events, row: error.row };
      }
      place = { row: error.row, device: error.device ?? place.device };
    }
  }
  throw new Error(
    `${known.row.aircraft}: expected the ledger to hold still for a moment; other tabs wrote at every try`,
  );
}

async function makeAt(
  context: AppendContext,
  { device, row }: ChainPlace,
  drafts: readonly Draft[],
): Promise<Appended> {
  const last = chainEnd(row, device);
  const introduction: Draft = {
    type: "device.introduced",
    body: { label: device.label, key: device.key.key },
  };
  const made = await makeEvents(
    {
      operator: context.operator,
      aircraft: row.aircraft,
      device: device.id,
      author: context.author,
      last,
      clock: row.hlc,
      now_ms: context.now_ms,
      zone_min: -new Date(context.now_ms).getTimezoneOffset(),
      ...(context.clockOffset_ms === null ? {} : { clockOffset_ms: context.clockOffset_ms }),
      newId,
      key: device.key.privateKey,
    },
    last === null ? [introduction, ...drafts] : drafts,
  );
  const chain = made.last === null ? null : { device: device.id, ...made.last };
  const eventCount = row.eventCount + made.events.length;
  return { events: made.events, row: { ...row, chain, hlc: made.clock, eventCount } };
}

/** The storage was not as it was believed to be; what was asked for is undone. */
class Moved extends Error {
  override readonly name = "Moved";
  readonly row: AircraftRow;
  /** Another tab may have given this phone another id, too. */
  readonly device: DeviceRow | undefined;
  constructor(row: AircraftRow, device: DeviceRow | undefined) {
    super(`${row.aircraft}: the ledger has moved on`);
    this.row = row;
    this.device = device;
  }
}

/**
 * Looks where the storage is, and asks for the writing in the same breath: a person waits for this, and the look is
 * answered before anything is committed.
 *
 * @throws {Moved} when the row is another than it was believed to be; the transaction is given up by that
 */
async function writeUnlessMoved(
  transaction: Writing,
  believed: AircraftRow,
  made: Appended,
  photo: PhotoRow | undefined,
): Promise<void> {
  const look = rowIn(transaction, believed.aircraft);
  const writing = writeEvents(transaction, made.events, made.row, photo);
  writing.catch(() => {}); // heard below, or given up with the transaction
  const row = await look;
  if (!isSame(row, believed)) throw new Moved(row, await deviceIn(transaction));
  await writing;
}

/** Both were written by this program, so that the same says the same in the same order. */
const isSame = (a: AircraftRow, b: AircraftRow): boolean => JSON.stringify(a) === JSON.stringify(b);

/**
 * Everything at once. The browser commits by itself once all is answered: told to (`commit`), Chromium 156 on a full
 * phone has been seen to answer nothing at all any more.
 */
async function writeEvents(
  transaction: Writing,
  events: readonly LedgerEvent[],
  row: AircraftRow,
  photo: PhotoRow | undefined,
): Promise<void> {
  await allOf([
    putAll(transaction.objectStore("events"), events),
    putAll(
      transaction.objectStore("outbox"),
      events.map(({ id, aircraft, device, deviceSeq }) => ({
        id,
        aircraft,
        device,
        deviceSeq,
        state: "waiting" as const,
      })),
    ),
    putAll(transaction.objectStore("aircraft"), [row]),
    photo ? writePhoto(transaction, photo, row.aircraft, events.at(-1)?.id ?? null) : Promise.resolve(),
  ]);
}

async function writePhoto(
  transaction: Writing,
  photo: PhotoRow,
  aircraft: string,
  event: string | null,
): Promise<void> {
  const { sha256 } = photo;
  await transaction.objectStore("photos").put(photo);
  const known = await transaction.objectStore("uploads").get(sha256);
  const upload = known ?? { sha256, aircraft, state: "waiting" as const };
  await transaction.objectStore("uploads").put({ ...upload, event });
}
