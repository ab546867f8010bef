import { isKnownEvent, type LedgerEvent, merge } from "@witnessmark/ledger";
import type { StoreNames } from "idb";
import { moveApart } from "../ledger/set-apart.ts";
import {
  type AircraftRow,
  type ApartRow,
  type DeviceRow,
  isComing,
  type KeepSchema,
  newAircraftRow,
} from "../storage/schema.ts";
import { allOf, putAll, type Writing, writeStrictly } from "../storage/strict-write.ts";
import type { CheckedEntry, CheckedPage } from "./check-page.ts";
import type { ExchangeContext } from "./context.ts";

export interface TakenPage {
  readonly row: AircraftRow;
  /** This phone's own id, when the server holds events under it that this phone never made. */
  readonly usedElsewhere: string | null;
}

/** Where a page brings this phone to; `null` when another tab has been here meanwhile. */
export type Step = (row: AircraftRow) => AircraftRow | null;

/**
 * The next page of the server's ledger.
 *
 * @param after the place that it was asked from
 */
export function nextPage(after: number, { epoch, entries, head }: CheckedPage): Step {
  const last = entries.at(-1);
  const pulledTo = last?.ledgerSeq ?? after;
  const pulledId = last && "event" in last ? last.event.id : null;
  return (row) => {
    if (row.epoch !== epoch || row.pulledTo !== after) return null;
    const { comingTo, ...known } = row;
    const isNew = row.eventCount === 0 || comingTo !== undefined;
    return { ...known, pulledTo, pulledId, ...(isNew && pulledTo < head ? { comingTo: head } : {}) };
  };
}

/**
 * Keeps events of the server in one strict transaction, with the place that they bring this phone to. What was found
 * damaged is kept apart and does not hold up the rest.
 *
 * @param isQuiet nobody is told: the caller does, when more has been taken
 * @returns `null` when another tab has been here meanwhile
 */
export async function takePage(
  context: ExchangeContext,
  aircraft: string,
  page: CheckedPage,
  step: Step,
  isQuiet = false,
): Promise<TakenPage | null> {
  const events = page.entries.flatMap((entry) => ("event" in entry ? [entry.event] : []));
  const damaged = page.entries.flatMap((entry) =>
    "fault" in entry ? [apartRow(aircraft, page.epoch, entry)] : [],
  );

  const taken = await context.connection.run((database) =>
    writeStrictly(database, STORES, async (transaction) => {
      const before = (await transaction.objectStore("aircraft").get(aircraft)) ?? newAircraftRow(aircraft);
      const row = step(before);
      if (row === null) return null;
      // Under this name the settings hold a device.
      const device = (await transaction.objectStore("settings").get("device")) as DeviceRow | undefined;
      // of a record that is still coming nothing is in memory; it has met no other only while it counts for the first time
      const heads = isComing(before) && before.refill ? null : context.heads(aircraft);
      const met = await meet(transaction, events, heads);
      const displaced = await makeWay(transaction, met.displaced, device);
      await putAll(transaction.objectStore("events"), [...met.inserted, ...met.replacing]);
      const clashed = met.replaced.map((event) => clashRow(aircraft, event));
      await putAll(transaction.objectStore("apart"), [...damaged, ...clashed]);
      await allOf(met.acknowledged.map(async (id) => transaction.objectStore("outbox").delete(id)));
      const next: AircraftRow = {
        ...row,
        ...(await withDoubt(transaction, row, met.inserted)),
        eventCount: row.eventCount + met.inserted.length - displaced,
        hlc: events.reduce((hlc, event) => merge(hlc, event.hlc, context.now_ms()).clock, row.hlc),
      };
      await transaction.objectStore("aircraft").put(next);
      const usedElsewhere = met.inserted.some((event) => event.device === device?.id);
      const lookAgain = met.replaced.length + displaced > 0;
      return {
        news: { aircraft, row: next, inserted: met.inserted, lookAgain },
        usedElsewhere: usedElsewhere ? (device?.id ?? null) : null,
      };
    }),
  );
  if (taken === null) return null;
  if (!isQuiet) await context.tell(taken.news);
  return { row: taken.news.row, usedElsewhere: taken.usedElsewhere };
}

