import { type Author, type LedgerEvent, makeEvents, newId } from "@witnessmark/ledger";
import type { Draft } from "../contract.ts";
import type { Connection } from "../storage/open-database.ts";
import type { AircraftRow, PhotoRow } from "../storage/schema.ts";
import { putAll, type Writing, writeStrictly } from "../storage/strict-write.ts";
import { type ChainPlace, chainEnd, isSamePlace, placeIn } from "./place.ts";

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
      writeStrictly(
        database,
        ["aircraft", "events", "outbox", "settings", "photos", "uploads"],
        async (transaction) => {
          const now = await placeIn(transaction, place);
          // A connection that died after it had committed: this is the second run, and everything is there.
          if (now.row.chain?.hash === made.row.chain?.hash) return { kept: now.row };
          if (!isSamePlace(now, place)) return { moved: now };
          const row = {
            ...made.row,
            eventCount: now.row.eventCount + made.events.length,
            ...serverSide(now.row),
          };
          await writeEvents(transaction, made.events, row, photo);
          return { kept: row };
        },
      ),
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

async function writeEvents(
  transaction: Writing,
  events: readonly LedgerEvent[],
  row: AircraftRow,
  photo: PhotoRow | undefined,
): Promise<void> {
  await putAll(transaction.objectStore("events"), events);
  await putAll(
    transaction.objectStore("outbox"),
    events.map(({ id, aircraft, device, deviceSeq }) => ({
      id,
      aircraft,
      device,
      deviceSeq,
      state: "waiting" as const,
    })),
  );
  if (photo) {
    const { sha256 } = photo;
    const event = events.at(-1)?.id ?? null;
    await transaction.objectStore("photos").put(photo);
    const known = await transaction.objectStore("uploads").get(sha256);
    const upload = known ?? { sha256, aircraft: row.aircraft, state: "waiting" as const };
    await transaction.objectStore("uploads").put({ ...upload, event });
  }
  await transaction.objectStore("aircraft").put(row);
}
