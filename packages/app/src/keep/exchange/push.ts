import type { LedgerEvent } from "@witnessmark/ledger";
import { inOutbox } from "../ledger/load.ts";
import { type AircraftRow, newAircraftRow, type OutboxRow } from "../storage/schema.ts";
import { allOf, type Writing, writeStrictly } from "../storage/strict-write.ts";
import { fromZero } from "./aircraft-row.ts";
import { EpochMoved, type ExchangeContext, ServerInconsistent } from "./context.ts";
import { inBatches, send } from "./send.ts";
import { PAGE_EVENTS, type PushAnswer } from "./server.ts";
import { withDoubt } from "./take-page.ts";

export interface Pushed {
  /** The server's head after the last push; 0 when nothing was sent. */
  readonly head: number;
  /** Ids of events that the server will not have because others stand in their place. */
  readonly conflicts: readonly string[];
}

/** Sends what waits in the outbox of an aircraft, in the order in which it was made. */
export async function pushWaiting(context: ExchangeContext, aircraft: string): Promise<Pushed> {
  let head = 0;
  const conflicts: string[] = [];
  for (;;) {
    const events = await context.connection.run(async (database) => {
      const transaction = database.transaction(["outbox", "events"], "readonly");
      const index = transaction.objectStore("outbox").index("byAircraft");
      const rows = await index.getAll(inOutbox(aircraft, "waiting"), PAGE_EVENTS);
      return await eventsOf(
        rows.map((row) => row.id),
        (id) => transaction.objectStore("events").get(id),
      );
    });
    // The server answers for each event, so that none of these waits any more when the next are read.
    const fresh = events.filter((event) => !conflicts.includes(event.id));
    if (fresh.length === 0) return { head, conflicts };
    const pushed = await pushEvents(context, aircraft, fresh);
    head = Math.max(head, pushed.head);
    conflicts.push(...pushed.conflicts);
    if (pushed.conflicts.length > 0) return { head, conflicts };
  }
}

/**
 * Sends everything that this phone holds of an aircraft and the server says it lacks, whoever made it. Stops a
 * device's events at a conflict; once that is settled, ask the server again and call this again.
 */
export async function pushMissing(
  context: ExchangeContext,
  aircraft: string,
  serverHas: Readonly<Record<string, number>>,
): Promise<Pushed> {
  let head = 0;
  const conflicts: string[] = [];
  for (const [device, highest] of context.heads(aircraft)) {
    for (let from = serverHas[device] ?? 0; from < highest; ) {
      const range = IDBKeyRange.bound([aircraft, device, from], [aircraft, device, highest], true);
      const events = await context.connection.run((database) =>
        database.getAllFromIndex("events", "byChain", range, PAGE_EVENTS),
      );
      const last = events.at(-1);
      if (last === undefined) break;
      const pushed = await pushEvents(context, aircraft, events);
      head = Math.max(head, pushed.head);
      conflicts.push(...pushed.conflicts);
      if (pushed.conflicts.length > 0) break;
      from = last.deviceSeq;
    }
  }
  return { head, conflicts };
}

async function pushEvents(
  context: ExchangeContext,
  aircraft: string,
  events: readonly LedgerEvent[],
): Promise<Pushed> {
  let head = 0;
  const conflicts: string[] = [];
  for (const batch of inBatches(events)) {
    for (const answer of await send(context.server, aircraft, batch)) {
      await takeAnswer(context, aircraft, answer, batch);
      head = Math.max(head, answer.head);
      conflicts.push(...answer.results.filter(({ outcome }) => outcome === "conflict").map(({ id }) => id));
    }
    // What follows a conflict on the same chain would only conflict too, or hang on an event that is not there.
    if (conflicts.length > 0) break;
  }
  return { head, conflicts };
}

/** Writes down what became of each event. A conflict is left where it is: see `settleConflicts`. */
async function takeAnswer(
  context: ExchangeContext,
  aircraft: string,
  answer: PushAnswer,
  sent: readonly LedgerEvent[],
): Promise<void> {
  if (answer.results.length === 0) {
    throw new ServerInconsistent(
      `The server did not say what became of the entries of ${aircraft} sent to it.`,
    );
  }
  const row = await context.connection.run((database) =>
    writeStrictly(database, ["aircraft", "events", "outbox"], async (transaction) => {
      const before = (await transaction.objectStore("aircraft").get(aircraft)) ?? newAircraftRow(aircraft);
      if (before.epoch !== answer.epoch) return null;
      const given = new Map<number, string>();
      const refused: OutboxRow[] = [];
      let hasLost = false;
      for (const result of answer.results) {
        if (result.outcome === "accepted" || result.outcome === "duplicate") {
          given.set(result.ledgerSeq, result.id);
          // A new event with a number that was given out before: the server has lost what had it.
          hasLost ||= result.outcome === "accepted" && result.ledgerSeq <= before.pulledTo;
        } else if (result.outcome === "quarantined") {
          refused.push(...(await refusedRow(transaction, result.id, result.reason)));
        }
      }
      await allOf([...given.values()].map(async (id) => transaction.objectStore("outbox").delete(id)));
      await allOf(refused.map(async (outboxRow) => transaction.objectStore("outbox").put(outboxRow)));
      const next = {
        ...(hasLost ? fromZero(before, answer.epoch) : followed(before, given)),
        ...(await withDoubt(transaction, before, sent)),
      };
      await transaction.objectStore("aircraft").put(next);
      return next;
    }),
  );
  if (row === null) throw new EpochMoved(answer.epoch);
  await context.tell({ aircraft, row });
}

async function refusedRow(transaction: Writing, id: string, reason: string): Promise<readonly OutboxRow[]> {
  const event = await transaction.objectStore("events").get(id);
  if (event === undefined) return [];
  const { aircraft, device, deviceSeq } = event;
  return [{ id, aircraft, device, deviceSeq, state: "quarantined", reason }];
}

/** Numbers just given to events that are here need not be fetched, as long as they follow without a hole. */
function followed(row: AircraftRow, given: ReadonlyMap<number, string>): AircraftRow {
  let { pulledTo, pulledId } = row;
  for (let id = given.get(pulledTo + 1); id !== undefined; id = given.get(pulledTo + 1)) {
    pulledTo++;
    pulledId = id;
  }
  return { ...row, pulledTo, pulledId };
}

async function eventsOf(
  ids: readonly string[],
  get: (id: string) => Promise<LedgerEvent | undefined>,
): Promise<readonly LedgerEvent[]> {
  const found = await allOf(ids.map(get));
  return found.filter((event) => event !== undefined);
}