/** Whether what came in may make more of the long past needed than was: it comes before it, or takes back some of it. */
export async function withDoubt(
  transaction: Writing,
  { older }: AircraftRow,
  inserted: readonly LedgerEvent[],
): Promise<Pick<AircraftRow, "older">> {
  if (older === undefined || older.since === null || older.taking !== null || older.askAgain) return {};
  const { hlc } = older.since;
  const isLate = inserted.some((event) => event.hlc < hlc);
  const askAgain = isLate || (await takesBackOlder(transaction, hlc, inserted));
  return askAgain ? { older: { ...older, askAgain } } : {};
}

/** Whether one of the events takes back what stands before a stamp, or is not here. */
async function takesBackOlder(
  transaction: Pick<Writing, "objectStore">,
  hlc: string,
  events: readonly LedgerEvent[],
): Promise<boolean> {
  const named = events
    .filter(isKnownEvent)
    .flatMap((event) => (event.type === "event.withdrawn" ? [event.body.event] : []));
  const store = transaction.objectStore("events");
  const found = await allOf(named.map(async (id) => store.get(id)));
  return found.some((event) => event === undefined || event.hlc < hlc);
}

const STORES: StoreNames<KeepSchema>[] = ["aircraft", "events", "outbox", "apart", "settings", "projections"];

const apartRow = (
  aircraft: string,
  epoch: string,
  { ledgerSeq, fault, value }: Extract<CheckedEntry, { readonly fault: string }>,
): ApartRow => ({
  id: `damaged:${aircraft}:${epoch}:${ledgerSeq}`,
  aircraft,
  reason: `Number ${ledgerSeq} of the server's ledger reached this phone damaged: ${fault}.`,
  text: JSON.stringify(value),
});

interface Met {
  readonly inserted: readonly LedgerEvent[];
  /** Ids of events that this phone holds and the server has. */
  readonly acknowledged: readonly string[];
  /** The server's, under an id that this phone holds with other contents; and this phone's. */
  readonly replacing: readonly LedgerEvent[];
  readonly replaced: readonly LedgerEvent[];
  /** Held here with the device and number of an inserted one: only one of them can have that number. */
  readonly displaced: readonly LedgerEvent[];
}

async function meet(
  transaction: Writing,
  events: readonly LedgerEvent[],
  heads: ReadonlyMap<string, number> | null,
): Promise<Met> {
  const store = transaction.objectStore("events");
  const found = await allOf(events.map(async (event) => store.get(event.id)));
  const pairs = events.map((event, at) => ({ event, mine: found[at] }));
  const clashing = pairs.filter(({ event, mine }) => mine !== undefined && mine.hash !== event.hash);
  const inserted = pairs.filter(({ mine }) => mine === undefined).map(({ event }) => event);
  const inTheirPlace = await allOf(
    inserted
      .filter(({ device, deviceSeq }) => heads === null || deviceSeq <= (heads.get(device) ?? 0))
      .map(async ({ aircraft, device, deviceSeq }) =>
        store.index("byChain").getAll([aircraft, device, deviceSeq]),
      ),
  );
  return {
    inserted,
    acknowledged: pairs.filter(({ mine }) => mine !== undefined).map(({ event }) => event.id),
    replacing: clashing.map(({ event }) => event),
    replaced: clashing.flatMap(({ mine }) => mine ?? []),
    displaced: inTheirPlace.flat(),
  };
}

/**
 * Makes way for the server's events in places that others hold here. This phone's own go to the outbox again: the
 * server will keep them apart, and then they are entered again. Others' are kept apart here.
 *
 * @returns how many were taken out of the ledger
 */
async function makeWay(
  transaction: Writing,
  displaced: readonly LedgerEvent[],
  device: DeviceRow | undefined,
): Promise<number> {
  const own = new Set([...(device?.former ?? []), device?.id]);
  const outbox = transaction.objectStore("outbox");
  await putAll(
    outbox,
    displaced
      .filter((event) => own.has(event.device))
      .map(({ id, aircraft, device: by, deviceSeq }) => ({
        id,
        aircraft,
        device: by,
        deviceSeq,
        state: "waiting" as const,
      })),
  );
  const others = displaced.filter((event) => !own.has(event.device));
  await moveApart(transaction, others);
  return others.length;
}

const clashRow = (aircraft: string, event: LedgerEvent): ApartRow => ({
  id: `clash:${event.id}:${event.hash}`,
  aircraft,
  reason: `The server holds entry ${event.id} with other contents. The server's counts; this phone's is kept apart.`,
  text: JSON.stringify(event),
});
