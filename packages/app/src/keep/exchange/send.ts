import type { LedgerEvent } from "@witnessmark/ledger";
import { PAGE_EVENTS, type PushAnswer, Refused, type Server } from "./server.ts";

/** Well under the 2 MB that a server takes, whatever the alphabet. */
const BATCH_B = 1_000_000;

/** Refusals that are about what was sent, not about who sent it or when. */
const ABOUT_CONTENTS = new Set([400, 413, 422]);

/** Cuts events into pushes of at most 500 events and about a megabyte, in their order. */
export function inBatches(events: readonly LedgerEvent[]): readonly (readonly LedgerEvent[])[] {
  const batches: LedgerEvent[][] = [];
  let size_B = 0;
  for (const event of events) {
    const event_B = new TextEncoder().encode(JSON.stringify(event)).length;
    const last = batches.at(-1);
    if (last === undefined || last.length === PAGE_EVENTS || size_B + event_B > BATCH_B) {
      batches.push([event]);
      size_B = event_B;
    } else {
      last.push(event);
      size_B += event_B;
    }
  }
  return batches;
}

/**
 * Pushes one batch. When the server refuses the whole of it for its contents, halves are tried, down to the one event
 * that it will not have: that one counts as quarantined, and those beside it go through.
 *
 * @throws {OutOfReach} {Refused} when nothing can be sent now
 */
export async function send(
  server: Server,
  aircraft: string,
  events: readonly LedgerEvent[],
): Promise<readonly PushAnswer[]> {
  try {
    return [await server.push(aircraft, events)];
  } catch (error) {
    if (!(error instanceof Refused) || !ABOUT_CONTENTS.has(error.status)) throw error;
    const [only] = events;
    if (only === undefined) return [];
    if (events.length === 1) return [await refused(server, only, error)];
    const half = Math.ceil(events.length / 2);
    return [
      ...(await send(server, aircraft, events.slice(0, half))),
      ...(await send(server, aircraft, events.slice(half))),
    ];
  }
}

async function refused(server: Server, event: LedgerEvent, error: Refused): Promise<PushAnswer> {
  const { epoch } = await server.about();
  const reason = `The server will not take this entry: ${error.message}`;
  return { epoch, head: 0, results: [{ id: event.id, outcome: "quarantined", reason }] };
}
