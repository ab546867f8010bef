import { hashOfEvent, type LedgerEvent, merge, parseEvent, saysOfFaults } from "@witnessmark/ledger";
import { type AircraftRow, type ApartRow, type DeviceRow, newAircraftRow } from "../storage/schema.ts";
import { allOf, putAll, type Writing, writeStrictly } from "../storage/strict-write.ts";
import type { ExchangeContext, ExchangeNews } from "./context.ts";
import type { PullAnswer } from "./server.ts";

export interface TakenPage {
  readonly row: AircraftRow;
  /** This phone's own id, when the server holds events under it that this phone never made. */
  readonly usedElsewhere: string | null;
}

/**
 * Keeps one page of the server's events in one strict transaction, with the place it brings this phone to. A page is
 * checked before that: what does not read or does not match its hash is kept apart and does not hold up the rest.
 *
 * @param after the place that the page was asked from
 * @returns `null` when another tab has been here meanwhile
 */
export async function takePage(
  context: ExchangeContext,
  aircraft: string,
  after: number,
  page: PullAnswer,
): Promise<TakenPage | null> {
  const read = await Promise.all(page.events.map((entry) => readEntry(aircraft, page.epoch, entry)));
  const events = read.filter((entry) => "event" in entry).map(({ event }) => event);
  const damaged = read.filter((entry) => "apart" in entry).map(({ apart }) => apart);
  const pulledTo = page.events.at(-1)?.ledgerSeq ?? after;
  const last = read.at(-1);
  const pulledId = last && "event" in last ? last.event.id : null;

  const written = await context.connection.run((database) =>
    writeStrictly(
      database,
      ["aircraft", "events", "outbox", "apart", "settings"],
      async (
        transaction,
      ): Promise<{ readonly news: ExchangeNews; readonly usedElsewhere: string | null } | null> => {
        const row = (await transaction.objectStore("aircraft").get(aircraft)) ?? newAircraftRow(aircraft);
        if (row.epoch !== page.epoch || row.pulledTo !== after) return null;
        const met = await meet(transaction, events);
        await putAll(transaction.objectStore("events"), [...met.inserted, ...met.replacing]);
        const clashed = met.replaced.map((event) => clashRow(aircraft, event));
        await putAll(transaction.objectStore("apart"), [...damaged, ...clashed]);
        await allOf(met.acknowledged.map(async (id) => transaction.objectStore("outbox").delete(id)));
        const next = {
          ...row,
          pulledTo,
          pulledId,
          eventCount: row.eventCount + met.inserted.length,
          hlc: events.reduce((hlc, event) => merge(hlc, event.hlc, context.now_ms()).clock, row.hlc),
        };
        await transaction.objectStore("aircraft").put(next);
        // Under this name the settings hold a device.
        const device = (await transaction.objectStore("settings").get("device")) as DeviceRow | undefined;
        const usedElsewhere = met.inserted.some((event) => event.device === device?.id);
        return {
          news: { aircraft, row: next, inserted: met.inserted, lookAgain: met.replaced.length > 0 },
          usedElsewhere: usedElsewhere ? (device?.id ?? null) : null,
        };
      },
    ),
  );
  if (written === null) return null;
  await context.tell(written.news);
  return { row: written.news.row, usedElsewhere: written.usedElsewhere };
}

async function readEntry(
  aircraft: string,
  epoch: string,
  { ledgerSeq, event: value }: PullAnswer["events"][number],
): Promise<{ readonly event: LedgerEvent } | { readonly apart: ApartRow }> {
  const parsed = parseEvent(value);
  let fault: string | null = null;
  if (!parsed.ok) fault = saysOfFaults(parsed.faults);
  else if (parsed.event.aircraft !== aircraft) fault = `it is of aircraft ${parsed.event.aircraft}`;
  else if ((await hashOfEvent(parsed.event)) !== parsed.event.hash)
    fault = "its contents do not match its hash";
  else return { event: parsed.event };
  return {
    apart: {
      id: `damaged:${aircraft}:${epoch}:${ledgerSeq}`,
      aircraft,
      reason: `Number ${ledgerSeq} of the server's ledger reached this phone damaged: ${fault}.`,
      text: JSON.stringify(value),
    },
  };
}

interface Met {
  readonly inserted: readonly LedgerEvent[];
  /** Ids of events that this phone holds and the server has. */
  readonly acknowledged: readonly string[];
  /** The server's, under an id that this phone holds with other contents; and this phone's. */
  readonly replacing: readonly LedgerEvent[];
  readonly replaced: readonly LedgerEvent[];
}

async function meet(transaction: Writing, events: readonly LedgerEvent[]): Promise<Met> {
  const store = transaction.objectStore("events");
  const found = await allOf(events.map(async (event) => store.get(event.id)));
  const pairs = events.map((event, at) => ({ event, mine: found[at] }));
  const clashing = pairs.filter(({ event, mine }) => mine !== undefined && mine.hash !== event.hash);
  return {
    inserted: pairs.filter(({ mine }) => mine === undefined).map(({ event }) => event),
    acknowledged: pairs.filter(({ mine }) => mine !== undefined).map(({ event }) => event.id),
    replacing: clashing.map(({ event }) => event),
    replaced: clashing.flatMap(({ mine }) => mine ?? []),
  };
}

const clashRow = (aircraft: string, event: LedgerEvent): ApartRow => ({
  id: `clash:${event.id}:${event.hash}`,
  aircraft,
  reason: `The server holds entry ${event.id} with other contents. The server's counts; this phone's is kept apart.`,
  text: JSON.stringify(event),
});
