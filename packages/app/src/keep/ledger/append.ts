import { type Author, type LedgerEvent, makeEvents, newId } from "@witnessmark/ledger";
import type { StoreNames } from "idb";
import type { Draft } from "../contract.ts";
import type { Connection } from "../storage/open-database.ts";
import type { AircraftRow, KeepSchema, PhotoRow } from "../storage/schema.ts";
import { allOf, type Writing, writeStrictly } from "../storage/strict-write.ts";
import { type ChainPlace, chainEnd, deviceIn, isSamePlace, rowIn } from "./place.ts";

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
 * inside, it is checked that the chain has not moved, and when it has, they are made again.
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
    const written = await context.connection.run((database) =>
      writeStrictly(database, photo ? PHOTO_STORES : STORES, async (transaction) => {
        const now = await rowIn(transaction, place.row.aircraft);
        // A connection that died after it had committed: this is the second run, and everything is there.
        if (now.chain !== null && now.chain.hash === made.row.chain?.hash) return { kept: now };
        if (!isSamePlace(now, place.row)) {
          // Another tab; it may also have given this phone another id.
          return { moved: { row: now, device: (await deviceIn(transaction)) ?? place.device } };
        }
        const eventCount = now.eventCount + made.events.length;
        const row = { ...made.row, eventCount, ...serverSide(now) };
        await writeEvents(transaction, made.events, row, photo);
        return { kept: row };
      }),
    );
    if (written.kept) return { events: made.events, row: written.kept };
    place = written.moved;
  }
  throw new Error(
    `${known.row.aircraft}: expected the ledger to hold still for a moment; other tabs wrote at every try`,
  );
}

async function makeAt(
  context: AppendContext,
  { device, row }: ChainPlace,
  drafts: readonly Draft[],
): Promise<{ readonly events: readonly LedgerEvent[]; readonly row: AircraftRow }> {
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
  return { events: made.events, row: { ...row, chain, hlc: made.clock } };
}

/** What an exchange in another tab may have changed in the row, which new events do not touch. */
const serverSide = ({ pulledTo, pulledId, epoch, refill, settled }: AircraftRow) => ({
  pulledTo,
  pulledId,
  epoch,
  refill,
  settled,
});

/**
 * Everything at once: a person waits for this. What cannot even be asked for throws before the browser is told to
 * commit, so that it is all of it or nothing.
 */
async function writeEvents(
  transaction: Writing,
  events: readonly LedgerEvent[],
  row: AircraftRow,
  photo: PhotoRow | undefined,
): Promise<void> {
  const asked: Promise<unknown>[] = [];
  const ask = (request: Promise<unknown>) => {
    request.catch(() => {}); // heard below, or told by the transaction when a later one cannot be asked for
    asked.push(request);
  };
  const [inEvents, inOutbox] = [transaction.objectStore("events"), transaction.objectStore("outbox")];
  for (const event of events) {
    const { id, aircraft, device, deviceSeq } = event;
    ask(inEvents.put(event));
    ask(inOutbox.put({ id, aircraft, device, deviceSeq, state: "waiting" }));
  }
  ask(transaction.objectStore("aircraft").put(row));
  if (photo) ask(writePhoto(transaction, photo, row.aircraft, events.at(-1)?.id ?? null));
  // nothing more will be asked of it: the browser need not wait for the answers before it commits
  else transaction.commit();
  await allOf(asked);
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
